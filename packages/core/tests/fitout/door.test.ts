import { describe, expect, it } from 'vitest';
import { openingsFor } from '../../src/arrange/openings/openings.ts';
import { doorAdvice } from '../../src/fitout/door.ts';
import { placeCentre } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { baseRing } from '../../src/shell/rims.ts';
import { cutBall } from '../stages/fixtures.ts';

const shell = cutBall(4, 160);
const outline = [
  [-0.12, 0],
  [0.12, 0],
  [0.12, 0.5],
  [-0.12, 0.5],
] as const;
const openings = openingsFor(shell, { outline });

describe('advice for a door', () => {
  it('frames the whole edge, a header above and jambs beside', () => {
    expect(openings.length).toBeGreaterThan(0);
    for (const opening of openings) {
      const { reveal, lengths } = doorAdvice(shell, opening, 0);
      const all = opening.reveal.reduce((sum, { length }) => sum + length, 0);
      expect(lengths.header + lengths.jamb + lengths.sill).toBeCloseTo(all, 12);
      expect(reveal).toHaveLength(opening.reveal.length);
    }
    const first = doorAdvice(shell, openings[0], 0);
    expect(first.lengths.jamb).toBeGreaterThan(0);
  });

  it('props the free hubs of the edge, none on the base ring, the highest first', () => {
    const ring = new Set<number>(baseRing(shell)!.hubs);
    for (const opening of openings.slice(0, 5)) {
      const { props } = doorAdvice(shell, opening, 0);
      expect(props.length).toBeGreaterThan(0);
      expect(props.some((hub) => ring.has(hub))).toBe(false);
      const z = props.map((hub) => shell.hubs[3 * hub + 2]);
      expect(z).toEqual(z.toSorted((a, b) => b - a));
    }
  });

  it('takes each panel of the opening out once, and says where one hangs meanwhile', () => {
    for (const opening of openings) {
      const { cutOrder, held, spares } = doorAdvice(shell, opening, 0);
      expect(cutOrder.toSorted((a, b) => a - b)).toEqual([...opening.places]);
      expect(spares).toBe(opening.places.length);
      // After the last panel nothing is left to hang.
      expect(held).not.toContain(cutOrder.length - 1);
    }
  });

  it('tells how far it is from the wind: half a turn for the side away from it', () => {
    const [opening] = openings;
    const { azimuth } = opening.passage;
    const away = doorAdvice(shell, opening, azimuth + Math.PI).offWind!;
    const into = doorAdvice(shell, opening, azimuth).offWind!;
    expect(away).toBeCloseTo(Math.PI - into, 9);
    expect(into).toBeLessThan(0.5);
    expect(placeCentre(shell, opening.places[0] as PlaceId)[2]).toBeLessThan(0.9);
  });
});
