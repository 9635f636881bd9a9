// An order of work in which every stage stands, with as few props as it takes.
import { plainBrief, planRaising } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const plan = planRaising(plainBrief(halfBall), { tries: 20, seed: 1 });
if (!plan.ok) throw new Error(plan.faults.join());
console.log(plan.value.stages.length, 'stages');
console.log(plan.value.stages.flatMap(({ lifts }) => lifts).length, 'lifts');

// → 11 stages
// → 40 lifts
