import { describe, expect, it } from 'vitest';
import { kindsIn, loadsByHand, type PackedPanel, stacksOf } from '../../src/papers/packing.ts';

const panel = (i: number, more: Partial<PackedPanel> = {}): PackedPanel => ({
  number: `1-${i}`,
  kind: '1',
  course: 1,
  mass: 10,
  size: [1, 0.9],
  ...more,
});
const heap = (count: number, more: Partial<PackedPanel> = {}): PackedPanel[] =>
  Array.from({ length: count }, (_, i) => panel(i, more));

describe('stacks', () => {
  it('hold every panel once, one course each, within count and mass', () => {
    const panels = [...heap(30), ...heap(5, { course: 2, mass: 40 })];
    const stacks = stacksOf(panels, { most: 12, mass: 100 });
    expect(stacks.flatMap((one) => one.panels)).toHaveLength(35);
    for (const one of stacks) {
      expect(new Set(one.panels.map(({ course }) => course)).size).toBe(1);
      expect(one.panels.length).toBeLessThanOrEqual(12);
      expect(one.mass).toBeLessThanOrEqual(100);
    }
    expect(stacks.map(({ course }) => course)).toEqual([1, 1, 1, 2, 2, 2]);
  });

  it('are as high as their panels and battens, the largest at the bottom, and say what nobody weighed', () => {
    const [one] = stacksOf([panel(1), panel(2, { size: [1.2, 1], mass: null })], { depth: 0.05 });
    expect(one).toMatchObject({ size: [1.2, 1, 0.2], mass: 10, unweighed: 1 });
    expect(one?.panels[0]?.number).toBe('1-2');
    expect(() => stacksOf([], { most: 0 })).toThrow(
      'panels of a stack: found 0, expected more than 0',
    );
  });

  it('have what goes up first on top and what is taken down first at the bottom', () => {
    const turns = [2, 0, 1, 3];
    const stacks = stacksOf(
      turns.map((turn, i) => panel(i + 1, { turn, kind: String(turn % 2) })),
      { most: 3 },
    );
    expect(stacks.map((one) => one.panels.map(({ number }) => number))).toEqual([
      ['1-1', '1-3', '1-2'],
      ['1-4'],
    ]);
    expect(kindsIn(stacks[0]?.panels ?? [])).toBe('2 × 0, 1 × 1');
  });

  it('begin anew above their height, and where one would lie on a shorter one by over a tenth', () => {
    // Battens of 0.1 m and 0.1 m a panel: nine in 1 m.
    const high = stacksOf(heap(20), { depth: 0.1, most: 50, mass: 1000, height: 1 });
    expect(high.map((one) => one.panels.length)).toEqual([9, 9, 2]);
    expect(high[0]?.size[2]).toBeCloseTo(1, 12);
    const lengths = (long: number) =>
      stacksOf([panel(1, { turn: 0 }), panel(2, { turn: 1, size: [long, 0.9] })]).length;
    expect([lengths(0.92), lengths(0.9)]).toEqual([1, 2]);
  });

  it('keep several open, so that sizes in turn make no stack for each', () => {
    const mixed = Array.from({ length: 12 }, (_, i) =>
      panel(i + 1, { turn: i, size: i % 2 === 0 ? [1, 1] : [0.8, 0.8] }),
    );
    expect(stacksOf(mixed).map((one) => one.panels.map(({ turn }) => turn))).toEqual([
      [10, 8, 6, 4, 2, 0],
      [11, 9, 7, 5, 3, 1],
    ]);
  });

  it('let a panel that is over the mass lie alone', () => {
    const stacks = stacksOf(heap(3, { mass: 200 }), { mass: 150 });
    expect(stacks.map(({ mass }) => mass)).toEqual([200, 200, 200]);
  });
});

describe('what hands load', () => {
  it('is the lifting equation off the ground, and of the sum what a team does', () => {
    // 23 × 0.25/0.35 × (1 − 0.3 × 0.6) × (0.82 + 0.045/0.6) × 0.95 (frequency) × 0.95 (coupling).
    const one = 23 * (0.25 / 0.35) * 0.82 * 0.895 * 0.95 * 0.95;
    expect(loadsByHand(1)).toBeCloseTo(one, 9);
    expect(loadsByHand(1)).not.toBeCloseTo(1.1 * one, 1);
    expect(loadsByHand(2)).toBeCloseTo((4 / 3) * one, 9);
    expect(loadsByHand()).toBeCloseTo(1.5 * one, 9);
    expect(() => loadsByHand(5)).toThrow('people is 5');
  });
});
