import { describe, expect, it } from 'vitest';
import { stepOf } from '../../src/sheets/places/swipe.ts';

const from = { id: 1, x: 200, y: 300 };
const to = (clientX: number, clientY: number, pointerId = 1) =>
  stepOf(from, { clientX, clientY, pointerId });

describe('a finger drawn across', () => {
  it('goes on to the left and back to the right', () => {
    expect(to(100, 310)).toBe(1);
    expect(to(300, 290)).toBe(-1);
  });

  it('is none where it is short, slanting, or another finger', () => {
    expect(to(150, 300)).toBe(0);
    expect(to(100, 380)).toBe(0);
    expect(to(100, 300, 2)).toBe(0);
  });
});
