// Will it swing: how near a dish comes to the wall and floor over every pointing of its mount, the
// largest dish that swings there, and the best height of the mount.
//
// Inside a shell that bulges everywhere the room is what lies below the plane of every panel, less the
// flanges that stand inward. The dish is the hull of three circles square to the pointing u: the rim, the
// front of the feed, and the back. How far a circle of radius r about c reaches along a plane's normal n
// is n·c + r √(1 − (n·u)²), so the clearance of a pointing is a least over planes. For dishes of one focal
// ratio that reach is a sum of a part that does not change and one in proportion to the diameter, so the
// largest dish of a pointing and a plane is a quotient; and as it falls or rises in proportion with the
// mount's height, the largest over all is a least of straight lines in the height: its top is found by
// laying the worst line of each height tried until the lines met say the same.

import { assertBetween } from '../loads/doors.ts';
import type { Shell } from '../shell/shell.ts';
import { crossedShell } from './crossing.ts';
import { assertDish, type Dish, type Mount, pivotOf, pointingsOf } from './dish.ts';

/** What is asked. */
export interface SwingQuestion {
  readonly shell: Shell;
  readonly dish: Dish;
  readonly mount: Mount;
  /** Height of the floor in the shell's frame. */
  readonly floor: number;
  /** How far flanges stand in from the panels, metres; every panel counts as standing in so far. */
  readonly flange: number;
  /** What must stay clear, metres. */
  readonly margin: number;
  /** Between pointings, degrees; 1 unless told. */
  readonly stepDeg?: number;
}

/** A pointing and how near the dish comes there. */
export interface NearestWall {
  readonly azimuth: number;
  readonly elevation: number;
  /** Metres to the nearest plane; negative: the dish would go through it. */
  readonly clearance: number;
  /** Place that is nearest; −1: the floor. */
  readonly place: number;
  /** Part of the dish that is nearest. */
  readonly part: 'rim' | 'feed' | 'back';
}

/** How a dish swings. */
export interface Swing {
  readonly swings: boolean;
  /** The nearest of all pointings. */
  readonly nearest: NearestWall;
  /** Elevation → the nearest of its row of pointings, from the lowest. */
  readonly rows: readonly NearestWall[];
  /** Largest dish of this focal ratio that swings on this mount with the margin, metres; 0: none. */
  readonly largest: number;
  /** Height of the pivot above the floor at which the largest dish swings, and that dish. */
  readonly best: { readonly height: number; readonly largest: number };
}

/** The answer. RangeError for a dish, margin or step that is none, and for a dish larger than the
 * shell. */
export function swing(question: SwingQuestion): Swing {
  const { shell, dish, mount, floor, flange, margin, stepDeg = 1 } = question;
  assertDish(dish);
  assertBetween('flange', flange, 0, 1, 'm');
  assertBetween('margin', margin, 0, 5, 'm');
  if (dish.diameter >= 2 * shell.radius)
    throw new RangeError(
      `dish diameter is ${dish.diameter} m, expected less than the shell’s ${(2 * shell.radius).toFixed(3)} m`,
    );
  const planes = planesOf(shell, floor, flange);
  const fine = pointingsOf(mount, (stepDeg * Math.PI) / 180);
  const rows = nearestByRow(planes, dish, pivotOf(mount, floor), fine);
  const nearest = rows.reduce((one, next) => (next.clearance < one.clearance ? next : one));
  const lines = linesOf(planes, dish, mount, floor, margin, fine);
  const coarse = linesOf(
    planes,
    dish,
    mount,
    floor,
    margin,
    pointingsOf(mount, (2 * stepDeg * Math.PI) / 180),
  );
  const height = bestHeight(coarse, shell.radius * 2);
  const least = (at: number): number => Math.max(0, leastLine(lines, at).value);
  return {
    swings: nearest.clearance >= margin,
    nearest,
    rows,
    largest: least(mount.height),
    best: { height, largest: least(height) },
  };
}

/** Planes that bound the room: outward normals and how far out they lie, the floor last. */
interface Planes {
  readonly normal: Float64Array;
  readonly reach: Float64Array;
}

function planesOf(shell: Shell, floor: number, flange: number): Planes {
  const { normal, reach } = crossedShell(shell);
  const places = reach.length;
  const all = new Float64Array(3 * places + 3);
  all.set(normal);
  all[3 * places + 2] = -1;
  const out = new Float64Array(places + 1);
  for (let p = 0; p < places; p++) out[p] = reach[p] - flange;
  out[places] = -floor;
  return { normal: all, reach: out };
}

const PARTS = ['rim', 'feed', 'back'] as const;

/** The three circles: along the pointing from the pivot, and radius. */
function circlesOf({ diameter, focalRatio, vertexAhead, feed, back }: Dish): Float64Array {
  return Float64Array.from([
    vertexAhead + diameter / (16 * focalRatio),
    diameter / 2,
    vertexAhead + focalRatio * diameter + feed.beyond,
    feed.diameter / 2,
    -back.behind,
    back.diameter / 2,
  ]);
}

function nearestByRow(
  { normal, reach }: Planes,
  dish: Dish,
  pivot: readonly [number, number, number],
  pointings: readonly { readonly azimuth: number; readonly elevation: number }[],
): NearestWall[] {
  const circles = circlesOf(dish);
  const free = Float64Array.from(
    reach,
    (far, p) =>
      far - normal[3 * p] * pivot[0] - normal[3 * p + 1] * pivot[1] - normal[3 * p + 2] * pivot[2],
  );
  const rows: NearestWall[] = [];
  for (const { azimuth, elevation } of pointings) {
    const [u, v, w] = unit(azimuth, elevation);
    let [least, place, part] = [Number.POSITIVE_INFINITY, -1, 0];
    for (let p = 0; p < free.length; p++) {
      const facing = normal[3 * p] * u + normal[3 * p + 1] * v + normal[3 * p + 2] * w;
      const aslant = Math.sqrt(Math.max(0, 1 - facing * facing));
      for (let k = 0; k < 3; k++) {
        const left = free[p] - circles[2 * k] * facing - circles[2 * k + 1] * aslant;
        if (left < least) [least, place, part] = [left, p, k];
      }
    }
    const found: NearestWall = {
      azimuth,
      elevation,
      clearance: least,
      place: place === free.length - 1 ? -1 : place,
      part: PARTS[part],
    };
    const last = rows.at(-1);
    if (last === undefined || last.elevation !== elevation) rows.push(found);
    else if (least < last.clearance) rows[rows.length - 1] = found;
  }
  return rows;
}

const unit = (azimuth: number, elevation: number): readonly [number, number, number] => [
  Math.cos(elevation) * Math.cos(azimuth),
  Math.cos(elevation) * Math.sin(azimuth),
  Math.sin(elevation),
];

/** Pointings and planes as lines in the height of the pivot: of each pair, the largest dish is
 * `(free − up · height) / grows`. */
interface Lines {
  readonly planes: Planes;
  readonly free: Float64Array;
  readonly units: Float64Array;
  readonly dish: Dish;
}

function linesOf(
  planes: Planes,
  dish: Dish,
  mount: Mount,
  floor: number,
  margin: number,
  pointings: readonly { readonly azimuth: number; readonly elevation: number }[],
): Lines {
  const { normal, reach } = planes;
  const [x, y, z] = pivotOf({ ...mount, height: 0 }, floor);
  const free = Float64Array.from(
    reach,
    (far, p) => far - margin - normal[3 * p] * x - normal[3 * p + 1] * y - normal[3 * p + 2] * z,
  );
  const units = new Float64Array(3 * pointings.length);
  pointings.forEach(({ azimuth, elevation }, i) => {
    units.set(unit(azimuth, elevation), 3 * i);
  });
  return { planes, free, units, dish };
}

/** The least of the lines at a height, and how it changes with height. What does not grow with the dish
 * (the back, a feed that is wide) and does not fit makes it −Infinity, with the slope that frees it. */
function leastLine(lines: Lines, height: number): { value: number; slope: number } {
  const { planes, free, units, dish } = lines;
  const { normal } = planes;
  const { focalRatio, vertexAhead, feed, back } = dish;
  let [value, slope] = [Number.POSITIVE_INFINITY, 0];
  let [stuck, freeing] = [0, 0];
  for (let i = 0; i < units.length; i += 3)
    for (let p = 0; p < free.length; p++) {
      const up = normal[3 * p + 2];
      const facing =
        normal[3 * p] * units[i] + normal[3 * p + 1] * units[i + 1] + up * units[i + 2];
      const aslant = Math.sqrt(Math.max(0, 1 - facing * facing));
      const left = free[p] - up * height;
      const behind = left + back.behind * facing - (back.diameter / 2) * aslant;
      const ahead = left - vertexAhead * facing;
      if (behind < stuck) [stuck, freeing] = [behind, -up];
      if (ahead < stuck) [stuck, freeing] = [ahead, -up];
      const rim = facing / (16 * focalRatio) + aslant / 2;
      if (rim > 0 && ahead < value * rim) [value, slope] = [ahead / rim, -up / rim];
      const before = ahead - feed.beyond * facing - (feed.diameter / 2) * aslant;
      const grows = focalRatio * facing;
      if (grows > 1e-9 && before < value * grows) [value, slope] = [before / grows, -up / grows];
      else if (grows <= 1e-9 && before < stuck) [stuck, freeing] = [before, -up];
    }
  return stuck < -1e-12 ? { value: Number.NEGATIVE_INFINITY, slope: freeing } : { value, slope };
}

/** Heights nearer than this are one, metres. */
const SAME_HEIGHT = 1e-3;

/** The height with the greatest least line, from the floor up to `top`: cutting planes; where a height
 * does not fit at all, half-way towards the side that frees it. */
function bestHeight(lines: Lines, top: number): number {
  let [low, high] = [0, top];
  let best = { height: 0, value: Number.NEGATIVE_INFINITY };
  const cuts: { at: number; value: number; slope: number }[] = [];
  for (let round = 0; round < 24 && high - low > SAME_HEIGHT; round++) {
    const height = nextHeight(cuts, low, high);
    const { value, slope } = leastLine(lines, height);
    if (value > best.value) best = { height, value };
    if (Number.isFinite(value)) cuts.push({ at: height, value, slope });
    // The line falls: no height above is better than its value here; and the other way.
    if (slope > 0) low = Math.max(low, height);
    else high = Math.min(high, height);
  }
  return best.height;
}

/** Where the cut that rises at `low` meets the one that falls at `high`; the middle where either is
 * missing or they meet near an end. */
function nextHeight(
  cuts: readonly { at: number; value: number; slope: number }[],
  low: number,
  high: number,
): number {
  const rising = cuts.findLast(({ at, slope }) => at === low && slope > 0);
  const falling = cuts.findLast(({ at, slope }) => at === high && slope <= 0);
  const middle = (low + high) / 2;
  if (!rising || !falling || rising.slope === falling.slope) return middle;
  const meet =
    (falling.value - falling.slope * falling.at - rising.value + rising.slope * rising.at) /
    (rising.slope - falling.slope);
  const rim = (high - low) * 0.02;
  return meet > low + rim && meet < high - rim ? meet : middle;
}
