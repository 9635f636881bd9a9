import { decisionFor } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  allCandidates,
  countedKinds,
  decidedCandidate,
  fewOf,
  leftOver,
  nextCut,
  shownCandidates,
} from '../../src/sheets/places/candidates.ts';
import { list } from './notation.ts';

const { arrangements } = list;

describe('the ways to stand', () => {
  it('are all shown unless something is asked for', () => {
    expect(shownCandidates(list, allCandidates)).toEqual(arrangements.map((_, i) => i));
  });

  it('with nothing short lack nothing, with few short lack few', () => {
    const nothing = shownCandidates(list, { short: 'nothing', flat: false });
    expect(nothing.length).toBeGreaterThan(0);
    expect(nothing.every((i) => arrangements[i]?.short === 0)).toBe(true);
    const few = shownCandidates(list, { short: 'few', flat: false });
    expect(few).toEqual(
      arrangements.flatMap((one, i) => (one.short <= fewOf(one.cut.places.length) ? [i] : [])),
    );
    expect(few.length).toBeLessThan(arrangements.length);
  });

  it('with a flat base stand level', () => {
    const flat = shownCandidates(list, { short: 'any', flat: true });
    expect(flat.every((i) => arrangements[i]?.cut.flat)).toBe(true);
    expect(flat.length).toBeLessThan(arrangements.length);
  });

  it('count as few a twentieth of the places, three at least', () => {
    expect([10, 60, 100, 400].map(fewOf)).toEqual([3, 3, 5, 20]);
  });

  it('are found again by the decision that they stand for', () => {
    arrangements.forEach((one, i) => {
      expect(decidedCandidate(list, decisionFor(list, one, false))).toBe(i);
    });
  });

  it('are not found by a decision of another height', () => {
    const own = decisionFor(list, arrangements[0] as (typeof arrangements)[number], false);
    const far = { ...own, cut: { ...own.cut, height: own.cut.height * 1.1 } };
    expect(decidedCandidate(list, far)).toBeNull();
  });

  it('are cut lower and higher along one way up, and back', () => {
    arrangements.forEach((one, i) => {
      const lower = nextCut(list, i, 'lower');
      if (lower === null) return;
      const next = arrangements[lower];
      expect(next?.wayUp).toBe(one.wayUp);
      expect(next?.cut.places.length).toBeGreaterThan(one.cut.places.length);
      const back = nextCut(list, lower, 'higher');
      expect(arrangements[back as number]?.cut.places.length).toBe(one.cut.places.length);
    });
  });

  it('have an end', () => {
    const most = Math.max(...arrangements.map(({ cut }) => cut.places.length));
    const tallest = arrangements.findIndex(({ cut }) => cut.places.length === most);
    expect(nextCut(list, tallest, 'lower')).toBeNull();
  });

  it('say what they leave over', () => {
    for (const one of arrangements)
      expect(leftOver(one)).toBe(one.stock.reduce((sum, { left }) => sum + left, 0));
  });

  it('name the kinds at the crown once each', () => {
    expect(countedKinds(['1', '1', '1', '1', '1'])).toBe('5 × 1');
    expect(countedKinds(['3L', '4', '3R', '4'])).toBe('3L, 2 × 4, 3R');
  });
});
