// The odds of a plan: done by which evening, at which stop point each night, which tasks matter.

import { type CrewPlan, LOOK } from './plan.ts';
import { type Simulation, simulate } from './simulate.ts';

/** How to reckon odds. */
export interface OddsOptions {
  readonly seed: number;
  /** 10,000 where left out. */
  readonly runs?: number;
  /** Standard deviation of the logarithm of the crew's pace: `paceSd` of durations. */
  readonly paceSd: number;
  /** When the plan sets out, seconds of the plan; 0 where left out. */
  readonly from?: number;
}

/** Odds of an evening. */
export interface EveningOdds {
  readonly date: string;
  /** Of being done by dark. */
  readonly done: number;
  /** Of the last stop point reached being this one: by the task's id; null: none yet. */
  readonly at: readonly { readonly stopPoint: string | null; readonly odds: number }[];
  /** Of being caught by dark between two stop points. */
  readonly caught: number;
}

/** How much a task matters for the finish. */
export interface TaskWeight {
  readonly id: string;
  /** Part of the finished runs in which it was on the chain that made the finish. */
  readonly critical: number;
  /** Correlation of its duration with the finish. */
  readonly correlation: number;
}

/** The odds of a plan. */
export interface CrewOdds {
  readonly runs: number;
  readonly evenings: readonly EveningOdds[];
  /** Finish that 10, 50 and 90 % of the runs keep, seconds of the plan; null: not in these days. */
  readonly finish: {
    readonly p10: number | null;
    readonly p50: number | null;
    readonly p90: number | null;
  };
  /** Tasks by how much they matter, most first. */
  readonly matter: readonly TaskWeight[];
  /** Finishes run by run, for comparing. */
  readonly simulation: Simulation;
}

const RUNS = 10_000;

/** The odds of a plan. */
export function crewOdds({ compiled, schedule }: CrewPlan, options: OddsOptions): CrewOdds {
  const { seed, paceSd, runs = RUNS, from = 0 } = options;
  const byStart = schedule.list
    .slice()
    .sort((a, b) => compared(schedule.start[a] as number, schedule.start[b] as number));
  const list = schedule.look === 1 ? byStart : schedule.list;
  const simulation = simulate(compiled, { seed, runs, list, look: LOOK, paceSd, from });
  const sorted = simulation.finish.slice().sort();
  const quantile = (q: number): number | null => {
    const at = sorted[Math.min(runs - 1, Math.ceil(q * runs) - 1)] as number;
    return at === Number.POSITIVE_INFINITY ? null : at;
  };
  const stops = compiled.stops.length + 1;
  return {
    runs,
    evenings: compiled.hours.days.map(({ date }, k) => ({
      date,
      done: simulation.doneBy[k] as number,
      at: Array.from({ length: stops }, (_, s) => ({
        stopPoint: s === 0 ? null : (compiled.tasks[compiled.stops[s - 1] as number]?.id ?? null),
        odds: simulation.reached[k * stops + s] as number,
      })).filter(({ odds }) => odds > 0),
      caught: simulation.caught[k] as number,
    })),
    finish: { p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9) },
    matter: compiled.tasks
      .map(({ id }, i) => ({
        id,
        critical: simulation.critical[i] as number,
        correlation: simulation.correlation[i] as number,
      }))
      .sort((a, b) => weightOf(b) - weightOf(a)),
    simulation,
  };
}

/** Differences of infinite numbers are none: compared, not subtracted. */
const compared = (a: number, b: number): number => (a < b ? -1 : a > b ? 1 : 0);

const weightOf = ({ critical, correlation }: TaskWeight): number =>
  critical * Math.max(0, correlation);
