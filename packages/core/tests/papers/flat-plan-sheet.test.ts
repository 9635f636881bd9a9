import { describe, expect, it } from 'vitest';
import {
  type Drawing,
  flatItems,
  type GroupItem,
  type Item,
  type PathItem,
  type Point,
} from '../../src/papers/drawing.ts';
import { type FlatPlanSheetOptions, flatPlanSheet } from '../../src/papers/flat-plan-sheet.ts';
import { toSvg } from '../../src/papers/svg.ts';
import { textCorners } from '../../src/papers/text-box.ts';
import { outside, overlaps, smallestType } from './sheet-checks.ts';
import { type Standing, standing } from './standing.ts';
import { readXml } from './xml.ts';

const net = (b: number, c: number, solid: 'icosahedron' | 'octahedron' = 'icosahedron') =>
  ({ solid, b, c, division: 'equal chords' }) as const;
const facts = {
  project: 'Heron Flats shell, 24 ft',
  sheet: '3 Places, flat plan',
  date: '14 May 2026',
  assumes: 'Sides measured hole to hole, ± 1 mm; hub allowance 4 mm; base ring level.',
  caution: 'Counted, not reckoned: it does not say that the shell bears wind, snow or people.',
};
const sheet = (of: Standing, options: FlatPlanSheetOptions = {}): Drawing =>
  flatPlanSheet(of.shell, of.numbers, of.kinds, facts, options);

interface Case {
  readonly name: string;
  readonly of: Standing;
  readonly options?: FlatPlanSheetOptions;
}
const cases: readonly Case[] = [
  { name: '(4,0) five-eighths', of: standing(net(4, 0), -0.25), options: { leftOut: [150, 151] } },
  {
    name: '(3,1) from below',
    of: standing(net(3, 1), -0.2),
    options: { fromBelow: true, lengths: 'inch' },
  },
  { name: '(3,0) whole ball', of: standing(net(3, 0)) },
  { name: '(5,0) half on A3', of: standing(net(5, 0), 0), options: { paper: 'A3', missing: [3] } },
  { name: '(2,0) half on Letter', of: standing(net(2, 0), 0), options: { paper: 'Letter' } },
  { name: 'octahedral (4,0)', of: standing(net(4, 0, 'octahedron'), -0.2) },
];

const groups = (items: readonly Item[]): GroupItem[] =>
  items.flatMap((item) => (item.type === 'group' ? [item, ...groups(item.items)] : []));
const words = (drawing: Drawing): string[] =>
  flatItems(drawing.items).flatMap((item) => (item.type === 'text' ? [item.text] : []));

/** Even-odd rule. */
function contains(outline: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as Point;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

describe('the flat plan sheet', () => {
  it.each(cases)('of $name is well-formed XML', ({ of, options }) => {
    expect(readXml(toSvg(sheet(of, options))).name).toBe('svg');
  });

  it.each(cases)('of $name has no words that overlap or leave the sheet', ({ of, options }) => {
    const drawing = sheet(of, options);
    expect(overlaps(drawing)).toEqual([]);
    expect(outside(drawing)).toEqual([]);
  });

  it.each(cases)(
    'of $name has every number inside its place, large enough to read',
    ({ of, options }) => {
      const drawing = sheet(of, options);
      const outlines = new Map<string, readonly Point[]>();
      for (const one of groups(drawing.items))
        if (one.data?.place !== undefined)
          outlines.set(one.data.place, (one.items[0] as PathItem).points);
      const labels = groups(drawing.items).filter((one) => one.data?.label !== undefined);
      expect(labels.length).toBe(of.numbers.length);
      for (const label of labels) {
        const place = label.data?.label as string;
        const [number] = flatItems(label.items);
        expect(number).toMatchObject({ text: of.numbers[Number(place)] });
        for (const item of flatItems(label.items)) {
          if (item.type !== 'text') continue;
          const corners = textCorners(item);
          expect(corners.every((at) => contains(outlines.get(place) as Point[], at))).toBe(true);
        }
      }
      expect(smallestType(drawing)).toBeGreaterThan(1.4);
    },
  );

  it('lists every kind that has places, with how many, and what is short', () => {
    const of = standing(net(4, 0), -0.25);
    const listed = words(sheet(of));
    of.kinds.forEach((kind, k) => {
      const places = of.shell.kind.filter((at) => at === k).length;
      expect(listed).toContain(kind.id);
      expect(listed).toContain(String(places));
    });
    expect(listed).toContain('short 1');
  });

  it('counts places left out apart, draws them dashed and keeps their numbers', () => {
    const of = standing(net(2, 0), 0);
    const drawing = sheet(of, { leftOut: [0, 1] });
    expect(words(drawing)).toContain('left open: 2 places');
    expect(words(drawing)).toContain(of.numbers[0]);
    const dashed = flatItems(drawing.items).filter(
      (item) => item.type === 'path' && item.stroke?.dash === 'dashed',
    );
    expect(dashed.length).toBeGreaterThan(1);
    const place = groups(drawing.items).find((one) => one.data?.place === '0');
    expect(place?.items[0]).toMatchObject({ fill: { hatch: null } });
  });

  it('shows places without a panel in the accent colour', () => {
    const of = standing(net(2, 0), 0);
    const label = groups(sheet(of, { missing: [5] }).items).find((one) => one.data?.label === '5');
    expect(label?.items[0]).toMatchObject({ ink: 'accent' });
  });

  it('draws the base ring heavy, one stroke a side, and none for a ball', () => {
    const heavy = (of: Standing): number =>
      groups(sheet(of).items)
        .filter((one) => one.data?.part === 'rims')
        .flatMap((one) => one.items)
        .filter((item) => item.type === 'path' && item.stroke?.weight === 'heavy').length;
    expect(heavy(standing(net(2, 0), 0))).toBe(10);
    expect(heavy(standing(net(2, 0)))).toBe(0);
  });

  it('mirrors the plan left to right for people inside, and says so', () => {
    const of = standing(net(3, 1), -0.2);
    const [above, below] = [sheet(of), sheet(of, { fromBelow: true })];
    const span = (drawing: Drawing): { xs: number[]; middle: number } => {
      const xs = groups(drawing.items)
        .filter((one) => one.data?.place !== undefined)
        .map((one) => (one.items[0] as PathItem).points[0]?.[0] as number);
      const all = groups(drawing.items)
        .filter((one) => one.data?.place !== undefined)
        .flatMap((one) => (one.items[0] as PathItem).points.map((p) => p[0]));
      return { xs, middle: (Math.min(...all) + Math.max(...all)) / 2 };
    };
    const [a, b] = [span(above), span(below)];
    a.xs.forEach((x, i) => {
      expect(x - a.middle).toBeCloseTo(b.middle - (b.xs[i] as number), 6);
    });
    expect(words(below)).toContain('mirrored: for people inside looking up');
    expect(words(above)).not.toContain('mirrored: for people inside looking up');
  });

  it('is drawn to the scale it states', () => {
    const of = standing(net(2, 0), 0);
    const drawing = sheet(of);
    const scale = Number(
      words(drawing)
        .find((w) => /^1 : /.test(w))
        ?.slice(4),
    );
    const xs = groups(drawing.items)
      .filter((one) => one.data?.place !== undefined)
      .flatMap((one) => (one.items[0] as PathItem).points.map((p) => p[0]));
    // A half ball with a five-corner crown: base hubs a quarter circle from the crown, at ± 90°.
    const across = (Math.max(...xs) - Math.min(...xs)) * scale;
    const expected = Math.PI * 3600;
    expect(Math.abs(across - expected)).toBeLessThan(1);
    expect(Math.abs(across * 1.01 - expected)).toBeGreaterThan(10);
  });

  it('gives radius, height and width in metres or in feet and inches', () => {
    const of = standing(net(2, 0), 0);
    expect(words(sheet(of))).toContain('3.600 m');
    expect(words(sheet(of))).toContain('7.200 m (23′ 7 7/16″)');
    expect(words(sheet(of, { lengths: 'inch' }))).toContain('23′ 7 7/16″ (7.200 m)');
  });

  it('shows painted numbers as they are, and says how to read them', () => {
    const of = standing(net(4, 0), -0.25);
    const numbers = of.numbers.map((number, p) =>
      p < 20 ? `A-${String(p + 1).padStart(2, '0')}` : number.replace(/^\d+/, (c) => `${+c + 1}`),
    );
    const kept = { ...of, numbers };
    for (const fromBelow of [false, true]) {
      const drawing = sheet(kept, { painted: true, fromBelow });
      const said = words(drawing).join(' ');
      for (const number of numbers) expect(said).toContain(number);
      expect(said).toContain('Numbers as painted');
      expect(said).toContain('A-07: added since');
      expect(said).not.toContain('course 3 from the ground up');
      expect(overlaps(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
    }
    expect(words(sheet(of, { painted: true })).join(' ')).not.toContain('A-07');
    const [plain, upper] = [of, kept].map((one) => sheet(one, { fromCourse: 4 })) as [
      Drawing,
      Drawing,
    ];
    const drawn = (drawing: Drawing): string[] =>
      groups(drawing.items).flatMap((one) => one.data?.place ?? []);
    expect(drawn(upper)).toEqual(drawn(plain));
  });

  it('shows the upper courses alone on a larger scale, whole in themselves', () => {
    const of = standing(net(4, 0));
    const from = 5;
    const [whole, upper] = [sheet(of), sheet(of, { fromCourse: from })];
    const scale = (drawing: Drawing): number =>
      Number(
        words(drawing)
          .find((w) => /^1 : /.test(w))
          ?.slice(4),
      );
    expect(scale(whole) / scale(upper)).toBeGreaterThan(1.4);
    const drawn = groups(upper.items).flatMap((one) => one.data?.place ?? []);
    const wanted = of.numbers.flatMap((number, p) =>
      Number(number.split('-')[0]) >= from ? [String(p)] : [],
    );
    expect(drawn).toEqual(wanted);
    expect(wanted.length).toBeGreaterThan(50);
    const labels = groups(upper.items).flatMap((one) => one.data?.label ?? []);
    expect(labels).toEqual(wanted);
    expect(overlaps(upper)).toEqual([]);
    expect(outside(upper)).toEqual([]);
    expect(smallestType(upper)).toBeGreaterThan(1.4);
    const list = groups(upper.items).find((one) => one.data?.part === 'kinds');
    const cells = flatItems(list?.items ?? []).flatMap((it) =>
      it.type === 'text' ? [it.text] : [],
    );
    expect(cells.slice(0, 3)).toEqual(['kind', 'places here', 'in all']);
    const here = cells.filter((_, i) => i > 3 && i % 3 === 1).map(Number);
    expect(here.reduce((a, n) => a + n, 0)).toBe(wanted.length);
  });

  it('says when numbers come out small', () => {
    const small = (of: Standing): boolean => words(sheet(of)).join(' ').includes('larger paper');
    expect(small(standing(net(2, 0), 0))).toBe(false);
    expect(small(standing(net(2, 2)))).toBe(true);
  });
});

it('says the caution once, above the elevation that gives height and width', () => {
  for (const { of, options } of cases) {
    const drawn = sheet(of, options ?? {});
    const texts = flatItems(drawn.items).flatMap((item) => (item.type === 'text' ? [item] : []));
    const cautions = texts.filter(({ text }) => text.startsWith('Caution.'));
    expect(cautions).toHaveLength(1);
    const title = texts.find(({ text }) => text === 'From the datum side');
    if (title) expect(cautions[0]?.at[1]).toBeLessThan(title.at[1]);
    expect(words(drawn).join(' ')).toContain('snow or people');
  }
});
