import { describe, expect, it } from 'vitest';
import { endsOf, pickAt, type Spot, spotAt } from '../../src/drawing/plan-view/pick.ts';
import { picture, places, shell, turned } from './notation.ts';

const middleOf = ([a, b]: readonly [Spot, Spot]): Spot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

describe('pointing at the plan', () => {
  it('finds every place by its number, from above and from below', () => {
    for (const plan of [picture, turned])
      for (const place of places)
        expect(pickAt(shell, plan, spotAt(plan.labels, place), 1)).toEqual({
          type: 'place',
          place,
        });
  });

  it('finds every hub where it is drawn', () => {
    for (let hub = 0; 2 * hub < picture.hubs.length; hub++)
      expect(pickAt(shell, picture, spotAt(picture.hubs, hub), 1)).toEqual({ type: 'hub', hub });
  });

  it('finds every seam in its middle', () => {
    for (let i = 0; i < shell.seams.length; i += 2) {
      const side = shell.seams[i] as number;
      const spot = middleOf(endsOf(shell, picture, side));
      expect(pickAt(shell, picture, spot, 1)).toEqual({ type: 'seam', side });
    }
  });

  it('leaves most of a place to the place, however coarse the finger', () => {
    for (const place of places)
      expect(pickAt(shell, picture, spotAt(picture.labels, place), 1000)?.type).toBe('place');
  });

  it('finds nothing off the drawing', () => {
    expect(pickAt(shell, picture, [500, 500], 2)).toBeNull();
  });

  it('finds a hub no farther off than it reaches', () => {
    const [x, y] = spotAt(picture.hubs, shell.sideHub[0] as number);
    expect(pickAt(shell, picture, [x, y + 0.4], 0.5)?.type).toBe('hub');
    expect(pickAt(shell, picture, [x, y + 0.6], 0.5)?.type).not.toBe('hub');
  });
});
