// How long the order of work takes: `npm run bench -- raise`. A ball of 500 places cut to about 320, fives
// and sixes made up low as far as four people lift them: the first plan in which every stage stands, and
// the better one that the app waits for; then what is to be done now, on the same plan.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { nowPlan } from '../src/crew/now.ts';
import { crewSection } from '../src/crew/schema.ts';
import { gearSection } from '../src/raise/gear.ts';
import { liftOf } from '../src/raise/lifts/lift.ts';
import { pieceModel, pieceOf } from '../src/raise/lifts/piece.ts';
import { plainBrief, planRaising } from '../src/raise/order/raise.ts';
import { coursesOf } from '../src/shell/courses.ts';
import { placeCount } from '../src/shell/shell.ts';
import { builtShell } from './built-shell.ts';

/** Wanted, seconds: the first plan, the improved one, and what to do now. */
const WANTED = { first: 10, improved: 60, now: 1 } as const;
/** Orders tried, and seconds, as the app allows at most. */
const TRIES = 1200;
const SEARCH = 48;
/** Radius, metres, and mass of a panel, kilograms. */
const RADIUS = 4;
const MASS = 9;

/** Prints what it finds. */
export function main(): readonly Line[] {
  const shell = builtShell(RADIUS);
  const { numbers } = coursesOf(shell);
  const gear = gearSection.parse({
    ladders: [{ name: 'stepladder', length: 3.6 }],
    towers: [{ name: 'tower', height: 6, base: [2.4, 2] }],
  });
  const massOf = () => ({ value: MASS, sources: [] });
  const model = pieceModel(shell, numbers, massOf);
  const plain = plainBrief(shell);
  const brief = {
    ...plain,
    makeUp: {
      mayLift: (places: readonly number[]) =>
        liftOf(pieceOf(model, places), gear, { gust: null }).best !== null,
      highest: plain.rates.reach,
    },
  };
  const begun = process.cpuUsage().user;
  const used = (): number => (process.cpuUsage().user - begun) / 1e6;
  let first = Number.POSITIVE_INFINITY;
  let firstCost = Number.NaN;
  const made = planRaising(brief, {
    tries: TRIES,
    shouldStop: () => used() > SEARCH,
    onPlan: ({ cost }) => {
      first = used();
      firstCost = cost.total;
    },
  });
  const improved = used();
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  const plan = made.value;
  console.log(
    `${placeCount(shell)} places, ${plan.stages.length} stages, ${plan.cost.propsMoved} props, ${plan.tried} orders tried`,
  );
  console.log(
    `weighed hours: first plan ${firstCost.toFixed(1)}, improved ${plan.cost.total.toFixed(1)}`,
  );
  console.log(`first plan ${first.toFixed(1)} s at work (wanted ${WANTED.first} or less)`);
  console.log(`improved ${improved.toFixed(1)} s at work (wanted ${WANTED.improved} or less)`);
  const crew = crewSection.parse({
    dates: ['2026-06-12', '2026-06-13'],
    people: Array.from({ length: 12 }, (_, i) => ({
      name: `helper ${i + 1}`,
      climbs: i % 2 === 0,
      leads: i % 4 === 0,
      shifts: ['2026-06-12', '2026-06-13'].map((date) => ({ date, from: '08:00', to: '18:00' })),
    })),
  });
  const winds = plan.stages.map(({ number }) => ({
    ...{ stage: number, stopWork: 11, leave: 18, unknown: [], propsHold: true },
  }));
  const here = {
    ...{ date: '2026-06-12', time: '11:00', people: 6, climb: 2, lead: 1 },
    ...{ lightHours: 3, gust: 5, stage: 3, lifts: 1 },
  };
  const holes = () => 5;
  const before = process.cpuUsage().user;
  const asked = nowPlan({
    ...{ shell, numbers, plan, holes, massOf, gear, crew, winds, here },
    anchors: 30,
  });
  const now = (process.cpuUsage().user - before) / 1e6;
  if (!asked.ok) throw new Error(JSON.stringify(asked.faults));
  console.log(
    `now, ${asked.value.cards.length} cards, ${now.toFixed(2)} s at work (wanted ${WANTED.now} or less; slowed four times 4)`,
  );
  return [
    {
      what: 'first plan of 325 places, every stage stands',
      found: first,
      unit: 's',
      wanted: WANTED.first,
    },
    { what: 'improved plan', found: improved, unit: 's', wanted: WANTED.improved },
    { what: 'what to do now, on that plan', found: now, unit: 's', wanted: WANTED.now },
  ];
}
