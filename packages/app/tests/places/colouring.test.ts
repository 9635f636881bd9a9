import { type StockRow, tints } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { planLayers, recoloured } from '../../src/drawing/plan-view/recolour.ts';
import { coloured, conditionOf, stockStateOf } from '../../src/sheets/places/colouring.ts';
import { colourings } from '../../src/state/settings.ts';
import { courses, kinds, picture, places, shell, stock } from './notation.ts';

const content = { kind: shell.kind, kinds, course: courses.course, stock };
const row: StockRow = {
  kinds: ['1'],
  need: 30,
  good: 30,
  repair: 0,
  mended: 0,
  short: 0,
  mendable: 0,
  left: 0,
  counted: true,
};

describe('the fills of the plan', () => {
  it.each(colourings)('by %s give every place one, all of them told below', (by) => {
    const { fills, samples } = coloured(by, content);
    expect(fills).toHaveLength(places.length);
    expect(samples.reduce((sum, one) => sum + one.places, 0)).toBe(places.length);
    for (const fill of fills) expect(samples.map((one) => one.fill)).toContainEqual(fill);
  });

  it.each(colourings)('by %s never differ in tint alone', (by) => {
    const many = { ...content, course: places.map((p) => 1 + (p % 12)) };
    const { samples } = coloured(by, by === 'course' ? many : content);
    samples.forEach((a, i) => {
      const next = samples[i + 1];
      if (next) expect(a.fill.hatch).not.toBe(next.fill.hatch);
    });
  });

  it('tell by condition what fills the places', () => {
    expect(conditionOf(row)).toBe('good');
    expect(conditionOf({ ...row, mended: 2 })).toBe('mended');
    expect(conditionOf({ ...row, short: 3, mendable: 1 })).toBe('mendable');
    expect(conditionOf({ ...row, short: 3 })).toBe('missing');
    expect(conditionOf({ ...row, counted: false })).toBe('uncounted');
  });

  it('tell by stock how far it goes', () => {
    expect(stockStateOf(row)).toBe('exact');
    expect(stockStateOf({ ...row, left: 2 })).toBe('over');
    expect(stockStateOf({ ...row, short: 1 })).toBe('short');
    expect(stockStateOf({ ...row, counted: false })).toBe('uncounted');
  });

  it('stand in the place of those that were drawn', () => {
    const { places: drawn } = planLayers(picture.items);
    const fill = { tint: tints.rose, hatch: 'grid' } as const;
    const again = recoloured(
      drawn,
      places.map(() => fill),
    );
    expect(again).toHaveLength(places.length);
    for (const item of again)
      expect(item.type === 'group' && item.items[0]).toMatchObject({ fill });
  });

  it('leave no item of the drawing out of its layers', () => {
    const { places: own, lines, labels } = planLayers(picture.items);
    expect(own.length + lines.length + labels.length).toBe(picture.items.length);
    expect(own).toHaveLength(places.length);
    expect(labels).toHaveLength(places.length);
  });
});
