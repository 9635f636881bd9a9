// The integer-program engine HiGHS (Q. Huangfu, J. A. J. Hall, Parallelizing the dual revised simplex
// method, Math. Prog. Comp. 10, 2018) behind the interface of solve.ts. The host loads it and hands
// it in; here is only what is asked of it.

import { type IntegerProgram, keeps, type Terms, totalOf } from './integer-program.ts';
import type { ProgramAnswer, ProgramSolver, SolveOptions } from './solve.ts';

/** What this needs of a loaded HiGHS runtime (the package `highs`, 1.15). */
export interface HighsRuntime {
  withModel<T>(source: HighsProgram, operation: (model: HighsModel) => T): T;
}

/** A program as HiGHS takes it: rows compressed, one entry a variable and a row elsewhere. */
export interface HighsProgram {
  readonly numCols: number;
  readonly numRows: number;
  readonly colCost: Float64Array;
  readonly colLower: Float64Array;
  readonly colUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly integrality: Int32Array;
  readonly matrix: {
    readonly format: 'csr';
    readonly numRows: number;
    readonly numCols: number;
    readonly starts: Int32Array;
    readonly indices: Int32Array;
    readonly values: Float64Array;
  };
}

/** A program in the engine. */
export interface HighsModel {
  readonly options: { set(values: HighsOptions): unknown };
  readonly info: { get(name: string): unknown };
  run(callbacks: Readonly<Record<number, (event: HighsEvent) => void>>): unknown;
  setSolution(solution: { readonly colValue: Float64Array }): unknown;
  getModelStatus(): number;
  getSolution(): { readonly colValue: Float64Array };
}

/** The engine's own settings. */
export type HighsOptions = Readonly<Record<string, boolean | number | string>>;

/** What the engine tells on its way. */
export interface HighsEvent {
  readonly data: {
    readonly mip_solution?: Float64Array;
    readonly objective_function_value?: number;
    readonly mip_dual_bound?: number;
  };
  readonly interrupt?: () => void;
}

/** The engine's numbers for what is used here. */
const STATUS = { empty: 6, optimal: 7, infeasible: 8, unboundedOrInfeasible: 9 };
const CALLBACK = { improvingSolution: 4, interrupt: 6 };
const WHOLE = 1;

/** A solver that asks HiGHS. Deterministic for one version and no time limit reached. */
export const highsSolver = (highs: HighsRuntime): ProgramSolver => ({
  minimise: (program, objective, options) =>
    highs.withModel(asHighs(program, objective), (model) =>
      answerOf(model, program, objective, options),
    ),
});

function answerOf(
  model: HighsModel,
  program: IntegerProgram,
  objective: Terms,
  options: SolveOptions,
): ProgramAnswer {
  model.options.set({
    output_flag: false,
    random_seed: 1,
    time_limit: options.seconds,
    mip_rel_gap: options.gap,
    mip_abs_gap: 1e-6,
  });
  if (options.start) model.setSolution({ colValue: Float64Array.from(options.start) });
  model.run({
    [CALLBACK.improvingSolution]: ({ data }) => {
      if (data.mip_solution)
        options.onBetter?.(
          data.mip_solution,
          data.objective_function_value ?? Number.NaN,
          data.mip_dual_bound ?? Number.NEGATIVE_INFINITY,
        );
    },
    [CALLBACK.interrupt]: (event) => {
      if (options.shouldStop?.()) event.interrupt?.();
    },
  });
  const status = model.getModelStatus();
  if (status === STATUS.infeasible || status === STATUS.unboundedOrInfeasible)
    return { status: 'infeasible', values: null, objective: Infinity, bound: Infinity };
  const values = wholeValues(program, model.getSolution().colValue);
  if (values === null)
    return { status: 'unknown', values: null, objective: Infinity, bound: -Infinity };
  const value = totalOf(objective, values);
  const proved = status === STATUS.optimal || status === STATUS.empty;
  const bound = Number(model.info.get('mip_dual_bound'));
  return {
    status: proved ? 'optimal' : 'feasible',
    values,
    objective: value,
    bound: proved && options.gap === 0 ? value : Math.min(bound, value),
  };
}

/** Whole where they must be; null where these values do not keep the program. */
function wholeValues(program: IntegerProgram, found: ArrayLike<number>): Float64Array | null {
  if (found.length !== program.variables.length) return null;
  const values = Float64Array.from(program.variables, ({ whole }, v) =>
    whole ? Math.round(found[v] as number) : (found[v] as number),
  );
  return keeps(program, values) ? values : null;
}

function asHighs({ variables, rows }: IntegerProgram, objective: Terms): HighsProgram {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach(({ terms }, r) => {
    starts[r + 1] = (starts[r] as number) + terms.length;
  });
  const colCost = new Float64Array(variables.length);
  for (const [v, cost] of objective) colCost[v] = (colCost[v] as number) + cost;
  const terms = rows.flatMap((row) => row.terms);
  return {
    numCols: variables.length,
    numRows: rows.length,
    colCost,
    colLower: Float64Array.from(variables, ({ low }) => low),
    colUpper: Float64Array.from(variables, ({ high }) => high),
    rowLower: Float64Array.from(rows, ({ low }) => low),
    rowUpper: Float64Array.from(rows, ({ high }) => high),
    integrality: Int32Array.from(variables, ({ whole }) => (whole ? WHOLE : 0)),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: variables.length,
      starts,
      indices: Int32Array.from(terms, ([v]) => v),
      values: Float64Array.from(terms, ([, coefficient]) => coefficient),
    },
  };
}
