import { describe, expect, it } from 'vitest';
import {
  INSPECTIONS,
  inspectionCalendar,
  repaintYears,
  snowTriggers,
  stormRound,
} from '../../src/fitout/upkeep.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { placeCentre } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { cutBall } from '../stages/fixtures.ts';

const shell = cutBall(3, 105);

describe('the calendar', () => {
  it('has every inspection on its first day and again, in order of days', () => {
    const days = inspectionCalendar('2026-06-12', 400);
    expect(days[0]).toEqual({ date: '2026-06-13', what: [INSPECTIONS[1].what] });
    expect(days.map(({ date }) => date)).toEqual(days.map(({ date }) => date).toSorted());
    for (const { what, first, every } of INSPECTIONS) {
      const times = days.filter((day) => day.what.includes(what)).length;
      expect(times).toBe(1 + Math.floor((400 - first) / every));
    }
  });
  it('refuses a date that is none', () => {
    expect(() => inspectionCalendar('2026-13-01', 10)).toThrow(/2026-13-01/);
  });
});

describe('the round after a storm', () => {
  const round = stormRound(shell, 0.5);
  it('comes by every place once, course by course from the ground', () => {
    expect(round.toSorted((a, b) => a - b)).toEqual([...Array(placeCount(shell)).keys()]);
    const { course } = coursesOf(shell);
    const walked = round.map((place) => course[place]);
    expect(walked).toEqual(walked.toSorted((a, b) => a - b));
  });
  it('begins on the side of the wind and steps from neighbour to neighbour', () => {
    const azimuth = (place: number) => {
      const [x, y] = placeCentre(shell, place as PlaceId);
      return Math.atan2(y, x);
    };
    expect(Math.abs(azimuth(round[0]) - 0.5)).toBeLessThan(0.3);
  });
});

it('snow is cleared at 0.6 and left alone by people at 0.8 of the load checked', () => {
  const wet = snowTriggers(1000).find(({ snow }) => snow === 'wet')!;
  expect(wet.clear).toBeCloseTo(600 / (400 * 9.80665), 12);
  expect(wet.leave / wet.clear).toBeCloseTo(4 / 3, 12);
  expect(() => snowTriggers(0)).toThrow(/snow load checked is 0 Pa/);
});

it('coats come at their spans', () => {
  expect(repaintYears(2026, 8, 2045)).toEqual([2034, 2042]);
});
