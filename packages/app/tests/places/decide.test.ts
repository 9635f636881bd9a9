import { decisionFor, type PlacesDecision } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { chosen, frozen, turnedTo, turnOf, unfrozen } from '../../src/sheets/places/decide.ts';
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
