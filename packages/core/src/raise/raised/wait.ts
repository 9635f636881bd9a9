// What may wait for the next trip, and the state to leave the shell in meanwhile: see `whatMayWait`. The
// gust is that of the weeks between, by the code that the lead chose.

import type { Provenance } from '../../loads/provenance.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { partOf } from '../../shell/part.ts';
import { locatedNeeds } from '../../takeoff/needs.ts';
import { gustBetween } from '../wait/gust-between.ts';
import { type WaitAnswer, type WaitOptions, whatMayWait } from '../wait/what-may-wait.ts';
import type { RaisedShell } from './raised.ts';

/** What is asked. */
export interface WaitAsked {
  /** The stage after which everybody goes home; the last where left out. */
  readonly stage?: number;
  /** Days until they are back; 14 where left out. */
  readonly days?: number;
  /** The gust to reckon with, m/s; null or left out: the design's for so many days. */
  readonly gust?: number | null;
}

/** The answer, and what it was reckoned for. */
export interface LeftAnswer extends WaitAnswer {
  readonly stage: number;
  readonly days: number;
  /** m/s, at the crown. */
  readonly gust: number;
}

/** Days to the next trip where nobody says. */
export const DAYS_BETWEEN = 14;

/** What may wait after a stage. Faults: no such stage, days or gust out of range, neither a gust nor a
 * design wind. */
export function waitAnswer(
  raised: RaisedShell,
  asked: WaitAsked = {},
  options: WaitOptions = {},
): Read<LeftAnswer> {
  const { plan, takeoff, model, loads, shell } = raised;
  const { days = DAYS_BETWEEN, stage = plan.stages.length } = asked;
  if (!(days > 0 && days <= 36_500)) return refuse('days', `${days}`, 'over 0 to 36 500 days');
  const between = asked.gust == null ? gustBetween(loads, shell, days) : null;
  const gust = asked.gust ?? between?.gust ?? null;
  if (gust === null)
    return refuse(
      'loads.wind',
      'no design wind, and no gust of the days between',
      'the worst gust until you are back, m/s',
    );
  const found = whatMayWait(
    { model, plan, stage, gust, plates: platesOf(raised), tapeInSeams: takeoff.tape !== null },
    options,
  );
  if (!found.ok) return found;
  const flags: readonly Provenance[] = [...found.value.flags, ...(between?.flags ?? [])];
  return { ok: true, value: { ...found.value, flags, stage, days, gust } };
}

/** Hubs of the built shell that take a plate, ascending. */
function platesOf({ shell, plan, kinds, takeoff, holes }: RaisedShell): number[] {
  const part = partOf(shell, plan.stages.at(-1)?.placed ?? []);
  return locatedNeeds(part.shell, kinds, takeoff, holes)
    .needs.flatMap(({ item, at }) => (item === 'plate' && 'hub' in at ? [part.hubs[at.hub]] : []))
    .sort((a, b) => a - b);
}
