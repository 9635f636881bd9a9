import { expect, test } from 'vitest';
import { crewSection, defaultCrew, ratesOf } from '../../src/crew/schema.ts';
import { projectFrom, writeProject } from '../../src/project/project.ts';

const faultsOf = (crew: unknown): string[] => {
  const read = projectFrom({ shellraise: 1, pile: {}, crew });
  return read.ok ? [] : read.faults.map(({ path, expected }) => `${path}: ${expected}`);
};

test('a project that says nothing of the crew has nobody, 40 % no-shows and three breaks', () => {
  expect(defaultCrew.people).toEqual([]);
  expect(defaultCrew.site).toBeNull();
  expect(defaultCrew.noShow).toBe(0.4);
  expect(defaultCrew.breaks.length).toBe(3);
  expect(ratesOf(defaultCrew).work.bolt.median).toBe(120);
});

test('what was entered is written and read back', () => {
  const crew = {
    site: { latitudeDeg: 51.5, longitudeDeg: -1.2, utcOffsetHours: 1 },
    dates: ['2026-06-12'],
    people: [
      { name: 'Ada', climbs: true, shifts: [{ date: '2026-06-12', from: '08:00', to: '18:00' }] },
    ],
    forecast: [{ at: '2026-06-12T09:00', mean: 4, gust: 9 }],
    rates: { bolt: { median: 80 } },
  };
  const read = projectFrom({ shellraise: 1, pile: {}, crew });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  expect(projectFrom(JSON.parse(writeProject(read.value)))).toEqual(read);
  expect(read.value.crew).toEqual(crewSection.parse(crew));
  expect(ratesOf(crewSection.parse(crew)).work.bolt).toEqual({
    median: 80,
    logSd: 0.35,
    scatter: 0.3,
    observed: 0,
  });
});

test('every fault is told with its place', () => {
  expect(faultsOf({ dates: ['2026-02-30'] })).toEqual(['crew.dates[0]: a date such as 2026-06-12']);
  expect(faultsOf({ breaks: [{ from: '12:00', to: '11:00' }] })[0]).toBe(
    'crew.breaks[0]: from before to',
  );
  expect(faultsOf({ breaks: [{ from: '8:00', to: '11:00' }] })[0]).toMatch(
    /a time of day such as 08:30/,
  );
  expect(faultsOf({ forecast: [{ at: '2026-06-12', mean: 1, gust: 2 }] })[0]).toMatch(
    /date and time/,
  );
  expect(faultsOf({ noShow: 1 })[0]).toMatch(/^crew.noShow/);
  expect(faultsOf({ people: [{ name: ' ' }] })[0]).toMatch(/^crew.people\[0\].name/);
});
