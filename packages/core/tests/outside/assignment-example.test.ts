// A published assignment problem through the program layer. Costs and optimum: Google OR-Tools
// documentation, "Solving an Assignment Problem" (developers.google.com/optimization/assignment/
// assignment_example): five workers, four tasks, total cost 265. The costs were read there; the total
// is from memory and confirmed here by trying every assignment.

import highsLoader from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type HighsRuntime, highsSolver } from '../../src/arrange/program/highs-solver.ts';
import { ProgramDraft, type Terms } from '../../src/arrange/program/integer-program.ts';
import type { ProgramSolver } from '../../src/arrange/program/solve.ts';

const costs = [
  [90, 80, 75, 70],
  [35, 85, 55, 65],
  [125, 95, 90, 95],
  [45, 110, 95, 115],
  [50, 100, 90, 100],
];
const PUBLISHED = 265;

let solver: ProgramSolver;
beforeAll(async () => {
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  solver = highsSolver(await load());
});

function cheapest(matrix: readonly (readonly number[])[]): number {
  const draft = new ProgramDraft();
  const does = matrix.map((row) => row.map(() => draft.yesNo()));
  const ones = (list: readonly number[]): Terms => list.map((v) => [v, 1] as const);
  for (const own of does) draft.atMost('a worker does one task', ones(own), 1);
  for (const task of matrix[0]?.keys() ?? [])
    draft.equal('each task is done', ones(does.map((own) => own[task] as number)), 1);
  const cost: Terms = does.flatMap((own, w) =>
    own.map((v, task) => [v, matrix[w]?.[task] as number] as const),
  );
  const answer = solver.minimise(draft, cost, { seconds: 10, gap: 0 });
  expect(answer.status).toBe('optimal');
  return answer.objective;
}

function byTrying(task: number, free: readonly number[]): number {
  if (task === 4) return 0;
  return Math.min(
    ...free.map(
      (w) =>
        (costs[w]?.[task] as number) +
        byTrying(
          task + 1,
          free.filter((one) => one !== w),
        ),
    ),
  );
}

describe('the published assignment', () => {
  it('costs 265', () => {
    expect(byTrying(0, [0, 1, 2, 3, 4])).toBe(PUBLISHED);
    expect(cheapest(costs)).toBe(PUBLISHED);
  });

  it('costs something else where its costs are changed', () => {
    expect(cheapest(costs.map((row) => row.map((cost) => cost + 10)))).toBe(PUBLISHED + 40);
    expect(cheapest(costs.slice(1))).not.toBe(PUBLISHED);
  });
});
