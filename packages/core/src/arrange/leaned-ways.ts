// Ways up off the crowns of a net: those on which some ring of seams stands level, and one in each
// sector between a hub, a seam and a place next to each other, so that no way up is far from one that is
// looked at. Each is told by the nearest crown and how far it leans from it, so that its name does not
// depend on how the net happens to be numbered.
//
// Which sets of places a level cut can leave is settled by the order of the hubs' heights; these
// directions are a choice among such orders, not all of them.

import { TAU } from '../math/angle.ts';
import { add, cross, dot, norm, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { endHubAt, hubPoint, placeNormal } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import { crownAxes, type Lean } from '../shell/orient.ts';
import { type Shell, sideCount } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import type { Symmetry } from '../shell/symmetry.ts';
import { SAME_DIRECTION } from './tolerances.ts';
import type { WayUp } from './ways-up.ts';

/** The leaned ways up of a closed net: `waysUp` are its crowns, `rotations` what lays it on itself (the
 * identity among them). Nearest to their crowns first. */
export function leanedWays(
  shell: Shell,
  waysUp: readonly WayUp[],
  rotations: readonly Symmetry[],
): WayUp[] {
  const frames = waysUp.map(({ crown }) => crownAxes(shell, crown));
  const turns = rotations.map((rotation) => turnOf(shell, rotation));
  const seen: Vec3[] = [];
  const found: WayUp[] = [];
  for (const direction of [...levelDirections(shell), ...betweenDirections(shell)]) {
    if (seen.some((one) => norm(subtract(one, direction)) < SAME_DIRECTION)) continue;
    const images = turns.map((turn) => turn(direction));
    seen.push(...images);
    const way = nearestCrown(images, waysUp, frames);
    if (way) found.push(way);
  }
  return found.sort((a, b) => (a.lean as Lean).by - (b.lean as Lean).by);
}

/** The way up that leans from one of the crowns as told. */
export const leanedWay = (way: WayUp, lean: Lean): WayUp => ({
  ...way,
  crown: { ...way.crown, lean },
  lean,
  mirror: null,
});

/** The image and the crown that are nearest to each other; null where one is the crown itself. Of
 * several as near the first crown, then the least turn. */
function nearestCrown(
  images: readonly Vec3[],
  waysUp: readonly WayUp[],
  frames: readonly { readonly up: Vec3; readonly datum: Vec3 }[],
): WayUp | null {
  let best: { way: WayUp; lean: Lean } | null = null;
  frames.forEach(({ up, datum }, w) => {
    for (const image of images) {
      const by = Math.atan2(norm(cross(up, image)), dot(up, image));
      const towards = turnTo(up, datum, image);
      const isNearer =
        best === null ||
        by < best.lean.by - TIE ||
        (best.way === waysUp[w] && by < best.lean.by + TIE && towards < best.lean.towards);
      if (isNearer) best = { way: waysUp[w] as WayUp, lean: { by, towards } };
    }
  });
  const { way, lean } = best as unknown as { way: WayUp; lean: Lean };
  return lean.by < SAME_DIRECTION ? null : { ...leanedWay(way, lean), alike: images.length };
}

/** Angles nearer than this are a tie, radians. */
const TIE = 1e-6;

/** Azimuth of a direction in a crown's frame, radians from 0 up to a turn. */
function turnTo(up: Vec3, datum: Vec3, direction: Vec3): number {
  const left = cross(up, datum);
  const turn = (Math.atan2(dot(direction, left), dot(direction, datum)) + TAU) % TAU;
  return turn > TAU - TIE ? 0 : turn;
}

/** What a rotation does to a direction, by where it takes three hubs of a place. */
function turnOf(shell: Shell, { hubs }: Symmetry): (direction: Vec3) => Vec3 {
  const [a, b, c] = [0, 1, 2].map((s) => hubPoint(shell, shell.sideHub[s] as HubId)) as [
    Vec3,
    Vec3,
    Vec3,
  ];
  const image = [0, 1, 2].map((s) =>
    hubPoint(shell, hubs[shell.sideHub[s] as number] as HubId),
  ) as [Vec3, Vec3, Vec3];
  const volume = dot(a, cross(b, c));
  return (direction) => {
    const weights = [
      dot(direction, cross(b, c)) / volume,
      dot(direction, cross(c, a)) / volume,
      dot(direction, cross(a, b)) / volume,
    ];
    return normalize(
      image.reduce<Vec3>((sum, own, i) => add(sum, scale(own, weights[i] as number)), [0, 0, 0]),
    );
  };
}

/** Up and down of every plane through a hub and two of its neighbours that are none of each other's. */
function levelDirections(shell: Shell): Vec3[] {
  return starsOf(shell).flatMap(({ hub, corners }) => {
    const around = corners.map((side) => hubPoint(shell, endHubAt(shell, side)));
    const own = hubPoint(shell, hub);
    return around.flatMap((a, i) =>
      around.slice(i + 2).flatMap((b, j): Vec3[] => {
        const isNextRound = i === 0 && j === around.length - 3;
        const normal = cross(subtract(a, own), subtract(b, own));
        if (isNextRound || norm(normal) < SAME_DIRECTION * shell.radius ** 2 * 1e-3) return [];
        return [normalize(normal), normalize(scale(normal, -1))];
      }),
    );
  });
}

/** Amid each hub, each seam there and each place beside it. */
function betweenDirections(shell: Shell): Vec3[] {
  return Array.from({ length: sideCount(shell) }, (_, s) => s as SideId).flatMap((side) => {
    const ends = [
      hubPoint(shell, shell.sideHub[side] as HubId),
      hubPoint(shell, endHubAt(shell, side)),
    ];
    const seam = normalize(add(ends[0] as Vec3, ends[1] as Vec3));
    const place = placeNormal(shell, shell.sidePlace[side] as PlaceId);
    return ends.map((hub) => normalize(add(add(normalize(hub), seam), place)));
  });
}
