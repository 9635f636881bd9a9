// Keeping a shell: when to look, what to walk after a storm, when snow must come off, how often to paint.
// Spans are common practice; the snow's depth follows from the load that the check was made for.

import { dateOf, dayNumber } from '../crew/date.ts';
import { GRAVITY } from '../frame/frame-loads.ts';
import { assertBetween } from '../loads/doors.ts';
import { commonPractice, fromMemory, type Provenance } from '../loads/provenance.ts';
import { coursesOf } from '../shell/courses.ts';
import { placeCentre } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { placeCount, type Shell } from '../shell/shell.ts';

/** Sources of what is told here. */
export const UPKEEP_SOURCES: readonly Provenance[] = [
  commonPractice('spans between inspections and coats'),
  fromMemory('densities of snow: fresh 100, settled 200, old 350, wet 400 kg/m³'),
];

/** What is looked at, and how many days after standing, then every so many days. */
export const INSPECTIONS = [
  {
    what: 'bolts: a sample of each course by wrench, all that move marked and the rest done',
    first: 7,
    every: 182,
  },
  { what: 'anchors, stakes and guys: slack, movement, rust', first: 1, every: 91 },
  { what: 'seams and tape: lifted edges, drips, rust runs', first: 30, every: 182 },
  { what: 'panels: cracks at bolt holes, crazing, fibres showing', first: 182, every: 365 },
  { what: 'hub plates: cracked, loose, water under them', first: 30, every: 365 },
  { what: 'base ring and ground: settled, washed out, standing water', first: 14, every: 182 },
  { what: 'door, latches, vents and their nets', first: 30, every: 91 },
  { what: 'earth connections, by who made them', first: 365, every: 365 },
] as const;

/** A day of the calendar. */
export interface InspectionDay {
  readonly date: string;
  readonly what: readonly string[];
}

/** The inspections of the days after a shell stands, in order. RangeError for a date that is none. */
export function inspectionCalendar(standsFrom: string, days: number): InspectionDay[] {
  const start = dayNumber(standsFrom);
  if (start === null)
    throw new RangeError(`stands from ${standsFrom}, expected a date such as 2026-06-12`);
  assertBetween('days of the calendar', days, 1, 3660);
  const byDay = new Map<number, string[]>();
  for (const { what, first, every } of INSPECTIONS)
    for (let day = first; day <= days; day += every)
      byDay.set(day, [...(byDay.get(day) ?? []), what]);
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([day, what]) => ({ date: dateOf(start + day), what }));
}

/** The round after a storm as a walk: places in the order to look at, once round outside along each
 * course from the ground up, beginning on the side that the wind came from (radians from the datum) and
 * turning back at each course so that nobody walks round twice for nothing. */
export function stormRound(shell: Shell, windFrom: number): number[] {
  const { course, counts } = coursesOf(shell);
  const round = counts.map((): { place: number; turn: number }[] => []);
  for (let p = 0; p < placeCount(shell); p++) {
    const [x, y] = placeCentre(shell, p as PlaceId);
    const turn = Math.atan2(y, x) - windFrom;
    round[course[p] - 1].push({
      place: p,
      turn: turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI)),
    });
  }
  return round.flatMap((list, i) => {
    const sorted = list.sort((a, b) => a.turn - b.turn || a.place - b.place);
    return (i % 2 === 0 ? sorted : sorted.reverse()).map(({ place }) => place);
  });
}

/** Densities of snow, kg/m³, from memory. */
export const SNOW_DENSITY = { fresh: 100, settled: 200, old: 350, wet: 400 } as const;

/** How deep snow may lie before it must come off. */
export interface SnowTrigger {
  readonly snow: keyof typeof SNOW_DENSITY;
  /** Metres at which people go out to clear, and at which the shell is kept empty of people. */
  readonly clear: number;
  readonly leave: number;
}

/** Depths of snow on the level by what sort it is: at 60 % of the load that the snow check was made for
 * it is cleared, at 80 % nobody stays inside. `load`: snow on the ground of that check, pascals; it holds
 * for even snow and says nothing of drifts. RangeError for no load. */
export function snowTriggers(load: number): SnowTrigger[] {
  assertBetween('snow load checked', load, 1, 20_000, 'Pa');
  return (Object.keys(SNOW_DENSITY) as SnowTrigger['snow'][]).map((snow) => {
    const full = load / (SNOW_DENSITY[snow] * GRAVITY);
    return { snow, clear: 0.6 * full, leave: 0.8 * full };
  });
}

/** How to take snow off, once beside the depths. */
export const SNOW_WORDS =
  'Clear from the ground with a soft rake on a pole, both sides in turn, crown last: one side bare is worse than both laden. Nobody climbs on a laden shell, nobody stands under it.';

/** Years in which a coat is due, from the year painted. */
export const repaintYears = (painted: number, every: number, until: number): number[] => {
  assertBetween('years between coats', every, 1, 50);
  const years: number[] = [];
  for (let year = painted + every; year <= until; year += every) years.push(Math.round(year));
  return years;
};

/** Prompts for the specialist for lightning and earth; nothing of it is designed here. */
export const EARTH_PROMPTS: readonly string[] = [
  'Ask a lightning protection specialist whether the site needs a system at all: height, open ground, people, what burns.',
  'Give the specialist: plan and elevation of the shell, what conducts (bolts, plates, frame, dish, mount, cables) and what does not (laminate).',
  'Ask how mount, ring, door frame and cables are bonded, and where the one earth of the site is.',
  'Ask what each cable needs where it comes in: arresters, screens earthed at the entry, no loop between two earths.',
  'Ask for the readings of the earth to be written down and by whom they are repeated.',
  'Until that is answered: nobody inside or near in thunder; from the flash to the thunder under 30 s, stop; wait 30 minutes after the last.',
];

/** How a shell comes down again: common practice; the order of places is the raising's turned round. */
export const TAKING_DOWN: readonly string[] = [
  'A day without wind; the wind limits of the stages hold on the way down as on the way up.',
  'Before anything: dish and mount lowered, power off, everything out that passes through the door alone.',
  'Every panel gets a tag with its place while it still stands; photograph each course from inside.',
  'Props and guys go back in where the stages of the raising had them, before the first panel comes out.',
  'Cut the sealant of one course at a time, from the crown; slacken its bolts, then take panels out in their order.',
  'Bolts and washers of one stage into one bag with its number; bent or stripped ones apart.',
  'Panels stacked by course, on edge or flat on battens, outside up; never more than people can lift back.',
];
