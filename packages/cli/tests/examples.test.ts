import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { flaws, misfits, type ShapeDoc, type Sides } from './contract.ts';
import { example, folder, root, run } from './run.ts';

interface Case {
  readonly name: string;
  /** Whole ball: places, hubs. */
  readonly ball: readonly [number, number];
  /** True radius, metres. */
  readonly radius: number;
  /** Standard deviation of one reading, metres. */
  readonly sd: number;
  readonly subdivision: object | null;
}

const chords = (b: number, c: number) => ({ solid: 'icosahedron', b, c });

const cases: readonly Case[] = [
  {
    name: 'demo/project.json',
    ball: [320, 162],
    radius: 3.65,
    sd: 0.001,
    subdivision: chords(4, 0),
  },
  {
    name: 'five-frequency.json',
    ball: [500, 252],
    radius: 5,
    sd: 0.0005,
    subdivision: chords(5, 0),
  },
  { name: 'hex-and-pent.json', ball: [32, 60], radius: 2.6, sd: 0.001, subdivision: null },
  { name: 'one-handed.json', ball: [260, 132], radius: 3.1, sd: 0.0007, subdivision: chords(3, 1) },
  {
    name: 'suspect-reading.json',
    ball: [240, 122],
    radius: 3,
    sd: 0.001,
    subdivision: chords(2, 2),
  },
  { name: 'inches.csv', ball: [180, 92], radius: 2.7432, sd: 0.001, subdivision: chords(3, 0) },
];

/** A measured side may be off its place in the net by four standard deviations of one reading. */
const tolerance = (sd: number): number => 4 * sd;

describe.each(cases)('examples/$name', ({ name, ball, radius, sd, subdivision }) => {
  let shapes: readonly ShapeDoc[] = [];
  let sides: Sides = {};
  let ids: readonly string[] = [];

  beforeAll(async () => {
    const pile = await run(['pile', example(name), '--json']);
    const kinds: { id: string; sides: number[] }[] = JSON.parse(pile.out).kinds;
    sides = Object.fromEntries(kinds.map((kind) => [kind.id, kind.sides]));
    ids = kinds.map((kind) => kind.id);
    const ran = await run(['shape', example(name), '--json']);
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    shapes = JSON.parse(ran.out).shapes;
  });

  it('closes into the ball that it was made from', () => {
    expect(shapes.map(({ places, hubs }) => [places.length, hubs.length])).toContainEqual(ball);
    const [first] = shapes;
    expect(Math.abs((first?.radius ?? 0) - radius)).toBeLessThan(0.002 * radius);
    if (subdivision) expect(shapes.some((one) => one.subdivision !== null)).toBe(true);
    expect(shapes.map((one) => one.subdivision)).toContainEqual(
      subdivision ? expect.objectContaining(subdivision) : null,
    );
  });

  it('lists shapes whose every place has the sides of its kind', () => {
    for (const doc of shapes) expect(misfits(doc, sides, tolerance(sd))).toEqual([]);
  });

  it('would show a side that is off by ten tolerances', () => {
    for (const doc of shapes)
      for (const id of Object.keys(doc.stock).filter(
        (kind) => (doc.stock[kind]?.places ?? 0) > 0,
      )) {
        const off = (sides[id] ?? []).map((side) => side + 10 * tolerance(sd));
        expect(misfits(doc, { ...sides, [id]: off }, tolerance(sd))).not.toEqual([]);
      }
  });

  it('lists nets that are closed and oriented, on their sphere', () => {
    for (const doc of shapes) {
      expect(doc.closed).toBe(true);
      expect(flaws(doc)).toEqual([]);
    }
  });

  it('would show a place turned inside out, and one left out', () => {
    const [doc] = shapes as [ShapeDoc];
    const [place, ...others] = doc.places as [ShapeDoc['places'][number]];
    const turned = { ...place, hubs: [...place.hubs].reverse() };
    expect(flaws({ ...doc, places: [turned, ...others] })).not.toEqual([]);
    expect(flaws({ ...doc, places: others })).not.toEqual([]);
  });

  it('keeps the ids of the kinds, and counts their places', () => {
    for (const { stock, places } of shapes) {
      expect(Object.keys(stock).sort()).toEqual([...ids].sort());
      for (const [id, row] of Object.entries(stock))
        expect(row.places).toBe(places.filter(({ kind }) => kind === id).length);
    }
  });

  it('gives probabilities of at most 1 in all, best first', () => {
    const odds = shapes.map(({ probability }) => probability);
    expect(odds.reduce((sum, p) => sum + p, 0)).toBeLessThanOrEqual(1 + 1e-9);
    expect(odds).toEqual([...odds].sort((a, b) => b - a));
  });
});

describe('the kinds of a file', () => {
  it.each(['five-frequency.json', 'hex-and-pent.json', 'one-handed.json'])(
    'keep their ids: %s',
    async (name) => {
      const rows: { id: string }[] = JSON.parse(readFileSync(example(name), 'utf8')).pile.kinds;
      const { out } = await run(['pile', example(name), '--json']);
      const kinds: { id: string }[] = JSON.parse(out).kinds;
      expect(kinds.map(({ id }) => id).sort()).toEqual(rows.map(({ id }) => id).sort());
    },
  );
});

describe('the examples', () => {
  it('are made anew with the same bytes by their script', () => {
    const made = folder();
    execFileSync(process.execPath, [join(root, 'scripts/make-examples.mjs'), made]);
    for (const name of readdirSync(made, { recursive: true, encoding: 'utf8' })) {
      if (!/\.(json|csv)$/.test(name)) continue;
      expect(readFileSync(join(made, name), 'utf8'), name).toBe(
        readFileSync(example(name), 'utf8'),
      );
    }
  });

  it('are all tried here', () => {
    const files = readdirSync(example('')).filter((name) => /\.(json|csv)$/.test(name));
    expect(files.sort()).toEqual(
      cases
        .map(({ name }) => name)
        .filter((name) => !name.includes('/'))
        .sort(),
    );
  });
});
