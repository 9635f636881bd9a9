// The JSON of `shellraise shape`: see docs/command-line.md. Fields are added, never renamed.

import {
  hubsOf,
  type Identification,
  type Kind,
  kindsOfShape,
  type PlaceId,
  placeCount,
  placesByKind,
  type Shape,
} from '@shellraise/core';

/** The document: shapes best first, or none and the reasons. Sides and turns count from 0. */
export function shapeDocument(
  found: Identification,
  kinds: readonly Kind[],
): Record<string, unknown> {
  return {
    shapes: found.shapes.map((shape) => oneShape(shape, kinds)),
    settle: found.settle,
    reasons: found.reasons,
    complete: found.complete,
    next: found.next,
    enough: found.enough,
    trial: found.trial,
    conflicts: found.conflicts,
    besides: found.besides && shapeDocument(found.besides, kinds),
  };
}

function oneShape(shape: Shape, pileKinds: readonly Kind[]): object {
  const { shell } = shape;
  const kinds = kindsOfShape(shape, pileKinds);
  const idOf = (kind: number): string => (kinds[kind] as Kind).id;
  return {
    radius: shape.radius,
    radiusSd: shape.radiusSd,
    closed: shape.closed,
    hubs: Array.from({ length: shell.hubs.length / 3 }, (_, h) => [
      ...shell.hubs.subarray(3 * h, 3 * h + 3),
    ]),
    places: Array.from({ length: placeCount(shell) }, (_, p) => ({
      hubs: hubsOf(shell, p as PlaceId),
      kind: idOf(shell.kind[p] as number),
      turn: shell.turn[p] as number,
    })),
    stock: stockOf(shape, kinds),
    residual: shape.residual,
    subdivision: shape.subdivision,
    probability: shape.probability,
    suspects: shape.suspects,
    interchangeable: shape.interchangeable,
    interchangeCosts: shape.interchangeCosts,
    mends: shape.mends,
    strangers: shape.explained.map((one) =>
      one.as === 'cut'
        ? { ...one, from: idOf(one.from) }
        : one.as === 'misread'
          ? { ...one, of: idOf(one.of) }
          : one,
    ),
    added: shape.added.map(({ why, of, kind }) => ({
      why,
      of: of === null ? null : idOf(of),
      id: kind.id,
      sides: kind.sides,
      sideSds: kind.sideSds,
    })),
    cut: shape.cut,
    course: shape.course,
    allowance: shape.allowance,
    hands: shape.hands,
    apart: shape.apart,
    openSides: shell.mate.reduce((open, mate) => open + (mate < 0 ? 1 : 0), 0),
    fittedSides: Object.fromEntries(kinds.map((kind, k) => [kind.id, shape.fittedSides[k] ?? []])),
  };
}

/** Kind → good panels in the pile (null where nobody counted) and places in the whole net. */
function stockOf({ shell }: Shape, kinds: readonly Kind[]): object {
  const places = placesByKind(shell, kinds.length);
  return Object.fromEntries(
    kinds.map((kind, k) => [
      kind.id,
      { have: kind.counted ? kind.good : null, places: places[k], repair: kind.repair },
    ]),
  );
}
