// Which wishes can't be kept together: the smallest set in the sense that each of them can be kept
// once any one of the others is given up (a deletion filter: J. W. Chinneck, Feasibility and
// Infeasibility in Optimization, 2008, from memory). Wishes, not single rows, as a person sees them.

import type { IntegerProgram } from './integer-program.ts';
import type { ProgramSolver } from './solve.ts';

/** Names of wishes that together can't be kept, none to spare. Empty where all can be kept, or it
 * could not be settled in the time; [] as well where the laws alone can't be kept. `wishes` are the
 * names (`Row.of`) that may be given up; all other rows are laws. */
export function conflictingWishes(
  program: IntegerProgram,
  wishes: readonly string[],
  solver: ProgramSolver,
  seconds: number,
): readonly string[] {
  const feasible = (kept: readonly string[]): boolean | null => {
    const rows = program.rows.filter(({ of }) => !wishes.includes(of) || kept.includes(of));
    const options = { seconds: seconds / (wishes.length + 2), gap: 1 };
    const { status } = solver.minimise({ variables: program.variables, rows }, [], options);
    return status === 'unknown' ? null : status !== 'infeasible';
  };
  if (feasible(wishes) !== false || feasible([]) !== true) return [];
  let kept = [...wishes];
  for (const wish of wishes) {
    const without = kept.filter((one) => one !== wish);
    if (feasible(without) === false) kept = without;
  }
  return kept;
}
