// The integer-program engine, loaded when it is first asked.

import { type HighsRuntime, highsSolver, type ProgramSolver } from '@shellraise/core';

let solving: Promise<ProgramSolver> | null = null;

/** The engine. */
export function solver(): Promise<ProgramSolver> {
  solving ??= loadSolver();
  return solving;
}

async function loadSolver(): Promise<ProgramSolver> {
  const [{ default: loader }, { default: runtime }] = await Promise.all([
    import('highs'),
    import('highs/runtime?url'),
  ]);
  const load = loader as unknown as (options: {
    locateFile: () => string;
  }) => Promise<HighsRuntime>;
  return highsSolver(await load({ locateFile: () => runtime }));
}
