import { decisionFor, type PlacesDecision } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  chosen,
  closed,
  frozen,
  mended,
  notBroken,
  opened,
  turnedTo,
  turnOf,
  unfrozen,
  withoutSecond,
  withSecond,
} from '../../src/sheets/places/decide.ts';
import { list } from './notation.ts';

const decisions = list.arrangements.map((one) => decisionFor(list, one, false));
const [first] = decisions as [PlacesDecision];
const same = (a: PlacesDecision, b: PlacesDecision): boolean =>
  JSON.stringify(a.wayUp) === JSON.stringify(b.wayUp);
const otherCut = decisions.find((one) => one !== first && same(one, first)) as PlacesDecision;
const otherWay = decisions.find((one) => !same(one, first)) as PlacesDecision;

describe('a decision', () => {
  it('stands as chosen where nothing was decided', () => {
    expect(chosen(first, undefined)).toEqual(first);
  });

  it('keeps painted numbers and the datum through another cut', () => {
    const before = frozen(turnedTo(first, 35));
    const after = chosen(otherCut, before);
    expect(after.frozen).toEqual(before.frozen);
    expect(turnOf(after)).toBe(35);
    expect(after.cut).toEqual(otherCut.cut);
  });

  it('keeps painted numbers through another way up, where the datum begins anew', () => {
    const before = frozen(turnedTo(first, 35));
    const after = chosen(otherWay, before);
    expect(after.frozen).toEqual(before.frozen);
    expect(turnOf(after)).toBe(0);
  });

  it('is the same again once its numbers are no longer frozen', () => {
    expect(unfrozen(frozen(first))).toEqual(first);
    expect('frozen' in unfrozen(frozen(first))).toBe(false);
  });

  it('turns the datum within half a turn either way', () => {
    for (const [asked, found] of [
      [0, 0],
      [5, 5],
      [-5, -5],
      [180, 180],
      [-180, 180],
      [185, -175],
      [725, 5],
      [12.5, 12.5],
    ] as const)
      expect(turnOf(turnedTo(first, asked)), String(asked)).toBe(found);
  });
});

describe('what is decided besides', () => {
  const door = { use: 'door' as const, places: ['1-01', '1-02'] };
  const broken = { place: '1-03', moves: [], lacks: '1' };
  const second = {
    name: 'Tool tent',
    what: 'cap' as const,
    wayUp: first.wayUp,
    cut: { places: 5, height: 0.4 },
    panels: [{ kind: '1', count: 5 }],
    height: 0.4,
  };

  it('stays while the same shell stands, and goes with it, but for lesser shells', () => {
    const all = withSecond(mended(opened(first, door), broken), second);
    expect(chosen(first, all)).toEqual(all);
    expect(chosen(otherCut, all)).toEqual({ ...otherCut, seconds: [second] });
  });

  it('is gone without a trace when it is taken back', () => {
    expect(closed(opened(first, door), 0)).toEqual(first);
    expect(notBroken(mended(first, broken), 0)).toEqual(first);
    expect(withoutSecond(withSecond(first, second), 0)).toEqual(first);
  });

  it('has each place in one opening alone, the latest', () => {
    const hatch = { use: 'hatch' as const, places: ['1-02', '2-02'] };
    expect(opened(opened(first, door), hatch).openings).toEqual([
      { use: 'door', places: ['1-01'] },
      hatch,
    ]);
    const whole = { use: 'gap' as const, places: ['1-01', '1-02'] };
    expect(opened(opened(first, door), whole).openings).toEqual([whole]);
  });
});
