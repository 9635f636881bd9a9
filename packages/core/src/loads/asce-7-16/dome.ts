// Domed roofs by three points: A at the windward springline, B at the crown, C at the leeward
// springline. ASCE 7-16 Figure 27.3-2, after EN 1991-1-4 Figure 7.12, whose values are constant on
// planes across the wind and go in a straight line along the arc in between.

import { acos } from '../../math/angle.ts';
import { assertBetween } from '../doors.ts';
import { assertForm, type PressureLaw, riseRatio, type ShellForm } from '../law.ts';
import { commonPractice, confirmed, type Provenance, type Sourced } from '../provenance.ts';

/** Pressure coefficients at the three points. */
export interface ThreePoints {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** `A`: straight from A to B. `B`: A held for the first 25°, then straight to B. */
export type ThreePointCase = 'A' | 'B';

/** The notes of the figure, read in a scan of ASCE 7-05 (the same in 7-16). The curves were not
 * readable: their values are rows of the table of numbers. */
const THREE_POINT_RULE: Provenance = confirmed('ASCE 7-16, Fig. 27.3-2, notes 1 to 6 (dome)');

const HELD = (25 * Math.PI) / 180;

/** Coefficient at an angle (radians, 0 … π) along the middle arc from the windward springline, where
 * the crown is at `crown` radians; straight in the angle between the points.
 * Source: ASCE 7-16, Fig. 27.3-2, note 1. */
export function threePointArc(
  { a, b, c }: ThreePoints,
  kind: ThreePointCase,
  angle: number,
  crown: number,
): number {
  const held = kind === 'B' ? Math.min(HELD, crown) : 0;
  if (angle <= held) return a;
  if (angle >= crown) return b + ((c - b) * Math.min(angle - crown, crown)) / crown;
  return a + ((b - a) * (angle - held)) / (crown - held);
}

/** The law for a shell with these three values. Up to a half sphere the arc starts at its
 * springline; of more than half at the equator, and what lies below takes the value of its plane
 * across the wind: own extension, flagged. `factor` is the gust effect factor.
 * Source: ASCE 7-16, Fig. 27.3-2, notes 1 and 4. */
export function threePointLaw(
  form: ShellForm,
  points: Sourced<ThreePoints>,
  kind: ThreePointCase,
  factor: Sourced,
): PressureLaw {
  assertForm(form);
  const { a, b, c } = points.value;
  for (const [name, value] of Object.entries({ A: a, B: b, C: c }))
    assertBetween(`pressure coefficient ${name}`, value, -3, 1.2);
  const start = form.baseZ > 0 ? Math.asin(form.baseZ / form.radius) : 0;
  const crown = Math.PI / 2 - start;
  return {
    name: `three points, case ${kind}`,
    coefficient: (u) => threePointArc(points.value, kind, Math.max(0, acos(u) - start), crown),
    factor: factor.value,
    sources: [
      THREE_POINT_RULE,
      ...points.sources,
      ...factor.sources,
      ...(form.baseZ < 0
        ? [commonPractice('three-point rule beyond a half sphere: no clause; planes carried down')]
        : []),
    ],
  };
}

/** Rise over width and raise over width that the figure is entered with: of more than a half sphere
 * those of its upper half, raised by the height of the equator above the ground. RangeError for a
 * rise under 0.05 of the width, which the figure sends to the flat roofs.
 * Source: ASCE 7-16, Fig. 27.3-2, note 8; beyond a half sphere own reading. */
export function threePointRatios(form: ShellForm): { rise: number; raise: number } {
  assertForm(form);
  const { radius, baseZ, baseHeight = 0 } = form;
  if (baseZ < 0) return { rise: 0.5, raise: (baseHeight - baseZ) / (2 * radius) };
  const rise = riseRatio(form);
  assertBetween('rise over width of the dome', rise, 0.05, 0.5 + 1e-9);
  return { rise, raise: baseHeight / (2 * Math.sqrt(radius ** 2 - baseZ ** 2)) };
}
