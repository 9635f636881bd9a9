import { describe, expect, it } from 'vitest';
import type { Carry } from '../../src/fitout/carry.ts';
import { lastPassing } from '../../src/fitout/carry-last.ts';
import { bodyOf } from '../../src/passage/body.ts';
import { isClearMotion } from '../../src/passage/clear.ts';
import { HAND_HEIGHT } from '../../src/passage/passing.ts';
import { barrierOf } from '../../src/passage/wall.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';

const shell = cutBall(2, 60);
const order = inNumberOrder(shell);
const flange = 0.01;
const question = { shell, leftOut: [], order, flange };
const box = (size: readonly [number, number, number]): Carry => ({
  name: 'crate',
  shape: { form: 'box', size: [size[0], size[1], size[2]] },
  roughly: false,
});
const few = { crossings: 500, allMovements: 120, movements: 60 };

describe('the latest moment at which a thing passes the shell while it is built', () => {
  const crate = box([0.5, 0.45, 0.3]);
  const told = lastPassing(question, crate, few);

  it('has its way, clear of what stands then, and none was found with one panel more', () => {
    const { placed, carried } = told.last!;
    expect(told.after!.placed).toBe(placed + 1);
    expect(told.after!.answer.status).not.toBe('passes');
    expect(carried.placed).toEqual(order.slice(0, placed));
    if (carried.answer.status !== 'passes') throw new Error(carried.answer.status);
    const scene = {
      body: bodyOf(crate.shape),
      barrier: barrierOf(shell, order.slice(0, placed), flange),
      carried: { by: 'hands', rise: HAND_HEIGHT } as const,
    };
    expect(isClearMotion(scene, carried.answer.motion)).toBe(true);
    // The twin: the whole shell stands in that way.
    expect(
      isClearMotion({ ...scene, barrier: barrierOf(shell, order, flange) }, carried.answer.motion),
    ).toBe(false);
  });

  it('comes later for a smaller thing, and is the finished shell where that has an opening', () => {
    const small = lastPassing(question, box([0.25, 0.2, 0.15]), few);
    expect(small.last!.placed).toBeGreaterThan(told.last!.placed);
    const open = lastPassing(
      { ...question, leftOut: order.slice(0, 8) },
      box([0.1, 0.1, 0.1]),
      few,
    );
    expect(open).toMatchObject({ after: null, panels: placeCount(shell) - 8 });
    expect(open.last!.placed).toBe(placeCount(shell) - 8);
  });

  it('is none for what fits nowhere inside, and progress goes on to the end', () => {
    const parts: number[] = [];
    const none = lastPassing(question, box([3, 3, 3]), {
      ...few,
      onProgress: (part) => parts.push(part),
    });
    expect(none.last).toBeNull();
    expect(none.after!.placed).toBe(0);
    expect(parts.every((part, i) => part >= (parts[i - 1] ?? 0) && part <= 1)).toBe(true);
  });
});
