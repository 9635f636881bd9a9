import { describe, expect, it } from 'vitest';
import { bagLabelSheets, hubLabelSheets, matchMarkSheets } from '../../src/papers/bag-labels.ts';
import { codeItem, codeModules } from '../../src/papers/code-item.ts';
import { type Drawing, flatItems, type GroupItem, type Point } from '../../src/papers/drawing.ts';
import {
  type LabelStock,
  labelBoxes,
  labelStock,
  labelStocks,
} from '../../src/papers/label-stock.ts';
import { paperSizes } from '../../src/papers/page.ts';
import {
  ARM_LENGTH_TYPE,
  panelLabelSheets,
  standingOutline,
} from '../../src/papers/panel-labels.ts';
import { textCorners } from '../../src/papers/text-box.ts';
import type { Bag } from '../../src/raise/bags/bags.ts';
import { recordPlan } from '../../src/record/names.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { codesOf, readCodes } from './read-code.ts';
import { outside, overlaps } from './sheet-checks.ts';
import { standing } from './standing.ts';

const of = standing({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }, -0.1);
const plan = recordPlan(of.shell, coursesOf(of.shell));
const project = 'Heron Flats shell, 24 ft';
const a4 = labelStock('A4 3 x 7');
const panels = (stock = a4, name = project, options = {}): Drawing[] =>
  panelLabelSheets(of.shell, of.numbers, of.kinds, name, stock, options);
const bag = (lines: readonly string[]): Bag => ({
  stage: 2,
  needs: lines.map((item) => ({
    item: 'bolt',
    thread: item,
    length: 0.02,
    corners: null,
    rim: null,
    quantity: 3,
    unit: 'piece',
  })),
  label: { title: 'Stage 2: course 1', lines: [...lines, 'For 1-01, 1-02, 1-03'] },
});

/** Everything drawn of a label that leaves its box by more than 0.01 mm. */
function leaving(sheets: readonly Drawing[], stock: LabelStock): string[] {
  const boxes = labelBoxes(stock);
  return sheets.flatMap((sheet) =>
    sheet.items
      .filter((item): item is GroupItem => item.type === 'group')
      .flatMap((label, i) => {
        const box = boxes[i] as (typeof boxes)[number];
        const off = ([x, y]: Point): boolean =>
          x < box.x - 0.01 ||
          y < box.y - 0.01 ||
          x > box.x + box.width + 0.01 ||
          y > box.y + box.height + 0.01;
        return flatItems(label.items).flatMap((item) => {
          const points =
            item.type === 'text' ? textCorners(item) : item.type === 'path' ? item.points : [];
          return points.some(off) ? [label.data?.label ?? '?'] : [];
        });
      }),
  );
}

describe('label sheets', () => {
  it('lie on their paper, labels apart from each other', () => {
    for (const stock of labelStocks) {
      const [width, height] = paperSizes[stock.paper];
      const last = labelBoxes(stock).at(-1);
      expect(stock.stepAcross, stock.name).toBeGreaterThanOrEqual(stock.width);
      expect(stock.stepDown, stock.name).toBeGreaterThanOrEqual(stock.height - 1e-9);
      expect((last?.x ?? 0) + stock.width, stock.name).toBeLessThanOrEqual(width);
      expect((last?.y ?? 0) + stock.height, stock.name).toBeLessThanOrEqual(height);
      // As much paper is left on the right as on the left, and below as above: within 2 mm.
      expect(width - (last?.x ?? 0) - stock.width - stock.left, stock.name).toBeCloseTo(0, -0.6);
      expect(height - (last?.y ?? 0) - stock.height - stock.top, stock.name).toBeCloseTo(0, -0.6);
    }
  });

  it('of the name asked for, or the names there are', () => {
    expect(a4).toMatchObject({ width: 63.5, height: 38.1 });
    expect(() => labelStock('A5')).toThrow(/no label sheet "A5": expected one of A4 5 x 13, /);
  });
});

describe('panel labels', () => {
  it('are one for each place, each within its own label, words apart, on every size that holds them', () => {
    for (const name of [
      'A4 3 x 7',
      'A4 2 x 7',
      'A4 2 x 4',
      'Letter 3 x 10',
      'Letter 2 x 5',
      'A4 plain 3 x 7',
      'Letter plain 2 x 4',
    ]) {
      const stock = labelStock(name);
      const sheets = panels(stock);
      expect(
        sheets.flatMap((one) => codesOf(one.items)),
        name,
      ).toHaveLength(of.numbers.length);
      expect(sheets.flatMap(overlaps), name).toEqual([]);
      expect(sheets.flatMap(outside), name).toEqual([]);
      expect(leaving(sheets, stock), name).toEqual([]);
    }
  });

  it('show the number in 18 pt or more, and a code that reads as the number, or as the tag', () => {
    const [first] = panels(a4, project, { tags: new Map([[of.numbers.indexOf('1-02'), '0143']]) });
    const numbers = flatItems((first as Drawing).items).filter(
      (item) => item.type === 'text' && /^\d-\d+$/.test(item.text),
    );
    for (const item of numbers)
      expect(item.type === 'text' ? item.size : 0).toBeGreaterThanOrEqual(ARM_LENGTH_TYPE);
    expect(readCodes(first as Drawing).slice(0, 3)).toEqual(['1-01', '0143', '1-03']);
  });

  it('begin behind labels that are used already', () => {
    const sheets = panels(a4, project, { skip: 20 });
    expect(codesOf((sheets[0] as Drawing).items)).toHaveLength(1);
    expect(() => panels(a4, project, { skip: 21 })).toThrow('21 labels used: expected 0 to 20');
  });

  it('name the nearest sheet that holds all where they do not fit, and never cut words', () => {
    const long = 'Рассвет над болотом, второй купол 穹頂 🙂 '.repeat(2).trim();
    expect(() => panels(labelStock('A4 5 x 13'))).toThrow(
      /label 1-01 does not fit A4 5 x 13 \(38.1 x 21.2 mm\): the nearest that holds all is A4 [\w ]+ \(/,
    );
    const stock = labelStock('A4 2 x 4');
    const sheets = panels(stock, long);
    expect(leaving(sheets, stock)).toEqual([]);
    const words = flatItems((sheets[0] as Drawing).items).flatMap((item) =>
      item.type === 'text' ? [item.text] : [],
    );
    expect(words.join(' ')).toContain('купол');
    expect(words.join('')).not.toContain('…');
    expect(() => panels(stock, 'W'.repeat(3000))).toThrow('no label sheet of A4 holds it');
  });

  it('show the panel as it stands: up is up, right is right seen from outside', () => {
    const place = of.numbers.indexOf('1-01') as PlaceId;
    const outline = standingOutline(of.shell, place);
    // Anticlockwise from outside runs clockwise in signs with y down: area below 0.
    const area = outline.reduce((sum, [x, y], i) => {
      const [u, v] = outline[(i + 1) % outline.length] as Point;
      return sum + x * v - u * y;
    }, 0);
    expect(area).toBeLessThan(0);
  });
});

describe('bag, hub and match-mark labels', () => {
  it('tick every content line but not where it goes', () => {
    const stock = labelStock('A4 2 x 4');
    const sheets = bagLabelSheets(
      [bag(['96 bolts 5/16-18 × 25.4 mm', '96 nuts 5/16-18'])],
      project,
      stock,
    );
    const squares = flatItems((sheets[0] as Drawing).items).filter((item) => item.type === 'path');
    expect(squares).toHaveLength(2);
    expect(sheets.flatMap(overlaps)).toEqual([]);
    expect(leaving(sheets, stock)).toEqual([]);
  });

  it('refuse a bag with too long a list and name a larger label', () => {
    const lines = Array.from(
      { length: 16 },
      (_, i) => `${i} bolts of a very long and winding name, M8 × ${i} mm`,
    );
    expect(() => bagLabelSheets([bag(lines)], project, a4)).toThrow(
      /the nearest that holds all is A4 /,
    );
  });

  it('are one for each hub, and two for each seam', () => {
    const hubs = hubLabelSheets(plan, project, labelStock('A4 2 x 7'));
    const marks = matchMarkSheets(plan, project, labelStock('A4 5 x 13'));
    const count = (sheets: readonly Drawing[]): number =>
      sheets.reduce((sum, one) => sum + one.items.length, 0);
    expect(count(hubs)).toBe(plan.hubs.filter((name) => name !== '').length);
    expect(count(marks)).toBe(2 * plan.seams.length);
    expect([...hubs, ...marks].flatMap(overlaps)).toEqual([]);
    expect(leaving(hubs, labelStock('A4 2 x 7'))).toEqual([]);
    expect(leaving(marks, labelStock('A4 5 x 13'))).toEqual([]);
  });

  it('come out the same twice', () => {
    expect(JSON.stringify(panels())).toBe(JSON.stringify(panels()));
  });
});

describe('a code', () => {
  it('is refused where phones could not read its modules, and where the text is too long for any', () => {
    const code = codeModules('1-01');
    expect(code && codeItem(code, { x: 0, y: 0, width: 11, height: 11 })).toBeNull();
    expect(code && codeItem(code, { x: 0, y: 0, width: 12, height: 12 })).not.toBeNull();
    expect(codeModules('x'.repeat(3000))).toBeNull();
  });
});
