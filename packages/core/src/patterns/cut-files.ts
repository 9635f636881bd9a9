// Sheets to be cut as DXF and SVG, with the layers `ENGRAVE`, `SCORE` and `CUT` by name, millimetres.

import { escapeXml } from '../papers/svg.ts';
import { type CutLayer, type CutSheet, cutLayers } from './cut-sheets.ts';
import { writeDxf } from './dxf.ts';

/** Colours of the layers: sRGB, and the number that DXF has for nearly the same. */
const colours: Readonly<Record<CutLayer, readonly [string, number]>> = {
  engrave: ['#0000ff', 5],
  score: ['#00a000', 3],
  cut: ['#ff0000', 1],
};

/** The text of a DXF file. */
export const toDxf = (sheet: CutSheet): string =>
  writeDxf({
    least: [0, 0],
    most: [sheet.width, sheet.height],
    layers: cutLayers.map((layer) => ({ name: layer.toUpperCase(), colour: colours[layer][1] })),
    words: sheet.words.map((word) => ({ ...word, layer: word.layer.toUpperCase() })),
    lines: cutLayers.flatMap((layer) =>
      sheet.lines
        .filter((line) => line.layer === layer)
        .map(({ points }) => ({ layer: layer.toUpperCase(), points, closed: true })),
    ),
    circles: [],
  });

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

const mm = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error(`${value} is no place on a sheet`);
  return String(Math.round(value * 1000) / 1000 + 0);
};
