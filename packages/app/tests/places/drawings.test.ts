import { pointAt, type Vec3, type WayUp } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { spotAt } from '../../src/drawing/plan-view/pick.ts';
import { candidatePictures, printedPlans, quantitiesOf } from '../../src/engine/drawings.ts';
import { kinds, list, net, numbers, picture, places, shell, turned } from './notation.ts';

describe('the plan for the screen', () => {
  it('holds every outline, number and hub in its box', () => {
    for (const plan of [picture, turned]) {
      const [x, y, width, height] = plan.box;
      for (const flat of [...plan.outlines, plan.labels, plan.hubs])
        flat.forEach((value, i) => {
          const [from, room] = i % 2 === 0 ? [x, width] : [y, height];
          expect(value).toBeGreaterThanOrEqual(from - 1e-9);
          expect(value).toBeLessThanOrEqual(from + room + 1e-9);
        });
    }
  });

  it('is 190 mm across or down, whichever is more', () => {
    expect(Math.max(picture.box[2], picture.box[3])).toBeCloseTo(190, 9);
  });

  it('turned over is its mirror image, the datum still up', () => {
    for (let hub = 0; 2 * hub < picture.hubs.length; hub++) {
      const [[x, y], [u, v]] = [spotAt(picture.hubs, hub), spotAt(turned.hubs, hub)];
      expect(u).toBeCloseTo(-x, 9);
      expect(v).toBeCloseTo(y, 9);
    }
  });

  it('has the datum up the page and clockwise as seen from above', () => {
    for (let hub = 0; 2 * hub < picture.hubs.length; hub++) {
      const [px, py] = pointAt(shell.hubs, hub) as Vec3;
      const [x, y] = spotAt(picture.hubs, hub);
      const across = Math.hypot(px, py);
      if (across < 1e-9) continue;
      expect(x / Math.hypot(x, y)).toBeCloseTo(-py / across, 6);
      expect(y / Math.hypot(x, y)).toBeCloseTo(-px / across, 6);
    }
  });
});

describe('small pictures of what could stand', () => {
  const questions = list.arrangements.map(({ wayUp, cut }) => ({
    crown: (list.waysUp[wayUp] as WayUp).crown,
    places: cut.places,
  }));
  const pictures = candidatePictures(net.shell, questions);

  it('are to one scale: as high as their shells', () => {
    pictures.forEach(({ ground, width }, i) => {
      const height = list.arrangements[i]?.cut.height as number;
      expect(Math.abs((ground / width) * 2 * net.shell.radius - height)).toBeLessThan(1e-9);
    });
  });

  it('show about half of the panels, the side towards the datum', () => {
    pictures.forEach(({ shades }, i) => {
      const drawn = shades.join('').split('M').length - 1;
      const all = list.arrangements[i]?.cut.places.length as number;
      expect(drawn).toBeGreaterThan(0.25 * all);
      expect(drawn).toBeLessThan(0.75 * all);
    });
  });
});

describe('the sheets for the printer', () => {
  it.each([
    ['A4', 297, 210],
    ['Letter', 279.4, 215.9],
  ] as const)('are two on %s, from above and from below', (paper, width, height) => {
    const sheets = printedPlans({
      shell,
      numbers,
      kinds,
      project: 'A shell',
      sheet: '3 Places',
      date: '1 May 2026',
      assumes: 'nothing',
      caution: 'Mind your head.',
      paper,
      lengths: 'metric',
      painted: false,
    });
    expect(sheets.map((one) => [one.width, one.height])).toEqual([
      [width, height],
      [width, height],
    ]);
    expect(sheets.map(({ title }) => title)).toEqual([
      'A shell: Flat plan, seen from above',
      'A shell: Flat plan, seen from below',
    ]);
  });
});

describe('the proof of count', () => {
  it('is of what stands, and comes on a page of its own after the plans', () => {
    const { proof } = quantitiesOf(shell, kinds, [], undefined, []);
    expect(proof.map(({ what }) => what)).toEqual(['panels', 'seams', 'hubs', 'bolts']);
    expect(proof[0]).toMatchObject({ byList: shell.kind.length, agrees: true });
    const less = quantitiesOf(shell, kinds, [], undefined, [], [shell.kind.length - 1]).proof;
    expect(less[0]?.byList).toBe(shell.kind.length - 1);
    const facts = { project: 'A shell', sheet: 'S', date: 'D', assumes: 'A', caution: 'C' };
    const on = { paper: 'A4', lengths: 'metric', painted: false } as const;
    const sheets = printedPlans({ shell, numbers, kinds, ...facts, ...on, proof });
    expect(sheets.map(({ width }) => width)).toEqual([297, 297, 210]);
    expect(sheets[2]?.description).toContain('panels: in all: agrees');
  });
});

describe('the lists', () => {
  it('come as spreadsheets, a row a size and a row a kind', () => {
    const { takeOff, csv, bolts } = quantitiesOf(shell, kinds, [], undefined, []);
    const rows = (text: string): number => text.trimEnd().split('\r\n').length - 1;
    expect(rows(csv.buy)).toBe(takeOff.lines.length);
    expect(rows(csv.stock)).toBe(kinds.length);
    expect(bolts).toHaveLength(shell.seams.length / 2);
    expect(places.length).toBe(numbers.length);
  });
});
