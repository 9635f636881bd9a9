import { describe, expect, it } from 'vitest';
import { pickNearest, spotAt } from '../../src/drawing/plan-view/pick.ts';
import { notTurned, turnedPicture } from '../../src/drawing/plan-view/turned.ts';
import { headingOf, turnFrom } from '../../src/record/compass.ts';
import { picture, placeOf, shell } from '../places/notation.ts';

const at = (place: number, turn = notTurned) => spotAt(turnedPicture(picture, turn).labels, place);

describe('a plan that is turned', () => {
  it('stays as it is without a turn, and turns clockwise about the crown', () => {
    expect(turnedPicture(picture, notTurned)).toBe(picture);
    const place = placeOf('1-01');
    const [x, y] = at(place);
    const [rx, ry] = at(place, { degrees: 90, mirrored: false });
    expect([rx, ry].map((n) => Math.round(n * 1e6))).toEqual(
      [-y, x].map((n) => Math.round(n * 1e6)),
    );
  });

  it('is mirrored left to right for whoever stands inside', () => {
    const place = placeOf('1-02');
    const [x, y] = at(place);
    const [mx, my] = at(place, { degrees: 0, mirrored: true });
    expect(mx).toBeCloseTo(-x, 9);
    expect(my).toBeCloseTo(y, 9);
  });

  it('is pressed where it is drawn, and fits its box however it is turned', () => {
    for (const degrees of [0, 35, 170, -90])
      for (const mirrored of [false, true]) {
        const turned = turnedPicture(picture, { degrees, mirrored });
        const [left, top, width, height] = turned.box;
        for (const number of ['1-01', '1-05', '2-03']) {
          const spot = spotAt(turned.labels, placeOf(number));
          expect(pickNearest(shell, turned, spot, 'place')).toEqual({
            type: 'place',
            place: placeOf(number),
          });
          expect(spot[0] > left && spot[0] < left + width).toBe(true);
          expect(spot[1] > top && spot[1] < top + height).toBe(true);
        }
      }
  });
});

describe('a heading', () => {
  it('is read from either sort of device, and turns the short way round', () => {
    expect(headingOf({ alpha: 350 })).toBe(10);
    expect(headingOf({ alpha: 0, webkitCompassHeading: 42 })).toBe(42);
    expect(headingOf({ alpha: null })).toBeNull();
    expect([turnFrom(350, 10), turnFrom(10, 350), turnFrom(0, 90)]).toEqual([20, -20, 90]);
  });
});
