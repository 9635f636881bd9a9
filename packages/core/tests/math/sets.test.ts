import fc from 'fast-check';
import { expect, test } from 'vitest';
import { joinInto, rootInto, singletons } from '../../src/math/sets.ts';

const SEED = 5;
const pairs = fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 14 });

test(`sets hold what a chain of pairs links, under their lowest member, in any order of pairs (seed ${SEED})`, () => {
  fc.assert(
    fc.property(pairs, (joins) => {
      const forward = singletons(12);
      for (const [a, b] of joins) joinInto(forward, a, b);
      const backward = singletons(12);
      for (const [a, b] of [...joins].reverse()) joinInto(backward, b, a);
      const plain = Array.from({ length: 12 }, (_, i) => i);
      for (const [a, b] of joins) {
        const [low, high] = [plain[a] as number, plain[b] as number].sort((x, y) => x - y);
        plain.forEach((lead, i) => {
          if (lead === high) plain[i] = low as number;
        });
      }
      const roots = (sets: Int32Array): number[] => plain.map((_, i) => rootInto(sets, i));
      expect(roots(forward)).toEqual(plain);
      expect(roots(backward)).toEqual(plain);
    }),
    { seed: SEED },
  );
});
