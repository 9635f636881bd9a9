// Who solves an integer program, and the solving of several objectives one after the other: the
// first counts beyond all others, then the second among what is best for the first, and so on.

import { type IntegerProgram, type Row, type Terms, totalOf } from './integer-program.ts';

/** How long to look, and from where. */
export interface SolveOptions {
  /** Seconds; what is best by then is the answer, with the gap that is left. */
  readonly seconds: number;
  /** Gap (share of the objective) at which to stop; 0 for a proof. */
  readonly gap: number;
  /** Values that keep every row, to start from. */
  readonly start?: ArrayLike<number>;
  /** Told of each better answer, with the bound proved so far. */
  readonly onBetter?: (values: ArrayLike<number>, objective: number, bound: number) => void;
  /** Asked often; true stops the search. */
  readonly shouldStop?: () => boolean;
}

/** What was found for one objective. */
export interface ProgramAnswer {
  /** `optimal`: proved best. `feasible`: stopped before the proof. `unknown`: stopped with nothing. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unknown';
  /** One for each variable; null where there are none. */
  readonly values: Float64Array | null;
  readonly objective: number;
  /** Proved: no answer is below it. */
  readonly bound: number;
}

/** An engine that minimises; it lives outside core. */
export interface ProgramSolver {
  minimise(program: IntegerProgram, objective: Terms, options: SolveOptions): ProgramAnswer;
}

/** One objective of several. */
export interface Tier {
  readonly name: string;
  readonly objective: Terms;
  /** What the next tiers may lose of this one, in its unit; 0 unless told. */
  readonly slack?: number;
}

/** An answer for all tiers. */
export interface TieredAnswer {
  readonly status: ProgramAnswer['status'];
  readonly values: Float64Array | null;
  /** For each tier solved, in order: its value and what was proved of it. */
  readonly tiers: readonly {
    readonly name: string;
    readonly objective: number;
    readonly bound: number;
  }[];
}

/** The best answer by several objectives in their order. Time is shared: each tier may use what
 * the ones before have left. */
export function minimiseInOrder(
  program: IntegerProgram,
  tiers: readonly Tier[],
  solver: ProgramSolver,
  options: SolveOptions & { readonly now: () => number },
): TieredAnswer {
  const until = options.now() + options.seconds;
  const rows = [...program.rows];
  const done: { name: string; objective: number; bound: number }[] = [];
  let best: ProgramAnswer | null = null;
  let proved = true;
  for (const { name, objective, slack = 0 } of tiers) {
    const seconds = until - options.now();
    const start = best?.values ?? options.start;
    if (best !== null && seconds <= 0) break;
    if (best?.values && totalOf(objective, best.values) <= leastOf(program, objective)) {
      // What was found for the tiers before is as good as this one can be.
      const value = totalOf(objective, best.values);
      done.push({ name, objective: value, bound: value });
      rows.push(rowFor(name, objective, value, slack));
      continue;
    }
    const answer = solver.minimise({ variables: program.variables, rows }, objective, {
      ...options,
      seconds: Math.max(seconds, 0),
      ...(start && { start }),
    });
    if (answer.values === null) {
      if (best === null) return { status: answer.status, values: null, tiers: [] };
      break;
    }
    best = answer;
    proved &&= answer.status === 'optimal';
    done.push({ name, objective: answer.objective, bound: answer.bound });
    rows.push(rowFor(name, objective, totalOf(objective, answer.values), slack));
  }
  const whole = proved && done.length === tiers.length;
  return { status: whole ? 'optimal' : 'feasible', values: best?.values ?? null, tiers: done };
}

/** What later tiers must keep of one. */
const rowFor = (name: string, terms: Terms, value: number, slack: number): Row => ({
  of: name,
  terms,
  low: Number.NEGATIVE_INFINITY,
  high: value + slack + ROUNDING * Math.abs(value),
});

/** What Σ terms can be at least by the bounds of its variables alone. */
const leastOf = ({ variables }: IntegerProgram, terms: Terms): number =>
  terms.reduce((sum, [v, c]) => {
    const { low, high } = variables[v] as IntegerProgram['variables'][number];
    return sum + c * (c > 0 ? low : high);
  }, 0);

/** A tier's value may be off by this share by rounding. */
const ROUNDING = 1e-9;
