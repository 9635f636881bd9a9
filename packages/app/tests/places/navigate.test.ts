import { describe, expect, it } from 'vitest';
import { directions, firstPlace, neighbourTowards } from '../../src/drawing/plan-view/navigate.ts';
import { type Spot, spotAt } from '../../src/drawing/plan-view/pick.ts';
import { picture, places, shell, turned } from './notation.ts';

const across = (place: number): number[] => {
  const found: number[] = [];
  for (let s = shell.placeStart[place] as number; s < (shell.placeStart[place + 1] as number); s++)
    if ((shell.mate[s] as number) >= 0)
      found.push(shell.sidePlace[shell.mate[s] as number] as number);
  return found;
};
const step = (from: number, to: number): Spot => {
  const [a, b] = [spotAt(picture.labels, from), spotAt(picture.labels, to)];
  return [b[0] - a[0], b[1] - a[1]];
};

describe('the arrow keys', () => {
  it('go to the neighbour across a side when they point straight at it', () => {
    for (const place of places)
      for (const other of across(place)) {
        const [x, y] = step(place, other);
        const length = Math.hypot(x, y);
        expect(neighbourTowards(shell, picture, place, [x / length, y / length])).toBe(other);
      }
  });

  it('never go against their direction', () => {
    for (const place of places)
      for (const direction of Object.values(directions)) {
        const to = neighbourTowards(shell, picture, place, direction);
        if (to === null) continue;
        const [x, y] = step(place, to);
        expect(x * direction[0] + y * direction[1]).toBeGreaterThan(0);
      }
  });

  it('reach every place from the first', () => {
    const reached = new Set([firstPlace(picture) as number]);
    for (const place of reached)
      for (const direction of Object.values(directions)) {
        const to = neighbourTowards(shell, picture, place, direction);
        if (to !== null) reached.add(to);
      }
    expect(reached.size).toBe(places.length);
  });

  it('left on the plan from above is right on the plan from below', () => {
    for (const place of places) {
      const left = neighbourTowards(shell, picture, place, [-1, 0]);
      const right = neighbourTowards(shell, turned, place, [1, 0]);
      if (left !== null && right !== null) {
        const [a, b] = [step(place, left), step(place, right)];
        expect(a[0]).toBeCloseTo(b[0], 6);
      }
    }
  });

  it('stop at the edge of the shell', () => {
    const outermost = places.reduce((a, b) =>
      (picture.labels[2 * b + 1] as number) > (picture.labels[2 * a + 1] as number) ? b : a,
    );
    expect(neighbourTowards(shell, picture, outermost, [0, 1])).toBeNull();
  });
});
