// Two halves of a ball with a straight course between them. The course's panels have no place in the
// sphere: rectangles, or triangles that stand by turns on one rim and on the other. Their rim sides are
// as long as the sides of an equator of the sphere, a closed run of seams in a plane through the
// centre; the course stands upright on it. Metres.

import { cross, dot, norm, normalize, pointAt, type Vec3 } from '../math/vector.ts';
import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubCount, hubsOf, placeCount, type Shell, seamCount } from '../shell/shell.ts';
import { raisedTo } from './raised.ts';
import type { Identification, Shape, Stranger } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** Of answers whose strangers are all explained as a course, so many are right. */
const TRUST = 0.97;
/** Shapes whose strangers are looked at. */
const MOST_SHAPES = 12;
/** Lengths agree within this many deviations of their difference. */
const AGREE = 4;
/** A hub lies in a plane through the centre within this part of the radius. */
const FLAT = 0.004;

/** A course's panel: its rim sides, from 0, how long they are, and how high it stands. */
interface CoursePanel {
  readonly kind: Kind;
  readonly rimSides: readonly number[];
  readonly rim: number;
  readonly height: number;
  readonly sd: number;
  readonly misfit: number;
}

/** A closed run of seams in a plane through the centre. */
interface Equator {
  readonly up: Vec3;
  readonly lengths: readonly number[];
}

/** Kinds (by index) that look like a course's rectangles: others have a side as long as their rim, none
 * but such rectangles one as long as they are high. Empty where none do. */
export function courseLooking(kinds: readonly Kind[]): number[] {
  const isBox = kinds.map((kind) => isRectangle(kind));
  const others = kinds.filter((_, k) => !isBox[k]);
  const met = ({ sides, sideSds }: Kind, i: number): boolean =>
    others.some((other) =>
      other.sides.some((x, j) =>
        near(x, sides[i] as number, Math.hypot(sdAt(other.sideSds, j), sdAt(sideSds, i))),
      ),
    );
  const found = kinds.flatMap((kind, k) => (isBox[k] && met(kind, 0) !== met(kind, 1) ? [k] : []));
  return found.length < kinds.length ? found : [];
}

/** The answer with its strangers explained as the panels of a straight course, where they are. */
export function withStraightCourse(answer: Identification, kinds: readonly Kind[]): Identification {
  const shapes = answer.shapes.map((shape, i) =>
    i < MOST_SHAPES && shape.closed && shape.cut === null && shape.strangers.length > 0
      ? withCourse(shape, kinds)
      : shape,
  );
  const best = shapes[0];
  const all = best?.course && best.explained.every(({ as }) => as === 'course');
  return { ...answer, shapes: all ? raisedTo(shapes, TRUST) : shapes };
}

function withCourse(shape: Shape, kinds: readonly Kind[]): Shape {
  const strangers = shape.strangers.map((id) => kinds.find((kind) => kind.id === id) as Kind);
  for (const equator of equatorsOf(shape.shell)) {
    const boxes = strangers.flatMap((kind) => boxOn(kind, equator) ?? []);
    const panels =
      boxes.length > 0 ? boxes : strangers.flatMap((kind) => tentOn(kind, equator, shape) ?? []);
    const height = commonHeight(panels);
    if (height === null || !covers(panels, equator)) continue;
    const told = new Map(
      panels.map(({ kind, rimSides, misfit }): [string, Stranger] => [
        kind.id,
        { kind: kind.id, as: 'course', rimSides, height, misfit },
      ]),
    );
    const count = equator.lengths.length * (panels === boxes ? 1 : 2);
    return {
      ...shape,
      course: { up: equator.up, height, panels: count },
      explained: shape.explained.map((one) => told.get(one.kind) ?? one),
    };
  }
  return shape;
}

/** The equators of a shell, one for each way up. */
function equatorsOf(shell: Shell): Equator[] {
  const found: Equator[] = [];
  for (let m = 0; m < seamCount(shell); m++) {
    const [a, b] = endsOf(shell, m);
    const up = normalize(cross(a, b));
    if (!(norm(up) > 0.5) || found.some((one) => Math.abs(dot(one.up, up)) > 1 - FLAT ** 2))
      continue;
    const lengths = equatorAt(shell, up);
    if (lengths) found.push({ up, lengths });
  }
  return found;
}

const endsOf = (shell: Shell, seam: number): [Vec3, Vec3] => [
  pointAt(shell.hubs, shell.sideHub[shell.seams[2 * seam] as number] as number),
  pointAt(shell.hubs, shell.sideHub[shell.seams[2 * seam + 1] as number] as number),
];

/** Lengths of the seams in the plane through the centre; null where it crosses a place. */
function equatorAt(shell: Shell, up: Vec3): number[] | null {
  const flat = FLAT * shell.radius;
  const heights = Array.from({ length: hubCount(shell) }, (_, h) =>
    dot(pointAt(shell.hubs, h), up),
  );
  for (let p = 0; p < placeCount(shell); p++) {
    const own = hubsOf(shell, p as PlaceId).map((hub) => heights[hub] as number);
    if (own.some((z) => z > flat) && own.some((z) => z < -flat)) return null;
  }
  const lengths: number[] = [];
  for (let m = 0; m < seamCount(shell); m++)
    if (endsOf(shell, m).every((end) => Math.abs(dot(end, up)) <= flat))
      lengths.push(sideLength(shell, shell.seams[2 * m] as SideId));
  return lengths.length > 2 ? lengths : null;
}

const sdAt = (sds: readonly number[], i: number): number => Math.max(sds[i] as number, FINEST_SD);

const near = (a: number, b: number, sd: number): boolean => Math.abs(a - b) <= AGREE * sd;

function isRectangle({ sides, sideSds }: Kind): boolean {
  const opposite = (i: number): boolean =>
    near(
      sides[i] as number,
      sides[i + 2] as number,
      Math.hypot(sdAt(sideSds, i), sdAt(sideSds, i + 2)),
    );
  return sides.length === 4 && opposite(0) && opposite(1);
}

/** A rectangle that stands on a seam of the equator; null where it does not. */
function boxOn(kind: Kind, { lengths }: Equator): CoursePanel | null {
  if (!isRectangle(kind)) return null;
  const { sides } = kind;
  const sd = Math.max(...kind.sideSds, FINEST_SD);
  const panels = [0, 1].flatMap((first): CoursePanel[] => {
    const rimSides = [first, first + 2];
    const rim = mean(rimSides.map((i) => sides[i] as number));
    const length = nearest(lengths, rim);
    if (!near(length, rim, sd)) return [];
    const height = ((sides[1 - first] as number) + (sides[3 - first] as number)) / 2;
    const off = sides.map((x, i) => x - (rimSides.includes(i) ? length : height));
    return [{ kind, rimSides, rim: length, height, sd, misfit: rms(off) }];
  });
  return panels.sort((a, b) => a.misfit - b.misfit)[0] ?? null;
}

/** A triangle that stands on a seam of an equator of equal seams, its tip on the other rim, half a step
 * on; null where it does not. */
function tentOn(kind: Kind, { lengths }: Equator, { radius }: Shape): CoursePanel | null {
  const length = mean(lengths);
  const sd = Math.max(...kind.sideSds, FINEST_SD);
  if (kind.sides.length !== 3 || !lengths.every((x) => near(x, length, sd))) return null;
  const outwards = radius - Math.sqrt(radius ** 2 - (length / 2) ** 2);
  for (const i of [0, 1, 2]) {
    const [rim, a, b] = [0, 1, 2].map((j) => kind.sides[(i + j) % 3] as number) as [
      number,
      number,
      number,
    ];
    const square = ((a + b) / 2) ** 2 - (length / 2) ** 2 - outwards ** 2;
    if (!near(rim, length, sd) || !near(a, b, sd * Math.SQRT2) || square <= 0) continue;
    const off = [rim - length, (a - b) / 2, (b - a) / 2];
    return { kind, rimSides: [i], rim: length, height: Math.sqrt(square), sd, misfit: rms(off) };
  }
  return null;
}

/** The height of all of them; null where they differ, or where there are none. */
function commonHeight(panels: readonly CoursePanel[]): number | null {
  if (panels.length === 0) return null;
  const height = mean(panels.map((one) => one.height));
  return panels.every((one) => near(one.height, height, one.sd)) ? height : null;
}

/** Whether each seam of the equator has a panel as long. */
const covers = (panels: readonly CoursePanel[], { lengths }: Equator): boolean =>
  lengths.every((x) => panels.some(({ rim, sd }) => near(x, rim, sd)));

const mean = (values: readonly number[]): number =>
  values.reduce((sum, x) => sum + x, 0) / values.length;

const rms = (values: readonly number[]): number => Math.sqrt(mean(values.map((x) => x * x)));

const nearest = (values: readonly number[], to: number): number =>
  values.reduce((a, b) => (Math.abs(b - to) < Math.abs(a - to) ? b : a), Number.POSITIVE_INFINITY);
