// One hub of a snap model as a solid, standing on its flat foot: a facet behind each corner of the star,
// parallel to the panel there, with a peg square to it. Millimetres; the hub's own axes: z along the ray
// from the sphere's centre, x towards the first seam of the star, z = 0 at the foot.

import { cross, dot, normalize, subtract, type Vec3 } from '../math/vector.ts';
import { endHubAt, hubPoint } from '../shell/geometry.ts';
import { hubAt, previousSide, type Shell } from '../shell/shell.ts';
import type { Star } from '../shell/stars.ts';
import type { Mesh } from './mesh.ts';
import type { SnapFit } from './snap-fit.ts';
import { solidBuilder } from './solid-builder.ts';
import { betweenRings, type FacePoint, roundRing } from './solid-faces.ts';

/** The seams of a star as unit vectors in the hub's axes, anticlockwise seen from outside; one more than
 * it has corners where it is open. */
export interface HubRays {
  readonly rays: readonly Vec3[];
  readonly closed: boolean;
}

/** The rays of a star. */
export function hubRays(shell: Shell, { hub, corners, closed }: Star): HubRays {
  const from = hubPoint(shell, hub);
  const ends = corners.map((side) => endHubAt(shell, side));
  if (!closed) ends.push(hubAt(shell, previousSide(shell, corners.at(-1) as never)));
  const ways = ends.map((end) => normalize(subtract(hubPoint(shell, end), from)));
  const z = normalize(from);
  const y = normalize(cross(z, ways[0] as Vec3));
  const x = cross(y, z);
  return { rays: ways.map((way): Vec3 => [dot(way, x), dot(way, y), dot(way, z)]), closed };
}

/** Least thickness under the rim, millimetres: our own judgement. */
const FLOOR = 1.2;
/** Height of a peg's straight part, and radius of its end, as shares. */
const STRAIGHT = 0.7;
const END = 0.85;

/** Height of a hub from its foot to its top, without pegs, millimetres. */
export const hubHeight = ({ rays }: HubRays, { rim }: SnapFit): number =>
  FLOOR - Math.min(0, ...rays.map((ray) => rim * ray[2]));

/** The solid of a hub. */
export function snapHub({ rays, closed }: HubRays, fit: SnapFit): Mesh {
  const { point, triangle, mesh } = solidBuilder();
  const high = hubHeight({ rays, closed }, fit);
  const rims = rays.map(
    (ray): Vec3 => [fit.rim * ray[0], fit.rim * ray[1], high + fit.rim * ray[2]],
  );
  const top = rims.map(point);
  const foot = rims.map(([x, y]) => point([x, y, 0]));
  const [apex, below] = [point([0, 0, high]), point([0, 0, 0])];
  const sectors = closed ? rays.length : rays.length - 1;
  for (let k = 0; k < sectors; k++) {
    const next = (k + 1) % rays.length;
    const [a, b, c, d] = [top[k], top[next], foot[k], foot[next]] as [
      number,
      number,
      number,
      number,
    ];
    triangle(below, d, c);
    triangle(c, d, b);
    triangle(c, b, a);
    facet(rays[k] as Vec3, rays[next] as Vec3, [apex, a, b]);
  }
  if (!closed) {
    const last = rays.length - 1;
    triangle(top[0] as number, apex, below);
    triangle(top[0] as number, below, foot[0] as number);
    triangle(apex, top[last] as number, foot[last] as number);
    triangle(apex, foot[last] as number, below);
  }
  return mesh();

  /** A facet, from the apex along two rays, with its peg. */
  function facet(to: Vec3, back: Vec3, named: readonly number[]): void {
    const normal = normalize(cross(to, back));
    const along = normalize([to[0] + back[0], to[1] + back[1], to[2] + back[2]]);
    const across = cross(normal, along);
    const at = ([x, y]: FacePoint, up: number): number =>
      point([
        x * along[0] + y * across[0] + up * normal[0],
        x * along[1] + y * across[1] + up * normal[1],
        high + x * along[2] + y * across[2] + up * normal[2],
      ]);
    const inPlane = (way: Vec3): FacePoint => [
      fit.rim * dot(way, along),
      fit.rim * dot(way, across),
    ];
    const middle: FacePoint = [fit.reach, 0];
    const ring = roundRing(middle, fit.pegRadius);
    const rings = [
      ring.map((p) => at(p, 0)),
      ring.map((p) => at(p, STRAIGHT * fit.depth)),
      roundRing(middle, END * fit.pegRadius).map((p) => at(p, fit.depth)),
    ];
    const all = [...named, ...(rings[0] as number[])];
    for (const [a, b, c] of betweenRings([[0, 0], inPlane(to), inPlane(back)], ring))
      triangle(all[a] as number, all[b] as number, all[c] as number);
    for (let level = 0; level + 1 < rings.length; level++)
      wall(rings[level] as number[], rings[level + 1] as number[]);
    const end = rings.at(-1) as number[];
    for (let k = 1; k + 1 < end.length; k++)
      triangle(end[0] as number, end[k] as number, end[k + 1] as number);
  }

  function wall(lower: readonly number[], upper: readonly number[]): void {
    lower.forEach((a, k) => {
      const next = (k + 1) % lower.length;
      triangle(a, lower[next] as number, upper[next] as number);
      triangle(a, upper[next] as number, upper[k] as number);
    });
  }
}
