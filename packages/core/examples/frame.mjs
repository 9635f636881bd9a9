// The half ball on its base ring does not fold; the same held at one hub only turns about that.
import { frameOf, mechanisms } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const held = frameOf(halfBall);
console.log(mechanisms(held).count);
console.log(mechanisms({ ...held, supports: held.supports.slice(0, 1) }).count);

// → 0
// → 3
