// Snow by EN 1991-1-3:2003 with its shapes for cylindrical roofs: it has none for domes, so that the
// profile along the drift is laid over the whole plan, which is more than a dome can hold.

import { assertGroundSnow } from '../asce-7-16/snow.ts';
import { assertBetween } from '../doors.ts';
import { assertForm, type ShellForm } from '../law.ts';
import { numberOf, type Override } from '../numbers.ts';
import {
  commonPractice,
  confirmed,
  fromMemory,
  mergeSources,
  reckonedFrom,
  type Sourced,
} from '../provenance.ts';
import type { SnowCase } from '../snow/panels.ts';

const STEEPEST = Math.PI / 3;

/** Snow load on the ground times the factors for exposure and warmth, Pa; a shape coefficient makes
 * it that of a roof.
 * Source: EN 1991-1-3:2003, Eq. 5.1 (s = μ Ce Ct sk). */
export function roofSnow(groundSnow: number, overrides: readonly Override[] = []): Sourced {
  assertGroundSnow(groundSnow);
  const ce = numberOf('enSnowExposure', overrides);
  const ct = numberOf('enSnowThermal', overrides);
  return reckonedFrom(groundSnow * ce.value * ct.value, ce, ct);
}

/** Shape coefficient μ1 of a flat or pitched roof by slope in radians: 0.8 to 30°, straight to 0 at
 * 60°.
 * Source: EN 1991-1-3:2003, Table 5.2; 0.8 confirmed by a published example. */
export function pitchedShape(slope: number): number {
  assertBetween('slope', slope, 0, Math.PI, 'rad');
  return 0.8 * Math.min(1, Math.max(0, (STEEPEST - slope) / (STEEPEST / 2)));
}

/** Shape coefficient μ3 of a drift on a cylindrical roof: 0.2 + 10 × rise over width, at most 2.
 * Source: EN 1991-1-3:2003, 5.3.5, from memory; GB 50009-2012, Table 7.2.1 item 3 has the same. */
export function driftShape(riseOverWidth: number): number {
  assertBetween('rise over width', riseOverWidth, 0, 10);
  return Math.min(2, 0.2 + 10 * riseOverWidth);
}

/** The two cases: even, 0.8 where the slope is at most 60°; and drifted, a triangle on each half of
 * the plan between the 60° points with its peak half-way out, μ3 on the side downwind and half of it
 * upwind.
 * Source: EN 1991-1-3:2003, 5.3.5 and Fig. 5.6, from memory, laid over a dome (own). */
export function snowCasesEn(
  form: ShellForm,
  groundSnow: number,
  overrides: readonly Override[] = [],
): SnowCase[] {
  assertForm(form);
  const load = roofSnow(groundSnow, overrides);
  const peak = driftShape(snowRise(form));
  // In plan, over the radius: the 60° points, or the edge of a flatter cap.
  const reach = Math.min(
    Math.sin(STEEPEST),
    Math.sqrt(1 - (Math.max(0, form.baseZ) / form.radius) ** 2),
  );
  const figure = fromMemory('EN 1991-1-3:2003, 5.3.5 and Fig. 5.6 (cylindrical roof)');
  const laid = commonPractice('EN 1991-1-3 has no dome: the cylinder’s snow laid over the plan');
  return [
    {
      name: 'EN 1991-1-3 even snow',
      pressure: ({ slope }) => (slope <= STEEPEST ? 0.8 * load.value : 0),
      sources: mergeSources(load.sources, [figure, laid]),
    },
    {
      name: 'EN 1991-1-3 drifted snow',
      pressure: ({ slope, downwind }) => {
        const out = Math.abs(downwind) / reach;
        if (slope > STEEPEST || out >= 1) return 0;
        const triangle = out < 0.5 ? 2 * out : 2 - 2 * out;
        return load.value * peak * triangle * (downwind > 0 ? 1 : 0.5);
      },
      sources: mergeSources(load.sources, [
        figure,
        confirmed('GB 50009-2012, Table 7.2.1 item 3 (0.2 + 10 f/l, at most 2)'),
        laid,
      ]),
    },
  ];
}

/** Rise over width that the drift is reckoned with: of more than a half sphere ½, that of the part
 * that snow lies on. */
function snowRise({ radius, baseZ }: ShellForm): number {
  const base = Math.max(0, baseZ);
  return (radius - base) / (2 * Math.sqrt(radius ** 2 - base ** 2));
}
