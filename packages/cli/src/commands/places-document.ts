// What stands as one JSON document: every arrangement, and the chosen one hub by hub and place by place.

import {
  type Arrangement,
  type Arrangements,
  cornerCount,
  hubsOf,
  type Kind,
  type PlaceId,
  placeCount,
  STAND_CAUTION,
  type WayUp,
} from '@shellraise/core';
import { type Chosen, shapesWith } from '../job.ts';
import type { StandOptions } from '../options.ts';

/** The document. */
export function placesDocument(chosen: Chosen, options: StandOptions): object {
  const { list, shape, found } = chosen;
  return {
    shape: { number: options.shape, of: found.shapes.length, radius: shape.radius },
    tallest: list.tallest === null ? null : list.tallest + 1,
    tallestFlat: list.tallestFlat === null ? null : list.tallestFlat + 1,
    rotations: list.rotations,
    uncounted: list.uncounted,
    complete: list.complete,
    arrangements: list.arrangements.map((one, i) => arrangementDocument(list, one, i)),
    chosen: {
      number: chosen.number,
      shapes: shapesWith(chosen),
      numbers: numbersDocument(chosen),
      ...standingDocument(chosen, chosen.kinds),
    },
    cautions: [STAND_CAUTION],
  };
}

function arrangementDocument(list: Arrangements, one: Arrangement, i: number): object {
  const { at, kinds, orbit } = list.waysUp[one.wayUp] as WayUp;
  return {
    number: i + 1,
    crown: { at, kinds, orbit },
    panels: one.cut.places.length,
    height: one.cut.height,
    floorDiameter: 2 * one.cut.floor.mean,
    flat: one.cut.flat,
    openSides: one.openSides,
    courses: one.courses,
    short: one.short,
    stock: one.stock,
  };
}

/** Whether the numbers are painted ones: see docs/words.md, frozen numbers. */
const numbersDocument = ({ numbers: { status, reason, painted, idle } }: Chosen): object => ({
  status,
  reason,
  painted: painted.reduce((sum, one) => sum + one, 0),
  idle,
});

/** Hubs and places as they stand: z up, x towards the datum, origin at the sphere's centre. */
function standingDocument({ standing, numbers }: Chosen, kinds: readonly Kind[]): object {
  const { shell } = standing;
  return {
    hubs: Array.from({ length: shell.hubs.length / 3 }, (_, h) => [
      ...shell.hubs.subarray(3 * h, 3 * h + 3),
    ]),
    places: Array.from({ length: placeCount(shell) }, (_, p) => ({
      number: numbers.numbers[p],
      course: numbers.course[p],
      position: numbers.position[p],
      kind: (kinds[shell.kind[p] as number] as Kind).id,
      turn: shell.turn[p],
      corners: cornerCount(shell, p as PlaceId),
      hubs: hubsOf(shell, p as PlaceId),
    })),
  };
}
