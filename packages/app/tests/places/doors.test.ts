import { doorOutline, openingsFor } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  clockwise,
  type DoorContent,
  frameLength,
  kindsOut,
  offBy,
  saves,
  sortsOf,
} from '../../src/sheets/places/door/doors.ts';
import { courses, kinds, shell } from './notation.ts';

const content: DoorContent = { shell, kinds, course: courses.course, short: kinds.map(() => 0) };
const found = openingsFor(shell, { outline: doorOutline(0.7, 1) });

describe('sorts of openings', () => {
  it('are there to be sorted', () => {
    expect(found.length).toBeGreaterThan(3);
  });

  it('have no two that cost the same, and leave none out', () => {
    const key = (one: (typeof found)[number]) =>
      JSON.stringify([kindsOut(content, one), one.seamsCut, frameLength(one).toFixed(3)]);
    const sorts = sortsOf(found, content, 'places', 0);
    expect(new Set(sorts.map(key))).toEqual(new Set(found.map(key)));
    expect(sorts.length).toBeLessThan(found.length);
  });

  it('come best first by what they are ranked by', () => {
    const costs = {
      places: (one: (typeof found)[number]) => one.places.length,
      seams: (one: (typeof found)[number]) => one.seamsCut,
      frame: frameLength,
    };
    for (const [rank, cost] of Object.entries(costs)) {
      const list = sortsOf(found, content, rank as keyof typeof costs, 0).map(cost);
      expect(list).toEqual([...list].sort((a, b) => a - b));
    }
  });

  it('are each told by the one nearest to where the door is wanted', () => {
    for (const towards of [0, 1, -2.5])
      for (const one of sortsOf(found, content, 'places', towards)) {
        const key = JSON.stringify([
          kindsOut(content, one),
          one.seamsCut,
          frameLength(one).toFixed(3),
        ]);
        const alike = found.filter(
          (other) =>
            JSON.stringify([
              kindsOut(content, other),
              other.seamsCut,
              frameLength(other).toFixed(3),
            ]) === key,
        );
        expect(offBy(one, towards)).toBe(Math.min(...alike.map((other) => offBy(other, towards))));
      }
  });
});

describe('what an opening saves', () => {
  it('is no more than is short of each kind', () => {
    const [one] = found;
    if (!one) throw new Error('no opening');
    const all = { ...content, short: kinds.map(() => 100) };
    expect(saves(all, one)).toBe(one.places.length);
    expect(saves({ ...content, short: kinds.map(() => 1) }, one)).toBe(
      kindsOut(content, one).length,
    );
    expect(saves(content, one)).toBe(0);
  });
});

describe('a direction', () => {
  it('is told clockwise from the datum in whole degrees', () => {
    const turn = (degrees: number) => clockwise((degrees * Math.PI) / 180);
    expect([turn(0), turn(-90), turn(90), turn(359.8), turn(-0.2)]).toEqual([0, 90, 270, 0, 0]);
  });
});
