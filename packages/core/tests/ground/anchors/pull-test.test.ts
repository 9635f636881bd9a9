import { expect, test } from 'vitest';
import { testedCapacity } from '../../../src/ground/anchors/pull-test.ts';

const pull = (newtons: number, held = false, wet = false) => ({ pull: newtons, held, wet });
const least = (tests: Parameters<typeof testedCapacity>[0], wet = false): number => {
  const read = testedCapacity(tests, wet);
  return read.ok ? read.value.pull : Number.NaN;
};

test('the least pull counts, whether it gave way or held', () => {
  expect(least([pull(900), pull(700, true), pull(1200)])).toBe(700);
});

test('a dry test counts half where the ground may get wet, a wet one whole', () => {
  expect(least([pull(900), pull(700, false, true)], true)).toBe(450);
  expect(least([pull(900, false, true), pull(700, false, true)], true)).toBe(700);
});

test('three tests are held to less than two', () => {
  const basis = (n: number) => {
    const read = testedCapacity(
      Array.from({ length: n }, () => pull(800)),
      false,
    );
    return read.ok ? read.value.basis : '';
  };
  expect([1, 2, 3, 4].map(basis)).toEqual(['tested few', 'tested few', 'tested', 'tested']);
});

test('no pull, a negative one and one in the wrong unit are told by number', () => {
  const read = testedCapacity([pull(800), pull(-5), pull(9e6), pull(Number.NaN)], false);
  expect(read.ok ? [] : read.faults.map(({ path }) => path)).toEqual([
    'pullTests[1].pull',
    'pullTests[2].pull',
    'pullTests[3].pull',
  ]);
  expect(testedCapacity([], false).ok).toBe(false);
});
