// One outline of a shell filled from the stock: which places get good panels, which mended ones,
// what is bought, which joined groups stay together and where, which of the doors asked for is taken,
// and where panels may be left out so that it does least harm.

import type { Shell } from '../../shell/shell.ts';
import type { Terms } from '../program/integer-program.ts';
import {
  minimiseInOrder,
  type ProgramSolver,
  type SolveOptions,
  type Tier,
} from '../program/solve.ts';
import { LOW_ENOUGH } from './exposure.ts';
import { type FillProgram, familiesAtPlay, fillProgram } from './fill-program.ts';
import type { FamilyGroup } from './group-runs.ts';
import { isRanked, type Objective, type Wishes } from './wishes.ts';

/** What a place of the shell gets. */
export type Source = 'good' | 'mended' | 'bought' | 'open' | 'door';

/** A sort of joined group and where it may stand. */
export interface GroupToPlace extends FamilyGroup {
  /** Sets of net places, each in the group's order; those not all in the outline are passed over. */
  readonly runs: readonly (readonly number[])[];
}

/** One door that could be made. */
export interface DoorToChoose {
  /** Net places that are left out for it. */
  readonly places: readonly number[];
  /** Net places that touch it: no gap may be there. */
  readonly around: readonly number[];
  /** What it costs in strength, in any unit: of doors that are as good otherwise the least is taken. */
  readonly harm: number;
}

/** What an outline needs to be filled. */
export interface FillQuestion {
  /** The whole net. */
  readonly shell: Shell;
  /** Places of the outline. */
  readonly places: ArrayLike<number>;
  /** Net place → its family. */
  readonly family: ArrayLike<number>;
  /** Family → good panels, those to be spared as well; Infinity where nobody counted. */
  readonly good: readonly number[];
  readonly repair: readonly number[];
  /** Net place → how high it stands, 0 at the ground … 1 at the crown. */
  readonly rise: ArrayLike<number>;
  /** Net place → how exposed it is, 0 … 1; the rise unless told. */
  readonly exposure?: ArrayLike<number>;
  /** Groups to be kept joined, which are among the good panels; none unless told. */
  readonly groups?: readonly GroupToPlace[];
  /** Doors of which one is asked for; absent: no door is. */
  readonly doors?: readonly DoorToChoose[];
  readonly wishes: Pick<Wishes, 'order' | 'mended' | 'mostGaps'> &
    Partial<Pick<Wishes, 'spares' | 'mostBought' | 'mostParted'>>;
}

/** A filled outline. */
export interface Filled {
  /** One for each of the question's places. */
  readonly sources: readonly Source[];
  readonly bought: number;
  readonly mended: number;
  readonly gaps: number;
  /** Spares that are wished for and not kept, over all kinds. */
  readonly sparesLacking: number;
  /** Groups that stay joined, as indices of the question's groups, with the net places they take. */
  readonly joined: readonly { readonly group: number; readonly places: readonly number[] }[];
  /** Groups that are taken apart; those that are set aside whole are not. */
  readonly parted: number;
  /** Index of the door that is taken; null for none. */
  readonly door: number | null;
  /** Σ (exposure − 0.35) over mended panels: less is better. */
  readonly mendedExposed: number;
  /** Whether nothing better can be: by the wishes' order, then least harm by gaps. */
  readonly proved: boolean;
}

/** The outline filled as the wishes have it; `none` where it can't be: spares, a door, the most bought
 * or the most parted forbid it; null where the time was up first. Which of several places of one
 * family gets a mended panel is free unless the order names it: the least exposed do. */
export function fillOutline(
  question: FillQuestion,
  solver: ProgramSolver,
  options: SolveOptions & { readonly now: () => number },
): Filled | 'none' | null {
  if (question.doors?.length === 0) {
    const { doors: _, ...rest } = question;
    return isRanked(question.wishes, 'door') ? fillOutline(rest, solver, options) : 'none';
  }
  const atPlay = familiesAtPlay(question);
  const groups = question.groups ?? [];
  if (atPlay.length === 0 && groups.length === 0 && question.doors === undefined)
    return filledBy(question, null, null, true);
  const program = fillProgram(question, atPlay);
  const answer = minimiseInOrder(program.draft, tiersOf(question, program), solver, options);
  if (answer.status === 'infeasible') return 'none';
  const { values } = answer;
  return values === null ? null : filledBy(question, program, values, answer.status === 'optimal');
}

/** Harm of a gap at the crown against one at the ground: our own judgement. */
const HIGH_HARM = 4;
const harmOf = (rise: number): number => 1 + (HIGH_HARM - 1) * rise ** 2;

/** Those objectives that a filling can serve, in the order asked for, then the rest. */
function tiersOf({ wishes, rise, doors }: FillQuestion, program: FillProgram): Tier[] {
  const by: Readonly<Partial<Record<Objective, Terms>>> = program.objectives;
  const names = new Set<Objective>([
    ...wishes.order,
    'fewest bought',
    'fewest mended',
    'fewest gaps',
  ]);
  const tiers = [...names].flatMap((name) => {
    const objective = by[name];
    return objective && objective.length > 0 ? [{ name, objective }] : [];
  });
  const harm: Terms = [
    ...[...program.open].map(([p, v]) => [v, harmOf(rise[p] as number)] as const),
    ...program.doors.map((v, d) => [v, doors?.[d]?.harm ?? 0] as const),
  ];
  return harm.length > 0 || tiers.length === 0
    ? [...tiers, { name: 'least harm', objective: harm }]
    : tiers;
}

/** What each place gets: mended panels go where they are least exposed, bought ones low. */
function filledBy(
  question: FillQuestion,
  program: FillProgram | null,
  values: Float64Array | null,
  proved: boolean,
): Filled {
  const { places, family, rise, good, wishes } = question;
  const exposure = question.exposure ?? rise;
  const isOn = (v: number | undefined): boolean => v !== undefined && values?.[v] === 1;
  const count = (v: number | undefined): number =>
    v === undefined ? 0 : Math.round(values?.[v] ?? 0);
  const door = program?.doors.findIndex(isOn) ?? -1;
  const inDoor = new Set(door < 0 ? [] : question.doors?.[door]?.places);
  const joined = (program?.runs ?? []).flatMap(({ group, places: own, variable }) =>
    isOn(variable) ? [{ group, places: own }] : [],
  );
  const isJoined = new Set(joined.flatMap((one) => one.places));
  const list = Array.from(places);
  const sources = list.map((p): Source => {
    if (inDoor.has(p)) return 'door';
    if (isOn(program?.open.get(p))) return 'open';
    return isOn(program?.mendedAt.get(p)) ? 'mended' : 'good';
  });
  const byFamily = new Map<number, number[]>();
  list.forEach((p, i) => {
    if (sources[i] === 'door' || sources[i] === 'open') return;
    byFamily.set(family[p] as number, [...(byFamily.get(family[p] as number) ?? []), i]);
  });
  for (const [f, own] of byFamily) {
    const free = own
      .filter((i) => sources[i] === 'good' && !isJoined.has(list[i] as number))
      .sort((a, b) => at(exposure, list[a]) - at(exposure, list[b]) || a - b);
    const mended = count(program?.mended.get(f));
    const bought = count(program?.bought.get(f));
    free.slice(0, mended).forEach((i) => {
      sources[i] = 'mended';
    });
    free
      .slice(mended)
      .sort((a, b) => at(rise, list[a]) - at(rise, list[b]) || a - b)
      .slice(0, bought)
      .forEach((i) => {
        sources[i] = 'bought';
      });
  }
  const total = (source: Source): number => sources.filter((one) => one === source).length;
  const spares = wishes.spares ?? 0;
  let sparesLacking = 0;
  for (const [f, own] of byFamily) {
    const used = own.filter((i) => sources[i] === 'good').length;
    sparesLacking += Math.max(0, spares - Math.max(0, (good[f] as number) - used));
  }
  return {
    sources,
    bought: total('bought'),
    mended: total('mended'),
    gaps: total('open'),
    sparesLacking,
    joined,
    parted: (program?.parted ?? []).reduce((sum, v) => sum + count(v), 0),
    door: door < 0 ? null : door,
    mendedExposed: list.reduce(
      (sum, p, i) => (sources[i] === 'mended' ? sum + at(exposure, p) - LOW_ENOUGH : sum),
      0,
    ),
    proved,
  };
}

const at = (values: ArrayLike<number>, p: number | undefined): number =>
  values[p as number] as number;
