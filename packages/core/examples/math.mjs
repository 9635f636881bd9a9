// A quarter turn about the vertical, the same numbers from the same seed, and how rare a misfit is.
import { chiSquareTail, rotateAbout, seededRandom } from '@shellraise/core';

console.log(rotateAbout([1, 0, 0], [0, 0, 1], Math.PI / 2).map(Math.round));
console.log(seededRandom(7).uniform().toFixed(6));
console.log(chiSquareTail(3.841, 1).toFixed(3));

// → [ 0, 1, 0 ]
// → 0.080343
// → 0.050
