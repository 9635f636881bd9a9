// Helical anchors, screwed in: by the torque of the last turns, or by the bearing of the plates.

import { commonPractice, confirmed, type Provenance } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { INCH } from '../../measure/length.ts';
import type { Capacity } from './capacity.ts';
import { type Soil, soilWords } from './soil.ts';

const torqueRule = confirmed(
  'ICC-ES AC358 as quoted by two makers: Qult = K T, K = 10 a foot for a 1.5 in square shaft',
);

/** K for a square shaft of 1.5 in: 10 for each foot, in 1/m. */
const SQUARE_SHAFT = 10 / (12 * INCH);

/** A helical anchor. */
export interface Helical {
  /** Torque of the last turns, N·m. */
  readonly torque: number;
  /** Pull for each newton-metre of torque, 1/m: 32.8 for a 1.5 in square shaft unless told. */
  readonly perTorque?: number | undefined;
  /** Diameter of the largest plate, metres: anchors stand three of it apart. */
  readonly plate: number;
}

/** What a helical anchor holds along its shaft by its torque. Refused on paving, without a torque
 * (20 N·m to 20 kN·m) or a plate (0.05 to 0.6 m). Torque tells the ground as it is: in ground that
 * may get wet it is measured in dry ground's favour, so half counts. */
export function helical(of: Helical, soil: Soil): Read<Capacity> {
  const { torque, perTorque = SQUARE_SHAFT, plate } = of;
  if (soil.kind === 'paved')
    return refuse('anchor', `a helical anchor in ${soilWords(soil)}`, 'ground that it screws into');
  for (const [name, value, least, most, unit] of [
    ['torque', torque, 20, 20_000, 'N·m'],
    ['perTorque', perTorque, 5, 70, '1/m'],
    ['plate', plate, 0.05, 0.6, 'm'],
  ] as const)
    if (!(value >= least && value <= most))
      return refuse(`anchor.${name}`, `${value} ${unit}`, `${least} to ${most} ${unit}`);
  const sources: Provenance[] = [
    torqueRule,
    ...(soil.wet ? [commonPractice('torque read in ground that may get wet counted half')] : []),
  ];
  return {
    ok: true,
    value: {
      pull: perTorque * torque * (soil.wet ? 0.5 : 1),
      basis: 'ultimate',
      sources,
      notes: [
        `Screwed in until the last turns take ${Math.round(torque)} N·m, in line with the pull.`,
        ...(soil.wet ? ['Halved for ground that may get wet after the torque was read.'] : []),
      ],
    },
  };
}

/** Ultimate bearing of the plates of a helical anchor, N: the sum over plates of A (9 c + q Nq), by
 * plate areas A (m²), undrained strength c (Pa), overburden at the plate q (Pa) and the bearing factor
 * Nq; as makers' manuals give it. RangeError for a negative number. */
export function helicalBearing(
  plates: readonly { readonly area: number; readonly overburden: number }[],
  cohesion: number,
  nq: number,
): number {
  assertNumber('cohesion', cohesion, 0);
  assertNumber('nq', nq, 0);
  return plates.reduce((sum, { area, overburden }) => {
    assertNumber('area', area, 0);
    assertNumber('overburden', overburden, 0);
    return sum + area * (9 * cohesion + overburden * nq);
  }, 0);
}
