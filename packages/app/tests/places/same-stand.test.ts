import { describe, expect, it } from 'vitest';
import { sameStand, standsAs } from '../../src/sheets/places/fit/same-stand.ts';

const own = {
  wayUp: { at: 'hub' as const, kinds: ['1', '1', '2'], orbit: 0 },
  cut: { places: 40, height: 2 },
};

describe('two decisions', () => {
  it('stand the same shell where way up and cut are the same, the height within one in a hundred', () => {
    expect(sameStand(own, { ...own, cut: { places: 40, height: 2.015 } })).toBe(true);
    expect(sameStand(own, { ...own, cut: { places: 40, height: 2.15 } })).toBe(false);
  });

  it('stand different ones where the crown or the number of places differs', () => {
    expect(sameStand(own, { ...own, wayUp: { ...own.wayUp, orbit: 1 } })).toBe(false);
    const lean = { by: 0.2, towards: 1 };
    expect(sameStand(own, { ...own, wayUp: { ...own.wayUp, lean } })).toBe(false);
    expect(sameStand(own, { ...own, cut: { places: 41, height: 2 } })).toBe(false);
  });
});

describe('a decision', () => {
  const fit = { ...own, repaired: false, datumTurn: 0 };
  const door = { use: 'door' as const, places: ['1-01', '1-02'] };

  it('stands a fit with all that the fit leaves open, whatever else is left out', () => {
    const hatch = { use: 'hatch' as const, places: ['3-01'] };
    const meant = { ...fit, openings: [door] };
    expect(standsAs({ ...fit, openings: [hatch, door] }, meant)).toBe(true);
    expect(standsAs({ ...fit, openings: [hatch] }, meant)).toBe(false);
    expect(standsAs(fit, meant)).toBe(false);
    expect(standsAs(fit, fit)).toBe(true);
  });
});
