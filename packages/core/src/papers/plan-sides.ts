// The sides of the flat plan one by one: each place's outline split at its hubs, so that base ring,
// seams and openings can be drawn in their own lines. Paper metres, as the plan's own.

import type { FlatPlan } from '../shell/flat-plan.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell, sideCount } from '../shell/shell.ts';
import type { Point } from './drawing.ts';

/** Side → its drawn points from its first hub to its last. A side that starts at a hub blown up to
 * the outer circle starts where it leaves the circle. */
export function planSides(shell: Shell, plan: FlatPlan): Point[][] {
  const paths: Point[][] = Array.from({ length: sideCount(shell) }, () => []);
  const nadir = plan.outer?.at === 'hub' ? plan.outer.hub : -1;
  for (let p = 0; p < placeCount(shell); p++) {
    const outline = pointsOf(plan.outlines[p] as Float64Array);
    const hubs = hubsOf(shell, p as PlaceId);
    const starts = startsOf(outline, hubs, plan, nadir);
    hubs.forEach((hub, i) => {
      const last = i === hubs.length - 1;
      const stop = last ? endOf(outline, starts[i] as number) : (starts[i + 1] as number) + 1;
      const run = outline.slice(starts[i], stop);
      const whole = last && stop === outline.length ? [...run, outline[0] as Point] : run;
      paths[(shell.placeStart[p] as number) + i] = hub === nadir ? whole.slice(-2) : whole;
    });
  }
  return paths;
}

/** Points of a flat array with stride 2. */
export function pointsOf(flat: Float64Array): Point[] {
  return Array.from({ length: flat.length / 2 }, (_, i) => [
    flat[2 * i] as number,
    flat[2 * i + 1] as number,
  ]);
}

function startsOf(
  outline: readonly Point[],
  hubs: readonly number[],
  plan: FlatPlan,
  nadir: number,
): number[] {
  const starts: number[] = [];
  for (const hub of hubs) {
    const from = (starts.at(-1) ?? -1) + 1;
    const at = outline.findIndex(
      ([u, v], i) => i >= from && u === plan.hubs[2 * hub] && v === plan.hubs[2 * hub + 1],
    );
    if (at < 0 && hub !== nadir) throw new Error(`hub ${hub} is missing from its place’s outline`);
    starts.push(hub === nadir ? from : at);
  }
  return starts;
}

/** One past the end of a place's last side: before its slit and circle where it has them. */
function endOf(outline: readonly Point[], start: number): number {
  const [first] = outline as [Point];
  const slit = outline.findIndex(([u, v], i) => i > start && u === first[0] && v === first[1]);
  return slit < 0 ? outline.length : slit + 1;
}
