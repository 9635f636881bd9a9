// One outline of a shell filled from the stock: which places get good panels, which mended ones,
// what is bought, and where panels may be left out so that it does least harm.

import type { Shell } from '../../shell/shell.ts';
import { ProgramDraft, type Terms } from '../program/integer-program.ts';
import {
  minimiseInOrder,
  type ProgramSolver,
  type SolveOptions,
  type Tier,
} from '../program/solve.ts';
import { addGapLaws } from './gap-laws.ts';
import type { Objective, Wishes } from './wishes.ts';

/** What a place of the shell gets. */
export type Source = 'good' | 'mended' | 'bought' | 'open';

/** What an outline needs to be filled. */
export interface FillQuestion {
  /** The whole net. */
  readonly shell: Shell;
  /** Places of the outline, openings left out. */
  readonly places: ArrayLike<number>;
  /** Net place → its family. */
  readonly family: ArrayLike<number>;
  /** Family → panels that may be used, spares taken off; Infinity where nobody counted. */
  readonly good: readonly number[];
  readonly repair: readonly number[];
  /** Net place → how high it stands, 0 at the ground … 1 at the crown. */
  readonly rise: ArrayLike<number>;
  readonly wishes: Pick<Wishes, 'order' | 'mended' | 'mostGaps'>;
}

/** A filled outline. */
export interface Filled {
  /** One for each of the question's places. */
  readonly sources: readonly Source[];
  readonly bought: number;
  readonly mended: number;
  readonly gaps: number;
  /** Whether nothing better can be: by the wishes' order, then least harm by gaps. */
  readonly proved: boolean;
}

/** Gaps are never so near the crown. */
const CROWN = 0.8;
/** Harm of a gap at the crown against one at the ground: our own judgement. */
const HIGH_HARM = 4;

/** The outline filled as the wishes have it; null where the time was up first. Which of several places
 * of one family gets a mended panel is free: the lowest do. */
export function fillOutline(
  question: FillQuestion,
  solver: ProgramSolver,
  options: SolveOptions & { readonly now: () => number },
): Filled | null {
  const lacking = lackingFamilies(question);
  if (lacking.length === 0) return filled(question, new Map(), new Set(), true);
  const { draft, open, bought, mended } = programOf(question, lacking);
  const tiers: Tier[] = orderOf(question.wishes.order, {
    'fewest bought': terms(bought.values()),
    'fewest mended': terms(mended.values()),
    'fewest gaps': terms(open.values()),
  });
  const harm: Terms = [...open].map(([p, v]) => [v, harmOf(question.rise[p] as number)] as const);
  tiers.push({ name: 'least harm', objective: harm });
  const answer = minimiseInOrder(draft, tiers, solver, options);
  const { values } = answer;
  if (values === null) return null;
  const left = new Set([...open].flatMap(([p, v]) => (values[v] === 1 ? [p] : [])));
  const mends = new Map([...mended].map(([f, v]) => [f, values[v] as number]));
  return filled(question, mends, left, answer.status === 'optimal');
}

const harmOf = (rise: number): number => 1 + (HIGH_HARM - 1) * rise ** 2;

const terms = (variables: Iterable<number>): Terms => [...variables].map((v) => [v, 1] as const);

/** Those objectives that a filling can serve, in the order asked for, then the rest. */
function orderOf(
  order: readonly Objective[],
  by: Readonly<Partial<Record<Objective, Terms>>>,
): Tier[] {
  const names = [
    ...new Set<Objective>([...order, 'fewest bought', 'fewest mended', 'fewest gaps']),
  ];
  return names.flatMap((name) => {
    const objective = by[name];
    return objective ? [{ name, objective }] : [];
  });
}

interface Lacking {
  readonly family: number;
  readonly places: readonly number[];
  readonly lacks: number;
}

/** Families with more places than good panels. */
function lackingFamilies({ places, family, good }: FillQuestion): Lacking[] {
  const own = new Map<number, number[]>();
  for (const p of Array.from(places)) {
    const f = family[p] as number;
    own.set(f, [...(own.get(f) ?? []), p]);
  }
  return [...own].flatMap(([f, list]) => {
    const lacks = list.length - (good[f] as number);
    return lacks > 0 ? [{ family: f, places: list, lacks }] : [];
  });
}

function programOf(
  { shell, places, rise, repair, wishes }: FillQuestion,
  lacking: readonly Lacking[],
): {
  readonly draft: ProgramDraft;
  readonly open: ReadonlyMap<number, number>;
  readonly bought: ReadonlyMap<number, number>;
  readonly mended: ReadonlyMap<number, number>;
} {
  const draft = new ProgramDraft();
  const open = new Map<number, number>();
  const bought = new Map<number, number>();
  const mended = new Map<number, number>();
  for (const { family, places: own, lacks } of lacking) {
    if (wishes.mostGaps > 0)
      for (const p of own) if ((rise[p] as number) < CROWN) open.set(p, draft.yesNo());
    bought.set(family, draft.count(lacks));
    if (wishes.mended && (repair[family] as number) > 0)
      mended.set(family, draft.count(Math.min(lacks, repair[family] as number)));
    const all = [
      ...own.flatMap((p) => open.get(p) ?? []),
      bought.get(family) as number,
      ...(mended.has(family) ? [mended.get(family) as number] : []),
    ];
    draft.equal(`kind ${family}`, terms(all), lacks);
  }
  if (open.size > 0) {
    draft.atMost('most gaps', terms(open.values()), wishes.mostGaps);
    const inside = new Uint8Array(shell.placeStart.length - 1);
    for (const p of Array.from(places)) inside[p] = 1;
    addGapLaws(draft, shell, { inside, open });
  }
  return { draft, open, bought, mended };
}

/** What each place gets: mended and bought panels go low. */
function filled(
  { places, family, good, rise }: FillQuestion,
  mends: ReadonlyMap<number, number>,
  open: ReadonlySet<number>,
  proved: boolean,
): Filled {
  const list = Array.from(places);
  const sources: Source[] = list.map((p) => (open.has(p) ? 'open' : 'good'));
  const byFamily = new Map<number, number[]>();
  list.forEach((p, i) => {
    if (sources[i] === 'open') return;
    const f = family[p] as number;
    byFamily.set(f, [...(byFamily.get(f) ?? []), i]);
  });
  for (const [f, own] of byFamily) {
    const spare = Math.max(0, own.length - (good[f] as number));
    const mended = Math.min(spare, mends.get(f) ?? 0);
    const low = [...own].sort(
      (a, b) => (rise[list[a] as number] as number) - (rise[list[b] as number] as number) || a - b,
    );
    low.slice(0, spare).forEach((i, k) => {
      sources[i] = k < mended ? 'mended' : 'bought';
    });
  }
  const count = (source: Source): number => sources.filter((one) => one === source).length;
  return {
    sources,
    bought: count('bought'),
    mended: count('mended'),
    gaps: count('open'),
    proved,
  };
}
