// A panel by its sides alone: the circle through its corners, and its corner angles on a sphere.
import { circumradius, polygonOnSphere, toDegrees } from '@shellraise/core';

const sides = [1.2, 1.2, 1];
console.log(`${circumradius(sides).toFixed(4)} m`);
const panel = polygonOnSphere(sides, 3.65);
console.log(panel.ok && panel.corners.map((angle) => toDegrees(angle).toFixed(2)));

// → 0.6600 m
// → [ '66.21', '49.97', '66.21' ]
