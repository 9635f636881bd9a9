import { describe, expect, it } from 'vitest';
import { cornersOf, panelToMake } from '../../src/arrange/make/make-panel.ts';
import { trims } from '../../src/arrange/make/trim.ts';
import { accountSheet } from '../../src/papers/account-sheet.ts';
import { flatItems, type PathItem } from '../../src/papers/drawing.ts';
import { type MakeSheetContent, makeCaution, makeSheet } from '../../src/papers/make-sheet.ts';
import { toSvg } from '../../src/papers/svg.ts';
import { countProof } from '../../src/takeoff/count-proof.ts';
import { defaultTakeoff, takeoffSection } from '../../src/takeoff/schema.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { above, ball } from '../takeoff/ball.ts';
import { outside, overlaps, smallestType } from './sheet-checks.ts';
import { readXml } from './xml.ts';

const facts = {
  project: 'Heron Flats shell',
  sheet: 'Proof of count',
  date: '14 May 2026',
  assumes: 'Sides are hub to hub.',
};

describe('the page with the proof of count', () => {
  it.each([2, 4, 6])('keeps its words apart and on the paper, %i steps to a side', (b) => {
    const { shell, kinds } = ((whole) => ({ shell: above(whole, 0.1).shell, kinds: whole.kinds }))(
      ball(b),
    );
    const rows = countProof(
      shell,
      kinds,
      takeOff(shell, kinds, [], defaultTakeoff),
      defaultTakeoff,
    );
    const sheet = accountSheet(rows, facts);
    expect(overlaps(sheet)).toEqual([]);
    expect(outside(sheet)).toEqual([]);
    expect(smallestType(sheet)).toBeGreaterThan(1.4);
    expect(() => readXml(toSvg(sheet))).not.toThrow();
    const words = flatItems(sheet.items).flatMap((item) =>
      item.type === 'text' ? [item.text] : [],
    );
    expect(words.filter((text) => text === 'in all: agrees').length).toBe(3);
  });
});

describe('a long formula', () => {
  it('is broken over the rows of its list, whole and no smaller', () => {
    const { shell, kinds } = ball(6);
    const counts = kinds.map(({ sides }) => sides.map((side) => Math.round(side * 20)));
    const settings = takeoffSection.parse({ seamBolt: { thread: 'M8', length: 0.03 } });
    const list = takeOff(shell, kinds, [], settings, counts);
    const rows = countProof(shell, kinds, list, settings, counts);
    const bolts = rows.find(({ what }) => what === 'bolts');
    if (!bolts?.formula) throw new Error('no formula');
    expect(bolts.formula.length).toBeGreaterThan(60);
    const sheet = accountSheet(rows, facts);
    const words = flatItems(sheet.items).flatMap((item) =>
      item.type === 'text' ? [item.text] : [],
    );
    expect(words.some((text) => text.includes('…'))).toBe(false);
    const all = words.join(' ');
    for (const part of bolts.formula.split(' ')) expect(all).toContain(part);
    expect(overlaps(sheet)).toEqual([]);
  });
});

describe('the drawing of a panel to make', () => {
  const small = [0.9, 1.0, 0.95];
  const large = [1.3, 1.35, 1.25];
  const holes = [4, 5, null];
  const panel = panelToMake({ sides: small }, 3, { allowance: 0.006, holes });
  const [trim] = trims(large, small, 0.01);
  if (panel === null || !trim) throw new Error('no panel');
  const kept = [...large.slice(trim.keptSide), ...large.slice(0, trim.keptSide)];
  const from = { id: '7', corners: cornersOf(kept) ?? [], trim };
  const sheets: [string, MakeSheetContent['from']][] = [
    ['made anew', null],
    ['cut down', from],
  ];

  it.each(sheets)('keeps its words apart and on the paper: %s', (_, own) => {
    for (const lengths of ['metric', 'inch'] as const) {
      const sheet = makeSheet({ id: '3L', panel, from: own }, facts, { lengths });
      expect(overlaps(sheet)).toEqual([]);
      expect(outside(sheet)).toEqual([]);
      expect(() => readXml(toSvg(sheet))).not.toThrow();
      const words = flatItems(sheet.items).flatMap((item) =>
        item.type === 'text' ? [item.text] : [],
      );
      expect(words.join(' ')).toContain(`Caution. ${makeCaution}`);
    }
  });

  it('is true to its scale, and the panel that is cut lies around the new one', () => {
    const sheet = makeSheet({ id: '3L', panel, from }, facts);
    const paths = flatItems(sheet.items).filter(
      (item): item is PathItem => item.type === 'path' && item.closed,
    );
    const outline = (weight: string, dash?: string) =>
      paths.find(
        (one) =>
          one.points.length === 3 && one.stroke?.weight === weight && one.stroke.dash === dash,
      )?.points ?? [];
    const [own, around] = [outline('bold'), outline('light', 'dashed')];
    const scale = Number(/1 : ([0-9.]+)/.exec(JSON.stringify(sheet.items))?.[1]);
    const side = (points: typeof own, i: number): number => {
      const [a, b] = [points[i], points[(i + 1) % 3]] as [readonly number[], readonly number[]];
      return (Math.hypot((b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)) * scale) / 1000;
    };
    small.forEach((length, i) => {
      expect(side(own, i)).toBeCloseTo(length, 6);
    });
    kept.forEach((length, i) => {
      expect(side(around, i)).toBeCloseTo(length, 6);
    });
    for (const [x, y] of own)
      around.forEach(([u, v], i) => {
        const [p, q] = around[(i + 1) % 3] as readonly [number, number];
        // Down the page, inside is to the right of each side.
        expect((p - u) * (y - v) - (q - v) * (x - u)).toBeLessThan(1e-6);
      });
    const holesDrawn = flatItems(sheet.items).filter((item) => item.type === 'circle').length;
    expect(holesDrawn).toBe(9);
  });
});
