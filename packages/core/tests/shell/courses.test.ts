import { describe, expect, it } from 'vitest';
import { componentsOf } from '../../src/shell/check.ts';
import { coursesOf, layersFrom } from '../../src/shell/courses.ts';
import { naturalCuts } from '../../src/shell/cuts.ts';
import { placeCentre } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId } from '../../src/shell/ids.ts';
import { crownAtPlace, orientShell } from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { rims } from '../../src/shell/rims.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { crownUp, cutNear, domeOf, dualOf, icosahedral } from './fixtures.ts';

const dome = (b: number, c: number, z: number): Shell => {
  const whole = crownUp(icosahedral(b, c).shell);
  return domeOf(whole, cutNear(whole, z));
};

describe('courses', () => {
  it('of a four-step half ball are bands of 40, 40, then the five-sided cap', () => {
    expect(coursesOf(dome(4, 0, 0)).counts).toEqual([40, 40, 35, 25, 15, 5]);
  });

  it('of a three-step dome on a base ring that is not flat are bands too', () => {
    expect(coursesOf(dome(3, 0, -0.18)).counts).toEqual([30, 30, 25, 15, 5]);
    expect(coursesOf(dome(3, 0, 0.18)).counts).toEqual([30, 25, 15, 5]);
  });

  it('number every place once, with a course and two digits', () => {
    for (const shell of [
      dome(4, 0, 0),
      dome(2, 1, 0),
      dome(3, 1, -0.3),
      crownUp(icosahedral(2, 0).shell),
    ]) {
      const { numbers } = coursesOf(shell);
      expect(new Set(numbers).size).toBe(placeCount(shell));
      for (const number of numbers) expect(number).toMatch(/^[1-9]\d*-\d{2,}$/);
    }
  });

  it('start at the datum and go clockwise seen from above', () => {
    const shell = dome(4, 0, 0);
    const { course, position } = coursesOf(shell);
    for (let c = 1; c <= 6; c++) {
      const angles = [...Array(placeCount(shell)).keys()]
        .filter((p) => course[p] === c)
        .sort((p, q) => (position[p] as number) - (position[q] as number))
        .map((p) => {
          const [x, y] = placeCentre(shell, p as PlaceId);
          const clockwise = -Math.atan2(y, x);
          return clockwise < -1e-9 ? clockwise + 2 * Math.PI : clockwise;
        });
      angles.slice(1).forEach((a, i) => {
        expect(a).toBeGreaterThan((angles[i] as number) - 1e-9);
      });
    }
  });

  it('close as rings and rest on the course below, in class III and on dual nets as well', () => {
    const dual = crownUp(dualOf(icosahedral(3, 0)).shell);
    for (const shell of [dome(3, 1, 0), dome(2, 2, 0), domeOf(dual, cutNear(dual, 0))]) {
      const { course, counts } = coursesOf(shell);
      const inCourses = (low: number, high: number): number[] =>
        [...course.keys()].filter(
          (p) => (course[p] as number) >= low && (course[p] as number) <= high,
        );
      const first = partOf(shell, inCourses(1, 1)).shell;
      expect(new Set(componentsOf(first)).size).toBe(1);
      expect(rims(first)).toHaveLength(2);
      for (let c = 2; c <= counts.length; c++) {
        const below = new Set(inCourses(c - 1, c - 1).flatMap((p) => hubsOf(shell, p as PlaceId)));
        for (const p of inCourses(c, c))
          expect(hubsOf(shell, p as PlaceId).some((hub) => below.has(hub))).toBe(true);
      }
    }
  });

  it('keep every number when places are left out of the numbered shell only afterwards', () => {
    const shell = dome(4, 0, 0);
    const opened = partOf(shell, [...Array(placeCount(shell)).keys()].slice(3));
    const numbers = coursesOf(shell).numbers;
    expect(opened.places).toHaveLength(157);
    expect([...opened.places].map((p) => numbers[p])).toEqual(numbers.slice(3));
  });

  it('of a whole ball count from the lowest hub', () => {
    expect(coursesOf(crownUp(icosahedral(2, 0).shell)).counts).toEqual([5, 15, 20, 20, 15, 5]);
  });

  it('do not hang on how hubs were rounded at the datum', () => {
    const { shell } = icosahedral(3, 0);
    const up = orientShell(shell, crownAtPlace(shell, 0 as PlaceId));
    const cut = naturalCuts(up)[0];
    const plain = partOf(up, cut?.places as Int32Array).shell;
    const nudged = { ...plain, hubs: plain.hubs.map((x, i) => x + 1e-15 * Math.sin(i)) };
    expect(coursesOf(nudged).numbers).toEqual(coursesOf(plain).numbers);
  });

  it('have three digits where a course has over 99 places', () => {
    expect(coursesOf(dome(11, 0, 0.05)).numbers.some((n) => /^1-\d{3}$/.test(n))).toBe(true);
  });
});

describe('layersFrom', () => {
  it('counts rings of places around a hub', () => {
    const { hubs, places } = layersFrom(icosahedral(2, 0).shell, [0 as HubId]);
    const sizes = (layers: Int32Array, k: number): number => layers.filter((x) => x === k).length;
    expect([0, 1, 2].map((k) => sizes(hubs, k))).toEqual([1, 5, 10]);
    expect([1, 2].map((k) => sizes(places, k))).toEqual([5, 15]);
  });

  it('is −1 where the start does not lead', () => {
    const { shell } = icosahedral(1, 0);
    expect([...layersFrom(shell, []).places]).toEqual(Array(20).fill(-1));
  });
});
