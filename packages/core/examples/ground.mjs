// Stakes of the base ring, from a peg in the centre.
import { baseOf, polarPlan } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const base = baseOf(halfBall);
if (!base.ok) throw new Error('no base');
for (const { hub, bearing, distance } of polarPlan(base.value).slice(0, 3))
  console.log(`hub ${hub}: ${((bearing * 180) / Math.PI).toFixed(1)}°, ${distance.toFixed(3)} m`);

// → hub 1: 18.0°, 3.000 m
// → hub 2: 54.0°, 3.000 m
// → hub 3: 90.0°, 3.000 m
