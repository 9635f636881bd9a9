// One hard pile from its seed to the judge's word, with the processor time that it takes.

import { performance } from 'node:perf_hooks';
import { identify } from '../../src/identify/identify.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import type { Identification } from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { cpuMs } from '../clock.ts';
import type { HardCase, HardPile, HardVerdict, Run } from './heap.ts';

/** What one pile gave. */
export interface Told {
  readonly seed: number;
  readonly label: string;
  readonly radius: number | null;
  readonly verdict: HardVerdict;
  /** Null where it threw. */
  readonly answer: Identification | null;
  readonly ms: number;
  /** Most places that its base may have. */
  readonly most: number;
}

/** Most places of a base: one pile in eight up to 720, the others up to 320. */
const mostPlaces = (seed: number): number => (seed % 8 === 0 ? 720 : 320);

/** The pile of a case and seed. */
export function heapOf(one: HardCase, seed: number, most = mostPlaces(seed)): HardPile {
  const salt = [...one.name].reduce((sum, letter) => 31 * sum + letter.charCodeAt(0), 7) % 100_000;
  return one.make(seededRandom(1000 * salt + seed), most);
}

/** Nobody waits longer, milliseconds; what there is by then is the answer. */
const LONGEST = 30_000;

/** Runs one. What throws is wrong. */
export function runPile(one: HardCase, seed: number, most = mostPlaces(seed)): Told {
  const { label, pile, radius, judge } = heapOf(one, seed, most);
  const [start, began] = [cpuMs(), performance.now()];
  const late = (): boolean => performance.now() - began > LONGEST;
  const told = (verdict: HardVerdict, answer: Identification | null): Told => {
    const ms = cpuMs() - start;
    return { seed, label, radius, verdict, answer, ms, most };
  };
  try {
    const run = answerOf({ pile }, late);
    const timed = told({ outcome: 'no', lacks: [], bestRight: null }, run.answer);
    return { ...timed, verdict: judge(run) };
  } catch (error) {
    return told({ outcome: 'wrong', lacks: [`it threw ${error}`], bestRight: null }, null);
  }
}

/** The whole way from a pile to its answer. */
export function answerOf({ pile }: Pick<HardPile, 'pile'>, shouldStop = () => false): Run {
  const worked = kindsOfPile(pile);
  const question = shapeQuestion(pile, worked);
  return { pile, worked, question, answer: identify(question, { shouldStop }) };
}

/** How long a run goes on after it is told to stop, `after` milliseconds of processor from its start; null where it
 * was done by then. */
export function stopsAfter(one: HardCase, seed: number, after: number): number | null {
  const { pile } = heapOf(one, seed);
  const worked = kindsOfPile(pile);
  const question = shapeQuestion(pile, worked);
  const start = cpuMs();
  identify(question, { shouldStop: () => cpuMs() - start > after });
  const late = cpuMs() - start - after;
  return late > 0 ? late : null;
}
