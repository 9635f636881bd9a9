// A deadman: a timber or log buried across the pull, with the cable led up through a sloping trench.
// Source: TM 5-5420-278-10, Table 9: L = CC/(HP × Df) + 1 ft, where CC is the breaking strength of
// the cable, HP the holding power of loam and Df the face of the deadman; 1 ft is for the trench.

import { confirmed, fromMemory } from '../../loads/provenance.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { INCH } from '../../measure/length.ts';
import { type Capacity, POUND_FORCE, type Pull } from './capacity.ts';
import { type Soil, soilWords } from './soil.ts';

const table = confirmed('TM 5-5420-278-10, Table 9: deadmen');
const FOOT = 12 * INCH;

/** Depth of the middle of the face below the ground, feet. */
const depths = [3, 4, 5, 6, 7] as const;

/** Holding power of loam, pounds a square foot of face, by how far the pull runs out for 1 up. */
const power: readonly (readonly [number, readonly number[]])[] = [
  [1, [950, 1750, 2800, 3800, 5100]],
  [2, [1300, 2200, 3600, 5100, 7000]],
  [3, [1450, 2600, 4000, 5800, 8000]],
  [4, [1500, 2700, 4100, 6000, 8400]],
];

/** A deadman, metres. */
export interface Deadman {
  readonly length: number;
  /** Height of the face that bears on the soil: the side of a timber, the diameter of a log. */
  readonly face: number;
  /** Depth of the middle of the face below the ground. */
  readonly depth: number;
  readonly body: 'timber' | 'log';
}

/** Holding power of loam, Pa, at a depth in metres for a pull at an angle from the ground: straight
 * lines between depths, 7 ft at most, and the next steeper slope of the table. Null for a depth under
 * 3 ft or a pull steeper than 1 in 1, which the table does not have. */
export function holdingPower(depth: number, elevation: number): number | null {
  const run = 1 / Math.tan(elevation);
  const row = power.findLast(([out]) => out <= run * (1 + 1e-9))?.[1];
  const feet = Math.min(depth / FOOT, 7);
  if (row === undefined || !(feet >= 3 - 1e-9)) return null;
  const i = Math.min(
    3,
    Math.max(
      0,
      depths.findLastIndex((d) => d <= feet + 1e-9),
    ),
  );
  const share = feet - (depths[i] as number);
  const [a, b] = [row[i] as number, row[i + 1] as number];
  return ((a + share * (b - a)) * POUND_FORCE) / FOOT ** 2;
}

/** The length that develops a cable's breaking strength, N, in loam, metres. Null as above. */
export function deadmanLength(
  breaking: number,
  face: number,
  depth: number,
  elevation: number,
): number | null {
  const hp = holdingPower(depth, elevation);
  return hp === null ? null : breaking / (hp * face) + FOOT;
}

/** What a deadman holds along a guy: loam as in the table, half in wet ground or clay, five times in
 * hardpan. Refused for a straight lift, in sand, gravel and soft ground, shallower than 3 ft, steeper
 * than 1 in 1, and longer than 9 faces (timber) or 5 diameters (log). */
export function deadman(of: Deadman, soil: Soil, pull: Pull): Read<Capacity> {
  if (pull.way === 'up')
    return refuse('anchor.pull', 'a deadman pulled straight up', 'a guy at 45° or less');
  const { kind, firm, wet } = soil;
  if (!firm || kind === 'sand' || kind === 'gravel' || kind === 'paved')
    return refuse(
      'anchor',
      `a deadman in ${soilWords(soil)}`,
      'firm loam, clay or hardpan: the table has no other, so enter a pull test',
    );
  for (const [name, value, least, most] of [
    ['face', of.face, 0.05, 1],
    ['length', of.length, 0.4, 6],
  ] as const)
    if (!(value >= least && value <= most))
      return refuse(`anchor.${name}`, `${value} m`, `${least} to ${most} m`);
  const most = of.body === 'timber' ? 9 : 5;
  if (of.length > most * of.face * (1 + 1e-9))
    return refuse(
      'anchor.length',
      `${of.length} m, ${(of.length / of.face).toFixed(1)} times its face`,
      `at most ${most} times the face of a ${of.body}: bury a shorter one deeper`,
    );
  const hp = holdingPower(of.depth, pull.elevation);
  if (hp === null)
    return refuse(
      'anchor.depth',
      `${of.depth} m deep with a guy at ${((pull.elevation * 180) / Math.PI).toFixed(0)}°`,
      'at least 0.92 m (3 ft) deep and a guy at 45° or less',
    );
  const factor = kind === 'hardpan' ? 5 : wet || kind === 'clay' ? 0.5 : 1;
  return {
    ok: true,
    value: {
      pull: hp * factor * of.face * (of.length - FOOT),
      basis: 'ultimate',
      sources: [
        table,
        fromMemory('military field manuals: timber to 9 faces long, logs to 5 diameters'),
      ],
      notes: [
        'The trench for the guy is cut at the guy’s own slope, and the soil before the face is not dug.',
        ...(factor === 1 ? [] : [`Taken ${factor} times for ${soilWords(soil)}.`]),
      ],
    },
  };
}
