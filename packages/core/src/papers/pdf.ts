// Drawings as a PDF, a page each, of the sheets' true size: lines as lines, words as words in typefaces
// that the file carries. The writer of the file itself is the host's (`PdfMaker`: the class of pdfkit
// 0.20, or what is called like it); what is drawn, and in which order, is decided here. The same drawings,
// faces and day give the same bytes.

import {
  type CircleItem,
  type Drawing,
  dashLengths,
  type Fill,
  type Item,
  inkColours,
  lineWeights,
  type PathItem,
  type Point,
  type Stroke,
  type TextItem,
} from './drawing.ts';
import { hatchMarks } from './hatch-marks.ts';
import { type Face, type Run, setLetters } from './set-letters.ts';
import { capHeight, textWidth } from './text-width.ts';
import { plainFace } from './woff.ts';

/** A typeface as bytes (TrueType, OpenType or WOFF). Faces are asked in order, the bold ones for bold
 * words; where no bold face has a letter the others are asked. */
export interface PdfFace {
  readonly name: string;
  readonly bold: boolean;
  readonly bytes: Uint8Array;
}

/** What is said of the file, and the faces in it. */
export interface PdfFacts {
  readonly title: string;
  /** As 2026-05-01: the day that the file bears. */
  readonly date: string;
  readonly faces: readonly PdfFace[];
  /** Told how many pages are drawn. */
  readonly onPage?: (done: number) => void;
}

/** A PDF, and the letters that no face has: they stand as their numbers. */
export interface PdfFile {
  readonly bytes: Uint8Array;
  readonly missing: readonly string[];
}

/** The part of pdfkit's document that is used. Lengths in the units of the drawing, after `scale`. */
export interface PdfPen {
  addPage(options: object): unknown;
  end(): unknown;
  on(event: 'data', take: (chunk: Uint8Array) => void): unknown;
  on(event: 'end', take: () => void): unknown;
  on(event: 'error', take: (error: unknown) => void): unknown;
  registerFont(name: string, bytes: Uint8Array): unknown;
  font(name: string): unknown;
  fontSize(size: number): unknown;
  widthOfString(words: string, options?: object): number;
  text(words: string, x: number, y: number, options: object): unknown;
  scale(factor: number): unknown;
  /** Operators of the page's content, as they are. */
  addContent(operators: string): unknown;
  /** The face that is set, as fontkit reads it. */
  readonly _font: {
    readonly font: { readonly head: unknown; hasGlyphForCodePoint(codePoint: number): boolean };
  };
}

/** Makes a document; pdfkit's class. */
export type PdfMaker = new (options: object) => PdfPen;

const POINTS = 72 / 25.4;

/** The drawings as a PDF. Throws without a face, or on a day that is none. */
export async function toPdf(
  drawings: readonly Drawing[],
  facts: PdfFacts,
  Maker: PdfMaker,
): Promise<PdfFile> {
  const { title, date } = facts;
  const faces = facts.faces.map((face) => ({ ...face, bytes: plainFace(face.bytes) }));
  const day = new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(day.getTime())) throw new Error(`"${date}" is no day such as 2026-05-01`);
  if (faces.length === 0) throw new Error('no typeface for the file');
  const pen = new Maker({
    autoFirstPage: false,
    // None of the standard faces, which no file carries.
    font: null,
    info: {
      Title: title,
      Creator: 'Shellraise',
      Producer: 'Shellraise',
      CreationDate: day,
      ModDate: day,
    },
    lang: 'en',
    displayTitle: true,
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<void>((resolve, reject) => {
    pen.on('data', (chunk) => chunks.push(chunk));
    pen.on('end', resolve);
    pen.on('error', reject);
  });
  const setter = letterSetter(pen, faces);
  drawings.forEach((drawing, i) => {
    pen.addPage({ size: [drawing.width * POINTS, drawing.height * POINTS], margin: 0 });
    pen.scale(POINTS);
    pen.addContent('1 j');
    const to = { pen, setter, ops: [] };
    for (const item of drawing.items) draw(to, item);
    flush(to);
    facts.onPage?.(i + 1);
  });
  pen.end();
  await done;
  return { bytes: joined(chunks), missing: [...setter.missing] };
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

// --- letters ---

interface LetterSetter {
  readonly runsOf: (words: string, bold: boolean) => readonly Run[];
  readonly missing: Set<string>;
}

function letterSetter(pen: PdfPen, faces: readonly PdfFace[]): LetterSetter {
  const known = faces.map(({ name, bold, bytes }): Face & { readonly bold: boolean } => {
    pen.registerFont(name, bytes);
    let opened: PdfPen['_font']['font'] | null = null;
    const open = () => {
      pen.font(name);
      // Parts of one family bear one name; pdfkit tells them apart by this table, once it has been read.
      void pen._font.font.head;
      return pen._font.font;
    };
    const has = (code: number): boolean => {
      opened ??= open();
      return opened.hasGlyphForCodePoint(code);
    };
    return { name, bold, has };
  });
  const plain = known.filter(({ bold }) => !bold);
  const heavy = known.filter(({ bold }) => bold);
  const order = { plain: [...plain, ...heavy], heavy: [...heavy, ...plain] };
  const missing = new Set<string>();
  const set = new Map<string, readonly Run[]>();
  const runsOf = (words: string, bold: boolean): readonly Run[] => {
    const key = `${bold ? 'b' : 'p'}${words}`;
    const before = set.get(key);
    if (before !== undefined) return before;
    const found = setLetters(words, bold ? order.heavy : order.plain);
    for (const letter of found.missing) missing.add(letter);
    set.set(key, found.runs);
    return found.runs;
  };
  return { runsOf, missing };
}

// --- items ---

/** Operators of a page's content (ISO 32000-1, annex A), handed on in one piece: each on its own costs
 * pdfkit more than the drawing of it. */
interface Content {
  readonly pen: PdfPen;
  readonly setter: LetterSetter;
  readonly ops: string[];
}

function flush({ pen, ops }: Content): void {
  if (ops.length > 0) pen.addContent(ops.join('\n'));
  ops.length = 0;
}

function draw(to: Content, item: Item): void {
  if (item.type === 'group') for (const one of item.items) draw(to, one);
  else if (item.type === 'text') words(to, item);
  else if (item.type === 'path') shape(to, item, pathOps(item), item.points);
  else shape(to, item, circleOps(item.centre, item.radius), aroundCircle(item));
}

const pathOps = ({ points, closed }: PathItem): string =>
  points.map((at, i) => `${point(at)} ${i === 0 ? 'm' : 'l'}`).join(' ') + (closed ? ' h' : '');

/** Four arcs by the usual cubics: off by 0.03 % of the radius. */
function circleOps([x, y]: Point, r: number): string {
  const k = r * 0.5522847498;
  const arc = (...at: readonly Point[]): string => `${at.map(point).join(' ')} c`;
  return [
    `${point([x + r, y])} m`,
    arc([x + r, y + k], [x + k, y + r], [x, y + r]),
    arc([x - k, y + r], [x - r, y + k], [x - r, y]),
    arc([x - r, y - k], [x - k, y - r], [x, y - r]),
    arc([x + k, y - r], [x + r, y - k], [x + r, y]),
    'h',
  ].join(' ');
}

/** The hatch of a circle is cut off at so many straight lines. */
const aroundCircle = ({ centre: [x, y], radius }: CircleItem): Point[] =>
  Array.from({ length: 48 }, (_, i) => [
    x + radius * Math.cos((i * Math.PI) / 24),
    y + radius * Math.sin((i * Math.PI) / 24),
  ]);

function shape(
  { ops }: Content,
  { stroke, fill = null }: { readonly stroke: Stroke | null; readonly fill?: Fill | null },
  trace: string,
  outline: readonly Point[],
): void {
  if (fill?.tint) ops.push(`${colour(fill.tint)} rg ${trace} f`);
  if (fill?.hatch) ops.push(...hatchOps(fill.hatch, outline));
  if (stroke !== null) ops.push(`${strokeOps(stroke)} ${trace} S`);
}

const strokeOps = ({ weight, dash = 'solid', ink = 'ink' }: Stroke): string =>
  penOps(lineWeights[weight], inkColours[ink], dashLengths[dash]);

const penOps = (width: number, ink: string, dash: readonly number[]): string =>
  `${number(width)} w ${colour(ink)} RG [${dash.map(number).join(' ')}] 0 d`;

function hatchOps(name: NonNullable<Fill['hatch']>, outline: readonly Point[]): string[] {
  const { lines, dots, rings, dash } = hatchMarks(name, outline);
  const rows = lines.map(([a, b]) => `${point(a)} m ${point(b)} l`).join(' ');
  const rounds = dots.map(({ at, r }) => circleOps(at, r)).join(' ');
  const ink = inkColours.grey;
  return [
    ...(rows === '' ? [] : [`${penOps(lineWeights.hair, ink, dash ?? [])} ${rows} S`]),
    ...(rounds === ''
      ? []
      : [
          rings
            ? `${penOps(lineWeights.hair, ink, [])} ${rounds} S`
            : `${colour(ink)} rg ${rounds} f`,
        ]),
  ];
}

/** Words on their line: no wider than the layout supposed them to be. */
function words(to: Content, item: TextItem): void {
  const { pen, setter, ops } = to;
  const { at, size, bold = false, anchor = 'start', rotate = 0, ink = 'ink', halo = 0 } = item;
  if (item.text === '') return;
  pen.fontSize(size);
  const runs = setter.runsOf(item.text, bold).map((run) => {
    pen.font(run.face);
    return { ...run, width: pen.widthOfString(run.text) };
  });
  const whole = runs.reduce((sum, { width }) => sum + width, 0);
  const squeeze = Math.min(1, textWidth(item.text, size, bold) / whole);
  const start = -{ start: 0, middle: 0.5, end: 1 }[anchor] * whole * squeeze;
  const [c, s] = [Math.cos((rotate * Math.PI) / 180), Math.sin((rotate * Math.PI) / 180)];
  // The line's own axes: x along it, y down.
  ops.push(`q ${[c, s, -s, c, ...at].map(number).join(' ')} cm`);
  const put = (options: object): void => {
    flush(to);
    let x = start;
    for (const { face, text, width } of runs) {
      pen.font(face);
      pen.text(text, x, (capHeight / 2) * size, {
        lineBreak: false,
        baseline: 'alphabetic',
        ...(squeeze < 1 && { horizontalScaling: 100 * squeeze }),
        ...options,
      });
      x += width * squeeze;
    }
  };
  if (halo > 0) {
    // Not to be read a second time.
    ops.push(`/Artifact BMC ${penOps(2 * halo, inkColours.paper, [])}`);
    put({ fill: false, stroke: true });
    ops.push('EMC');
  }
  ops.push(`${colour(inkColours[ink])} rg`);
  put({ fill: true });
  ops.push('Q');
}

/** To a tenth of a micrometre. Throws on NaN. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} is no place on paper`);
  return String(Math.round(value * 1e4) / 1e4 + 0);
}

const point = ([x, y]: Point): string => `${number(x)} ${number(y)}`;

/** `#15171c` as three parts of 1. */
const colour = (hex: string): string =>
  [1, 3, 5].map((at) => number(Number.parseInt(hex.slice(at, at + 2), 16) / 255)).join(' ');
