import { describe, expect, it } from 'vitest';
import { likeliestOf, tellsApart } from '../../src/sheets/shape/outcomes.ts';
import { layStar } from '../../src/sheets/shape/star.ts';
import { kind } from './notation.ts';

const around = (count: number) => Array.from({ length: count }, () => ({ kind: 'a', side: 0 }));
const gapOf = (star: ReturnType<typeof layStar>): number => {
  const [[ax, ay], [bx, by]] = star?.gap ?? [
    [NaN, NaN],
    [NaN, NaN],
  ];
  return Math.hypot(ax - bx, ay - by);
};

describe('a star laid flat', () => {
  it('closes with six even triangles', () => {
    const even = kind('a', [1, 1, 1]);
    const star = layStar({ around: around(6) }, [even], [even.sides]);
    expect(star?.panels).toHaveLength(6);
    expect(gapOf(star)).toBeCloseTo(0, 9);
  });

  it('gapes by a sixth of the turn with five, about straight up', () => {
    const even = kind('a', [1, 1, 1]);
    const star = layStar({ around: around(5) }, [even], [even.sides]);
    expect(gapOf(star)).toBeCloseTo(1, 9);
    const [[ax, ay], [bx, by]] = star?.gap ?? [
      [0, 0],
      [1, 1],
    ];
    expect(ax).toBeCloseTo(-bx, 9);
    expect([ay, by].every((y) => y > 0.8)).toBe(true);
  });

  it('lays neighbours along one seam, anticlockwise', () => {
    const skew = kind('a', [1, 0.8, 0.9]);
    const other = kind('b', [0.9, 0.7, 1.1]);
    const star = layStar(
      {
        around: [
          { kind: 'a', side: 0 },
          { kind: 'b', side: 0 },
        ],
      },
      [skew, other],
      [skew.sides, other.sides],
    );
    const [first, second] = star?.panels ?? [];
    const [x, y] = first?.corners.at(-1) ?? [NaN, NaN];
    expect(second?.corners[1]?.[0]).toBeCloseTo(x, 9);
    expect(second?.corners[1]?.[1]).toBeCloseTo(y, 9);
  });

  it('is none where a kind is unknown', () => {
    expect(layStar({ around: around(3) }, [kind('b', [1, 1, 1])], [[1, 1, 1]])).toBeNull();
  });
});

describe('what a reading would tell', () => {
  it('is the likeliest shape of each find', () => {
    expect(likeliestOf([0.1, 0.8, 0.1])).toEqual({ index: 1, share: 0.8 });
    const finds = (a: number[], b: number[]) => ({
      outcomes: [
        { find: 'a', shapes: a },
        { find: 'b', shapes: b },
      ],
    });
    expect(tellsApart(finds([0.9, 0.1, 0], [0.1, 0.9, 0]))).toBe(true);
    expect(tellsApart(finds([1, 0], [1, 0]))).toBe(false);
  });
});
