import { describe, expect, it } from 'vitest';
import { flatItems, type Item, type PathItem, type TextItem } from '../../src/papers/drawing.ts';
import { kindFills } from '../../src/papers/hatch.ts';
import { type JointContent, jointPicture } from '../../src/papers/joint-picture.ts';
import { outlinesOverlap, textCorners } from '../../src/papers/text-box.ts';
import { textWidth } from '../../src/papers/text-width.ts';
import { sideLength } from '../../src/shell/geometry.ts';
import type { PlaceId, SideId } from '../../src/shell/ids.ts';
import { mateOf, placeCount, sidesOf } from '../../src/shell/shell.ts';
import { standing } from './standing.ts';

const { shell, kinds, numbers } = standing(
  { solid: 'icosahedron', b: 3, c: 1, division: 'equal chords' },
  -0.2,
);
const content: Omit<JointContent, 'place'> = {
  shell,
  numbers,
  kinds,
  fills: kindFills(kinds),
  lengths: 'metric',
  fromInside: false,
};

const pictureOf = (place: number, more: Partial<JointContent> = {}) =>
  jointPicture({ ...content, place: place as PlaceId, ...more });

const textsOf = (items: readonly Item[]): string[] =>
  flatItems(items)
    .filter((item): item is TextItem => item.type === 'text')
    .map((item) => item.text);

/** The panel's own outline: the one path drawn bold. */
const outlineOf = (items: readonly Item[]): PathItem['points'] =>
  flatItems(items).flatMap((item) =>
    item.type === 'path' && item.stroke?.weight === 'bold' ? [item.points] : [],
  )[0] ?? [];

const places = Array.from({ length: placeCount(shell) }, (_, p) => p);

describe('the joint picture', () => {
  it('names the place, its kind and every neighbour', () => {
    for (const p of places) {
      const words = textsOf(pictureOf(p).items);
      expect(words).toContain(numbers[p]);
      expect(words).toContain(`kind ${kinds[shell.kind[p] as number]?.id}`);
      for (const side of sidesOf(shell, p as PlaceId)) {
        const mate = mateOf(shell, side);
        if (mate !== null)
          expect(words).toContain(`to ${numbers[shell.sidePlace[mate] as number]}`);
      }
    }
  });

  it('says of a side at the rim that nothing is bolted there', () => {
    const rim = places.find((p) =>
      sidesOf(shell, p as PlaceId).some((s) => mateOf(shell, s) === null),
    );
    expect(textsOf(pictureOf(rim as number).items).join()).toContain('nothing is bolted here');
  });

  it('draws the panel true: its sides are to each other as in the shell', () => {
    for (const p of places.slice(0, 20)) {
      const points = outlineOf(pictureOf(p).items);
      const drawn = points.map((a, i) => {
        const b = points[(i + 1) % points.length] as readonly [number, number];
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
      });
      const true_ = sidesOf(shell, p as PlaceId).map((s: SideId) => sideLength(shell, s));
      const scale = (drawn[0] as number) / (true_[0] as number);
      drawn.forEach((d, i) => {
        expect(Math.abs(d / scale - (true_[i] as number))).toBeLessThan(1e-9);
      });
    }
  });

  it('runs anticlockwise from outside, and is mirrored from inside', () => {
    const turn = (points: PathItem['points']): number =>
      Math.sign(
        points.reduce((sum, a, i) => {
          const b = points[(i + 1) % points.length] as readonly [number, number];
          return sum + a[0] * b[1] - b[0] * a[1];
        }, 0),
      );
    // y runs down the page: anticlockwise there has a negative area.
    expect(turn(outlineOf(pictureOf(7).items))).toBe(-1);
    expect(turn(outlineOf(pictureOf(7, { fromInside: true }).items))).toBe(1);
  });

  it('holds all that it draws of the panel and its neighbours in its box', () => {
    for (const p of places) {
      const { items, box } = pictureOf(p);
      for (const item of flatItems(items))
        if (item.type === 'path')
          for (const [x, y] of item.points) {
            expect(x).toBeGreaterThanOrEqual(box.x);
            expect(x).toBeLessThanOrEqual(box.x + box.width);
            expect(y).toBeGreaterThanOrEqual(box.y);
            expect(y).toBeLessThanOrEqual(box.y + box.height);
          }
    }
  });

  it('gives lengths in the unit asked for first', () => {
    const first = textsOf(pictureOf(3, { lengths: 'inch' }).items).find((t) =>
      t.startsWith('side 1'),
    );
    expect(first).toMatch(/^side 1 · \d+ ?[\d/]*″ \(\d+ mm\)$/);
  });

  it('keeps the words in the middle within the panel', () => {
    for (const p of places) {
      const { items } = pictureOf(p);
      const outline = outlineOf(items);
      const middle = flatItems(items).filter(
        (item): item is TextItem => item.type === 'text' && item.halo === 1,
      );
      expect(middle).toHaveLength(3);
      for (const { at, text, size, bold } of middle) {
        const half = textWidth(text, size, bold) / 2;
        const met = outline.flatMap(([ax, ay], i) => {
          const [bx, by] = outline[(i + 1) % outline.length] as readonly [number, number];
          return ay > at[1] === by > at[1] ? [] : [ax + ((at[1] - ay) / (by - ay)) * (bx - ax)];
        });
        expect(at[0] - half).toBeGreaterThan(Math.min(...met));
        expect(at[0] + half).toBeLessThan(Math.max(...met));
      }
    }
  });

  it('lets no words run into others, whatever the panel looks like', () => {
    for (const of of [
      standing({ solid: 'icosahedron', b: 4, c: 0, division: 'equal chords' }, 0),
      standing({ solid: 'icosahedron', b: 3, c: 1, division: 'equal chords' }, -0.2),
      standing({ solid: 'octahedron', b: 3, c: 0, division: 'equal chords' }, 0),
    ])
      for (let p = 0; p < placeCount(of.shell); p++)
        for (const fromInside of [false, true]) {
          const { items } = jointPicture({
            ...content,
            ...of,
            fills: kindFills(of.kinds),
            place: p as PlaceId,
            fromInside,
          });
          const texts = flatItems(items).filter((item): item is TextItem => item.type === 'text');
          texts.forEach((a, i) => {
            for (const b of texts.slice(0, i))
              if (outlinesOverlap(textCorners(a), textCorners(b), 0.3))
                expect.fail(`${of.numbers[p]}: "${a.text}" runs into "${b.text}"`);
          });
        }
  });
});
