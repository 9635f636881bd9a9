// A panel is broken: what now? From the place it was for, chains of moves back to a panel that is to
// be had: a spare, or one whose place is not built yet. The chain that undoes the fewest seams comes
// first (Dijkstra over places, a move costing the seams that its panel is bolted by).

import type { Kind } from '../../pile/kind.ts';
import type { PlaceId, SideId } from '../../shell/ids.ts';
import { kindSide, placeAt, placeCount, type Shell, sidesOf } from '../../shell/shell.ts';
import { type Family, familiesOf, familyIndex } from '../families.ts';
import { holesTake, nearFit } from './near-fit.ts';

/** One panel taken up and put down. */
export interface Move {
  /** Place that it comes from; null for a spare. */
  readonly from: number | null;
  readonly to: number;
  /** Its kind (id), and the side of it that lies on the place's first seam. */
  readonly kind: string;
  readonly turn: number;
  /** Largest difference of its sides from those it meets, metres; 0 where it is of the place's own
   * kind or one that stands for it. */
  readonly misfit: number;
}

/** One way out. */
export interface Replacement {
  /** `move`: with the moves below. `make`: nothing in the heap will do: buy one or make one. */
  readonly act: 'move' | 'make';
  /** In the order in which they are done: the first panel is free to be taken. */
  readonly moves: readonly Move[];
  /** Seams that are unbolted for it. */
  readonly undone: number;
  /** Largest misfit of all moves, metres, and whether the holes take it. */
  readonly misfit: number;
  readonly holesTake: boolean;
  /** Place, not built yet, that now lacks its panel; null for none. */
  readonly leaves: number | null;
  /** Kind (id) that is then missing altogether and must be bought, made or gone without. */
  readonly lacks: string | null;
}

/** How far the work is, and what there is. */
export interface BuildState {
  /** Place → 1 where its panel is up. */
  readonly built: ArrayLike<number>;
  /** Kind (index) → good panels that no place needs. */
  readonly spares: readonly number[];
  /** Places that shall not be touched, those that bear the crown or a prop, say. */
  readonly fixed?: ReadonlySet<number>;
}

/** What may be done. */
export interface ReplacementOptions {
  readonly interchangeable?: readonly (readonly string[])[];
  /** Misfit that is thought of at all, metres; 0.006 unless told. */
  readonly mostMisfit?: number;
  readonly holeRoom?: number;
}

/** Beyond this a flange is drawn so far that it kinks: our own judgement, metres. */
const MOST_MISFIT = 0.006;

/** The ways out for a place of a shell whose panel is broken, the least undoing first, then the
 * least misfit; to make one comes last. Places go by their kind in `kinds`; sides as fitted. */
export function replacementsFor(
  shell: Shell,
  kinds: readonly Kind[],
  place: number,
  state: BuildState,
  options: ReplacementOptions = {},
): Replacement[] {
  const families = familiesOf(kinds, options.interchangeable);
  const most = options.mostMisfit ?? MOST_MISFIT;
  const limits = [0, ...misfitsTo(kinds, kinds[shell.kind[place] as number] as Kind, most)];
  const found = new Map<string, Replacement>();
  for (const limit of [...new Set([...limits, most])].sort((a, b) => a - b)) {
    const chain = cheapestChain(new Steps(shell, kinds, families, state, limit), place);
    if (!chain) continue;
    const one = replacementOf(shell, kinds, chain, options);
    const key = JSON.stringify(one.moves);
    if (!found.has(key)) found.set(key, one);
  }
  const moves = [...found.values()].sort((a, b) => a.undone - b.undone || a.misfit - b.misfit);
  const worth = moves.filter(
    (one, i) => !moves.slice(0, i).some((other) => other.misfit <= one.misfit),
  );
  const kind = (kinds[shell.kind[place] as number] as Kind).id;
  return [
    ...worth,
    {
      act: 'make',
      moves: [],
      undone: 0,
      misfit: 0,
      holesTake: true,
      leaves: null,
      lacks: kind,
    },
  ];
}

/** Misfits of other kinds in a place of this one, up to the most. */
const misfitsTo = (kinds: readonly Kind[], own: Kind, most: number): number[] =>
  kinds.flatMap((kind) => {
    const fit = nearFit(own, kind);
    return fit && fit.misfit <= most ? [fit.misfit] : [];
  });

/** What can be put into a place. */
interface Step {
  readonly from: number | null;
  readonly kind: number;
  readonly turn: number;
  readonly misfit: number;
}

class Steps {
  private readonly familyOf: Int32Array;
  private readonly fits: readonly (readonly (Step | null)[])[];

  constructor(
    readonly shell: Shell,
    private readonly kinds: readonly Kind[],
    private readonly families: readonly Family[],
    readonly state: BuildState,
    private readonly limit: number,
  ) {
    this.familyOf = familyIndex(kinds, families);
    this.fits = kinds.map((_, own) => kinds.map((__, other) => this.fitOf(own, other)));
  }

  /** A panel of `other` in a place of `own`, as a step from nowhere. */
  private fitOf(own: number, other: number): Step | null {
    const turnOf = (k: number): number => {
      const family = this.families[this.familyOf[k] as number] as Family;
      return family.offsets[family.kinds.indexOf(k)] as number;
    };
    const n = (this.kinds[own] as Kind).sides.length;
    if (this.familyOf[own] === this.familyOf[other])
      return { from: null, kind: other, turn: (turnOf(other) - turnOf(own) + n) % n, misfit: 0 };
    const fit = nearFit(this.kinds[own] as Kind, this.kinds[other] as Kind);
    return fit && fit.misfit <= this.limit
      ? { from: null, kind: other, turn: fit.turn, misfit: fit.misfit }
      : null;
  }

  /** Spares first, then places. */
  into(place: number): Step[] {
    const own = this.shell.kind[place] as number;
    const spares = this.state.spares.flatMap((n, kind) => {
      const step = n > 0 ? (this.fits[own] as readonly (Step | null)[])[kind] : null;
      return step ? [step] : [];
    });
    const places = [...Array(placeCount(this.shell)).keys()].flatMap((from) => {
      if (from === place || this.state.fixed?.has(from)) return [];
      const step = (this.fits[own] as readonly (Step | null)[])[this.shell.kind[from] as number];
      return step ? [{ ...step, from }] : [];
    });
    return [...spares, ...places];
  }

  /** Seams by which a place's panel is bolted to others that are up. */
  boltedAt(place: number): number {
    return sidesOf(this.shell, place as PlaceId).filter((s) => {
      const mate = this.shell.mate[s] as number;
      return mate >= 0 && this.state.built[placeAt(this.shell, mate as SideId)];
    }).length;
  }
}

interface Link {
  readonly to: number;
  readonly step: Step;
}

interface Chain {
  /** From the broken place back to the panel that is free. */
  readonly links: readonly Link[];
  readonly undone: number;
}

/** A panel bent into a place costs a little, so that of chains that undo as much the better fit wins;
 * each further move costs a little as well. */
const PER_METRE = 50;
const PER_MOVE = 0.01;

function cheapestChain(steps: Steps, broken: number): Chain | null {
  const { state } = steps;
  const cost = new Map([[broken, 0]]);
  const undone = new Map([[broken, 0]]);
  const came = new Map<number, Link>();
  const open = new Set([broken]);
  const done = new Set<number>();
  let best: { chain: Chain; cost: number } | null = null;
  while (open.size > 0) {
    const at = [...open].reduce((a, b) =>
      (cost.get(b) as number) < (cost.get(a) as number) ? b : a,
    );
    open.delete(at);
    done.add(at);
    const own = cost.get(at) as number;
    if (best && own >= best.cost) break;
    for (const step of steps.into(at)) {
      const { from } = step;
      const isUp = from !== null && state.built[from] === 1;
      const seams = isUp ? steps.boltedAt(from) : 0;
      const total = own + seams + PER_MOVE + PER_METRE * step.misfit;
      const links = (): Link[] => [...linksTo(came, at, broken), { to: at, step }];
      if (!isUp) {
        if (!best || total < best.cost)
          best = { cost: total, chain: { links: links(), undone: undone.get(at) as number } };
      } else if (!done.has(from) && total < (cost.get(from) ?? Number.POSITIVE_INFINITY)) {
        cost.set(from, total);
        undone.set(from, (undone.get(at) as number) + seams);
        came.set(from, { to: at, step });
        open.add(from);
      }
    }
  }
  return best?.chain ?? null;
}

function linksTo(came: ReadonlyMap<number, Link>, at: number, broken: number): Link[] {
  const links: Link[] = [];
  for (let place = at; place !== broken; ) {
    const link = came.get(place) as Link;
    links.unshift(link);
    place = link.to;
  }
  return links;
}

function replacementOf(
  shell: Shell,
  kinds: readonly Kind[],
  { links, undone }: Chain,
  { holeRoom }: ReplacementOptions,
): Replacement {
  const moves = [...links].reverse().map(({ to, step }): Move => {
    const n = (kinds[step.kind] as Kind).sides.length;
    const first = kindSide(shell, shell.placeStart[to] as SideId);
    return {
      from: step.from,
      to,
      kind: (kinds[step.kind] as Kind).id,
      turn: (first + step.turn) % n,
      misfit: step.misfit,
    };
  });
  const misfit = Math.max(0, ...moves.map((move) => move.misfit));
  const from = moves[0]?.from ?? null;
  const lacks = from === null ? null : (kinds[shell.kind[from] as number] as Kind).id;
  const takes = holesTake(misfit, holeRoom);
  return { act: 'move', moves, undone, misfit, holesTake: takes, leaves: from, lacks };
}
