// Does a ladder pass through the lowest course where one panel is still open? And a box as wide as it?
import { barrierOf, coursesOf, passing } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const open = coursesOf(halfBall).numbers.indexOf('1-01');
const others = [...halfBall.kind.keys()].filter((place) => place !== open);
const wall = barrierOf(halfBall, others, 0.05);
for (const size of [
  [3, 0.4, 0.1],
  [1.6, 1.6, 1.6],
]) {
  const answer = passing({ form: 'box', size }, wall);
  console.log(size.join(' × '), 'm:', answer.status, answer.why ?? `${answer.motion.length} poses`);
}

// → 3 × 0.4 × 0.1 m: passes 2 poses
// → 1.6 × 1.6 × 1.6 m: cannot pass it holds a ball of 1.60 m, which no open place lets through
