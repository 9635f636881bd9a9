// Parts at full size as DXF, 1 : 1 in millimetres, with the layers CUT, FOLD, HOLE, LINE and WORDS: what is
// cut, where it is folded (or the face ends), holes, lines to mark, and names.

import { type DxfDrawing, type DxfPoint, writeDxf } from './dxf.ts';
import type { FullPanelPart, HubPlate } from './full-size-parts.ts';
import { holeCircle, type PlateSize } from './full-size-sheet.ts';

const layers = [
  { name: 'CUT', colour: 1 },
  { name: 'FOLD', colour: 3 },
  { name: 'HOLE', colour: 6 },
  { name: 'LINE', colour: 8 },
  { name: 'WORDS', colour: 5 },
] as const;

const mm = ([x, y]: DxfPoint): DxfPoint => [x * 1000, y * 1000];

/** A panel: its blank to cut with folds where there are flanges, else its face to cut; `hole`: diameter of
 * its holes, metres. */
export function fullPanelDxf({ panel, name }: FullPanelPart, deep: number, hole: number): string {
  const { corners, sides } = panel;
  const next = (i: number): DxfPoint => corners[(i + 1) % corners.length] as DxfPoint;
  const blank = sides.flatMap(({ flange, onFloor }, i): DxfPoint[] => [
    corners[i] as DxfPoint,
    ...(onFloor ? [] : flange),
  ]);
  return drawn({
    words: [{ at: mean(corners), text: name, size: 0.03 }],
    lines: [
      { layer: 'CUT', points: deep > 0 ? blank : corners, closed: true },
      ...(deep > 0
        ? sides.flatMap(({ onFloor }, i) =>
            onFloor
              ? []
              : [{ layer: 'FOLD', points: [corners[i] as DxfPoint, next(i)], closed: false }],
          )
        : []),
      ...sides.flatMap(({ holeLine, onFloor }) =>
        onFloor ? [] : [{ layer: 'LINE', points: holeLine, closed: false }],
      ),
    ],
    circles: sides.flatMap(({ holeAt }) =>
      holeAt.map((at) => ({ layer: 'HOLE', at, radius: hole / 2 })),
    ),
  });
}

/** A hub plate. */
export function hubPlateDxf({ name, seams, holes }: HubPlate, size: PlateSize): string {
  const on = (direction: number, far: number): DxfPoint => [
    far * Math.cos(direction),
    far * Math.sin(direction),
  ];
  return drawn({
    words: [{ at: [0, -size.diameter * 0.1], text: name, size: size.diameter / 20 }],
    lines: seams.map((seam) => ({
      layer: 'LINE',
      points: [[0, 0], on(seam, size.diameter / 2)],
      closed: false,
    })),
    circles: [
      { layer: 'CUT', at: [0, 0], radius: size.diameter / 2 },
      ...holes.map((hole) => ({
        layer: 'HOLE',
        at: on(hole, holeCircle(size)),
        radius: size.hole / 2,
      })),
    ],
  });
}

/** In metres; what is drawn is moved so that all of it lies right of and above 0, 0. */
function drawn({
  words,
  lines,
  circles,
}: Pick<DxfDrawing, 'lines' | 'circles'> & {
  readonly words: readonly {
    readonly at: DxfPoint;
    readonly text: string;
    readonly size: number;
  }[];
}): string {
  const all = [
    ...lines.flatMap(({ points }) => points),
    ...circles.flatMap(({ at: [x, y], radius }): DxfPoint[] => [
      [x - radius, y - radius],
      [x + radius, y + radius],
    ]),
  ];
  const [left, low] = [0, 1].map((axis) => Math.min(...all.map((p) => p[axis as 0]))) as [
    number,
    number,
  ];
  const [right, high] = [0, 1].map((axis) => Math.max(...all.map((p) => p[axis as 0]))) as [
    number,
    number,
  ];
  const moved = ([x, y]: DxfPoint): DxfPoint => mm([x - left, y - low]);
  return writeDxf({
    least: [0, 0],
    most: mm([right - left, high - low]),
    layers,
    words: words.map(({ at, text, size }) => ({
      layer: 'WORDS',
      at: moved(at),
      text,
      size: size * 1000,
      turnDeg: 0,
    })),
    lines: lines.map((one) => ({ ...one, points: one.points.map(moved) })),
    circles: circles.map((one) => ({ ...one, at: moved(one.at), radius: one.radius * 1000 })),
  });
}

const mean = (points: readonly DxfPoint[]): DxfPoint => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];
