// Wind on a panel or group in people's hands: a sail. Newtons, square metres, metres a second.

import { numberOf, type Override } from '../../loads/numbers.ts';
import {
  commonPractice,
  fromMemory,
  mergeSources,
  type Provenance,
  type Sourced,
} from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';

/** Force coefficient of a plate square to the wind, the higher of those in use; a hollow half sphere,
 * mouth to the wind, has 1.42. */
const SAIL_COEFFICIENT: Sourced = {
  value: 1.8,
  sources: [fromMemory('EN 1991-1-4, 7.4.3: signboards, force coefficient 1.8')],
};

/** What one person holds against the wind with a panel in hand and feet on the ground, N. */
export const HELD_BY_ONE: Sourced = {
  value: 100,
  sources: [commonPractice('a person holds 100 N (10 kg) sideways with a panel in hand')],
};

/** Force of a gust on a panel held square to it, N: ½ ρ c A V². RangeError for a negative area or gust. */
export function sailForce(
  area: number,
  gust: number,
  overrides: readonly Override[] = [],
): Sourced {
  assertNumber('area', area, 0);
  assertNumber('gust', gust, 0);
  const density = numberOf('airDensity', overrides);
  return {
    value: 0.5 * density.value * SAIL_COEFFICIENT.value * area * gust ** 2,
    sources: mergeSources(density.sources, SAIL_COEFFICIENT.sources),
  };
}

/** The gust, m/s, at which a panel of an area pulls as hard as so many people hold. RangeError unless
 * the area is over 0 and there is somebody. */
export function sailLimit(
  area: number,
  people: number,
  overrides: readonly Override[] = [],
): Sourced {
  if (!(area > 0 && people >= 1))
    throw new RangeError(
      `area is ${area} m² with ${people} people, expected over 0 m² and at least 1`,
    );
  const unit = sailForce(area, 1, overrides);
  return {
    value: Math.sqrt((people * HELD_BY_ONE.value) / unit.value),
    sources: mergeSources(unit.sources, HELD_BY_ONE.sources),
  };
}

/** Parts hoisted as one: gusts no higher than this, m/s. */
export const HOIST_GUST: Sourced = {
  value: 8,
  sources: [
    {
      text: 'cap lifts of weather radars, gusts under 18 mph (8 m/s), as told by weather services',
      confirmation: 'confirmed',
    } satisfies Provenance,
  ],
};
