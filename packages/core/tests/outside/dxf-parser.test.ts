// npm dxf-parser 1.1.2 (MIT): an independent reader of DXF.

import DxfParser from 'dxf-parser';
import { expect, it } from 'vitest';
import { toDxf } from '../../src/patterns/cut-files.ts';
import { cutParts } from '../../src/patterns/cut-parts.ts';
import { cutSheets } from '../../src/patterns/cut-sheets.ts';
import { fullPanelDxf, hubPlateDxf } from '../../src/patterns/full-size-dxf.ts';
import { fullPanels, hubPlates } from '../../src/patterns/full-size-parts.ts';
import { ball } from '../patterns/fixtures.ts';

/** Its types say that the module is the namespace; it is the class. */
const Parser = DxfParser as unknown as new () => {
  parseSync(text: string): { entities: unknown; tables: { layer: { layers: object } } } | null;
};
const shell = ball(1, 2);
const numbers = Array.from(shell.kind, (_, p) => `n-${p}é`);
const edge = (2 / Math.sin((2 * Math.PI) / 5)) * 50;

/** Sides of the triangles on layer CUT as the parser reads them, millimetres. */
function read(joint: 'bevel' | 'butt' | 'slot', kerf: number, snap = false) {
  const parts = cutParts(shell, numbers, { scale: 20, thickness: 2, kerf, joint });
  const sheets = cutSheets(parts, { width: 600, height: 400, gap: 2, snap });
  if (!sheets) throw new Error('it fits');
  const files = sheets.sheets.map(toDxf);
  const parsed = files.map((file) => new Parser().parseSync(file));
  const entities = parsed.flatMap((one) => one?.entities ?? []) as unknown as {
    type: string;
    layer: string;
    text?: string;
    vertices?: { x: number; y: number }[];
  }[];
  return { files, parsed, entities };
}

const sidesOf = (points: readonly { x: number; y: number }[]): number[] =>
  points.map((p, i) => {
    const q = points[(i + 1) % points.length] as { x: number; y: number };
    return Math.hypot(q.x - p.x, q.y - p.y);
  });

it('reads every panel in its true size, a kerf wider', () => {
  const { entities, parsed } = read('bevel', 0.2);
  expect(Object.keys(parsed[0]?.tables.layer.layers ?? {})).toEqual(['ENGRAVE', 'SCORE', 'CUT']);
  const outlines = entities.filter(({ layer, type }) => layer === 'CUT' && type === 'POLYLINE');
  expect(outlines.length).toBe(20);
  // The side of a triangle whose sides are moved out by 0.1 mm.
  const wanted = edge + 0.2 * Math.sqrt(3);
  for (const { vertices } of outlines)
    for (const side of sidesOf(vertices ?? [])) {
      expect(Math.abs(side - wanted)).toBeLessThan(0.01);
      expect(Math.abs(side - edge)).toBeGreaterThan(0.1);
    }
  expect(entities.filter(({ type }) => type === 'TEXT').length).toBe(20 + 60);
});

it('reads square edges drawn in until the inner ones touch', () => {
  // Of an icosahedron: dihedral 138.19°, so t · cot 69.09° on each of three sides.
  const outlines = read('butt', 0.2).entities.filter(({ type }) => type === 'POLYLINE');
  const phi = Math.acos(-Math.sqrt(5) / 3);
  const wanted = edge - 2 * Math.sqrt(3) * (2 / Math.tan(phi / 2) - 0.1);
  for (const side of outlines.flatMap(({ vertices }) => sidesOf(vertices ?? [])))
    expect(Math.abs(side - wanted)).toBeLessThan(0.01);
});

it('reads three slots a panel and a clip a seam', () => {
  const outlines = read('slot', 0.2).entities.filter(({ type }) => type === 'POLYLINE');
  const corners = outlines.map(({ vertices }) => vertices?.length);
  expect(corners.filter((n) => n === 4).length).toBe(60);
  expect(corners.filter((n) => n === 3).length).toBe(20);
  expect(corners.filter((n) => n === 14).length).toBe(30);
});

it('reads outlines to be snapped on layer SCORE, and gives the same bytes each time', () => {
  const { entities, files } = read('butt', 0.2, true);
  const layers = entities.filter(({ type }) => type === 'POLYLINE').map(({ layer }) => layer);
  expect(new Set(layers)).toEqual(new Set(['SCORE']));
  expect(read('butt', 0.2, true).files).toEqual(files);
  expect(files.join('')).toMatch(/^[\x20-\x7e\n]*$/);
});

it('reads parts at full size: the face folded inside its blank, holes, a plate 1 : 1', () => {
  const options = { flange: 0.04, allowance: 0, holes: () => [3, 3, 3] };
  const [part] = fullPanels(shell, ['1'], [], options);
  const [plate] = hubPlates(shell, []);
  if (!part || !plate) throw new Error('there are both');
  const size = { diameter: 0.2, hole: 0.009 };
  const [panel, hub] = [fullPanelDxf(part, 0.04, 0.009), hubPlateDxf(plate, size)].map(
    (file) =>
      new Parser().parseSync(file)?.entities as {
        type: string;
        layer: string;
        radius?: number;
        center?: { x: number; y: number };
        vertices?: { x: number; y: number }[];
      }[],
  );
  const folds = panel?.filter(({ layer }) => layer === 'FOLD') ?? [];
  expect(folds.length).toBe(3);
  for (const { vertices } of folds) {
    const [side] = sidesOf(vertices ?? []);
    expect(Math.abs((side as number) - edge * 20)).toBeLessThan(0.01);
    expect(Math.abs((side as number) + 0.1 - edge * 20)).toBeGreaterThan(0.01);
  }
  expect(panel?.find(({ layer }) => layer === 'CUT')?.vertices?.length).toBe(9);
  expect(panel?.filter(({ layer, type }) => layer === 'HOLE' && type === 'CIRCLE').length).toBe(9);
  const rim = hub?.find(({ layer }) => layer === 'CUT');
  expect(rim?.radius).toBe(100);
  const holes = hub?.filter(({ layer }) => layer === 'HOLE') ?? [];
  expect(holes.length).toBe(5);
  // Fifths of a turn: neighbours a chord of 2 r sin 36° apart.
  const chords = sidesOf(holes.map(({ center }) => center as { x: number; y: number }));
  for (const chord of chords)
    expect(Math.abs(chord - 2 * (200 / 3) * Math.sin(Math.PI / 5))).toBeLessThan(0.01);
});
