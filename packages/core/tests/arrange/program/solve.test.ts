import highsLoader from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { smallestConflict } from '../../../src/arrange/program/conflict.ts';
import { type HighsRuntime, highsSolver } from '../../../src/arrange/program/highs-solver.ts';
import {
  type IntegerProgram,
  keeps,
  ProgramDraft,
  type Terms,
  totalOf,
} from '../../../src/arrange/program/integer-program.ts';
import { minimiseInOrder, type ProgramSolver } from '../../../src/arrange/program/solve.ts';
import { seededRandom } from '../../../src/math/random.ts';

let solver: ProgramSolver;
beforeAll(async () => {
  // The package declares its types as CommonJS, so its default export looks like a namespace here.
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  solver = highsSolver(await load());
});
const PROOF = { seconds: 10, gap: 0 };

/** Least value over all whole points of a small box, by trying each; null where none keeps the rows. */
function byTrying(program: IntegerProgram, objective: Terms): number | null {
  let least: number | null = null;
  const values = program.variables.map(({ low }) => low);
  const tryFrom = (v: number): void => {
    if (v === values.length) {
      if (keeps(program, values)) least = Math.min(least ?? Infinity, totalOf(objective, values));
      return;
    }
    const { low, high } = program.variables[v] as IntegerProgram['variables'][number];
    for (let x = low; x <= high; x++) {
      values[v] = x;
      tryFrom(v + 1);
    }
  };
  tryFrom(0);
  return least;
}

function randomProgram(seed: number): { program: ProgramDraft; objective: Terms } {
  const random = seededRandom(seed);
  const program = new ProgramDraft();
  for (let v = 0; v < 6; v++) random.uniform() < 0.5 ? program.yesNo() : program.count(3);
  const terms = (): Terms =>
    program.variables.flatMap((_, v) =>
      random.uniform() < 0.6 ? [[v, random.below(9) - 4] as const] : [],
    );
  for (let r = 0; r < 4; r++) {
    if (random.uniform() < 0.5) program.atMost(`r${r}`, terms(), random.below(7) - 1);
    else program.atLeast(`r${r}`, terms(), random.below(7) - 3);
  }
  return { program, objective: terms() };
}

describe('the engine', () => {
  it('finds the optimum that trying every point finds, or that there is none (seeds 1 to 120)', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const { program, objective } = randomProgram(seed);
      const answer = solver.minimise(program, objective, PROOF);
      const least = byTrying(program, objective);
      expect([seed, answer.status]).toEqual([seed, least === null ? 'infeasible' : 'optimal']);
      if (least === null) continue;
      expect(answer.objective).toBe(least);
      expect(answer.bound).toBe(least);
      expect(keeps(program, answer.values as Float64Array)).toBe(true);
    }
  });

  it('puts the first objective before the second', () => {
    const program = new ProgramDraft();
    const [a, b] = [program.count(5), program.count(5)];
    program.atMost(
      'room',
      [
        [a, 1],
        [b, 1],
      ],
      6,
    );
    const tiers = [
      { name: 'most a', objective: [[a, -1]] as Terms },
      { name: 'most b', objective: [[b, -1]] as Terms },
    ];
    const now = (): number => 0;
    const { status, values } = minimiseInOrder(program, tiers, solver, { ...PROOF, now });
    expect([status, ...(values ?? [])]).toEqual(['optimal', 5, 1]);
    const other = minimiseInOrder(program, [...tiers].reverse(), solver, { ...PROOF, now });
    expect([...(other.values ?? [])]).toEqual([1, 5]);
  });

  it('names the wishes that conflict, and none besides', () => {
    const program = new ProgramDraft();
    const [a, b] = [program.count(5), program.count(5)];
    program.atMost(
      'room',
      [
        [a, 1],
        [b, 1],
      ],
      6,
    );
    program.atLeast('much a', [[a, 1]], 4);
    program.atLeast('much b', [[b, 1]], 4);
    program.atMost('little b', [[b, 1]], 4);
    const possible = (kept: readonly string[]): boolean => {
      const rows = program.rows.filter(({ of }) => of === 'room' || kept.includes(of));
      return solver.minimise({ ...program, rows }, [], PROOF).status !== 'infeasible';
    };
    expect(smallestConflict(['much a', 'little b', 'much b'], possible)).toEqual([
      'much a',
      'much b',
    ]);
    expect(smallestConflict(['much a', 'little b'], possible)).toEqual([]);
    expect(smallestConflict(['much a'], () => null)).toEqual([]);
  });
});
