// The end-of-day page as data: what was done since a time, what is left, what was forgotten, what is
// in question, who is here. The odds, tonight's wind limit and who comes tomorrow are reckoned further
// down (crew, stages) and are handed in; null is unknown and said so on the page.

import { clockOffsets, timeOf } from './clocks.ts';
import type { Entry } from './entry.ts';
import { type Forgotten, forgotten } from './forgotten.ts';
import type { RecordLog } from './log.ts';
import type { RecordPlan } from './names.ts';
import { type RecordQuestion, type RecordState, recordState } from './state.ts';
import { RECORD_PASSES } from './what.ts';

/** From when until when, milliseconds since 1970; the end is not in it. */
export interface DaySpan {
  readonly from: number;
  readonly to: number;
}

/** What the page takes from elsewhere. An estimate and no design approval: local codes and a licensed
 * engineer or rigger decide. */
export interface DayOutlook {
  /** Odds of finishing in time, 0 to 1. */
  readonly odds: number | null;
  /** Gust of which what stands tonight, closed down, is expected to bear the load, m/s. */
  readonly tonightGust: number | null;
  readonly tomorrow: readonly string[] | null;
}

/** Counts of work: panels, seams brought to each pass, seams sealed, plates. */
export interface DayCounts {
  readonly panels: number;
  readonly finger: number;
  readonly snug: number;
  readonly final: number;
  readonly sealed: number;
  readonly plates: number;
}

/** The page. */
export interface DayPage {
  readonly span: DaySpan;
  /** Living entries of the day that say that work was done. */
  readonly done: DayCounts;
  /** What the shell still lacks, whoever did the rest; `finger` counts seams at less than finger. */
  readonly left: DayCounts;
  readonly stagesDone: readonly number[];
  readonly closedDown: readonly number[];
  readonly stops: RecordState['stops'];
  readonly stillHere: readonly string[];
  readonly weather: readonly Entry[];
  readonly notes: readonly Entry[];
  readonly forgotten: readonly Forgotten[];
  readonly questions: readonly RecordQuestion[];
  /** Writers whose clocks were off, and by how much at the least, milliseconds: their times are
   * shifted by as much. */
  readonly clocks: ReadonlyMap<string, number>;
  readonly outlook: DayOutlook;
}

/** The page of a day. `bolts`: seam → its bolts, null where nobody knows. `leftOut`: places of
 * openings, which are not left to do. */
export function dayPage(
  log: RecordLog,
  plan: RecordPlan,
  span: DaySpan,
  bolts: (seam: number) => number | null,
  outlook: DayOutlook,
  leftOut: readonly number[] = [],
): DayPage {
  const state = recordState(log, plan);
  const clocks = clockOffsets(log.entries());
  const isOf = (entry: Entry): boolean => {
    const at = timeOf(entry, clocks);
    return at >= span.from && at < span.to;
  };
  return {
    span,
    done: doneIn(log, isOf),
    left: leftOf(plan, state, new Set(leftOut)),
    stagesDone: stageNumbers(log.living('stage done').filter(isOf), state.done),
    closedDown: stageNumbers(log.living('closed down').filter(isOf), state.closed),
    stops: state.stops,
    stillHere: state.people,
    weather: log.living('weather').filter(isOf),
    notes: log.living('note').filter(isOf),
    forgotten: forgotten(log, plan, state, bolts),
    questions: state.questions,
    clocks,
    outlook,
  };
}

/** Stages that entries speak of and that hold now. */
function stageNumbers(entries: readonly Entry[], now: readonly number[]): number[] {
  const said = new Set(entries.map(({ what }) => ('stage' in what ? what.stage : 0)));
  return now.filter((stage) => said.has(stage));
}

/** Each thing once, however often it was said. */
function doneIn(log: RecordLog, isOf: (entry: Entry) => boolean): DayCounts {
  const seams = log.living('seam pass').filter(isOf);
  const passed = (pass: string): number =>
    distinct(seams.filter(({ what }) => what.pass === pass).map(({ what }) => what.seam));
  return {
    panels: distinct(
      log
        .living('panel placed')
        .filter(isOf)
        .map(({ what }) => what.place),
    ),
    finger: passed('finger'),
    snug: passed('snug'),
    final: passed('final'),
    sealed: distinct(
      log
        .living('seam sealed')
        .filter((one) => isOf(one) && one.what.sealed)
        .map(({ what }) => what.seam),
    ),
    plates: distinct(
      log
        .living('hub plate')
        .filter((one) => isOf(one) && one.what.on)
        .map(({ what }) => what.hub),
    ),
  };
}

const distinct = (names: readonly string[]): number => new Set(names).size;

function leftOf(plan: RecordPlan, state: RecordState, out: ReadonlySet<number>): DayCounts {
  const seams = plan.seamPlaces.flatMap(([p, q], m) => (out.has(p) || out.has(q) ? [] : [m]));
  const below = (pass: 'finger' | 'snug' | 'final'): number =>
    seams.filter((m) => RECORD_PASSES.indexOf(state.passes[m]!) < RECORD_PASSES.indexOf(pass))
      .length;
  return {
    panels: state.placed.filter((panel, p) => panel === null && !out.has(p)).length,
    finger: below('finger'),
    snug: below('snug'),
    final: below('final'),
    sealed: seams.filter((m) => !state.sealed[m]).length,
    plates: plan.hubPlaces.filter(
      (around, hub) => !state.plates[hub] && around.some((place) => !out.has(place)),
    ).length,
  };
}
