import { describe, expect, it } from 'vitest';
import { sameStand } from '../../src/sheets/places/fit/same-stand.ts';

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
