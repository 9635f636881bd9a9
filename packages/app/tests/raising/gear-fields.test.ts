import { gearSection } from '@shellraise/core';
import { expect, it } from 'vitest';
import {
  freeName,
  gearFields,
  gearLists,
  gearStarts,
  ginPoleStart,
  shapeSizes,
  shapeStarts,
  valueAt,
  withValue,
} from '../../src/sheets/raising/gear-fields.ts';

it('starts every sort of gear as the project file takes it, with every field there', () => {
  const lists = Object.fromEntries(
    gearLists.map((list) => [list, [{ name: list, ...gearStarts[list] }]]),
  );
  const read = gearSection.safeParse({ ...lists, ginPole: ginPoleStart });
  expect(read.error).toBeUndefined();
  for (const list of gearLists)
    for (const { key } of gearFields[list])
      expect(valueAt(gearStarts[list], key), `${list}.${key}`).not.toBeUndefined();
});

it('keeps within the limits of the project file', () => {
  for (const list of gearLists)
    for (const { key, most } of gearFields[list].filter((field) => field.most > 0)) {
      const put = (value: number) => ({
        [list]: [{ name: 'x', ...withValue(gearStarts[list], key, value) }],
      });
      expect(gearSection.safeParse(put(most)).success, `${list}.${key} ${most}`).toBe(true);
      expect(gearSection.safeParse(put(10 * most)).success, `${list}.${key}`).toBe(false);
    }
});

it('puts a value at a path and leaves the rest', () => {
  const tower = { name: 'tower', ...gearStarts.towers };
  const wider = withValue(tower, 'base.1', 2);
  expect(wider.base).toEqual([1.8, 2]);
  expect(tower.base).toEqual([1.8, 1.4]);
  expect(withValue(wider, 'count', 3)).toEqual({ ...wider, count: 3 });
});

it('offers the sizes of shapes that can be typed', () => {
  for (const shape of Object.values(shapeStarts))
    for (const key of shapeSizes(shape)) expect(valueAt(shape, key)).toBeGreaterThan(0);
  const points = [0, 1, 2, 3].map((i): [number, number, number] => [i, i * i, -i]);
  expect(shapeSizes({ form: 'hull', points })).toEqual([]);
});

it('gives a new one a name of its own', () => {
  expect(freeName('ladder', [])).toBe('ladder');
  expect(freeName('ladder', [{ name: 'ladder' }])).toBe('ladder 2');
  expect(freeName('ladder', [{ name: 'ladder' }, { name: 'ladder 2' }])).toBe('ladder 3');
});
