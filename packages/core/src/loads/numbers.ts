// Every number of a code or law that can be argued about, in one table: its value, its range, how
// far it is confirmed. The lead can put another in its place with a reason, which is carried along.

import { assertBetween } from './doors.ts';
import {
  commonPractice,
  confirmed,
  fromMemory,
  type Provenance,
  type Sourced,
} from './provenance.ts';

/** One row of the table. */
export interface LoadNumber {
  /** What it is, in words for a screen. */
  readonly what: string;
  /** Unit, or '' for a bare number. */
  readonly unit: string;
  readonly value: number;
  /** What is allowed in its place. */
  readonly least: number;
  readonly most: number;
  readonly source: Provenance;
}

const row = (
  what: string,
  unit: string,
  value: number,
  [least, most]: readonly [number, number],
  source: Provenance,
): LoadNumber => ({ what, unit, value, least, most, source });

const FIGURE_DOME = 'ASCE 7-16 Fig. 27.3-2, EN 1991-1-4 Fig. 7.12';
const WALL = 'EN 1991-1-4:2005, Table 7.9';

/** The table. Keys are used in project files and never change their meaning. */
export const LOAD_NUMBERS = {
  airDensity: row(
    'air density',
    'kg/m³',
    1.25,
    [0.6, 1.6],
    confirmed('EN 1991-1-4:2005, 4.5 (air density 1.25 kg/m³)'),
  ),
  gustOverMean: row(
    'gust over reported mean wind',
    '',
    1.5,
    [1, 3],
    confirmed('NFRC wind limits for roofing (26/17 and 35/23 mph gust over mean)'),
  ),
  gustOverTenMinutes: row(
    '3-second gust over 10-minute mean, open country at 10 m',
    '',
    1.43,
    [1, 3],
    fromMemory('ASCE 7-16, Fig. C26.5-1 (1.52 and 1.06 over the hourly mean)'),
  ),
  shortExposureSpeed: row(
    'design speed while the shell stands less than six weeks, part of the full one',
    '',
    0.75,
    [0.5, 1],
    confirmed('ASCE 37 as quoted by Gorlin, J. Archit. Eng. 15(2) 2009 (0.75² of the load)'),
  ),
  topography: row(
    'topographic factor (Kzt; co² in EN 1991-1-4), 1 on flat ground',
    '',
    1,
    [0.5, 4],
    commonPractice('flat ground'),
  ),
  asceDirectionality: row(
    'wind directionality Kd of a round dome',
    '',
    1,
    [0.8, 1],
    confirmed('ASCE 7-16, Table 26.6-1 (circular domes)'),
  ),
  asceGustEffect: row(
    'gust effect G of a rigid building',
    '',
    0.85,
    [0.7, 1.3],
    confirmed('ASCE 7-16, 26.11.1 (rigid building)'),
  ),
  enStructural: row(
    'structural factor cscd below 15 m',
    '',
    1,
    [0.7, 1.3],
    fromMemory('EN 1991-1-4:2005, 6.2(1)a'),
  ),
  windwardA: row(
    'three-point rule: windward springline A of a half sphere',
    '',
    0.8,
    [-2, 1.2],
    fromMemory(`${FIGURE_DOME}, A at f/D 0.5`),
  ),
  crownB: row(
    'three-point rule: crown B of a half sphere',
    '',
    -1.2,
    [-3, 0.5],
    fromMemory(`${FIGURE_DOME}, B at f/D 0.5`),
  ),
  leewardC: row(
    'three-point rule: leeward springline C of a half sphere on the ground',
    '',
    0,
    [-2, 0.5],
    fromMemory(`${FIGURE_DOME}, C at f/D 0.5, hD/D 0`),
  ),
  leewardCRaised: row(
    'three-point rule: leeward springline C of a half sphere raised by half its width or more',
    '',
    -0.5,
    [-2, 0.5],
    fromMemory(`${FIGURE_DOME}, C at f/D 0.5, hD/D 0.5 and more`),
  ),
  windwardAFlat: row(
    'three-point rule: windward springline A of a dome of rise 0.05 of its width',
    '',
    0,
    [-2, 1.2],
    fromMemory(`${FIGURE_DOME}, A at f/D 0.05, hD/D 0`),
  ),
  crownBFlat: row(
    'three-point rule: crown B of a dome of rise 0.05 of its width',
    '',
    -0.8,
    [-3, 0.5],
    fromMemory(`${FIGURE_DOME}, B at f/D 0.05, the lower of its curves`),
  ),
  sphereDrag: row(
    'drag coefficient of a free sphere beyond the critical flow',
    '',
    0.2,
    [0.05, 0.5],
    fromMemory('E. Achenbach, J. Fluid Mech. 54(3) 1972, 565 (drag at Re 5e6)'),
  ),
  sphereForceDrag: row(
    'force coefficient of a sphere across the wind, before the factor near ground',
    '',
    0.4,
    [0.1, 0.8],
    fromMemory('EN 1991-1-4:2005, Fig. 7.30 (rough, high Re)'),
  ),
  sphereNearGround: row(
    'factor on the force of a sphere near the ground',
    '',
    1.6,
    [1, 2.5],
    fromMemory('EN 1991-1-4:2005, 7.9.3 (height of the gap half the width or less)'),
  ),
  sphereLift: row(
    'lift coefficient of a sphere near the ground',
    '',
    0.6,
    [0, 1.2],
    fromMemory('EN 1991-1-4:2005, 7.9.3 (cf,z)'),
  ),
  asceInternalClosed: row(
    'ASCE 7 internal pressure, closed',
    '',
    0.18,
    [0, 1],
    fromMemory('ASCE 7-16, Table 26.13-1 (enclosed)'),
  ),
  asceInternalDoor: row(
    'ASCE 7 internal pressure, door open',
    '',
    0.55,
    [0, 1],
    confirmed('ASCE 7-16, Table 26.13-1 (partially enclosed)'),
  ),
  asceInternalHalfOpen: row(
    'ASCE 7 internal pressure, half open',
    '',
    0.18,
    [0, 1],
    fromMemory('ASCE 7-16, Table 26.13-1 (partially open)'),
  ),
  enInternalOver: row(
    'EN internal pressure, closed, outward',
    '',
    0.2,
    [0, 1],
    fromMemory('EN 1991-1-4:2005, 7.2.9(6) note 2'),
  ),
  enInternalUnder: row(
    'EN internal suction, closed',
    '',
    -0.3,
    [-1, 0],
    fromMemory('EN 1991-1-4:2005, 7.2.9(6) note 2'),
  ),
  enDominantTwice: row(
    'EN internal over external pressure at an opening twice all others',
    '',
    0.75,
    [0, 1],
    fromMemory('EN 1991-1-4:2005, 7.2.9(5)'),
  ),
  enDominantThrice: row(
    'EN internal over external pressure at an opening three times all others',
    '',
    0.9,
    [0, 1],
    fromMemory('EN 1991-1-4:2005, 7.2.9(5)'),
  ),
  openTopInternal: row(
    'internal pressure of a shell open at the top',
    '',
    -0.6,
    [-1, 0],
    fromMemory('EN 1991-1-4:2005, 7.2.9(8) (open silos and chimneys)'),
  ),
  cupOpen: row(
    'net pressure of a half sphere whose open side faces the wind',
    '',
    1.42,
    [0.5, 3],
    fromMemory('S. F. Hoerner, Fluid-Dynamic Drag, 1965 (hollow half sphere, open to the flow)'),
  ),
  cupClosed: row(
    'net pressure of a half sphere whose back faces the wind',
    '',
    0.38,
    [0.1, 3],
    fromMemory('S. F. Hoerner, Fluid-Dynamic Drag, 1965 (hollow half sphere, back to the flow)'),
  ),
  curvedWallOpen: row(
    'net pressure of a half cylinder whose open side faces the wind',
    '',
    2.3,
    [0.5, 4],
    fromMemory('S. F. Hoerner, Fluid-Dynamic Drag, 1965 (half cylinder, open to the flow)'),
  ),
  curvedWallClosed: row(
    'net pressure of a half cylinder whose back faces the wind',
    '',
    1.2,
    [0.5, 4],
    fromMemory('S. F. Hoerner, Fluid-Dynamic Drag, 1965 (half cylinder, back to the flow)'),
  ),
  wallA: row(
    'free-standing wall, zone A (to 0.3 h from its end), l/h 5',
    '',
    2.9,
    [1, 5],
    confirmed(`${WALL}, l/h 5`),
  ),
  wallB: row(
    'free-standing wall, zone B (to 2 h), l/h 5',
    '',
    1.8,
    [1, 5],
    confirmed(`${WALL}, l/h 5`),
  ),
  wallC: row(
    'free-standing wall, zone C (to 4 h), l/h 5',
    '',
    1.4,
    [1, 5],
    confirmed(`${WALL}, l/h 5`),
  ),
  wallD: row(
    'free-standing wall, zone D (beyond), l/h 5',
    '',
    1.2,
    [1, 5],
    confirmed(`${WALL}, l/h 5`),
  ),
  wallShelter: row(
    'part of its load that a wall takes behind another, up to five heights apart',
    '',
    0.3,
    [0.3, 1],
    fromMemory('EN 1991-1-4:2005, 7.4.2 and Fig. 7.20 (solid wall)'),
  ),
  gbWall: row(
    'free-standing wall, net pressure',
    '',
    1.3,
    [1, 5],
    confirmed('GB 50009-2012, Table 8.3.1 item 34'),
  ),
  asceSnowExposure: row(
    'ASCE 7 snow exposure Ce',
    '',
    1,
    [0.7, 1.2],
    fromMemory('ASCE 7-16, Table 7.3-1 (partially exposed)'),
  ),
  asceSnowThermal: row(
    'ASCE 7 thermal factor Ct of an unheated building',
    '',
    1.2,
    [0.85, 1.3],
    fromMemory('ASCE 7-16, Table 7.3-2 (unheated)'),
  ),
  asceSnowImportance: row(
    'ASCE 7 snow importance Is',
    '',
    1,
    [0.8, 1.2],
    fromMemory('ASCE 7-16, Table 1.5-2 (risk category II)'),
  ),
  enSnowExposure: row(
    'EN snow exposure Ce',
    '',
    1,
    [0.8, 1.2],
    fromMemory('EN 1991-1-3:2003, Table 5.1 (normal)'),
  ),
  enSnowThermal: row(
    'EN thermal factor Ct',
    '',
    1,
    [0.5, 1],
    fromMemory('EN 1991-1-3:2003, 5.2(8)'),
  ),
  personLoad: row(
    'one person on the shell, with tools',
    'N',
    1330,
    [500, 5000],
    fromMemory('ASCE 7-16, Table 4.3-1 (300 lb on a roof that workers tread)'),
  ),
  gravity: row('gravity', 'm/s²', 9.80665, [9.7, 9.9], confirmed('CGPM 1901, standard gravity')),
} as const satisfies Readonly<Record<string, LoadNumber>>;

/** Key of a number of the table. */
export type LoadNumberKey = keyof typeof LOAD_NUMBERS;

/** A number that the lead put in the place of the table's, and why. */
export interface Override {
  readonly number: LoadNumberKey;
  readonly value: number;
  readonly reason: string;
}

/** Every key of the table, in its order. */
export const LOAD_NUMBER_KEYS = Object.keys(LOAD_NUMBERS) as LoadNumberKey[];

/** The number to reckon with: the lead's, carrying his reason, or the table's with its source; of
 * two overrides of one number the last counts. RangeError for an override outside the allowed
 * range or without a reason.
 * Source: the table of this file, each row with its own. */
export function numberOf(key: LoadNumberKey, overrides: readonly Override[] = []): Sourced {
  const { what, unit, value, least, most, source } = LOAD_NUMBERS[key];
  const own = overrides.findLast((override) => override.number === key);
  if (!own) return { value, sources: [source] };
  assertBetween(what, own.value, least, most, unit);
  const reason = own.reason.trim();
  if (reason === '') throw new RangeError(`${what} is overridden by ${own.value} without a reason`);
  const tail = unit === '' ? '' : ` ${unit}`;
  return {
    value: own.value,
    sources: [
      {
        text: `${what}: ${own.value}${tail} in place of ${value}${tail}: ${reason}`,
        confirmation: 'entered',
      },
    ],
  };
}
