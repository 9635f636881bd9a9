import { describe, expect, it } from 'vitest';
import { type PackedPanel, stacksOf, tripsOf } from '../../src/papers/packing.ts';

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
const van = { name: 'van', length: 2, width: 1, height: 2, payload: 1000 };

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
});

describe('trips', () => {
  it('take every stack once, never over the load', () => {
    const stacks = stacksOf(heap(200), { most: 10 });
    const { trips, left } = tripsOf(stacks, { ...van, payload: 350 });
    expect(left).toEqual([]);
    expect(trips.flatMap((one) => one.stacks).sort((a, b) => a - b)).toEqual(
      stacks.map(({ number }) => number),
    );
    for (const { mass } of trips) expect(mass).toBeLessThanOrEqual(350);
  });

  it('put as many side by side and on each other as the room holds', () => {
    // Two by one on the floor of 2 x 1 m, 0.7 m high each: two on each other in 2 m.
    const stacks = stacksOf(heap(60), { most: 10 });
    expect(tripsOf(stacks, van).trips.map((one) => one.stacks.length)).toEqual([4, 2]);
    expect(tripsOf(stacks, { ...van, height: 0.7 }).trips[0]?.stacks).toHaveLength(2);
  });

  it('name what does not go in, and why', () => {
    const why = (more: Partial<typeof van>): string | undefined =>
      tripsOf(stacksOf(heap(10)), { ...van, ...more }).left[0]?.why;
    expect(why({ payload: 50 })).toContain('it weighs 100 kg, the load may be 50 kg');
    expect(why({ height: 0.5 })).toContain('it is 0.70 m high, the room 0.50 m');
    expect(why({ width: 0.5 })).toContain('it is 1.00 × 0.90 m, the floor 2.00 × 0.50 m');
    expect(() => tripsOf([], { ...van, length: 0 })).toThrow('length of van: found 0');
  });
});
