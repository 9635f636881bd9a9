// Grows parts of a sphere in which every kind stands once for each turn about an axis: hub after hub,
// many islands side by side, the best kept. A hub is closed by a whole run of corners at once, or is
// taken to lie on the rim. An island that has gone astray soon finds no run that closes as well as
// readings let true ones, and falls behind; so no search has to go back, however many panels lack.
//
// As each kind is laid once, a piece is its kind and its sides are the kind-sides of the corner model.

import { TAU } from '../math/angle.ts';
import { conditionInto, innovationOf, makeEquation } from './belief.ts';
import { type CornerModel, cornerModel } from './corner-model.ts';
import { setSeamInto, setStarInto } from './equations.ts';
import type { Fold, FoldedNet } from './fold.ts';
import {
  copyIslandInto,
  emptyIsland,
  type Island,
  type Run,
  refresh,
  runAround,
  runFrom,
  seamZ2,
  starAt,
} from './island.ts';
import { priorOf, type SideBelief } from './side-belief.ts';

/** A seam or star further off than this many deviations is none. */
const GATE = 3.8;
/** Together, the seams of one run that closes a hub may cost this much more than they should. */
const MOST_COST = 34;
/** What a linear model may be off at a star, radians (see FoldSearch). */
const NEGLECTED = 2e-5;
/** What it costs to take a hub for one on the rim, a kind not to be laid: natural logarithms. */
const RIM = 5;
const UNLAID = 4;
/** What it costs to lay one on a single seam, as many may be as long by chance. */
const LOOSE = 3;
/** Where the best island is worse than this, all have gone astray. */
const ASTRAY = -45;
/** No missing panel has a sharper corner, radians. */
const LEAST_CORNER = 0.25;
/** Most corners that close a hub, and most ways to close one that are looked at further. */
const MOST_CORNERS = 5;
const MOST_WAYS = 40;
/** Islands that are given the panels that hang on one seam alone, and ways that are tried for each. */
const MOST_ENDS = 6;
const MOST_LOOSE = 3;
/** Prior deviation of κ / κ₀ about the radius of a start. */
const KAPPA_SD = 0.08;

/** How widely is looked. */
export interface GrowOptions {
  /** Islands kept at each step. */
  readonly width: number;
  /** Told the work done (see FoldSearch); false stops. */
  readonly onWork: (work: number) => boolean;
}

/** A part that has grown as far as it could. */
export interface GrownIsland {
  readonly net: FoldedNet;
  /** Metres; about that of the part. */
  readonly radius: number;
  /** Natural logarithm of how much better it closes than chance. */
  readonly score: number;
  /** Kinds that found no place. */
  readonly unlaid: readonly number[];
}

/** Where islands start: two sides of one panel on the axis, or just one panel. */
export interface IslandSeed {
  readonly radius: number;
  /** Kind-side whose corner lies on the axis, with the side before it glued to it. */
  readonly pole: number | null;
  /** Kind-side of a hub that is closed first where there is no pole. */
  readonly corner: number;
}

/** A way to close a hub. */
interface Way {
  readonly island: Island;
  /** Sides to be glued, in turn; none where the hub is left on the rim. */
  readonly seams: readonly (readonly [number, number])[];
  readonly run: Run;
  readonly gain: number;
}

/** The parts that grow from seeds at one radius, the best first. */
export function growParts(
  readings: SideBelief,
  fold: Fold,
  seeds: readonly IslandSeed[],
  options: GrowOptions,
): GrownIsland[] {
  const radius = seeds[0]?.radius;
  const model = radius === undefined ? null : cornerModel(readings.sides, 1 / radius ** 2);
  if (!model || radius === undefined) return [];
  return new Growth(readings, model, fold, options).from(seeds).map((island) => ({
    radius,
    ...island,
  }));
}

class Growth {
  private readonly meets: readonly (readonly number[])[];
  private readonly equation;
  private readonly gain;
  private readonly work: number;
  private stopped = false;
  /** Islands that are no longer needed: their arrays are large, and hundreds are tried. */
  private readonly spare: Island[] = [];

  constructor(
    private readonly readings: SideBelief,
    private readonly model: CornerModel,
    private readonly fold: Fold,
    private readonly options: GrowOptions,
  ) {
    const size = model.lengths.length + 1;
    this.equation = makeEquation(size);
    this.gain = new Float64Array(size);
    this.work = Math.max(1, (size / 64) ** 2);
    const prior = priorOf(readings, KAPPA_SD);
    this.meets = Array.from(model.lengths, (_, s) =>
      Array.from(model.lengths.keys()).filter((t) => {
        setSeamInto(this.equation, model, s, t);
        const { off, variance } = innovationOf(prior, this.equation);
        return s !== t && off * off <= GATE ** 2 * variance;
      }),
    );
  }

  from(seeds: readonly IslandSeed[]): Omit<GrownIsland, 'radius'>[] {
    let beam = seeds.flatMap((seed) => this.planted(seed) ?? []);
    const done: Island[] = [];
    while (beam.length > 0 && !this.stopped) {
      const ways: Way[] = [];
      for (const island of beam) {
        const run = this.openHub(island);
        if (run) ways.push(...this.waysOf(island, run));
        else done.push(island);
        if (!this.options.onWork(this.work)) this.stopped = true;
      }
      ways.sort((a, b) => b.island.score + b.gain - a.island.score - a.gain);
      const [best] = ways;
      if (best && best.island.score + best.gain < ASTRAY) break;
      const next = this.taken(ways);
      this.spare.push(...beam.filter((island) => !done.includes(island)));
      beam = next;
    }
    return distinct(
      distinct(done)
        .slice(0, MOST_ENDS)
        .flatMap((island) => this.withLoose(island)),
    ).map((island) => this.grown(island));
  }

  private planted({ pole, corner }: IslandSeed): Island | null {
    const { model } = this;
    const island = emptyIsland(model, priorOf(this.readings, KAPPA_SD), this.fold.axes.length);
    island.laid[model.kindOf[pole ?? corner] as number] = 1;
    if (pole === null) return island;
    return this.glued(island, [[pole, model.before[pole] as number]], [pole]) ? island : null;
  }

  /** The best ways carried out, so many as stand. */
  private taken(ways: readonly Way[]): Island[] {
    const beam: Island[] = [];
    const seen = new Set<string>();
    for (const { island, seams, run } of ways) {
      if (beam.length >= this.options.width || this.stopped) break;
      const next = this.copyOf(island);
      if (seams.length === 0) {
        for (const corner of run.corners) next.rim[corner] = 1;
        next.score -= RIM;
      } else {
        if (!this.glued(next, seams, [run.from])) {
          this.spare.push(next);
          continue;
        }
      }
      if (!this.options.onWork(seams.length * this.work)) this.stopped = true;
      const key = `${next.mate.join()};${next.rim.join('')}`;
      if (seen.has(key)) {
        this.spare.push(next);
        continue;
      }
      seen.add(key);
      beam.push(next);
    }
    return beam;
  }

  private copyOf(island: Island): Island {
    const prior = (): Island =>
      emptyIsland(this.model, priorOf(this.readings, KAPPA_SD), this.fold.axes.length);
    const copy = this.spare.pop() ?? prior();
    copyIslandInto(island, copy);
    return copy;
  }

  /** The island with the panels that hang on one seam alone, beyond every hub that closes; the likeliest
   * ways where there are several. */
  private withLoose(island: Island): Island[] {
    const { mate, laid } = island;
    const seams: { readonly seam: readonly [number, number]; readonly z2: number }[] = [];
    mate.forEach((taken, side) => {
      if (taken >= 0 || !laid[this.model.kindOf[side] as number]) return;
      for (const other of this.meets[side] as readonly number[]) {
        if (laid[this.model.kindOf[other] as number]) continue;
        const z2 = seamZ2(this.model, island, side, other);
        if (z2 <= GATE ** 2) seams.push({ seam: [side, other], z2 });
      }
    });
    const kind = this.fewestWays(seams.map(({ seam }) => this.model.kindOf[seam[1]] as number));
    if (kind === null || this.stopped) return [island];
    const ways = seams
      .filter(({ seam }) => this.model.kindOf[seam[1]] === kind)
      .sort((a, b) => a.z2 - b.z2)
      .slice(0, MOST_LOOSE);
    const stand = ways.flatMap(({ seam }) => {
      const next = this.copyOf(island);
      if (!this.options.onWork(this.work)) this.stopped = true;
      next.score -= LOOSE;
      return this.glued(next, [seam], []) ? this.withLoose(next) : [];
    });
    return stand.length > 0 ? stand : [island];
  }

  /** The kind that occurs least often; null where there is none. */
  private fewestWays(kinds: readonly number[]): number | null {
    const counts = new Map<number, number>();
    for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    return [...counts].sort((a, b) => a[1] - b[1] || a[0] - b[0])[0]?.[0] ?? null;
  }

  /** Glues seams and learns from them and from the hub that they close; false where it does not. */
  private glued(
    island: Island,
    seams: readonly (readonly [number, number])[],
    hubs: readonly number[],
  ): boolean {
    const { mate, laid } = island;
    for (const [a, b] of seams) {
      if ((mate[a] as number) >= 0 || (mate[b] as number) >= 0) return false;
      mate[a] = b;
      mate[b] = a;
      laid[this.model.kindOf[a] as number] = 1;
      laid[this.model.kindOf[b] as number] = 1;
    }
    for (const [a, b] of seams) {
      setSeamInto(this.equation, this.model, a, b);
      if (!this.take(island, 0)) return false;
    }
    const stars = new Map<number, number[]>();
    for (const side of [...hubs, ...seams.flat()]) {
      const star = starAt(this.model, island, side);
      if (star) stars.set(Math.min(...star), star);
    }
    for (const star of stars.values()) if (!this.closes(island, star)) return false;
    refresh(this.model, island);
    return this.runsStand(island, seams);
  }

  /** Whether every open hub that the seams touch still has room for a corner. */
  private runsStand(island: Island, seams: readonly (readonly [number, number])[]): boolean {
    for (const [a, b] of seams)
      for (const side of [a, b, this.model.after[a] as number, this.model.after[b] as number]) {
        const run = runAround(this.model, island, side);
        if (run && TAU - run.angle < LEAST_CORNER - GATE * run.sd) return false;
      }
    return true;
  }

  private closes(island: Island, star: readonly number[]): boolean {
    const angle = star.reduce((sum, c) => sum + (island.angles[c] as number), 0);
    const onAxis = island.axes > 0 && this.isAxis(angle);
    if (onAxis) island.axes--;
    const sum = onAxis ? TAU / this.fold.order : TAU;
    setStarInto(this.equation, this.model, star, sum);
    return this.take(island, NEGLECTED ** 2);
  }

  private isAxis = (angle: number): boolean =>
    this.fold.order > 1 && Math.abs(angle - TAU / this.fold.order) < Math.abs(angle - TAU);

  /** Conditions the island on the present equation; false where it is too far off. */
  private take(island: Island, neglected: number): boolean {
    const { off, variance: own } = innovationOf(island.belief, this.equation);
    const variance = own + neglected;
    const z2 = (off * off) / Math.max(variance, 1e-12);
    if (z2 > (GATE + 0.7) ** 2) return false;
    if (own < 1e-10) return true;
    conditionInto(island.belief, this.equation, { off, variance }, this.gain);
    island.score += (1 - z2) / 2;
    return true;
  }

  /** The open hub nearest to closing that is not on the rim. */
  private openHub(island: Island): Run | null {
    let best: Run | null = null;
    island.mate.forEach((mate, side) => {
      if (mate >= 0 || !island.laid[this.model.kindOf[side] as number]) return;
      const run = runFrom(this.model, island, side);
      if (!run.isRim && run.angle > (best?.angle ?? 0)) best = run;
    });
    return best;
  }

  /** All ways to go on at a hub, the best first. */
  private waysOf(island: Island, run: Run): Way[] {
    const ways: Way[] = [];
    const { mate } = island;
    const seams: [number, number][] = [];
    const start = run.corners[0] as number;
    let looked = 0;
    const fill = (now: Run, cost: number): void => {
      looked++;
      for (const c of this.meets[now.to] as readonly number[]) {
        if ((mate[c] as number) >= 0) continue;
        const z2 = seamZ2(this.model, island, now.to, c);
        if (z2 > GATE ** 2 || cost + z2 > MOST_COST) continue;
        mate[now.to] = c;
        mate[c] = now.to;
        seams.push([now.to, c]);
        const next = runAround(this.model, island, start);
        if (!next) this.addWay(ways, island, run, seams, cost + z2);
        else if (!next.isRim && next.angle < TAU + GATE * next.sd && seams.length <= MOST_CORNERS)
          fill(next, cost + z2);
        seams.pop();
        mate[now.to] = -1;
        mate[c] = -1;
      }
    };
    fill(run, 0);
    if (!this.options.onWork((this.work * looked) / 100)) this.stopped = true;
    ways.sort((a, b) => b.gain - a.gain);
    return [...ways.slice(0, MOST_WAYS), { island, seams: [], run, gain: -RIM }];
  }

  /** Keeps a way whose seams, glued now, close the hub, where its angles say so. */
  private addWay(
    ways: Way[],
    island: Island,
    run: Run,
    seams: readonly (readonly [number, number])[],
    cost: number,
  ): void {
    const star = starAt(this.model, island, run.corners[0] as number) as number[];
    const angle = star.reduce((sum, c) => sum + (island.angles[c] as number), 0);
    const onAxis = island.axes > 0 && this.isAxis(angle);
    setStarInto(this.equation, this.model, star, onAxis ? TAU / this.fold.order : TAU);
    const { off, variance } = innovationOf(island.belief, this.equation);
    const z2 = (off * off) / (variance + NEGLECTED ** 2);
    if (z2 > GATE ** 2) return;
    const gain = (seams.length + 1 - cost - z2) / 2;
    ways.push({ island, seams: [...seams], run, gain });
  }

  private grown(island: Island): Omit<GrownIsland, 'radius'> {
    const { model } = this;
    const kinds = [...island.laid.keys()].filter((k) => island.laid[k]);
    const sides = kinds.flatMap((k) =>
      range(model.first[k] as number, model.first[k + 1] as number),
    );
    const at = new Map(sides.map((s, i) => [s, i]));
    const index = (s: number): number => at.get(s) as number;
    const unlaid = [...island.laid.keys()].filter((k) => !island.laid[k]);
    const net: FoldedNet = {
      fold: this.fold,
      pieceKind: kinds,
      pieceAxis: kinds.map(() => 1),
      kindSide: sides,
      piece: sides.map((s) => kinds.indexOf(model.kindOf[s] as number)),
      next: sides.map((s) => index(model.after[s] as number)),
      mate: sides.map((s) =>
        (island.mate[s] as number) < 0 ? -1 : index(island.mate[s] as number),
      ),
      hubAxis: sides.map((s) => {
        const star = starAt(this.model, island, s);
        const angle = star?.reduce((sum, c) => sum + (island.angles[c] as number), 0) ?? TAU;
        return this.isAxis(angle) ? this.fold.order : 1;
      }),
      chi2: 0,
      equations: 0,
    };
    return { net, score: scoreOf(island), unlaid };
  }
}

const scoreOf = ({ score, laid }: Island): number =>
  score - UNLAID * laid.reduce((sum, own) => sum + 1 - own, 0);

/** Islands without those that are glued like a better one, the best first. */
function distinct(islands: readonly Island[]): Island[] {
  const seen = new Set<string>();
  return [...islands]
    .sort((a, b) => scoreOf(b) - scoreOf(a))
    .filter(({ mate }) => seen.size < seen.add(mate.join()).size);
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, i) => from + i);
