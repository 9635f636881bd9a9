// What a shell's site and its stages hang on, as text: questions with one key have one answer. What is
// only measured on the site, or said on its papers, is no part of it.

import type { GroundQuestion } from './ground.ts';

/** The key of a question about a site or its stages; typed arrays count by their values. */
export function siteKey(question: GroundQuestion): string {
  const { shell, numbers, leftOut, kinds, loads, ground, parts, stages, holes, takeoff } = question;
  const { radius, hubs, placeStart, sideHub, kind } = shell;
  return JSON.stringify([
    radius,
    ...[hubs, placeStart, sideHub, kind].map((flat) => Array.from<number>(flat)),
    numbers,
    leftOut,
    kinds,
    loads,
    reckonedFrom(ground),
    parts,
    stages,
    holes,
    takeoff,
  ]);
}

/** The ground without what no site is reckoned from. */
function reckonedFrom(ground: GroundQuestion['ground']): object | undefined {
  if (ground === undefined) return undefined;
  const { site, tape, ringBeam, levels, shims, survey, tolerances, play, ...rest } = ground;
  return rest;
}
