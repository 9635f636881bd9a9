// `shellraise patterns --as cut`: the panels as flat parts for a laser or a knife, on sheets (DXF and SVG).

import { type CutPart, cutParts, cutSheets, cutSvg, toDxf } from '@shellraise/core';
import { badInput } from '../ending.ts';
import { count } from '../terminal.ts';
import type { Made, PatternJob } from './patterns.ts';
import { lengthOf, sizesOf } from './patterns-print.ts';

/** Between two parts, and twice that from the sheet's edge, millimetres. */
const GAP = 2;

/** The files to cut by. */
export function cutOf({ chosen, options, leftOut }: PatternJob): Made {
  const { joint, scale, snap = false } = options;
  const [width, height] = sizesOf('--sheet', options.sheet, 2).map((m) => m * 1000) as [
    number,
    number,
  ];
  const thickness = lengthOf('--thickness', options.thickness) * 1000;
  const kerf = lengthOf('--kerf', options.kerf) * 1000;
  if (snap && joint === 'slot')
    throw badInput('--snap: slots are cut, not snapped; --joint butt or bevel goes with it');
  const parts = orRefused(() =>
    cutParts(chosen.standing.shell, chosen.numbers.numbers, {
      scale,
      thickness,
      kerf,
      joint,
      leftOut,
    }),
  );
  const laid = cutSheets(parts, { width, height, gap: GAP, snap });
  if (laid === null)
    throw badInput(
      `--sheet: found ${options.sheet}, smaller than a part at 1 : ${scale}; it fits from 1 : ${Math.ceil(scale * overOf(parts, width, height))}`,
    );
  const { sheets } = laid;
  const name = (i: number): string => `cut${sheets.length > 1 ? `-${i + 1}` : ''}`;
  return {
    files: sheets.flatMap((sheet, i) => [
      { name: `${name(i)}.dxf`, text: toDxf(sheet) },
      { name: `${name(i)}.svg`, text: cutSvg(sheet) },
    ]),
    words: `${count(parts.length, 'part')} at 1 : ${scale} on ${count(sheets.length, 'sheet')} of ${width} x ${height} mm; ${Math.round(laid.yield * 100)} % of it is used. Layers ENGRAVE, SCORE, CUT; the kerf of ${kerf} mm is allowed for. Cut one panel and its neighbour first and try them.`,
    told: { parts: parts.length, sheets: sheets.length, yield: laid.yield },
  };
}

/** How much too large the largest part is for a sheet, at most a little too high. */
const overOf = (parts: readonly CutPart[], width: number, height: number): number =>
  Math.max(
    ...parts.map(({ outline }) => {
      const far = Math.max(
        ...outline.flatMap((p) => outline.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))),
      );
      return (far + 2 * GAP) / Math.min(width, height);
    }),
  );

function orRefused<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) throw badInput(`--thickness: ${error.message}`);
    throw error;
  }
}
