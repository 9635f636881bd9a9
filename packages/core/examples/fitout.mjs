// A dish inside the half ball: its beam, what a rough surface leaves of its gain, whether it swings.
import { beamWidthDeg, ruze, swing } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

console.log(`${beamWidthDeg(2.4, 1.42e9).toFixed(1)}°`, ruze(0.005, 1.42e9).toFixed(3));
const dish = {
  diameter: 2.4,
  focalRatio: 0.4,
  vertexAhead: 0.2,
  feed: { beyond: 0.1, diameter: 0.2 },
  back: { behind: 0.3, diameter: 0.4 },
};
const mount = {
  kind: 'azimuth and elevation',
  height: 1.2,
  aside: [0, 0],
  lowest: 0.3,
  highest: Math.PI / 2,
  azimuth: 0,
  latitude: 0.9,
  hourAngle: 1,
};
const { swings, nearest, largest } = swing({
  ...{ shell: halfBall, dish, mount },
  ...{ floor: 0, flange: 0.05, margin: 0.1, stepDeg: 5 },
});
console.log(swings, `${nearest.clearance.toFixed(2)} m`, `${largest.toFixed(2)} m`);

// → 6.2° 0.915
// → true 0.22 m 2.69 m
