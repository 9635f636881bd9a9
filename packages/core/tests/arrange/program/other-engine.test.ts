// The same programs through an engine of another make (YALPS, a simplex and branch-and-bound in
// TypeScript): same optima.

import highsLoader from 'highs';
import { expect, it } from 'vitest';
import { solve } from 'yalps';
import { type HighsRuntime, highsSolver } from '../../../src/arrange/program/highs-solver.ts';
import { ProgramDraft, type Terms } from '../../../src/arrange/program/integer-program.ts';
import { seededRandom } from '../../../src/math/random.ts';

function covering(seed: number): { program: ProgramDraft; objective: Terms } {
  const random = seededRandom(seed);
  const program = new ProgramDraft();
  const all = Array.from({ length: 18 }, () => program.yesNo());
  for (let r = 0; r < 12; r++) {
    const terms = all.flatMap((v) => (random.uniform() < 0.3 ? [[v, 1] as const] : []));
    if (terms.length > 0) program.atLeast('covered', terms, 1);
  }
  for (let r = 0; r < 6; r++) {
    const [a, b] = [random.below(18), random.below(18)];
    if (a !== b)
      program.atMost(
        'not both',
        [
          [a, 1],
          [b, 1],
        ],
        1,
      );
  }
  return { program, objective: all.map((v) => [v, 1 + random.below(9)] as const) };
}

it('finds what an engine of another make finds (seeds 1 to 60)', async () => {
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  const solver = highsSolver(await load());
  let none = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const { program, objective } = covering(seed);
    const own = solver.minimise(program, objective, { seconds: 10, gap: 0 });
    const costs = new Map(objective);
    const other = solve({
      direction: 'minimize',
      objective: 'cost',
      constraints: program.rows.map(({ low, high }, r) => [
        `r${r}`,
        { ...(Number.isFinite(low) && { min: low }), ...(Number.isFinite(high) && { max: high }) },
      ]),
      variables: program.variables.map((_, v) => [
        `v${v}`,
        [
          ['cost', costs.get(v) ?? 0],
          ...program.rows.flatMap(({ terms }, r): [string, number][] =>
            terms.flatMap(([at, c]): [string, number][] => (at === v ? [[`r${r}`, c]] : [])),
          ),
        ],
      ]),
      binaries: true,
    });
    if (other.status === 'infeasible') none++;
    expect([seed, own.status]).toEqual([seed, other.status]);
    if (own.status === 'optimal') expect(own.objective).toBeCloseTo(other.result, 6);
  }
  expect(none).toBeLessThan(60);
});
