import { describe, expect, it } from 'vitest';
import { openingsFor } from '../../src/arrange/openings/openings.ts';
import { floorOf } from '../../src/fitout/brief.ts';
import { type Carry, carryThrough } from '../../src/fitout/carry.ts';
import { waySheets } from '../../src/papers/way-sheet.ts';
import { outside } from '../papers/sheet-checks.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';

const shell = cutBall(4, 160);
const r = shell.radius;
const door = openingsFor(shell, {
  outline: [
    [-0.12 * r, 0],
    [0.12 * r, 0],
    [0.12 * r, 0.5 * r],
    [-0.12 * r, 0.5 * r],
  ],
})[0];
if (door === undefined) throw new Error('no door');
const question = {
  shell,
  leftOut: door.places,
  order: inNumberOrder(shell),
  placed: null,
  flange: 0.01 * r,
};
const box = (size: readonly [number, number, number], roughly = false): Carry => ({
  name: 'crate',
  shape: { form: 'box', size: [size[0] * r, size[1] * r, size[2] * r] },
  roughly,
});

describe('what must pass', () => {
  it('passes the door, with its motion drawn', () => {
    const told = carryThrough(question, box([0.15, 0.1, 0.1]));
    expect(told.answer.status).toBe('passes');
    expect(told.seen.length).toBeGreaterThan(1);
    const [sheet] = waySheets(
      { shell, numbers: [], leftOut: door.places, floor: floorOf(shell), carried: told },
      { project: 'Try', sheet: '7 Fit-out', date: '1 May 2026', assumes: 'nothing' },
    );
    if (sheet === undefined) throw new Error('no sheet');
    expect(outside(sheet)).toEqual([]);
    expect(sheet.title).toBe('Try: crate passes');
  });

  it('is shown not to pass where it is far larger, and no more is said of a shape that only holds it', () => {
    const few = { crossings: 200, allMovements: 50, movements: 20 };
    const large = carryThrough(question, box([1.2, 0.9, 0.9]), few);
    expect(large.answer.status).toBe('cannot pass');
    const rough = carryThrough(question, box([1.2, 0.9, 0.9], true), few);
    expect(rough.answer.status).toBe('not found');
    expect(rough.answer.status === 'not found' && rough.answer.why).toMatch(
      /with its hollows it may/,
    );
  });

  it('passes the shell before it is closed', () => {
    const large = box([0.6, 0.5, 0.3]);
    expect(carryThrough({ ...question, placed: 40 }, large).answer.status).toBe('passes');
    expect(
      carryThrough(question, large, { crossings: 300, allMovements: 50, movements: 20, cells: 0 })
        .answer.status,
    ).not.toBe('passes');
  });
});
