import { expect, test } from 'vitest';
import { hasRun, starRuns } from '../../src/identify/groups.ts';
import { identify } from '../../src/identify/identify.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import { readPile } from '../../src/pile/check.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import type { Pile } from '../../src/pile/schema.ts';
import { isPlain, readMark } from '../../src/pile/written-mark.ts';
import { readKinds, truthOf } from '../identify/piles.ts';

test('a bar parts what a faded mark may be, a question mark leaves it open', () => {
  expect(readMark('3')).toEqual({ marks: ['3'], open: false });
  expect(readMark('3|8')).toEqual({ marks: ['3', '8'], open: false });
  expect(readMark(' 3 | 3 | 8?')).toEqual({ marks: ['3', '8'], open: true });
  expect(readMark('3?')).toEqual({ marks: ['3'], open: true });
  expect(readMark('?')).toEqual({ marks: [], open: true });
  expect(readMark(undefined)).toEqual({ marks: [], open: true });
  expect(['3', '3|8', '3?', '?'].map((text) => isPlain(readMark(text)))).toEqual([
    true,
    false,
    false,
    false,
  ]);
});

function pile(readings: readonly object[], groups: readonly object[] = []): Pile {
  const read = readPile({ hubAllowance: 0, readings, groups });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

const A = { sides: [1.0, 1.1, 1.2], seenFrom: 'outside' };
const B = { sides: [1.2, 1.3, 1.35], seenFrom: 'outside' };

test('a faded mark counts for the alternative that others of its kind carry', () => {
  const { kinds, mixedMarks } = kindsOfPile(
    pile([
      { ...A, mark: '3', count: 9 },
      { ...B, mark: '8', count: 9 },
      { ...A, mark: '3|8', count: 2 },
      { ...B, mark: '?', count: 2 },
    ]),
  );
  expect(kinds.map((kind) => kind.marks)).toEqual([['3'], ['8']]);
  expect(mixedMarks).toEqual([]);
  expect(kinds.map((kind) => kind.good)).toEqual([11, 11]);
});

test('a faded mark that no panel carries for sure may be either', () => {
  const { kinds } = kindsOfPile(pile([{ ...A, mark: '3|8', count: 4 }]));
  expect(kinds[0]?.marks).toEqual(['3', '8']);
});

test('a group may name faded marks; what no mark of the pile can be is a fault', () => {
  const rows = [
    { ...A, mark: '3' },
    { ...B, mark: '8' },
  ];
  const { groups, unsettledGroups } = kindsOfPile(
    pile(rows, [{ around: ['3|8', '8', '?'], count: 2 }]),
  );
  const all = [...groups.map((one) => one.around), ...unsettledGroups.flatMap((g) => g.readings)];
  expect(all.length).toBeGreaterThan(0);
  const bad = readPile({ readings: rows, groups: [{ around: ['3|9', '8'] }] });
  expect(bad.ok).toBe(false);
});

/** A 3V ball of which every panel, of either kind, is marked 3. */
function oneMark(groups: readonly object[]): Pile {
  const truth = truthOf(3, 0);
  const random = seededRandom(5);
  const rows = truth.kinds.map(({ sides, count }) => ({
    mark: '3',
    seenFrom: 'outside',
    count,
    sides: sides.map((side) => side + 0.0005 * random.normal()),
  }));
  return pile(rows, groups);
}

test('a group that is not settled weighs for the nets that can hold it in some way', () => {
  const held = oneMark([{ around: ['3', '3', '3', '3', '3', '3'], closed: true }]);
  const worked = kindsOfPile(held);
  expect(worked.groups).toEqual([]);
  expect(worked.unsettledGroups).toHaveLength(1);
  const question = shapeQuestion(held, worked);
  expect(question.looseGroups).toHaveLength(1);
  expect(question.looseGroups?.[0]?.around.every((ids) => ids.length === 2)).toBe(true);
  const answer = identify(question);
  const without = identify({ ...question, looseGroups: [] });
  expect(answer.shapes[0]?.probability).toBeCloseTo(without.shapes[0]?.probability ?? 0, 6);
});

test('twins are told apart by a group of which one panel may be of any kind', () => {
  const truth = truthOf(2, 0);
  const kinds = readKinds(truth, 0.001, 3);
  const plain = identify({ kinds, groups: [] });
  const ids = kinds.map((kind) => kind.id);
  const all = kinds.map((_, k) => k);
  const runs = plain.shapes.map(({ shell }) => starRuns(shell, all));
  expect(runs).toHaveLength(2);
  const looseOf = (run: readonly number[], free: number): number[][] =>
    run.map((k, i) => (i === free ? all : [k]));
  const found = runs
    .flat()
    .flatMap((run) => run.map((_, free) => looseOf(run, free)))
    .find((run) => runs.some((own) => !hasRun(own, run, true)));
  if (!found) throw new Error('the twins have the same runs');
  const around = found.map((own) => own.map((k) => ids[k] as string));
  const loose = identify({ kinds, groups: [], looseGroups: [{ around, closed: true, count: 1 }] });
  expect(plain.shapes[0]?.probability).toBeLessThan(0.55);
  expect(loose.shapes[0]?.probability).toBeGreaterThan(0.95);
  expect(hasRun(starRuns((loose.shapes[0] as Shape).shell, all), found, true)).toBe(true);
});
