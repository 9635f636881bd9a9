import { doorOutline, type Opening, openingsFor } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  clockwise,
  type DoorContent,
  doorRanks,
  kindsOut,
  offBy,
  sortsOf,
} from '../../src/sheets/places/door/doors.ts';
import { courses, kinds, shell } from './notation.ts';

const content: DoorContent = {
  shell,
  kinds,
  course: courses.course,
  family: Array.from(shell.kind),
  short: kinds.map(() => 0),
};
const edgeOf = ({ reveal }: Opening) => reveal.reduce((sum, { length }) => sum + length, 0);
const openingsOf = (...args: Parameters<typeof sortsOf>) =>
  sortsOf(...args).map(({ opening }) => opening);
const found = openingsFor(shell, { outline: doorOutline(0.7, 1) });

describe('sorts of openings', () => {
  it('are there to be sorted', () => {
    expect(found.length).toBeGreaterThan(3);
  });

  it('have no two that cost the same, and leave none out', () => {
    const key = (one: (typeof found)[number]) =>
      JSON.stringify([kindsOut(content, one), one.seamsCut, edgeOf(one).toFixed(3)]);
    const sorts = openingsOf(found, content, 'fewest panels', 0);
    expect(new Set(sorts.map(key))).toEqual(new Set(found.map(key)));
    expect(sorts.length).toBeLessThan(found.length);
  });

  it('come best first by what they are ranked by', () => {
    const costs = {
      'fewest panels': ({ places }: Opening) => places.length,
      'least harm': ({ seamsCut, hubsFreed }: Opening) => seamsCut + hubsFreed,
      'shortest edge': (one: Opening) => Math.round(1e6 * edgeOf(one)),
    } as const;
    for (const rank of ['fewest panels', 'least harm', 'shortest edge'] as const) {
      const list = openingsOf(found, content, rank, 0).map(costs[rank]);
      expect(list).toEqual([...list].sort((a, b) => a - b));
    }
  });

  it('lie to the lee where they are ranked by a wind that is known', () => {
    const windFrom = 0.3;
    const [first] = openingsOf(found, { ...content, windFrom }, 'away from wind', windFrom);
    expect(first && offBy(first, windFrom)).toBe(Math.max(...found.map((o) => offBy(o, windFrom))));
    expect(doorRanks(false)).not.toContain('away from wind');
    expect(doorRanks(true)).toContain('away from wind');
  });

  it('are each told by the one nearest to where the door is wanted', () => {
    for (const towards of [0, 1, -2.5])
      for (const one of openingsOf(found, content, 'fewest panels', towards)) {
        const key = JSON.stringify([kindsOut(content, one), one.seamsCut, edgeOf(one).toFixed(3)]);
        const alike = found.filter(
          (other) =>
            JSON.stringify([kindsOut(content, other), other.seamsCut, edgeOf(other).toFixed(3)]) ===
            key,
        );
        expect(offBy(one, towards)).toBe(Math.min(...alike.map((other) => offBy(other, towards))));
      }
  });
});

describe('what an opening saves', () => {
  it('is no more than is short of each kind', () => {
    const saved = (short: number) =>
      sortsOf(found.slice(0, 1), { ...content, short: kinds.map(() => short) }, 'stock saved', 0)[0]
        ?.figures.saved;
    const [one] = found;
    if (!one) throw new Error('no opening');
    expect(saved(100)).toBe(one.places.length);
    expect(saved(1)).toBe(kindsOut(content, one).length);
    expect(saved(0)).toBe(0);
  });
});

describe('a direction', () => {
  it('is told clockwise from the datum in whole degrees', () => {
    const turn = (degrees: number) => clockwise((degrees * Math.PI) / 180);
    expect([turn(0), turn(-90), turn(90), turn(359.8), turn(-0.2)]).toEqual([0, 90, 270, 0, 0]);
  });
});
