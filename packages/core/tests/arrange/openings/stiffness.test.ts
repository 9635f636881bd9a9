import { describe, expect, it } from 'vitest';
import { openingStiffness, withStiffness } from '../../../src/arrange/openings/stiffness.ts';
import { frameParts } from '../../../src/frame/parts.ts';
import { unknownParts } from '../../../src/frame/schema.ts';
import { placeCount } from '../../../src/shell/shell.ts';
import { cutBall, inNumberOrder } from '../../stages/fixtures.ts';

const unit = cutBall(3, 105);
const shell = { ...unit, radius: 3, hubs: unit.hubs.map((x) => 3 * x) };
const order = inNumberOrder(shell);
const stiffness = openingStiffness(shell, frameParts(unknownParts));

describe('the stiffness that an opening leaves', () => {
  it('is all of it where nothing is left out', () => {
    expect(stiffness([]).kept).toBeCloseTo(1, 9);
  });

  it('is less for every panel more that is left out', () => {
    let last = 1;
    for (const count of [1, 2, 3, 5, 8]) {
      const { kept } = stiffness(order.slice(40, 40 + count));
      expect(kept).toBeLessThan(last + 1e-9);
      expect(kept).toBeGreaterThan(0);
      last = kept;
    }
    expect(last).toBeLessThan(0.9);
  });

  it('does not depend on how stiff the material is: twice the modulus keeps the same part', () => {
    const parts = frameParts(unknownParts);
    const stiffer = openingStiffness(shell, { ...parts, young: 2 * parts.young });
    const opening = order.slice(40, 44);
    expect(stiffer(opening).kept).toBeCloseTo(stiffness(opening).kept, 8);
  });

  it('puts the stiffest of those asked about first by least harm, and by nothing else', () => {
    const kept = [0.5, 0.9, 0.7].map((part) => ({ kept: part, push: 'x' as const }));
    const list = ['a', 'b', 'c', 'd', 'e'].map((name) => ({ name }));
    const names = (rank: 'least harm' | 'fewest panels'): string =>
      withStiffness(list, kept, rank)
        .map(({ name, stiffness }) => `${name}${stiffness?.kept ?? ''}`)
        .join(' ');
    expect(names('least harm')).toBe('b0.9 c0.7 a0.5 d e');
    expect(names('fewest panels')).toBe('a0.5 b0.9 c0.7 d e');
  });

  it('is refused for a place that is none of the shell’s', () => {
    expect(() => stiffness([placeCount(shell)])).toThrow(/place 105|place \d+ of/);
  });
});
