// The rates of a crew with what its record shows, from entries to rates: learning first, from how the time
// for a panel falls with the panels that stood before it, then each rate with learning and height taken
// out (`updatedRates`). Without observations nothing changes.

import type { RecordLog } from '../record/log.ts';
import type { RecordPlan } from '../record/names.ts';
import { type MeasuredWork, measuredWork } from '../record/work.ts';
import { learningExponent } from './learning.ts';
import {
  type CrewRates,
  REACH,
  updatedRates,
  WORKS,
  type Work,
  type WorkObserved,
} from './rates.ts';
import { type CrewSettings, ratesOf } from './schema.ts';

/** How sure a learning exponent is where nobody measured: 0.9 as 0.84 to 0.96, two times in three. */
const EXPONENT_SD = 0.1;
/** Panels with a known length from which on learning is fitted. */
const FEWEST = 8;

/** The learning rate with what the record shows of panels: the slope of the logarithm of the time for one,
 * at height taken out, over that of the panels standing, by the conjugate rule with the rate so far (sure
 * to `EXPONENT_SD`). The rate so far below eight panels, or where all stood at one number. Never over 1. */
export function learntRate(rates: CrewRates, observed: readonly WorkObserved[]): number {
  const panels = observed.filter(({ work }) => work === 'panel');
  if (panels.length < FEWEST) return rates.learning;
  const flat = { ...rates, learning: 1 };
  const xs = panels.map(({ panelsBefore, count }) => Math.log(panelsBefore + (count + 1) / 2));
  const ys = panels.map((one) => Math.log(perUnit(flat, one)));
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const [mx, my] = [mean(xs), mean(ys)];
  const spread = xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  if (spread < 1e-9) return rates.learning;
  const slope = xs.reduce((sum, x, i) => sum + (x - mx) * ((ys[i] as number) - my), 0) / spread;
  const [prior, data] = [1 / EXPONENT_SD ** 2, spread / rates.work.panel.scatter ** 2];
  const exponent = (prior * learningExponent(rates.learning) + data * slope) / (prior + data);
  return Math.max(0.5, Math.min(1, 2 ** exponent));
}

const perUnit = (
  { perMetre }: CrewRates,
  { people, seconds, count, height }: WorkObserved,
): number => (people * seconds) / count / (1 + perMetre * Math.max(0, height - REACH));

/** The rates that a crew works with: its own or the common ones, with what was observed of it. RangeError
 * for an observation of nobody, nothing or no time. */
export function crewRates(crew: CrewSettings, observed: readonly WorkObserved[] = []): CrewRates {
  const own = ratesOf(crew);
  if (observed.length === 0) return own;
  return updatedRates({ ...own, learning: learntRate(own, observed) }, observed);
}

/** What a record shows of a crew. */
export interface RecordedRates {
  readonly rates: CrewRates;
  readonly measured: MeasuredWork;
  /** Of each sort of work seen: how many in an hour one person does, low down and settled, and the jobs
   * that rests on. */
  readonly hourly: readonly {
    readonly work: Work;
    readonly perHour: number;
    readonly jobs: number;
  }[];
  /** In words, a sentence each. */
  readonly words: readonly string[];
}

/** From a record to rates. `bolts`: seam → its bolts, null where nobody knows. */
export function recordedRates(
  crew: CrewSettings,
  log: RecordLog,
  plan: RecordPlan,
  bolts: (seam: number) => number | null,
): RecordedRates {
  const measured = measuredWork(log, plan, bolts);
  const rates = crewRates(crew, measured.observed);
  const hourly = WORKS.flatMap((work) => {
    const { median, observed } = rates.work[work];
    return observed === 0 ? [] : [{ work, perHour: 3600 / median, jobs: observed }];
  });
  const { withoutHands, withoutBolts, withoutStart } = measured;
  const left = [
    [withoutHands, 'without the number of hands'],
    [withoutBolts, 'of seams whose bolts nobody knows'],
    [withoutStart, 'with nothing noted just before'],
  ] as const;
  const words = [
    hourly.length === 0
      ? 'The record has no piece of work of known length yet: the rates are those of before.'
      : `Rates from the record, an hour and person: ${hourly
          .map(({ work, perHour, jobs }) => `${work} ${perHour.toFixed(1)} (${jobs} noted)`)
          .join(', ')}; learning ${Math.round(100 * rates.learning)} %.`,
    ...left.flatMap(([count, why]) => (count > 0 ? [`${count} left out ${why}.`] : [])),
  ];
  return { rates, measured, hourly, words };
}
