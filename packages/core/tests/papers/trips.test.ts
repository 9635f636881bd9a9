import { describe, expect, it } from 'vitest';
import type { PackedStack } from '../../src/papers/packing.ts';
import { tripsOf } from '../../src/papers/trips.ts';

const stack = (number: number, more: Partial<PackedStack> = {}): PackedStack => ({
  number,
  course: 1,
  panels: ['a', 'b'].map((end) => ({
    ...{ number: `1-0${number}${end}`, kind: '1', course: 1, mass: 50 },
    size: [1, 0.9],
  })),
  mass: 100,
  unweighed: 0,
  size: [1, 0.9, 0.7],
  ...more,
});
const row = (count: number, more: Partial<PackedStack> = {}): PackedStack[] =>
  Array.from({ length: count }, (_, i) => stack(i + 1, more));
const van = { name: 'van', length: 2, width: 1, height: 2, payload: 1000 };

describe('trips', () => {
  it('take every stack once, never over the load, and fill it', () => {
    const { trips, left } = tripsOf(row(20), { ...van, length: 50, payload: 350 });
    expect(left).toEqual([]);
    expect(trips.flatMap((one) => one.stacks)).toEqual(row(20).map(({ number }) => number));
    // Three of 100 kg in 350; 20 = 6 × 3 + 2.
    expect(trips.map(({ mass }) => mass)).toEqual([300, 300, 300, 300, 300, 300, 200]);
  });

  it('have what goes up first nearest the door and on top', () => {
    // A floor of 2 × 1 m takes two of 0.9 m along; 2 m of height two of 0.7 m.
    const [one, two] = tripsOf(row(6), van).trips;
    expect(one?.rows).toEqual([[[1, 2]], [[3, 4]]]);
    expect(two?.rows).toEqual([[[5, 6]]]);
    expect(tripsOf(row(6), { ...van, height: 1.3 }).trips[0]?.rows).toEqual([[[1]], [[2]]]);
    // 1.8 m wide: two lie side by side with their shorter side across, one metre along.
    expect(tripsOf(row(4), { ...van, width: 1.8, height: 1 }).trips[0]?.rows).toEqual([
      [[1], [2]],
      [[3], [4]],
    ]);
  });

  it('never lay a stack under one that is longer by over a tenth', () => {
    const under = (long: number) =>
      tripsOf([stack(1), stack(2, { size: [long, 0.9, 0.7] })], van).trips[0]?.rows;
    expect(under(0.92)).toEqual([[[1, 2]]]);
    expect(under(0.9)).toEqual([[[1]], [[2]]]);
  });

  it('refuse by name what goes in neither lying nor on edge, with the room that it needs', () => {
    const found = (more: Partial<typeof van>) => tripsOf([stack(1)], { ...van, ...more });
    const why = (more: Partial<typeof van>): string | undefined => found(more).left[0]?.why;
    expect(why({})).toBeUndefined();
    expect(why({ payload: 50 })).toContain('it weighs 100 kg, the load may be 50 kg');
    expect(why({ height: 0.5 })).toContain('it is 0.70 m high, the room 0.50 m');
    expect(why({ width: 0.8 })).toBe(
      'lying it needs a floor of 1.00 × 0.90 m, the room is 2.00 × 0.80 m and 2.00 m high: it goes in on edge, on 1.00 × 0.70 m of floor and 0.90 m high, well tied',
    );
    expect(why({ width: 0.8, height: 0.95 })).toContain('it goes in on edge');
    expect(why({ width: 0.8, height: 0.85 })).toBe(
      'lying it needs a floor of 1.00 × 0.90 m, on edge 1.00 × 0.70 m and 0.90 m of height, the room is 2.00 × 0.80 m and 0.85 m high: find a larger one',
    );
    expect(found({ width: 0.5 })).toMatchObject({
      trips: [],
      left: [{ panels: ['1-01a', '1-01b'] }],
    });
    expect(() => found({ length: 0 })).toThrow('length of van: found 0, expected more than 0');
  });
});
