// A linear program in which some unknowns are whole numbers, as plain data. Minimise an objective
// under rows of linear conditions; who solves it (a host's engine, or exhaustive search in the
// tests) is told in solve.ts.

/** Σ coefficient · variable; each variable (index) once. */
export type Terms = readonly (readonly [variable: number, coefficient: number])[];

/** One unknown. */
export interface Variable {
  readonly low: number;
  /** Infinity where there is no bound. */
  readonly high: number;
  readonly whole: boolean;
}

/** low ≤ Σ terms ≤ high, with infinities where there is no bound. */
export interface Row {
  readonly terms: Terms;
  readonly low: number;
  readonly high: number;
  /** Which wish or law it comes from: told where wishes conflict. */
  readonly of: string;
}

/** The unknowns and what they must keep. */
export interface IntegerProgram {
  readonly variables: readonly Variable[];
  readonly rows: readonly Row[];
}

/** Builds a program; only for use within one function. */
export class ProgramDraft implements IntegerProgram {
  readonly variables: Variable[] = [];
  readonly rows: Row[] = [];

  /** A yes-or-no unknown; its index. */
  yesNo(): number {
    return this.variables.push({ low: 0, high: 1, whole: true }) - 1;
  }

  /** A whole number from 0 to `high`; its index. */
  count(high = Number.POSITIVE_INFINITY): number {
    return this.variables.push({ low: 0, high, whole: true }) - 1;
  }

  /** Σ terms ≤ high. */
  atMost(of: string, terms: Terms, high: number): void {
    this.rows.push({ of, terms, low: Number.NEGATIVE_INFINITY, high });
  }

  /** Σ terms ≥ low. */
  atLeast(of: string, terms: Terms, low: number): void {
    this.rows.push({ of, terms, low, high: Number.POSITIVE_INFINITY });
  }

  /** Σ terms = value. */
  equal(of: string, terms: Terms, value: number): void {
    this.rows.push({ of, terms, low: value, high: value });
  }
}

/** The value of Σ terms. */
export const totalOf = (terms: Terms, values: ArrayLike<number>): number =>
  terms.reduce((sum, [v, coefficient]) => sum + coefficient * (values[v] as number), 0);

/** How far values may be from a whole number or beyond a row and still keep it: the engines'
 * own tolerance is 1e-6. */
const KEPT = 1e-5;

/** Whether values keep every bound and row, and are whole where they must be. */
export function keeps({ variables, rows }: IntegerProgram, values: ArrayLike<number>): boolean {
  return (
    values.length === variables.length &&
    variables.every(({ low, high, whole }, v) => {
      const value = values[v] as number;
      const isWhole = !whole || Math.abs(value - Math.round(value)) <= KEPT;
      return isWhole && value >= low - KEPT && value <= high + KEPT;
    }) &&
    rows.every(({ terms, low, high }) => {
      const value = totalOf(terms, values);
      const slack = KEPT * Math.max(1, ...terms.map(([, c]) => Math.abs(c)));
      return value >= low - slack && value <= high + slack;
    })
  );
}
