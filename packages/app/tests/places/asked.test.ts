import { areaOf } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { doors } from '../../src/engine/openings.ts';
import { readSection, spans } from '../../src/sheets/places/door/asked.ts';
import { shell } from './notation.ts';

describe('a section', () => {
  it('is read in any unit and turning, and comes anticlockwise about its middle', () => {
    const metres = readSection('0, 0; 1.2, 0; 0.6, 1.5', 'm');
    expect(metres).toEqual({
      ok: true,
      value: [
        [-0.6, 0],
        [0.6, 0],
        [0, 1.5],
      ],
    });
    const turned = readSection('0 mm, 0 mm; 600 mm, 1500 mm; 1200 mm, 0 mm;', 'ft');
    expect(turned.ok && areaOf(turned.value)).toBeGreaterThan(0);
    expect(turned.ok && spans(turned.value)).toMatchObject({ width: 1.2, height: 1.5, middle: 0 });
  });

  it.each([
    ['two corners', '0, 0; 1, 0'],
    ['a corner of one number', '0, 0; 1; 1, 1'],
    ['a corner of three numbers', '0, 0, 0; 1, 0; 1, 1'],
    ['a word', '0, 0; wide, 0; 1, 1'],
    ['no area', '0, 0; 1, 0; 2, 0'],
    ['sides that cross', '0, 0; 1, 1; 0, 1; 1, 0'],
    ['a corner below the floor', '0, -1; 1, 0; 1, 1'],
    ['a corner far off', '0, 0; 60, 0; 1, 1'],
  ])('is refused for %s', (_, text) => {
    expect(readSection(text, 'm')).toEqual({ ok: false });
  });
});

describe('what passes', () => {
  it('asks for fewer panels the smaller it is, hatches away from the floor too', () => {
    const hatches = doors(shell, { as: 'hatch', diameter: 0.3 });
    const door = doors(shell, { as: 'door', width: 0.7, height: 1 });
    const least = (list: typeof door): number =>
      Math.min(...list.map(({ places }) => places.length));
    expect(least(hatches)).toBeLessThan(least(door));
    expect(hatches.some(({ toBase }) => !toBase)).toBe(true);
    expect(doors(shell, { as: 'hatch', diameter: 19 })).toEqual([]);
  });

  it('takes a thing with a door’s outline for a door', () => {
    const outline = [
      [-0.35, 0],
      [0.35, 0],
      [0.35, 1],
      [-0.35, 1],
    ] as const;
    const found = (list: ReturnType<typeof doors>) => list.map(({ places }) => places);
    expect(found(doors(shell, { as: 'thing', outline }))).toEqual(
      found(doors(shell, { as: 'door', width: 0.7, height: 1 })),
    );
  });
});
