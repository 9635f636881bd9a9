import { describe, expect, it } from 'vitest';
import { doorOfPlaces } from '../../src/fitout/door.ts';
import { doorFrame, PANEL_SUPPOSED } from '../../src/fitout/door-frame.ts';
import { SECTION_SUPPOSED, SECTION_WORDS } from '../../src/fitout/door-section.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';

const unit = cutBall(2, 40);
const shell = { ...unit, radius: 2, hubs: unit.hubs.map((x) => 2 * x) };
const parts = frameParts(unknownParts);
const weighed = (): number => 12;
const costOf = (places: readonly number[], massOf: (place: number) => number | null = weighed) =>
  doorFrame(shell, doorOfPlaces(shell, places), parts, { massOf });
const order = inNumberOrder(shell);
const none = costOf([]);
const one = costOf(order.slice(0, 1));
const two = costOf(order.slice(0, 2));

describe('what a door costs the frame', () => {
  it('is nothing where no panel comes out', () => {
    expect(none.stiffness.kept).toBeCloseTo(1, 9);
    expect(none.sag).toEqual({ whole: 0, open: 0 });
    expect(none.buckling!.open / none.buckling!.whole).toBeCloseTo(1, 9);
  });

  it('is stiffness with every panel more: a thousandth is no rounding', () => {
    expect(one.stiffness.kept).toBeLessThan(1 - 1e-3);
    expect(two.stiffness.kept).toBeLessThan(one.stiffness.kept - 1e-3);
    expect(two.stiffness.kept).toBeGreaterThan(0);
    // The twin: what no panel costs would not pass.
    expect(none.stiffness.kept).not.toBeLessThan(1 - 1e-3);
  });

  it('is sag and buckling load: the open edge goes down further and buckles no later', () => {
    for (const { sag, buckling } of [one, two]) {
      expect(sag!.open).toBeGreaterThan(sag!.whole);
      expect(sag!.whole).toBeGreaterThan(0);
      expect(buckling!.open).toBeLessThan(buckling!.whole * (1 + 1e-6));
    }
  });

  it('goes with the weight: twice the mass sags twice as far and buckles at half the factor', () => {
    const heavy = costOf(order.slice(0, 2), () => 24);
    expect(heavy.sag!.open / two.sag!.open).toBeCloseTo(2, 6);
    expect(heavy.buckling!.open / two.buckling!.open).toBeCloseTo(0.5, 5);
    expect(heavy.sag!.open / (1.001 * two.sag!.open)).not.toBeCloseTo(2, 6);
    expect(heavy.stiffness.kept).toBe(two.stiffness.kept);
  });

  it('names what was supposed: of the parts always, of masses where panels were not weighed', () => {
    expect(two.supposed).toEqual([...parts.supposed, SECTION_WORDS]);
    const named = doorFrame(shell, doorOfPlaces(shell, order.slice(0, 2)), parts, {
      massOf: weighed,
      section: SECTION_SUPPOSED,
    });
    expect(named.supposed).toEqual(parts.supposed);
    expect(named.bracing).toEqual(two.bracing);
    const guessed = costOf(order.slice(0, 2), () => null);
    expect(guessed.supposed.at(-2)).toBe(`panels of ${PANEL_SUPPOSED} kg each`);
    expect(guessed.sources.at(-2)!.confirmation).toBe('common practice');
    expect(guessed.sag!.open / two.sag!.open).toBeCloseTo(PANEL_SUPPOSED / 12, 6);
    const some = costOf(order.slice(0, 2), (place) => (place === order[5] ? null : 12));
    expect(some.supposed.at(-2)).toBe('the mean of the others, 12.0 kg, of 1 panel');
    expect(some.sag!.open).toBeCloseTo(two.sag!.open, 12);
  });
});
