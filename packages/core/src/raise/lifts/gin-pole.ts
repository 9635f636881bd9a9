// A gin pole: a pole with a pulley at its head, stayed, that a load is hauled up by. What the head bears
// is the load and the pull of the hauling line together.

import { confirmed, type Provenance, type Sourced } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';

const DOUBLED: Provenance = confirmed(
  'tower riggers’ notes: a load hauled by hand puts twice its weight on the pole’s head, tag lines add',
);

/** Force on the head, N, with the load (N) hanging and the hauling line leaving the pulley at `spread`
 * radians from the load's line: √(W² + T² + 2 W T cos spread), with T = W (1 + `friction`) while it goes
 * up. 2 W where the line comes down beside the load, as to a snatch block at the foot. Tag lines add
 * their own pull, `tags` N, taken downward. RangeError for a negative force or friction. */
export function ginPoleHead(load: number, spread = 0, friction = 0, tags = 0): Sourced {
  assertNumber('load', load, 0);
  assertNumber('spread', spread);
  assertNumber('friction', friction, 0);
  assertNumber('tags', tags, 0);
  const hanging = load + tags;
  const pull = hanging * (1 + friction);
  return {
    value: Math.sqrt(hanging ** 2 + pull ** 2 + 2 * hanging * pull * Math.cos(spread)),
    sources: [DOUBLED],
  };
}
