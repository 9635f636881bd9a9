// What goes up in one lift - a panel, a group, a cap - as those who lift it meet it: how heavy, how large,
// where its middle is. Shell's frame, metres, kilograms.

import { facesOf, type PanelFaces } from '../../loads/panels.ts';
import { mergeSources, type Provenance, type Sourced } from '../../loads/provenance.ts';
import {
  add,
  cross,
  dot,
  norm,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../../math/vector.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { baseRing } from '../../shell/rims.ts';
import { hubsOf, placeCount, type Shell } from '../../shell/shell.ts';

/** A piece as plain data. */
export interface Piece {
  readonly places: readonly number[];
  /** Numbers of its places. */
  readonly numbers: readonly string[];
  /** Mass, kg; null where no panel's mass is known. Without the panels of `unweighed`. */
  readonly mass: number | null;
  readonly sources: readonly Provenance[];
  /** Numbers of panels whose mass nobody knows: the piece is heavier than `mass` by theirs. */
  readonly unweighed: readonly string[];
  /** Of its panels together, m². */
  readonly area: number;
  /** Smallest box that it lies in with its mean plane level: length, width, height, m. */
  readonly size: readonly [length: number, width: number, height: number];
  /** Centre of mass as it stands in the shell; of the area where a mass is unknown. */
  readonly centre: Vec3;
  /** Mean outward normal, unit; up where there is none. */
  readonly normal: Vec3;
  /** Heights above the base ring's lowest hub, m: lowest and highest hub, middle of the mass. */
  readonly low: number;
  readonly high: number;
  readonly middle: number;
}

/** What pieces of one shell are reckoned from. */
export interface PieceModel {
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly massOf: (place: number) => Sourced | null;
  /** Depth of flanges inwards from the skin, m; 0 where unknown. */
  readonly flange: number;
  readonly faces: PanelFaces;
  /** Height of the ground in the shell's frame. */
  readonly ground: number;
}

/** The model of a shell whose lowest base hub stands on the ground. Throws where a panel has no area. */
export function pieceModel(
  shell: Shell,
  numbers: readonly string[],
  massOf: (place: number) => Sourced | null,
  flange = 0,
): PieceModel {
  const ground = baseRing(shell)?.z.min ?? lowestOf(shell);
  return { shell, numbers, massOf, flange, faces: facesOf(shell), ground };
}

const lowestOf = (shell: Shell): number =>
  shell.hubs.reduce((low, x, i) => (i % 3 === 2 ? Math.min(low, x) : low), Infinity);

/** One piece. RangeError for no place, or one that is none of the shell's. */
export function pieceOf(model: PieceModel, places: readonly number[]): Piece {
  const { shell, faces, numbers, ground } = model;
  const count = placeCount(shell);
  if (places.length === 0) throw new RangeError('a piece has no place, expected at least one');
  for (const p of places)
    if (!(Number.isInteger(p) && p >= 0 && p < count))
      throw new RangeError(`a piece has place ${p}, 0 to ${count - 1} are there`);
  const masses = places.map((p) => model.massOf(p));
  const known = masses.filter((mass) => mass !== null);
  const isKnown = known.length === places.length;
  const weightOf = (i: number): number =>
    isKnown ? (masses[i] as Sourced).value : faces.size[places[i] as number];
  const whole = places.reduce((sum, _, i) => sum + weightOf(i), 0);
  const centre = places.reduce<Vec3>(
    (sum, p, i) => add(sum, scale(pointAt(faces.centre, p), weightOf(i) / whole)),
    [0, 0, 0],
  );
  const hubs = [...new Set(places.flatMap((p) => hubsOf(shell, p as PlaceId)))];
  const points = hubs.map((hub) => pointAt(shell.hubs, hub));
  const area = places.reduce<Vec3>((sum, p) => add(sum, pointAt(faces.area, p)), [0, 0, 0]);
  const normal: Vec3 = norm(area) > 1e-9 * faces.size[places[0]] ? normalize(area) : [0, 0, 1];
  const heights = points.map((at) => at[2] - ground);
  return {
    places,
    numbers: places.map((p) => numbers[p] as string),
    mass: known.length === 0 ? null : known.reduce((sum, mass) => sum + mass.value, 0),
    sources: mergeSources(...known.map((mass) => mass.sources)),
    unweighed: places.flatMap((p, i) => (masses[i] === null ? [numbers[p] as string] : [])),
    area: places.reduce((sum, p) => sum + faces.size[p], 0),
    size: boxAlong(points, normal, model.flange),
    centre,
    normal,
    low: Math.min(...heights),
    high: Math.max(...heights),
    middle: centre[2] - ground,
  };
}

/** Length, width and height of the smallest upright box with one side along a line between two of the
 * points; the smallest rectangle round points has one along its hull. */
function boxAlong(
  points: readonly Vec3[],
  up: Vec3,
  flange: number,
): readonly [number, number, number] {
  const along = points.map((at) => dot(at, up));
  const height = Math.max(...along) - Math.min(...along) + flange;
  let best: readonly [number, number] = [Infinity, Infinity];
  points.forEach((a, i) => {
    for (const b of points.slice(0, i)) {
      const way = subtract(b, a);
      const level = subtract(way, scale(up, dot(way, up)));
      if (!(norm(level) > 1e-9)) continue;
      const u = normalize(level);
      const v = cross(up, u);
      const sides = [u, v].map((axis) => {
        const at = points.map((p) => dot(p, axis));
        return Math.max(...at) - Math.min(...at);
      });
      const [length, width] = [Math.max(...sides), Math.min(...sides)];
      if (length * width < best[0] * best[1]) best = [length, width];
    }
  });
  return [best[0], best[1], height];
}
