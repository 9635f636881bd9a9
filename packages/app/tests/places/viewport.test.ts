import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted, isWhole, moved, showing, zoomed } from '../../src/drawing/plan-view/viewport.ts';

const box = { x: -95, y: -110, width: 190, height: 205 };
const whole = fitted(box, 1.5);

describe('the view of the plan', () => {
  it('holds all of the drawing in a window of any shape', () => {
    for (const aspect of [0.3, 0.9, 1, 2.5]) {
      const view = fitted(box, aspect);
      expect(view.width / view.height).toBeCloseTo(aspect, 12);
      expect(view.x).toBeLessThanOrEqual(box.x);
      expect(view.y).toBeLessThanOrEqual(box.y);
      expect(view.x + view.width).toBeGreaterThanOrEqual(box.x + box.width - 1e-9);
      expect(view.y + view.height).toBeGreaterThanOrEqual(box.y + box.height - 1e-9);
    }
  });

  it('keeps the spot that is zoomed about where it is', () => {
    const near = zoomed(whole, 3, [20, -15], whole);
    const share = (view: typeof whole): number[] => [
      (20 - view.x) / view.width,
      (-15 - view.y) / view.height,
    ];
    share(near).forEach((at, i) => {
      expect(at).toBeCloseTo(share(whole)[i] as number, 12);
    });
  });

  it('is never farther than the whole, and shows exactly the whole then', () => {
    const back = zoomed(zoomed(whole, 4, [10, 10], whole), 1 / 50, [0, 0], whole);
    expect(back).toBe(whole);
    expect(isWhole(back, whole)).toBe(true);
  });

  it('is never nearer than 24 times', () => {
    expect(whole.width / zoomed(whole, 1e6, [0, 0], whole).width).toBeCloseTo(24, 9);
  });

  it('never leaves the drawing, whatever is done (seed 303)', () => {
    const act = fc.tuple(fc.double({ min: 0.2, max: 5, noNaN: true }), fc.integer(), fc.integer());
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        let view = whole;
        for (const [factor, dx, dy] of acts)
          view = moved(zoomed(view, factor, [dx % 90, dy % 90], whole), dx % 300, dy % 300, whole);
        expect(view.x).toBeGreaterThanOrEqual(whole.x - 1e-9);
        expect(view.y).toBeGreaterThanOrEqual(whole.y - 1e-9);
        expect(view.x + view.width).toBeLessThanOrEqual(whole.x + whole.width + 1e-9);
        expect(view.y + view.height).toBeLessThanOrEqual(whole.y + whole.height + 1e-9);
        expect(view.width / view.height).toBeCloseTo(whole.width / whole.height, 9);
      }),
      { seed: 303 },
    );
  });

  it('follows a spot that is out of sight, and stays where one is in sight', () => {
    const near = zoomed(whole, 6, [0, 0], whole);
    expect(showing(near, [0, 0], whole)).toBe(near);
    const there = showing(near, [80, 60], whole);
    expect(80).toBeLessThan(there.x + there.width);
    expect(60).toBeLessThan(there.y + there.height);
  });
});
