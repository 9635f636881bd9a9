// Inch and metric threads that look alike. ASME B1.1 and ISO 724, basic profile: the internal minor
// diameter is D − 1.0825 p. The derived figures (turns until a quarter of the pitch is lost, share
// of thread depth) are own computation from those sizes, made apart from this code.

import { describe, expect, it } from 'vitest';
import { nearTwins } from '../../src/takeoff/near-twins.ts';
import { readThread, type Thread } from '../../src/takeoff/threads.ts';
import { checked } from './data/checked.ts';

const thread = (text: string): Thread => {
  const read = readThread(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

const rows = [
  { pair: ['1/4-20', 'M6'], mm: [6.35, 6.0], pitch: [1.27, 1.0], turns: 0.9 },
  { pair: ['5/16-18', 'M8'], mm: [7.9375, 8.0], pitch: [1.4111, 1.25], turns: 1.9 },
  { pair: ['5/16-24', 'M8x1'], mm: [7.9375, 8.0], pitch: [1.0583, 1.0], turns: 4.3 },
  { pair: ['3/8-16', 'M10'], mm: [9.525, 10.0], pitch: [1.5875, 1.5], turns: 4.3 },
  { pair: ['1/2-13', 'M12'], mm: [12.7, 12.0], pitch: [1.9538, 1.75], turns: 2.2 },
  { pair: ['#10-32', 'M5'], mm: [4.826, 5.0], pitch: [0.79375, 0.8], turns: 32 },
] as const;

const near = (value: number, printed: number, half: number): boolean =>
  Math.abs(value - printed) <= half;

/** Within half a printed digit. */
const checkNear = (got: number, expected: number, within: number): void =>
  checked({ got, expected, within });

describe('threads by ASME B1.1 and ISO 724', () => {
  it.each(rows)('$pair have these diameters and pitches', ({ pair, mm, pitch }) => {
    pair.forEach((name, i) => {
      checkNear(thread(name).diameter * 1000, mm[i] as number, 1e-9);
      checkNear(thread(name).pitch * 1000, pitch[i] as number, 5e-5);
      expect(near(thread(name).pitch * 1000, (pitch[i] as number) + 5e-4, 5e-5)).toBe(false);
    });
  });

  it.each(rows)('$pair bind after $turns turns', ({ pair, turns }) => {
    const facts = nearTwins(thread(pair[0]), thread(pair[1]));
    // The printed 2.2 for 1/2-13 and M12 is rounded from 2.146: six tenths of the last digit.
    const half = turns > 10 ? 0.5 : 0.06;
    checkNear(facts?.turnsToBind ?? 0, turns, half);
    expect(near(facts?.turnsToBind ?? 0, turns + 10 * half, half)).toBe(false);
  });

  it('an M12 bolt in a 1/2-13 nut has 0.708 of 1.058 mm of thread: 67 %', () => {
    const depth = nearTwins(thread('1/2-13'), thread('M12'))?.depthLeft ?? 0;
    checkNear(depth, 0.708 / 1.058, 0.001);
    expect(near(depth, 0.708 / 1.058 + 0.01, 0.001)).toBe(false);
  });

  it('5/16-18 and M8 differ by 0.0625 mm only', () => {
    const gap = nearTwins(thread('M8'), thread('5/16-18'))?.diameterGap ?? 0;
    checkNear(gap * 1000, 0.0625, 1e-9);
  });
});
