// How fast this crew works, out of the record: what one writer's phone noted in a row, from one entry
// to the next by that phone's own clock, so that no two clocks are compared. The first entry of a row
// only starts the time. What was undone does not count.

import { compareEntries, type Entry } from './entry.ts';
import type { RecordLog } from './log.ts';
import { type RecordPlan, whereIs } from './names.ts';
import { WORK_GAP } from './tolerances.ts';
import { RECORD_PASSES, type What } from './what.ts';

/** One piece of work as it went, in the shape that the crew's rates take (`updatedRates`). */
export interface RecordedWork {
  readonly work: 'panel' | 'bolt' | 'tighten' | 'plate' | 'prop';
  /** How many panels, bolts …. */
  readonly count: number;
  readonly people: number;
  readonly seconds: number;
  readonly panelsBefore: number;
  /** Over the base ring's lowest hub, metres. */
  readonly height: number;
}

/** What was measured, and what could not be. */
export interface MeasuredWork {
  readonly observed: readonly RecordedWork[];
  /** Pieces left out: nobody said how many hands; how many bolts; or nothing was noted just before. */
  readonly withoutHands: number;
  readonly withoutBolts: number;
  readonly withoutStart: number;
}

interface Piece {
  readonly work: RecordedWork['work'];
  readonly count: number | null;
  readonly hands: number | undefined;
  readonly at: readonly [number, number, number];
}

/** Pieces of work with a known length: the entry before is the same writer's, of any kind that is
 * work, and less than WORK_GAP before. `bolts`: seam → its bolts, null where nobody knows. */
export function measuredWork(
  log: RecordLog,
  plan: RecordPlan,
  bolts: (seam: number) => number | null,
): MeasuredWork {
  const kinds = ['panel placed', 'seam pass', 'hub plate', 'prop'] as const;
  const entries = kinds.flatMap((kind): Entry[] => log.living(kind)).sort(compareEntries);
  const base = lowest(plan);
  const last = new Map<string, number>();
  const missing = { withoutHands: 0, withoutBolts: 0, withoutStart: 0 };
  const observed: RecordedWork[] = [];
  let panelsBefore = 0;
  for (const entry of entries) {
    const piece = pieceOf(plan, entry.what, bolts);
    const before = last.get(entry.writer);
    last.set(entry.writer, entry.at);
    const panels = panelsBefore;
    if (entry.what.kind === 'panel placed') panelsBefore++;
    if (!piece) continue;
    const seconds = before === undefined ? Number.NaN : (entry.at - before) / 1000;
    if (!(seconds > 0 && seconds <= WORK_GAP)) missing.withoutStart++;
    else if (piece.count === null) missing.withoutBolts++;
    else if (piece.hands === undefined) missing.withoutHands++;
    else
      observed.push({
        work: piece.work,
        count: piece.count,
        people: piece.hands,
        seconds,
        panelsBefore: panels,
        height: piece.at[2] - base,
      });
  }
  return { observed, ...missing };
}

function pieceOf(
  plan: RecordPlan,
  what: What,
  bolts: (seam: number) => number | null,
): Piece | null {
  const at = (sort: 'place' | 'seam' | 'hub', index: number | undefined) =>
    index === undefined ? null : whereIs(plan, sort, index);
  if (what.kind === 'panel placed') {
    const where = at('place', plan.placeIndex.get(what.place));
    return where && { work: 'panel', count: 1, hands: what.hands, at: where };
  }
  if (what.kind === 'seam pass') {
    const seam = plan.seamIndex.get(what.seam);
    const where = at('seam', seam);
    if (seam === undefined || !where || what.pass === 'none') return null;
    const work = RECORD_PASSES.indexOf(what.pass) === 1 ? 'bolt' : 'tighten';
    return { work, count: bolts(seam), hands: what.hands, at: where };
  }
  if ((what.kind === 'hub plate' && what.on) || (what.kind === 'prop' && what.set)) {
    const where = at('hub', plan.hubIndex.get(what.hub));
    const work = what.kind === 'prop' ? 'prop' : 'plate';
    return where && { work, count: 1, hands: what.hands, at: where };
  }
  return null;
}

const lowest = ({ shell }: RecordPlan): number => {
  let z = Number.POSITIVE_INFINITY;
  for (let i = 2; i < shell.hubs.length; i += 3) z = Math.min(z, shell.hubs[i]!);
  return z;
};
