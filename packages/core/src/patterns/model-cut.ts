// The panels as flat parts for a laser or a knife, as files.

import { cutSvg, toDxf } from './cut-files.ts';
import { type CutPart, cutParts } from './cut-parts.ts';
import { cutSheets } from './cut-sheets.ts';
import {
  counted,
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  refused,
  sizeWords,
} from './model-ask.ts';

/** Between two parts, and twice that from the sheet's edge, millimetres. */
const GAP = 2;
/** Plastic no thicker warps in the heat of a cut, millimetres: common practice, no source. */
const WARPS = 1;

/** The sheets to cut. */
export function cutModel(
  { shell, faces, leftOut }: ModelGround,
  settings: ModelSettings,
): ModelMade | ModelRefused {
  const { scale, sheet, thickness, kerf, joint, snap } = settings;
  if (!(thickness > 0 && thickness < Infinity))
    return refused('thickness', `${thickness} mm`, 'expected more than 0 mm');
  if (!(kerf >= 0))
    return refused(
      'kerf',
      `${kerf} mm`,
      'expected 0 mm (a knife) or more; the nearest that works is 0 mm',
    );
  if (joint === 'slot' && kerf >= thickness)
    return refused(
      'kerf',
      `${kerf} mm`,
      `at which no slot for a sheet of ${thickness} mm can be cut; the nearest that works is under ${thickness} mm`,
    );
  if (snap && joint === 'slot')
    return refused(
      'snap',
      'slots',
      'which are cut, not snapped; square or bevelled edges go with it',
    );
  let parts: readonly CutPart[];
  try {
    parts = cutParts(
      shell,
      faces.map(({ number }) => number),
      { scale, thickness, kerf, joint, leftOut },
    );
  } catch (error) {
    if (error instanceof RangeError)
      return refused('thickness', `${thickness} mm`, `but ${error.message}`);
    throw error;
  }
  const [width, height] = sheet;
  const laid = cutSheets(parts, { width, height, gap: GAP, snap });
  if (laid === null)
    return refused(
      'sheet',
      sizeWords(sheet),
      `smaller than a part at 1 : ${scale}; it fits from 1 : ${Math.ceil(scale * overOf(parts, width, height))}`,
    );
  const { sheets } = laid;
  const name = (i: number): string => `cut${sheets.length > 1 ? `-${i + 1}` : ''}`;
  const warps =
    thickness <= WARPS && !snap && joint !== 'slot'
      ? ' Plastic this thin warps in the heat of a cut (common practice, no source): score its outlines and snap them, or use a knife.'
      : '';
  return {
    ok: true,
    files: sheets.flatMap((one, i) => [
      { name: `${name(i)}.dxf`, text: toDxf(one) },
      { name: `${name(i)}.svg`, text: cutSvg(one) },
    ]),
    words: `${counted(parts.length, 'part')} at 1 : ${scale} on ${counted(sheets.length, 'sheet')} of ${sizeWords(sheet)}; ${Math.round(laid.yield * 100)} % of it is used. Layers ENGRAVE, SCORE, CUT; the kerf of ${kerf} mm is allowed for. Cut one panel and its neighbour first and try them.${warps}`,
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
