// The flat plan: plain drawing data first, then a writer.
import { coursesOf, flatPlanSheet, toSvg } from '@shellraise/core';
import { halfBall, kinds } from './half-ball.mjs';

const facts = {
  ...{ project: 'Half ball', sheet: 'Flat plan', date: '2026-05-01' },
  assumes: 'A ball of 3 m, cut at its middle.',
};
const sheet = flatPlanSheet(halfBall, coursesOf(halfBall).numbers, kinds, facts);
console.log(`${sheet.width} × ${sheet.height} mm: ${sheet.title}`);
console.log(toSvg(sheet).startsWith('<?xml'));

// → 297 × 210 mm: Half ball: Flat plan, seen from above
// → true
