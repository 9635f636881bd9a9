// Drawings as SVG 1.1: one self-contained file of the sheet's true size, nothing fetched from
// outside, readable by a browser, a drawing program or a printer's shop.

import {
  type CircleItem,
  type Drawing,
  dashLengths,
  type GroupItem,
  type Item,
  inkColours,
  lineWeights,
  type PathItem,
  type Stroke,
  type TextItem,
} from './drawing.ts';
import { type HatchName, hatchNamed } from './hatch.ts';
import { capHeight, textWidth } from './text-width.ts';
import type { NamedFile } from './zip.ts';

/** Options of `toSvg`. */
export interface SvgOptions {
  /** Put before every id, so that several sheets can stand in one page. Letters, digits, hyphens. */
  readonly idPrefix?: string;
}

const fontFamily =
  "'IBM Plex Sans Condensed', 'DejaVu Sans Condensed', 'Noto Sans', 'Liberation Sans', Arial, Helvetica, sans-serif";

/** The drawing as a complete SVG document. */
export function toSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const prefix = options.idPrefix ?? 'sheet-';
  if (!/^[a-z][a-z0-9-]*$/i.test(prefix)) throw new Error(`"${prefix}" cannot begin an id`);
  const { width, height } = drawing;
  const hatches = [...new Set(hatchesOf(drawing.items))];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-labelledby="${prefix}title ${prefix}desc" font-family="${fontFamily}" style="font-variant-numeric:tabular-nums" stroke-linejoin="round" stroke-linecap="butt">`,
    `<title id="${prefix}title">${escapeXml(drawing.title)}</title>`,
    `<desc id="${prefix}desc">${escapeXml(drawing.description)}</desc>`,
    ...(hatches.length === 0
      ? []
      : ['<defs>', ...hatches.map((name) => pattern(name, prefix)), '</defs>']),
    `<rect width="${mm(width)}" height="${mm(height)}" fill="${inkColours.paper}"/>`,
    ...drawing.items.map((item) => element(item, prefix)),
    '</svg>',
    '',
  ].join('\n');
}

/** The pages of a set as files, numbered where there are several. */
export const svgFiles = (name: string, drawings: readonly Drawing[]): readonly NamedFile[] =>
  drawings.map((drawing, i) => ({
    name: `${name}${drawings.length > 1 ? `-${i + 1}` : ''}.svg`,
    text: toSvg(drawing),
  }));

/** Text made safe for XML: markup escaped, characters that XML 1.0 forbids replaced. */
export function escapeXml(words: string): string {
  return words
    .replace(forbidden, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/** Everything outside the Char production of XML 1.0, lone surrogates included. */
const forbidden = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

function element(item: Item, prefix: string): string {
  switch (item.type) {
    case 'path':
      return shape(item, prefix, pathTag(item));
    case 'circle':
      return shape(item, prefix, circleTag(item));
    case 'text':
      return textElement(item);
    case 'group':
      return groupElement(item, prefix);
  }
}

/** A shape with tint and hatch is drawn twice: a tile that held its own tint would show seams. */
function shape(item: PathItem | CircleItem, prefix: string, tag: string): string {
  const fill = item.fill ?? null;
  const tinted = fill?.tint ?? null;
  const hatched = fill?.hatch ?? null;
  const stroke = item.stroke === null ? '' : ` ${strokeAttributes(item.stroke)}`;
  if (hatched === null) return `<${tag} fill="${tinted ?? 'none'}"${stroke}/>`;
  const below = tinted === null ? '' : `<${tag} fill="${tinted}"/>\n`;
  return `${below}<${tag} fill="url(#${prefix}${hatched})"${stroke}/>`;
}

function pathTag(item: PathItem): string {
  const run = item.points.map(([x, y]) => `${mm(x)} ${mm(y)}`).join('L');
  return `path d="M${run}${item.closed ? 'Z' : ''}"`;
}

const circleTag = ({ centre: [x, y], radius }: CircleItem): string =>
  `circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(radius)}"`;

function strokeAttributes({ weight, dash = 'solid', ink = 'ink' }: Stroke): string {
  const dashes = dashLengths[dash];
  const array = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  return `stroke="${inkColours[ink]}" stroke-width="${lineWeights[weight]}"${array}`;
}

function textElement(item: TextItem): string {
  const { at, size, anchor = 'start', ink = 'ink', rotate = 0, halo = 0 } = item;
  const wide = textWidth(item.text, size, item.bold);
  const attributes = [
    `x="${mm(at[0])}"`,
    `y="${mm(at[1] + (capHeight / 2) * size)}"`,
    `font-size="${mm(size)}"`,
    // Whatever face the reader has: as wide as the layout reckoned, no word on another.
    ...(wide > 0 ? [`textLength="${mm(wide)}" lengthAdjust="spacingAndGlyphs"`] : []),
    `fill="${inkColours[ink]}"`,
    anchor === 'start' ? '' : `text-anchor="${anchor}"`,
    item.bold ? 'font-weight="600"' : '',
    rotate === 0 ? '' : `transform="rotate(${mm(rotate)} ${mm(at[0])} ${mm(at[1])})"`,
    halo === 0
      ? ''
      : `paint-order="stroke" stroke="${inkColours.paper}" stroke-width="${mm(2 * halo)}"`,
  ];
  return `<text ${attributes.filter((a) => a !== '').join(' ')}>${escapeXml(item.text)}</text>`;
}

function groupElement(item: GroupItem, prefix: string): string {
  const data = Object.entries(item.data ?? {}).map(([name, value]) => {
    if (!/^[a-z][a-z0-9-]*$/.test(name)) throw new Error(`"${name}" cannot name an attribute`);
    return ` data-${name}="${escapeXml(value)}"`;
  });
  const inside = item.items.map((one) => element(one, prefix)).join('\n');
  return `<g${data.join('')}>\n${inside}\n</g>`;
}

function hatchesOf(items: readonly Item[]): HatchName[] {
  return items.flatMap((item) => {
    if (item.type === 'group') return hatchesOf(item.items);
    if (item.type === 'text' || !item.fill?.hatch) return [];
    return [item.fill.hatch];
  });
}

function pattern(name: HatchName, prefix: string): string {
  const { tile, angle, lines, crossed, drawn, dots } = hatchNamed(name);
  const size = mm(tile);
  const end = mm(tile * drawn);
  const strokes = lines.flatMap((at) => [
    `M0 ${mm(at)}H${end}`,
    ...(crossed ? [`M${mm(at)} 0V${end}`] : []),
  ]);
  const marks = dots.map(({ x, y, r, ring }) => {
    const paint = ring ? `fill="none" ${hatchStroke}` : `fill="${inkColours.grey}"`;
    return `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(r)}" ${paint}/>`;
  });
  const ruling = strokes.length === 0 ? '' : `<path d="${strokes.join('')}" ${hatchStroke}/>`;
  const turn = angle === 0 ? '' : ` patternTransform="rotate(${mm(angle)})"`;
  return `<pattern id="${prefix}${name}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"${turn}>${ruling}${marks.join('')}</pattern>`;
}

const hatchStroke = `stroke="${inkColours.grey}" stroke-width="${lineWeights.hair}"`;

/** Millimetres to a thousandth, without trailing zeros or a minus zero. Throws on NaN. */
function mm(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} is no place on paper`);
  return String(Math.round(value * 1000) / 1000 + 0);
}
