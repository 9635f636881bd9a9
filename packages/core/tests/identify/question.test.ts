import { expect, test } from 'vitest';
import { shapeQuestion } from '../../src/identify/question.ts';
import { readPile } from '../../src/pile/check.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';

const asked = (raw: Record<string, unknown>) => {
  const read = readPile({
    kinds: [
      { id: 'a', sides: [1, 1, 1] },
      { id: 'b', sides: [1, 1.2, 1.1] },
    ],
    ...raw,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return shapeQuestion(read.value, kindsOfPile(read.value));
};

test('an allowance is unknown only where the tape was not held from hub to hub', () => {
  expect(asked({ measuredAlong: 'holes' }).allowanceSd).toBe(0.025);
  expect(asked({ measuredAlong: 'skin', hubAllowance: 0.004 }).allowanceSd).toBe(0);
  expect(asked({ measuredAlong: 'skin', hubAllowance: 0.004 }).allowance).toBe(0.004);
  expect(asked({ measuredAlong: 'hubs' }).allowanceSd).toBe(0);
});

test('a kind that somebody left out is not in it, nor a group that has it', () => {
  const question = asked({
    kinds: [
      { id: 'a', sides: [1, 1, 1] },
      { id: 'b', sides: [1, 1.2, 1.1], leaveOut: true },
    ],
    groups: [{ around: ['a', 'a'] }, { around: ['a', 'b'] }],
  });
  expect(question.kinds.map(({ id }) => id)).toEqual(['a']);
  expect(question.groups.map(({ around }) => around)).toEqual([['a', 'a']]);
});

test('hub plates and distances across groups come with their deviations', () => {
  const question = asked({
    readingSd: 0.002,
    angleSd: 0.01,
    hubPlates: [
      { corners: 5, radius: 0.03 },
      { corners: 3, arms: [2, 2.1, 2.183] },
    ],
    groups: [{ around: ['a', 'a'], rim: [{ from: 0, to: 2, length: 1.6 }] }],
  });
  expect(question.hubPlates).toEqual([
    { corners: 5, radius: { value: 0.03, sd: 0.002 }, arms: [] },
    {
      corners: 3,
      radius: null,
      arms: [2, 2.1, 2.183].map((value) => ({ value, sd: 0.01 })),
    },
  ]);
  expect(question.groups[0]?.rim).toEqual([{ from: 0, to: 2, length: 1.6, sd: 0.002 }]);
});
