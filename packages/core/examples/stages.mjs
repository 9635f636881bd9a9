// The half ball as it grows, seams finger-tight, no props: movements that nothing resists.
import { frameOfStage, mechanisms, numberOrder, stageOf } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const order = numberOrder(halfBall);
for (const n of [1, 12, 30, order.length])
  console.log(`stage ${n}: ${mechanisms(frameOfStage(halfBall, stageOf(order, n))).count}`);

// → stage 1: 1
// → stage 12: 2
// → stage 30: 0
// → stage 40: 0
