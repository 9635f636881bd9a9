// The revised lifting equation as an index: how a load compares with what nearly all healthy workers may
// lift over a shift, two hands, close to the body, indoors. Lengths in the unit of the constants taken.
//
// Source: Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS
// (NIOSH) 94-110, 1994, revised 9/2021: the equation with tables 1 to 7.

import { confirmed, type Provenance } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';

/** The constants of the equation in one system of units. */
export interface LiftConstants {
  /** Load constant. */
  readonly load: number;
  /** Hands' distance in front of the ankles: below `near` it counts as that, beyond `far` nothing may be
   * lifted. */
  readonly near: number;
  readonly far: number;
  /** Height of the hands: none is lost at `knuckle`, `perHeight` for each unit off it, nothing above
   * `highest`. */
  readonly knuckle: number;
  readonly perHeight: number;
  readonly highest: number;
  /** Travel: multiplier 0.82 + `travel` / D; below `shortest` it counts as that, nothing beyond
   * `longest`. */
  readonly travel: number;
  readonly shortest: number;
  readonly longest: number;
}

/** Kilograms and metres. */
export const METRIC_LIFT: LiftConstants = {
  load: 23,
  near: 0.25,
  far: 0.63,
  knuckle: 0.75,
  perHeight: 0.3,
  highest: 1.75,
  travel: 0.045,
  shortest: 0.25,
  longest: 1.75,
};

/** Pounds and inches, as the manual's examples are given. */
export const INCH_LIFT: LiftConstants = {
  load: 51,
  near: 10,
  far: 25,
  knuckle: 30,
  perHeight: 0.0075,
  highest: 70,
  travel: 1.8,
  shortest: 10,
  longest: 70,
};

/** How well hands hold it: handles or a grip right round; a flange edge; bulky or sharp. */
export type Coupling = 'good' | 'fair' | 'poor';

/** One lift as the equation asks for it. */
export interface LiftTask {
  /** Hands in front of the ankles. */
  readonly reach: number;
  /** Height of the hands above the floor. */
  readonly height: number;
  /** How far the hands go up or down. */
  readonly travel: number;
  /** Twist of the body, radians. */
  readonly twist: number;
  /** Lifts a minute. */
  readonly perMinute: number;
  /** Hours of it, with rests as the manual asks. */
  readonly hours: 1 | 2 | 8;
  readonly coupling: Coupling;
}

/** What each circumstance leaves of the load constant, in the manual's order. */
export interface LiftMultipliers {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly asymmetric: number;
  readonly frequency: number;
  readonly coupling: number;
}

const PER_MINUTE = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15];
const ONE_HOUR = [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37];
const TWO_HOURS = [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26];
const EIGHT_HOURS = [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18];
/** Low and high hands: the table goes further where the hands are at knuckle height or above. */
const FREQUENCY: Readonly<Record<1 | 2 | 8, readonly [low: number[], high: number[]]>> = {
  1: [ONE_HOUR, [...ONE_HOUR, 0.34, 0.31, 0.28]],
  2: [TWO_HOURS, [...TWO_HOURS, 0.23, 0.21]],
  8: [EIGHT_HOURS, [...EIGHT_HOURS, 0.15, 0.13]],
};
const COUPLING: Readonly<Record<Coupling, readonly [low: number, high: number]>> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
};

/** The six multipliers, each 0 where the equation allows no lift. A frequency between two of the table
 * counts as the higher one. RangeError for a length, frequency or twist below 0. */
export function liftMultipliers(task: LiftTask, by: LiftConstants = METRIC_LIFT): LiftMultipliers {
  for (const key of ['reach', 'height', 'travel', 'twist', 'perMinute'] as const)
    assertNumber(key, task[key], 0);
  const high = task.height >= by.knuckle ? 1 : 0;
  const row = PER_MINUTE.findIndex((listed) => task.perMinute <= listed + 1e-9);
  return {
    horizontal: task.reach > by.far ? 0 : by.near / Math.max(by.near, task.reach),
    vertical: task.height > by.highest ? 0 : 1 - by.perHeight * Math.abs(task.height - by.knuckle),
    distance: task.travel > by.longest ? 0 : 0.82 + by.travel / Math.max(by.shortest, task.travel),
    asymmetric: task.twist > MOST_TWIST ? 0 : 1 - 0.0032 * ((task.twist * 180) / Math.PI),
    frequency: (row < 0 ? 0 : FREQUENCY[task.hours][high][row]) ?? 0,
    coupling: COUPLING[task.coupling][high],
  };
}

/** 135°. A millionth of a radian is rounding. */
const MOST_TWIST = (3 * Math.PI) / 4 + 1e-6;

/** The recommended weight limit, in the unit of the constants; 0 where no lift is allowed. */
export function recommendedWeight(task: LiftTask, by: LiftConstants = METRIC_LIFT): number {
  const m = liftMultipliers(task, by);
  return by.load * m.horizontal * m.vertical * m.distance * m.asymmetric * m.frequency * m.coupling;
}

/** The lifting index: load over recommended weight; Infinity where no lift is allowed. */
export const liftIndex = (load: number, recommended: number): number =>
  recommended > 0 ? load / recommended : Infinity;

/** Source of the equation. */
export const NIOSH: Provenance = confirmed(
  'Revised NIOSH lifting equation, DHHS (NIOSH) 94-110, 1994, revised 9/2021',
);

/** Where the equation says nothing, in words: a shell is raised outside most of its limits. */
export const NIOSH_LIMITS =
  'An index only: the equation is for two-handed lifts by one person, standing, load steady, 19-26 °C, sure footing; it says nothing of carrying, wind, ladders, mud or lifts by several.';
