// Wind on a stack of panels that lie flat on battens: what it lifts off the top, what it shoves, and how
// much weight on top keeps it there. Newtons, kilograms, metres a second. An estimate: nobody measured
// stacks.

import { ballastWeight } from '../../ground/anchors/ballast.ts';
import { practices } from '../../ground/anchors/practice.ts';
import { numberOf, type Override } from '../../loads/numbers.ts';
import { commonPractice, fromMemory, mergeSources, type Sourced } from '../../loads/provenance.ts';
import { gustPressure } from '../../loads/reported-wind/gust.ts';
import { assertNumber } from '../../math/doors.ts';

/** Net lift on the topmost panel: suction over a flat top near its edges, and the wind's full pressure
 * under it, where it gets in over the battens. */
export const STACK_LIFT: Sourced = {
  value: 2.2,
  sources: [
    fromMemory('EN 1991-1-4, table 7.2: flat roof, sharp eaves, zone G −1.2'),
    commonPractice('full pressure under a panel that the wind gets under, 1.0'),
  ],
};

/** Force on the side of a stack: front and back of a low block. */
export const STACK_DRAG: Sourced = {
  value: 1.3,
  sources: [fromMemory('EN 1991-1-4, table 7.1: walls, zones D +0.8 and E −0.5')],
};

/** Friction of battens on the ground where nobody knows it. */
export const STACK_FRICTION: Sourced = {
  value: 0.25,
  sources: [commonPractice('friction of wood on wet ground 0.25')],
};

/** A stack as the wind meets it. */
export interface StackBody {
  /** Of the topmost panel, m², and its mass; null: nobody knows. */
  readonly topArea: number;
  readonly topMass: number | null;
  /** Of all its panels; those of unknown mass left out, so that it errs to the light side. */
  readonly mass: number;
  /** Broad side, m², and the plan, m². */
  readonly side: number;
  readonly plan: number;
}

/** What wind does to a stack. */
export interface StackWind {
  /** Gust at which the topmost panel lifts off with nothing on it, m/s; null where its mass is unknown. */
  readonly flies: number | null;
  /** At the gust asked: lift on the topmost panel and on the stack strapped as one, shove; N. */
  readonly topLift: number;
  readonly lift: number;
  readonly shove: number;
  /** Least weight on top, kg: loose, so that the topmost panel stays; or the stack strapped as one. With
   * a factor of 1.5 on the wind. */
  readonly loose: number;
  readonly strapped: number;
  readonly sources: Sourced['sources'];
}

/** What a gust does to a stack. RangeError for a gust, area or mass below 0. */
export function stackWind(
  stack: StackBody,
  gust: number,
  rubs: Sourced = STACK_FRICTION,
  overrides: readonly Override[] = [],
): StackWind {
  for (const [name, value] of Object.entries(stack))
    if (value !== null) assertNumber(name, value, 0);
  assertNumber('gust', gust, 0);
  const density = numberOf('airDensity', overrides);
  const gravity = numberOf('gravity', overrides);
  const pressure = gust === 0 ? 0 : gustPressure(gust, density.value);
  const topLift = STACK_LIFT.value * pressure * stack.topArea;
  const lift = STACK_LIFT.value * pressure * stack.plan;
  const shove = STACK_DRAG.value * pressure * stack.side;
  const { wind, sources } = practices.safety;
  const weigh = (up: number, along: number, mass: number): number =>
    ballastWeight(wind * up, wind * along, mass * gravity.value, rubs.value) / gravity.value;
  return {
    flies:
      stack.topMass === null || stack.topArea === 0
        ? null
        : Math.sqrt(
            (2 * stack.topMass * gravity.value) /
              (density.value * STACK_LIFT.value * stack.topArea),
          ),
    topLift,
    lift,
    shove,
    // Loose: the topmost by itself; and all of it must not slide, with only the top lifted.
    loose: Math.max(weigh(topLift, 0, stack.topMass ?? 0), weigh(topLift, shove, stack.mass)),
    strapped: weigh(lift, shove, stack.mass),
    sources: mergeSources(
      STACK_LIFT.sources,
      STACK_DRAG.sources,
      rubs.sources,
      sources.slice(0, 1),
      density.sources,
    ),
  };
}
