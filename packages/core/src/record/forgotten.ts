// What was forgotten: what a crew walks past. Seams still finger-tight below the working course,
// plates missing over finished stars, samples due. Where the record holds a question, the state that
// supposes least counts, so a doubtful seam is among the forgotten.

import type { RecordLog } from './log.ts';
import { type RecordPlan, whereIs } from './names.ts';
import type { RecordState } from './state.ts';
import { SAMPLED_PART } from './tolerances.ts';
import { RECORD_PASSES } from './what.ts';

/** One thing forgotten. `course`: the upper one of the places that it touches. */
export interface Forgotten {
  readonly what: 'loose seam' | 'missing plate' | 'samples due' | 'failed samples';
  /** Name of the seam or the hub, and its index in the shell. */
  readonly name: string;
  readonly index: number;
  readonly course: number;
  /** Bolts yet to be sampled; null for the others and where nobody knows the holes (at least one). */
  readonly bolts: number | null;
}

/** The course at work: the highest with a panel in place; 0 before the first. */
export const workingCourse = (plan: RecordPlan, state: RecordState): number =>
  state.placed.reduce((top, panel, p) => (panel ? Math.max(top, plan.course[p]!) : top), 0);

/** Everything forgotten, by course from the ground up, then by name of the thing. `bolts`: seam → its
 * bolts, null where nobody knows. Samples: a tenth of the bolts of a final seam, rounded up; all of
 * them once one fails (common practice, no source). */
export function forgotten(
  log: RecordLog,
  plan: RecordPlan,
  state: RecordState,
  bolts: (seam: number) => number | null,
): Forgotten[] {
  const working = workingCourse(plan, state);
  return [
    ...looseSeams(plan, state, working),
    ...missingPlates(plan, state, working),
    ...samplesDue(log, plan, state, bolts),
  ].sort((a, b) => a.course - b.course || order(a) - order(b) || a.index - b.index);
}

/** The same, nearest to a place first; of equals in the order given. */
export function nearestFirst(
  plan: RecordPlan,
  list: readonly Forgotten[],
  place: number,
): Forgotten[] {
  const [x, y, z] = whereIs(plan, 'place', place);
  const far = ({ what, index }: Forgotten): number => {
    const at = whereIs(plan, what === 'missing plate' ? 'hub' : 'seam', index);
    return Math.hypot(at[0] - x, at[1] - y, at[2] - z);
  };
  return list
    .map((one, i) => ({ one, i, far: far(one) }))
    .sort((a, b) => a.far - b.far || a.i - b.i)
    .map(({ one }) => one);
}

const SORTS = ['loose seam', 'failed samples', 'samples due', 'missing plate'] as const;
const order = ({ what }: Forgotten): number => SORTS.indexOf(what);

const upperCourse = (plan: RecordPlan, places: readonly number[]): number =>
  Math.max(...places.map((p) => plan.course[p]!));

function looseSeams(plan: RecordPlan, state: RecordState, working: number): Forgotten[] {
  return plan.seams.flatMap((name, index): Forgotten[] => {
    const places = plan.seamPlaces[index]!;
    const course = upperCourse(plan, places);
    const standing = places.every((p) => state.placed[p]);
    const snug = RECORD_PASSES.indexOf(state.passes[index]!) >= RECORD_PASSES.indexOf('snug');
    return standing && !snug && course < working
      ? [{ what: 'loose seam', name, index, course, bolts: null }]
      : [];
  });
}

function missingPlates(plan: RecordPlan, state: RecordState, working: number): Forgotten[] {
  return plan.hubs.flatMap((name, index): Forgotten[] => {
    const places = plan.hubPlaces[index]!;
    if (places.length === 0 || state.plates[index]) return [];
    const course = upperCourse(plan, places);
    return places.every((p) => state.placed[p]) && course < working
      ? [{ what: 'missing plate', name, index, course, bolts: null }]
      : [];
  });
}

function samplesDue(
  log: RecordLog,
  plan: RecordPlan,
  state: RecordState,
  bolts: (seam: number) => number | null,
): Forgotten[] {
  const taken = samplesTaken(log);
  return plan.seams.flatMap((name, index): Forgotten[] => {
    const sum = taken.get(name) ?? { bolts: 0, failed: 0 };
    if (state.passes[index] !== 'final' && sum.failed === 0) return [];
    const all = bolts(index);
    const wanted = samplesWanted(all, sum.failed);
    if (sum.bolts >= wanted) return [];
    return [
      {
        what: sum.failed > 0 ? 'failed samples' : 'samples due',
        name,
        index,
        course: upperCourse(plan, plan.seamPlaces[index]!),
        bolts: all === null ? null : wanted - sum.bolts,
      },
    ];
  });
}

/** Bolts of a seam that were sampled so far, and how many of them failed. */
export interface SamplesTaken {
  readonly bolts: number;
  readonly failed: number;
}

/** Seam by its name → its samples, summed over all that were noted and not undone. */
export function samplesTaken(log: RecordLog): ReadonlyMap<string, SamplesTaken> {
  const taken = new Map<string, SamplesTaken>();
  for (const { what } of log.living('seam sampled')) {
    const sum = taken.get(what.seam) ?? { bolts: 0, failed: 0 };
    taken.set(what.seam, { bolts: sum.bolts + what.bolts, failed: sum.failed + what.failed });
  }
  return taken;
}

/** Bolts of a seam to be sampled in all: a tenth rounded up, all once one failed; one where nobody
 * knows how many there are, without end once one failed. */
export function samplesWanted(bolts: number | null, failed: number): number {
  if (bolts === null) return failed > 0 ? Number.POSITIVE_INFINITY : 1;
  return failed > 0 ? bolts : Math.ceil(bolts * SAMPLED_PART);
}
