// The sky through the wall: for every pointing of a dish what the wall, its seams and its plates take
// from the signal and add as noise. Rays spread evenly over the dish's opening cross the wall; fields are
// summed with their phase, as the feed does: a wall that delays one half of the opening more than the
// other loses more than either half alone. The opening counts as evenly lit.

import { add, type Vec3 } from '../math/vector.ts';
import type { Shell } from '../shell/shell.ts';
import { type SeamBody, type Shadows, shadowShare, shadowsOf } from './blockage.ts';
import { type CrossedShell, crossedShell, placeCrossed } from './crossing.ts';
import { assertDish, type Dish, dishDepth, type Mount, mustReach, pivotOf } from './dish.ts';
import { leftBehindBlockage, WARM } from './receiver.ts';
import type { WallTable } from './wall.ts';
import { lossDb } from './wave.ts';

/** What a sky map is reckoned from. */
export interface SkyQuestion {
  readonly shell: Shell;
  readonly dish: Dish;
  readonly mount: Mount;
  /** Height of the floor in the shell's frame. */
  readonly floor: number;
  readonly wall: WallTable;
  readonly seams: SeamBody;
  /** Degrees between pointings, a whole number that divides 90; 1 unless told. */
  readonly stepDeg?: number;
  /** Rays over the opening; 37 unless told. */
  readonly rays?: number;
  /** Temperature of the wall and the ground, kelvin; 290 unless told. */
  readonly warm?: number;
}

/** One pointing of the map. Shares of 1, kelvin; azimuth from the datum anticlockwise. */
export interface SkyPoint {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** Power on axis that is left, electric field level with the ground, and upright. */
  readonly keptLevel: number;
  readonly keptUpright: number;
  /** Noise added at least (what the wall absorbs), and at most (all that is lost turned to what is
   * warm), kelvin, the worse of the two fields. */
  readonly noiseLeast: number;
  readonly noiseMost: number;
  /** Share of the opening that seams and plates shadow. */
  readonly blocked: number;
  /** Share of the rays that meet no panel: an opening, or below the base ring. */
  readonly open: number;
}

/** A map of the sky. */
export interface SkyMap {
  /** Pointings that the mount reaches, by rows of elevation from the lowest. */
  readonly points: readonly SkyPoint[];
  /** By the worse of the two fields. */
  readonly best: SkyPoint;
  readonly worst: SkyPoint;
  /** Mean loss in decibels over the sky, each pointing by its share of it. */
  readonly meanDb: number;
}

/** Loss of a pointing in decibels, the worse of the two fields. */
export const worseDb = ({ keptLevel, keptUpright }: SkyPoint): number =>
  lossDb(Math.min(keptLevel, keptUpright));

/** The map of a dish in a shell. RangeError for a dish or body that is none, a step that does not divide
 * 90, or a dish whose rim or middle is outside the sphere. */
export function skyMap(question: SkyQuestion): SkyMap {
  const { dish, mount, stepDeg = 1, rays = 37, warm = WARM } = question;
  assertDish(dish);
  if (!(stepDeg >= 0.25 && Number.isInteger(90 / stepDeg)))
    throw new RangeError(`step is ${stepDeg}°, expected a step that divides 90°`);
  const room = roomFor(question, rays);
  const points: SkyPoint[] = [];
  for (let e = 0; e <= 90 / stepDeg; e++)
    for (let a = 0; a < 360 / stepDeg; a++) {
      const [azimuthDeg, elevationDeg] = [a * stepDeg, e * stepDeg];
      const [az, el] = [(azimuthDeg * Math.PI) / 180, (elevationDeg * Math.PI) / 180];
      if (mustReach(mount, az, el)) points.push(look(room, az, el, azimuthDeg, elevationDeg, warm));
    }
  if (points.length === 0)
    throw new RangeError('the mount reaches no pointing of the map: no elevation on its grid');
  const ordered = (better: (a: number, b: number) => boolean): SkyPoint =>
    points.reduce((one, next) => (better(worseDb(next), worseDb(one)) ? next : one));
  return {
    points,
    best: ordered((a, b) => a < b),
    worst: ordered((a, b) => a > b),
    meanDb: meanLoss(points),
  };
}

function meanLoss(points: readonly SkyPoint[]): number {
  let [sum, weights] = [0, 0];
  for (const point of points) {
    // A row at the zenith has no width, yet is one pointing of the sky.
    const weight = Math.max(1e-6, Math.cos((point.elevationDeg * Math.PI) / 180));
    sum += weight * worseDb(point);
    weights += weight;
  }
  return sum / weights;
}

/** What is worked out once, and room to work in. */
interface Room {
  readonly crossed: CrossedShell;
  readonly shadows: Shadows;
  readonly wall: WallTable;
  readonly pivot: Vec3;
  readonly ahead: number;
  readonly radius: number;
  /** Rays: across and up over the radius, stride 2. */
  readonly spread: Float64Array;
  readonly seen: Float64Array;
  readonly middle: Float64Array;
  readonly axes: Float64Array;
  /** Place of the ray before. */
  near: number;
}

function roomFor({ shell, dish, mount, floor, wall, seams }: SkyQuestion, rays: number): Room {
  const crossed = crossedShell(shell);
  const pivot = pivotOf(mount, floor);
  const ahead = dish.vertexAhead + dishDepth(dish);
  const radius = dish.diameter / 2;
  if (Math.hypot(ahead, radius) >= shell.radius || Math.hypot(...pivot) >= shell.radius)
    throw new RangeError(
      `a dish of ${dish.diameter} m that turns ${Math.hypot(ahead, radius).toFixed(3)} m about its pivot is larger than a shell of ${shell.radius.toFixed(3)} m radius`,
    );
  return {
    crossed,
    shadows: shadowsOf(shell, seams),
    wall,
    pivot,
    ahead,
    radius,
    spread: evenlySpread(rays),
    seen: new Float64Array(shell.hubs.length),
    middle: new Float64Array(3),
    axes: new Float64Array(9),
    near: 0,
  };
}

/** Points spread evenly over a disc of radius 1 (Vogel's spiral), stride 2. */
export function evenlySpread(count: number): Float64Array {
  if (!(Number.isInteger(count) && count >= 1 && count <= 10_000))
    throw new RangeError(`rays are ${count}, expected a whole number of 1 to 10000`);
  const turn = Math.PI * (3 - Math.sqrt(5));
  const spread = new Float64Array(2 * count);
  for (let k = 0; k < count; k++) {
    const r = Math.sqrt((k + 0.5) / count);
    spread[2 * k] = r * Math.cos(k * turn);
    spread[2 * k + 1] = r * Math.sin(k * turn);
  }
  return spread;
}

function aim({ axes, middle, pivot, ahead }: Room, az: number, el: number): void {
  const [ca, sa, ce, se] = [Math.cos(az), Math.sin(az), Math.cos(el), Math.sin(el)];
  axes.set([ce * ca, ce * sa, se, -sa, ca, 0, -se * ca, -se * sa, ce]);
  middle.set(add(pivot, [ahead * axes[0], ahead * axes[1], ahead * axes[2]]));
}

function look(
  room: Room,
  az: number,
  el: number,
  azimuthDeg: number,
  elevationDeg: number,
  warm: number,
): SkyPoint {
  aim(room, az, el);
  const through = fieldThrough(room);
  const blocked = shadowShare(room.shadows, room, room.seen);
  const left = leftBehindBlockage(blocked);
  const [keptLevel, keptUpright] = [left * through.level, left * through.upright];
  const unshadowed = 1 - blocked;
  return {
    azimuthDeg,
    elevationDeg,
    keptLevel,
    keptUpright,
    noiseLeast: warm * unshadowed * through.absorbed,
    noiseMost: warm * Math.max(0, 1 - Math.min(keptLevel, keptUpright)),
    blocked,
    open: through.open,
  };
}

interface Through {
  readonly level: number;
  readonly upright: number;
  readonly absorbed: number;
  readonly open: number;
}

/** Power on axis of the fields' sum over the rays, and the mean that the wall absorbs, the worse field. */
function fieldThrough(room: Room): Through {
  const { crossed, wall, spread, axes, middle, radius } = room;
  const { field, absorbed, steps } = wall;
  const { normal } = crossed;
  const [u, v, w] = [axes[0], axes[1], axes[2]];
  const rays = spread.length / 2;
  let [levelRe, levelIm, uprightRe, uprightIm] = [0, 0, 0, 0];
  let [warmLevel, warmUpright, open] = [0, 0, 0];
  for (let k = 0; k < rays; k++) {
    const [p, q] = [radius * spread[2 * k], radius * spread[2 * k + 1]];
    const place = placeCrossed(
      crossed,
      middle[0] + p * axes[3] + q * axes[6],
      middle[1] + p * axes[4] + q * axes[7],
      middle[2] + p * axes[5] + q * axes[8],
      u,
      v,
      w,
      room.near,
    );
    if (place < 0) {
      levelRe += 1;
      uprightRe += 1;
      open += 1;
      continue;
    }
    room.near = place;
    const [a, b, c] = [normal[3 * place], normal[3 * place + 1], normal[3 * place + 2]];
    const cosine = Math.min(1, a * u + b * v + c * w);
    // Of the wave's field the part square to the plane of incidence is TE. The normal's part across the
    // look lies in that plane.
    const across = a * axes[3] + b * axes[4] + c * axes[5];
    const up = a * axes[6] + b * axes[7] + c * axes[8];
    const size = across * across + up * up;
    // TE share of a field that is level: the plane of incidence is upright as far as `up` says.
    const te = size > 1e-24 ? (up * up) / size : 0.5;
    const at = cosine * steps;
    const i = Math.min(steps - 1, Math.floor(at));
    const [f, g] = [at - i, 1 - at + i];
    const j = 4 * i;
    const teRe = g * field[j] + f * field[j + 4];
    const teIm = g * field[j + 1] + f * field[j + 5];
    const tmRe = g * field[j + 2] + f * field[j + 6];
    const tmIm = g * field[j + 3] + f * field[j + 7];
    const teWarm = g * absorbed[2 * i] + f * absorbed[2 * i + 2];
    const tmWarm = g * absorbed[2 * i + 1] + f * absorbed[2 * i + 3];
    const tm = 1 - te;
    levelRe += te * teRe + tm * tmRe;
    levelIm += te * teIm + tm * tmIm;
    uprightRe += tm * teRe + te * tmRe;
    uprightIm += tm * teIm + te * tmIm;
    warmLevel += te * teWarm + tm * tmWarm;
    warmUpright += tm * teWarm + te * tmWarm;
  }
  return {
    level: (levelRe ** 2 + levelIm ** 2) / rays ** 2,
    upright: (uprightRe ** 2 + uprightIm ** 2) / rays ** 2,
    absorbed: Math.max(warmLevel, warmUpright) / rays,
    open: open / rays,
  };
}
