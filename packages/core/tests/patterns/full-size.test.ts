import { describe, expect, it } from 'vitest';
import { type FullOptions, fullPanel } from '../../src/patterns/full-size-panel.ts';
import {
  basePanels,
  fullPanels,
  hubPlates,
  lowestHub,
} from '../../src/patterns/full-size-parts.ts';
import { placeNormal, sideLength, vectorArea } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { placeCount, sidesOf } from '../../src/shell/shell.ts';
import { flangeAngles } from '../../src/sphere/flange.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { ball, dome } from './fixtures.ts';

const options: FullOptions = { flange: 0.04, allowance: 0.004, holes: () => [3, 4, null] };
const shell = dome(3);

describe('a panel at full size', () => {
  it('has the sides, area and flange angles of its place; ten times the tolerance is refused', () => {
    for (const { panel, kind } of fullPanels(shell, [], [], options)) {
      const place = shell.kind.indexOf(kind) as PlaceId;
      const lengths = sidesOf(shell, place).map((side) => sideLength(shell, side));
      const polygon = polygonOnSphere(lengths, shell.radius);
      if (!polygon.ok) throw new Error('it is a panel');
      const { angles } = flangeAngles(polygon, shell.radius);
      panel.sides.forEach((side, i) => {
        expect(Math.abs(side.length - (lengths[i] as number))).toBeLessThan(1e-12);
        expect(Math.abs(side.flangeAngle - (angles[i] as number))).toBeLessThan(1e-9);
        expect(Math.abs(side.flangeAngle - (angles[i] as number) + 1e-8)).toBeGreaterThan(1e-9);
      });
      expect(panel.area).toBeCloseTo(Math.hypot(...vectorArea(shell, place)), 12);
    }
  });

  it('has flanges whose ends meet when they are folded', () => {
    // Folded, an end lies on the line from its corner to the centre: as far along its side as that line
    // leans, so both flanges of a corner end on one line, as long as each other.
    const { panel } = fullPanels(ball(1, 2), [], [], options)[0] as ReturnType<
      typeof fullPanels
    >[0];
    const edge = 2 / Math.sin((2 * Math.PI) / 5);
    const lean = edge / 2 / Math.sqrt(4 - edge ** 2 / 4);
    for (const [i, { flange }] of panel.sides.entries()) {
      const p = panel.corners[i] as readonly [number, number];
      expect(Math.hypot(flange[0][0] - p[0], flange[0][1] - p[1])).toBeCloseTo(
        0.04 * Math.hypot(1, lean),
        12,
      );
      expect(Math.hypot(flange[1][0] - flange[0][0], flange[1][1] - flange[0][1])).toBeCloseTo(
        edge - 0.08 * lean,
        12,
      );
    }
  });

  it('has its holes evenly on its hole line, and heights that give its area', () => {
    const { panel } = fullPanels(shell, [], [], options)[0] as ReturnType<typeof fullPanels>[0];
    expect(panel.sides.map(({ holes }) => holes).sort()).toEqual([3, 4, null]);
    for (const { holeAt, holeLine, holes, length, measured } of panel.sides) {
      expect(measured).toBeCloseTo(length - 0.004, 12);
      expect(holeAt.length).toBe(holes ?? 0);
      expect(
        Math.hypot(holeLine[1][0] - holeLine[0][0], holeLine[1][1] - holeLine[0][1]),
      ).toBeCloseTo(length - 0.004, 12);
    }
    for (const { to, length, square } of panel.checks) {
      expect(square).toBe(true);
      expect((length * (panel.sides[to]?.length as number)) / 2).toBeCloseTo(panel.area, 12);
    }
  });
});

describe('panels that the floor cuts', () => {
  const whole = ball(3);
  it('have as much area as is above it, and lean on it as the panel does', () => {
    const floor = -0.3;
    const parts = basePanels({ whole, leftOut: [], floor }, [], options);
    expect(parts.length).toBeGreaterThan(1);
    // Brute force: every triangle that the floor crosses, cut into thin level strips.
    let area = 0;
    for (let p = 0; p < placeCount(whole); p++) {
      const heights = sidesOf(whole, p as PlaceId).map(
        (side) => whole.hubs[3 * (whole.sideHub[side] as number) + 2] as number,
      );
      if (!(Math.min(...heights) < floor && Math.max(...heights) > floor)) continue;
      const [low, middle, high] = [...heights].sort((a, b) => a - b) as [number, number, number];
      const all = Math.hypot(...vectorArea(whole, p as PlaceId));
      const below =
        floor < middle
          ? (floor - low) ** 2 / ((middle - low) * (high - low))
          : 1 - (high - floor) ** 2 / ((high - middle) * (high - low));
      area += all * (1 - below);
    }
    const told = parts.reduce((sum, { panel, count }) => sum + count * panel.area, 0);
    expect(Math.abs(told - area)).toBeLessThan(1e-9);
    for (const { panel, kind } of parts) {
      const floorSides = panel.sides.filter(({ onFloor }) => onFloor);
      expect(floorSides.length).toBe(1);
      const slopes = Array.from(whole.kind.keys())
        .filter((p) => whole.kind[p] === kind)
        .map((p) => Math.PI - Math.acos(-placeNormal(whole, p as PlaceId)[2]));
      expect(
        Math.min(
          ...slopes.map((slope) => Math.abs(slope - (floorSides[0]?.flangeAngle as number))),
        ),
      ).toBeLessThan(1e-9);
    }
  });

  it('are none where the base ring stands on the floor, be it fitted to a tenth of a millimetre', () => {
    const uneven = { ...whole, hubs: whole.hubs.map((x, i) => x + 1e-4 * Math.sin(i)) };
    const ring = whole.hubs.filter((_, i) => i % 3 === 2).find((z) => z > 0.2) as number;
    const parts = basePanels({ whole: uneven, leftOut: [], floor: ring }, [], options);
    for (const { panel } of parts)
      for (const { length } of panel.sides) expect(length).toBeGreaterThan(0.02);
    const flat = dome(2);
    expect(
      basePanels({ whole: flat, leftOut: [], floor: lowestHub(flat) as number }, [], options),
    ).toEqual([]);
  });

  it('leave nothing of a panel that lies below', () => {
    expect(fullPanel(whole, 0 as PlaceId, options, 10)).toBe(null);
  });
});

describe('hub plates', () => {
  it('of an icosahedron have five holes a fifth of a turn apart, the panels falling off as they do', () => {
    const [plate, ...others] = hubPlates(ball(1, 2), []) as [ReturnType<typeof hubPlates>[0]];
    expect(others).toEqual([]);
    expect(plate.count).toBe(12);
    plate.holes.forEach((hole, i) => {
      expect(hole).toBeCloseTo(((2 * i + 1) * Math.PI) / 5, 12);
    });
    // A face lies 37.377° off the plane square to the axis through its corner (icosahedron: the
    // axis makes 52.623° with each face).
    for (const slope of plate.slopes) expect(slope).toBeCloseTo((37.377368 * Math.PI) / 180, 8);
  });

  it('cover every hub once, and at the rim no more than its corners', () => {
    const plates = hubPlates(shell, []);
    expect(plates.reduce((sum, { count }) => sum + count, 0)).toBe(shell.hubs.length / 3);
    for (const { closed, seams, holes } of plates)
      expect(seams.length - holes.length).toBe(closed ? 0 : 1);
    const corners = plates.reduce((sum, { count, holes }) => sum + count * holes.length, 0);
    expect(corners).toBe(Array.from(shell.sideHub as ArrayLike<number>).length);
  });
});
