// Sheets to be cut as DXF and SVG, with the layers `ENGRAVE`, `SCORE` and `CUT` by name, millimetres.
// DXF as of release 12, the oldest form that every cutter's program reads: closed POLYLINEs and TEXT
// (Autodesk, DXF Reference, group codes from memory).

import { escapeXml } from '../papers/svg.ts';
import type { CutPoint } from './cut-parts.ts';
import { type CutLayer, type CutSheet, cutLayers } from './cut-sheets.ts';

/** Colours of the layers: sRGB, and the number that DXF has for nearly the same. */
const colours: Readonly<Record<CutLayer, readonly [string, number]>> = {
  engrave: ['#0000ff', 5],
  score: ['#00a000', 3],
  cut: ['#ff0000', 1],
};

/** The text of a DXF file. */
export function toDxf(sheet: CutSheet): string {
  const codes: (readonly [number, string | number])[] = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, 4],
      [9, '$EXTMIN'],
      [10, 0],
      [20, 0],
      [9, '$EXTMAX'],
      [10, mm(sheet.width)],
      [20, mm(sheet.height)],
    ]),
    ...section('TABLES', [
      [0, 'TABLE'],
      [2, 'LAYER'],
      [70, cutLayers.length],
      ...cutLayers.flatMap((layer): (readonly [number, string | number])[] => [
        [0, 'LAYER'],
        [2, layer.toUpperCase()],
        [70, 0],
        [62, colours[layer][1]],
        [6, 'CONTINUOUS'],
      ]),
      [0, 'ENDTAB'],
    ]),
    ...section('ENTITIES', [
      ...sheet.words.flatMap(({ at, text, size, turnDeg }) => [
        ...entity('TEXT', 'engrave'),
        ...point(at),
        [40, mm(size)] as const,
        [1, ascii(text)] as const,
        [50, mm(turnDeg)] as const,
        [72, 1] as const,
        [11, mm(at[0])] as const,
        [21, mm(at[1])] as const,
        [31, 0] as const,
        [73, 2] as const,
      ]),
      ...cutLayers.flatMap((layer) =>
        sheet.lines
          .filter((line) => line.layer === layer)
          .flatMap(({ points }) => [
            ...entity('POLYLINE', layer),
            [66, 1] as const,
            ...point([0, 0]),
            [70, 1] as const,
            ...points.flatMap((p) => [...entity('VERTEX', layer), ...point(p)]),
            ...entity('SEQEND', layer),
          ]),
      ),
    ]),
    [0, 'EOF'],
  ];
  return `${codes.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

/** The text of an SVG file of the sheet's true size. */
export function cutSvg({ width, height, lines, words }: CutSheet): string {
  const groups = cutLayers.map((layer) => {
    const paint = `fill="none" stroke="${colours[layer][0]}" stroke-width="0.1"`;
    const paths = lines
      .filter((line) => line.layer === layer)
      .map(
        ({ points }) =>
          `<path d="M${points.map(([x, y]) => `${mm(x)} ${mm(height - y)}`).join('L')}Z"/>`,
      );
    const texts = words
      .filter((word) => word.layer === layer)
      .map(
        ({ at: [x, y], text, size, turnDeg }) =>
          `<text x="${mm(x)}" y="${mm(height - y)}" dy="0.36em" font-size="${mm(size)}" fill="${colours[layer][0]}" stroke="none" text-anchor="middle" transform="rotate(${mm(-turnDeg)} ${mm(x)} ${mm(height - y)})">${escapeXml(text)}</text>`,
      );
    return `<g id="${layer.toUpperCase()}" ${paint}>\n${[...texts, ...paths].join('\n')}\n</g>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" font-family="sans-serif">`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

type Codes = readonly (readonly [number, string | number])[];

const section = (name: string, codes: Codes): Codes => [
  [0, 'SECTION'],
  [2, name],
  ...codes,
  [0, 'ENDSEC'],
];

const entity = (name: string, layer: CutLayer): Codes => [
  [0, name],
  [8, layer.toUpperCase()],
];

const point = ([x, y]: CutPoint): Codes => [
  [10, mm(x)],
  [20, mm(y)],
  [30, 0],
];

/** Release 12 has no Unicode: other letters are written by their number. */
const ascii = (text: string): string =>
  text
    .replace(/[\r\n]/g, ' ')
    .replace(
      /[^\x20-\x7e]/g,
      (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );

const mm = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error(`${value} is no place on a sheet`);
  return String(Math.round(value * 1000) / 1000 + 0);
};
