// Proof that a body can't pass, by cells: wherever in the gaps its heart is, and however it is turned, the
// line round an opening goes through a flat plate that the body holds, or it is in the ground. In a cell
// no point of the wall, as the body sees it, moves further than the cell allows, so a line that goes
// through a plate by more than that does so in the whole cell. Where every cell is shut it can't pass.
//
// So is a cell in which the ball about the heart touches the wall.
//
// Two searches: over the directions of one round plate about the heart, and over all turns of all plates.

import { add, dot, norm, normalize, subtract, type Vec3 } from '../math/vector.ts';
import { type Body, spanIn } from './body.ts';
import { GROUND_GIVES, type Scene } from './clear.ts';
import { circleOf, distanceOf, type Impossible, quarters, reachable, SMALL } from './impossible.ts';
import { isWithin, type Plate } from './plates.ts';
import { type Turn, turned, turnedBack, unitTurn } from './pose.ts';
import { isThrough } from './through.ts';
import type { Triangle } from './wall.ts';

/** How the search for a crossing goes. */
export interface ProofOptions {
  /** Cells looked into before it is given up. */
  readonly cells: number;
  /** Asked now and then; true gives it up. */
  readonly shouldStop?: () => boolean;
}

type Verdict = 'shut' | 'small' | 'open';

/** Whether all cells are shut, split until they are; false where one is too small or there are too many. */
function allShut<T>(
  first: readonly T[],
  look: (cell: T) => Verdict,
  split: (cell: T) => readonly T[],
  { cells, shouldStop }: ProofOptions,
): boolean {
  const stack = [...first];
  for (let looked = 0; stack.length > 0; looked++) {
    if (looked >= cells || (looked % 256 === 0 && shouldStop?.())) return false;
    const cell = stack.pop() as T;
    const verdict = look(cell);
    if (verdict === 'shut') continue;
    if (verdict === 'small') return false;
    stack.push(...split(cell));
  }
  return true;
}

/** The most, radians, that a direction is off the one at a spot of a face of the cube, seen from its
 * middle, within a distance on the face: a step there turns by no more than itself over the distance
 * from the middle. */
function spanOnFace(spot: readonly number[], within: number): number {
  const nearest = Math.max(0, Math.hypot(...spot) - within);
  return within / Math.hypot(1, nearest);
}

interface DiscCell {
  readonly corners: Triangle;
  /** Which part of the plate's normal is 1, and the other two, ± `half`. */
  readonly one: number;
  readonly rest: readonly [number, number];
  readonly half: number;
}

/** Whether a round plate about the body's heart can be nowhere in the gaps: null where not shown. */
export function discImpossible(scene: Scene, options: ProofOptions): Impossible | null {
  const { barrier, body } = scene;
  const radius = Math.max(0, ...body.held.plates.map((plate) => discIn(plate, body.held.heart)));
  if (radius === 0) return null;
  const first = reachable(scene).flatMap((corners) =>
    [0, 1, 2].map((one): DiscCell => ({ corners, one, rest: [0, 0], half: 1 })),
  );
  const look = (cell: DiscCell): Verdict => {
    const [at, spread] = circleOf(cell.corners);
    const parts: number[] = [...cell.rest];
    parts.splice(cell.one, 0, 1);
    const normal = normalize(parts as unknown as Vec3);
    const angle = spanOnFace(cell.rest, Math.SQRT2 * cell.half);
    for (const loop of barrier.loops) {
      const slip = loop.map((p) => spread + angle * norm(subtract(p, at)));
      const isIn = (p: Vec3, margin: number): boolean => norm(subtract(p, at)) < radius - margin;
      if (isThrough(loop, slip, at, normal, isIn)) return 'shut';
    }
    if (isBallShut(scene, at, spread)) return 'shut';
    return spread + angle * radius < SMALL ? 'small' : 'open';
  };
  const split = (cell: DiscCell): DiscCell[] => {
    if (circleOf(cell.corners)[1] > 2 * Math.SQRT2 * cell.half * radius)
      return quarters(cell.corners).map((corners) => ({ ...cell, corners }));
    const half = cell.half / 2;
    const [x, y] = cell.rest;
    return [-half, half].flatMap((dx) =>
      [-half, half].map((dy): DiscCell => ({ ...cell, half, rest: [x + dx, y + dy] })),
    );
  };
  if (!allShut(first, look, split, options)) return null;
  return {
    by: 'disc',
    why: `it holds a disc of ${(2 * radius).toFixed(2)} m, which no open place lets through`,
  };
}

/** Radius of the disc about the heart that a plate through it holds, m; 0 where it is not in it. */
function discIn({ middle, normal, u, v, corners }: Plate, heart: Vec3): number {
  const off = subtract(heart, middle);
  if (Math.abs(dot(normal, off)) > 1e-9) return 0;
  const [x, y] = [dot(u, off), dot(v, off)];
  return Math.max(
    0,
    Math.min(
      ...corners.map(([ax, ay], i) => {
        const [bx, by] = corners[(i + 1) % corners.length] as readonly [number, number];
        const [dx, dy] = [bx - ax, by - ay];
        return (dx * (y - ay) - dy * (x - ax)) / Math.hypot(dx, dy);
      }),
    ),
  );
}

interface TurnCell {
  readonly corners: Triangle;
  /** Which part of the quaternion is 1, and the others, ± `half`. */
  readonly one: number;
  readonly rest: Vec3;
  readonly half: number;
}

/** Whether every pose with the heart in a gap is shut; null where that is not shown. */
export function crossingImpossible(scene: Scene, options: ProofOptions): Impossible | null {
  const first = reachable(scene).flatMap((corners) =>
    [0, 1, 2, 3].map((one): TurnCell => ({ corners, one, rest: [0, 0, 0], half: 1 })),
  );
  const isShut = allShut(
    first,
    (cell) => lookInto(cell, scene),
    (cell) => split(cell, scene.body),
    options,
  );
  if (!isShut) return null;
  return {
    by: 'crossing',
    why: 'wherever it is and however it is turned, the edges of the opening go through it',
  };
}

function lookInto(cell: TurnCell, { barrier, body }: Scene): Verdict {
  if (cell.half > 0.5) return 'open';
  const { heart, plates, points } = body.held;
  const [at, spread] = circleOf(cell.corners);
  const turn = turnAt(cell);
  const angle = 2 * spanOnFace(cell.rest, Math.sqrt(3) * cell.half);
  const reach = body.reach + norm(heart);
  const sunk =
    at[2] + spanIn(points, turn)[0] - turned(turn, heart)[2] - barrier.floor + GROUND_GIVES;
  if (sunk + spread + angle * reach < 0) return 'shut';
  const isSmall = spread + angle * reach < SMALL;
  const back = turnedBack(turn);
  for (const loop of barrier.loops) {
    const seen = loop.map((p) => add(turned(back, subtract(p, at)), heart));
    const slip = loop.map((p) => spread + angle * norm(subtract(p, at)));
    if (plates.some((plate) => isThroughPlate(seen, slip, plate))) return 'shut';
  }
  if (isBallShut({ barrier, body }, at, spread)) return 'shut';
  return isSmall ? 'small' : 'open';
}

/** Whether the ball about the heart touches the wall wherever the heart is within `spread` of a point. */
function isBallShut(
  { barrier, body }: Pick<Scene, 'barrier' | 'body'>,
  at: Vec3,
  spread: number,
): boolean {
  const { ball } = body.held;
  return spread < ball && distanceOf(barrier, at, ball) + spread < ball;
}

function turnAt({ one, rest }: TurnCell): Turn {
  const parts = [...rest];
  parts.splice(one, 0, 1);
  return unitTurn(parts as unknown as Turn);
}

function isThroughPlate(loop: readonly Vec3[], slip: readonly number[], plate: Plate): boolean {
  const { middle, normal, u, v, corners } = plate;
  return isThrough(loop, slip, middle, normal, (p, margin) => {
    const off = subtract(p, middle);
    return isWithin([dot(u, off), dot(v, off)], corners, margin);
  });
}

/** The cell in parts: of the gap or of the turns, whichever lets more slip. */
function split(cell: TurnCell, body: Body): TurnCell[] {
  const [, spread] = circleOf(cell.corners);
  if (spread > 2 * Math.sqrt(3) * cell.half * body.reach)
    return quarters(cell.corners).map((corners) => ({ ...cell, corners }));
  const half = cell.half / 2;
  const cells: TurnCell[] = [];
  for (const x of [-half, half])
    for (const y of [-half, half])
      for (const z of [-half, half]) cells.push({ ...cell, half, rest: add(cell.rest, [x, y, z]) });
  return cells;
}
