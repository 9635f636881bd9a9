// How far seams are tightened as the shell grows: finger until the course above has closed, then snug
// ring by ring from the rim on the ground inward to the crown, final when all is up. Common practice,
// after manuals of dishes and tanks that leave parts finger-tight until a stage is complete.

import type { OrderSite } from './site.ts';
import { ringPass } from './walk.ts';

/** Seams to be brought to snug once so many courses are complete, in the order of work: those of
 * `pass` that are finger-tight and whose turn has come. */
export function tightened(
  site: OrderSite,
  pass: ReadonlyMap<number, 'finger' | 'snug'>,
  complete: number,
  placed: ReadonlySet<number>,
): number[] {
  const due = [...pass.keys()].filter(
    (seam) =>
      pass.get(seam) === 'finger' &&
      ringPass(site, seam, complete, (p) => placed.has(p)) === 'snug',
  );
  return inRings(site, due);
}

/** All seams in the order of the final pass. */
export const allFinal = (site: OrderSite, seams: readonly number[]): number[] =>
  inRings(site, seams);

/** Seams ring by ring from the rim inward, in each clockwise from the datum. */
function inRings(site: OrderSite, seams: readonly number[]): number[] {
  const ring = (seam: number): number =>
    Math.max(...(site.seamPlaces[seam] as readonly number[]).map((p) => site.course[p] as number));
  const clockwise = (seam: number): number => {
    const [a, b] = site.seamHubs[seam] as readonly [number, number];
    const at = (x: number): number =>
      (site.shell.hubs[3 * a + x] as number) + (site.shell.hubs[3 * b + x] as number);
    return (2 * Math.PI - Math.atan2(at(1), at(0))) % (2 * Math.PI);
  };
  return [...seams].sort((a, b) => ring(a) - ring(b) || clockwise(a) - clockwise(b) || a - b);
}
