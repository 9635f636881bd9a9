// Lines, circles and words on named layers as DXF of release 12, the oldest form that every cutter's
// program reads: POLYLINEs, CIRCLEs and TEXT (Autodesk, DXF Reference, group codes from memory).
// Millimetres, x right, y up.

/** A point, millimetres. */
export type DxfPoint = readonly [number, number];

/** What a DXF file holds. */
export interface DxfDrawing {
  /** Lower left and upper right of all that is drawn. */
  readonly least: DxfPoint;
  readonly most: DxfPoint;
  /** Names in plain capitals, and the number of the colour. */
  readonly layers: readonly { readonly name: string; readonly colour: number }[];
  /** About their middles. */
  readonly words: readonly {
    readonly layer: string;
    readonly at: DxfPoint;
    readonly text: string;
    readonly size: number;
    /** Degrees anticlockwise. */
    readonly turnDeg: number;
  }[];
  readonly lines: readonly {
    readonly layer: string;
    readonly points: readonly DxfPoint[];
    readonly closed: boolean;
  }[];
  readonly circles: readonly {
    readonly layer: string;
    readonly at: DxfPoint;
    readonly radius: number;
  }[];
}

/** The text of the file. Throws for a number that is none. */
export function writeDxf(drawing: DxfDrawing): string {
  const { least, most, layers, words, lines, circles } = drawing;
  const codes: Codes = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, 4],
      [9, '$EXTMIN'],
      [10, mm(least[0])],
      [20, mm(least[1])],
      [9, '$EXTMAX'],
      [10, mm(most[0])],
      [20, mm(most[1])],
    ]),
    ...section('TABLES', [
      [0, 'TABLE'],
      [2, 'LAYER'],
      [70, layers.length],
      ...layers.flatMap(
        ({ name, colour }): Codes => [
          [0, 'LAYER'],
          [2, name],
          [70, 0],
          [62, colour],
          [6, 'CONTINUOUS'],
        ],
      ),
      [0, 'ENDTAB'],
    ]),
    ...section('ENTITIES', [
      ...words.flatMap(
        ({ layer, at, text, size, turnDeg }): Codes => [
          ...entity('TEXT', layer),
          ...point(at),
          [40, mm(size)],
          [1, ascii(text)],
          [50, mm(turnDeg)],
          [72, 1],
          [11, mm(at[0])],
          [21, mm(at[1])],
          [31, 0],
          [73, 2],
        ],
      ),
      ...circles.flatMap(
        ({ layer, at, radius }): Codes => [
          ...entity('CIRCLE', layer),
          ...point(at),
          [40, mm(radius)],
        ],
      ),
      ...lines.flatMap(
        ({ layer, points, closed }): Codes => [
          ...entity('POLYLINE', layer),
          [66, 1],
          ...point([0, 0]),
          [70, closed ? 1 : 0],
          ...points.flatMap((p): Codes => [...entity('VERTEX', layer), ...point(p)]),
          ...entity('SEQEND', layer),
        ],
      ),
    ]),
    [0, 'EOF'],
  ];
  return `${codes.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

type Codes = readonly (readonly [number, string | number])[];

const section = (name: string, codes: Codes): Codes => [
  [0, 'SECTION'],
  [2, name],
  ...codes,
  [0, 'ENDSEC'],
];

const entity = (name: string, layer: string): Codes => [
  [0, name],
  [8, layer],
];

const point = ([x, y]: DxfPoint): Codes => [
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
