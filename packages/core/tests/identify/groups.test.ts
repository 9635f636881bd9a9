import { expect, test } from 'vitest';
import { hasRun, misfitGroups, starRuns } from '../../src/identify/groups.ts';
import { cross, dot, subtract } from '../../src/math/vector.ts';
import type { JoinedGroup } from '../../src/pile/kind.ts';
import { hubPoint, placeCentre } from '../../src/shell/geometry.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { truthOf } from './piles.ts';

const { shell, kinds } = truthOf(3, 0);
const plain = kinds.map((_, k) => k);
const group = (around: readonly string[], closed = false): JoinedGroup => ({
  around,
  closed,
  count: 1,
});
const idOf = (id: string): number | undefined =>
  Number(id) < kinds.length ? Number(id) : undefined;
const misfits = (...groups: JoinedGroup[]): JoinedGroup[] =>
  misfitGroups(shell, plain, idOf, groups);

test('each distinct run around a hub is listed once, from its lowest turn', () => {
  // 3V: five of the first kind round a corner of the solid, six of the other inside a face, and
  // on an edge two corners of the first beside four of the second.
  const runs = starRuns(shell, plain).map((run) => run.join(''));
  expect([...runs].sort()).toEqual(['00000', '001111', '111111']);
});

test('runs go anticlockwise seen from outside', () => {
  const odd = truthOf(3, 1);
  const star = starsOf(odd.shell)[7];
  if (!star) throw new Error('no such hub');
  const hub = hubPoint(odd.shell, star.hub);
  const middles = star.corners.map((s) =>
    subtract(placeCentre(odd.shell, odd.shell.sidePlace[s] as never), hub),
  );
  middles.forEach((here, i) => {
    const next = middles[(i + 1) % middles.length] as typeof here;
    expect(dot(cross(here, next), hub)).toBeGreaterThan(0);
  });
  const own = star.corners.map((s) => odd.shell.kind[odd.shell.sidePlace[s] as number] as number);
  const runs = starRuns(
    odd.shell,
    odd.kinds.map((_, k) => k),
  );
  expect(hasRun(runs, own, true)).toBe(true);
  expect(runs.some((run) => run.join() !== [...run].reverse().join())).toBe(true);
});

test('a run may start anywhere and be a part, unless the group goes the whole way round', () => {
  const runs = [[0, 0, 1, 2, 1, 1]];
  expect(hasRun(runs, [1, 1, 0, 0], false)).toBe(true);
  expect(hasRun(runs, [1, 1, 0, 0], true)).toBe(false);
  expect(hasRun(runs, [2, 1, 1, 0, 0, 1], true)).toBe(true);
  expect(hasRun(runs, [2, 1, 1, 0, 0, 1, 2], false)).toBe(false);
  expect(hasRun(runs, [1, 2, 1, 0], false)).toBe(false);
});

test('a run read the wrong way round is another run', () => {
  expect(hasRun([[0, 1, 2, 2]], [0, 1, 2], false)).toBe(true);
  expect(hasRun([[0, 1, 2, 2]], [2, 1, 0], false)).toBe(false);
});

test('groups that occur nowhere are misfits, in the order given; kinds nobody knows fit nowhere', () => {
  const wrong = group(['0', '1', '0']);
  const strange = group(['7', '0']);
  expect(misfits(wrong, group(['0', '0', '1']), strange)).toEqual([wrong, strange]);
  expect(misfits(group(['0', '0', '0', '0', '0'], true))).toEqual([]);
  expect(misfits(group(['1', '1', '1', '1'], true))).toHaveLength(1);
});

test('kinds of one family count as each other', () => {
  const one = misfitGroups(shell, [0, 0], () => 0, [group(['0', '1', '0'])]);
  expect(one).toEqual([]);
});
