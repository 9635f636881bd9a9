// What several people lift together: less than the sum of what each lifts alone.

import {
  commonPractice,
  confirmed,
  type Provenance,
  type Sourced,
} from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';

/** More than this are unlikely to work together (HSE). */
export const MOST_TEAM = 4;

const HSE: Provenance = confirmed(
  'HSE L23, team handling: two lift two thirds of the sum, three half; more than four are unlikely to work',
);
const FOUR: Provenance = commonPractice('four people count as three: half of the sum is for three');
const ONE: Provenance = commonPractice('what one person lifts close in at waist height');

/** Part of the sum of what each lifts that a team lifts: 1, 2/3, 1/2, and for four no more than three
 * lift. RangeError unless 1 to 4 people. */
export function teamFactor(people: number): Sourced {
  if (!(Number.isInteger(people) && people >= 1 && people <= MOST_TEAM))
    throw new RangeError(`people is ${people}, expected 1 to ${MOST_TEAM}`);
  if (people === 1) return { value: 1, sources: [] };
  if (people === 2) return { value: 2 / 3, sources: [HSE] };
  return people === 3 ? { value: 1 / 2, sources: [HSE] } : { value: 3 / 8, sources: [HSE, FOUR] };
}

/** What a team lifts close in at waist height, kg; `each`: what one of them does. */
export function teamLifts(people: number, each: number): Sourced {
  assertNumber('each', each, 0);
  const factor = teamFactor(people);
  return { value: people * each * factor.value, sources: [ONE, ...factor.sources] };
}

/** The fewest people that lift a mass, kg, at waist height; null where four do not. */
export function fewestPeople(mass: number, each: number): number | null {
  assertNumber('mass', mass, 0);
  for (let people = 1; people <= MOST_TEAM; people++)
    if (teamLifts(people, each).value >= mass - 1e-9) return people;
  return null;
}
