import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../../src/arrange/arrangements.ts';
import { areaOf, convexParts } from '../../../src/arrange/openings/convex-parts.ts';
import { hatchesFor, openingsFor } from '../../../src/arrange/openings/openings.ts';
import {
  doorOutline,
  placesInTheWay,
  roundOutline,
  type ViewPoint,
  viewAlong,
} from '../../../src/arrange/openings/passing.ts';
import { type OpeningRank, rankOpenings } from '../../../src/arrange/openings/rank.ts';
import { netShell } from '../../../src/nets/kinds.ts';
import { hubPoint } from '../../../src/shell/geometry.ts';
import type { PlaceId } from '../../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../../src/shell/shell.ts';
import { pileKinds } from '../../shell/fixtures.ts';

/** The half ball of the net divided `b` to a side, radius 3 m. */
function halfBall(b: number): Shell {
  const net = netShell({ solid: 'icosahedron', b, c: 0, division: 'equal chords' }, 3);
  const list = arrangements(net.shell, pileKinds(net));
  const at = list.arrangements.find(({ cut }) => cut.flat && Math.abs(cut.height - 3) < 1e-6);
  if (!at) throw new Error('no half ball');
  const way = list.waysUp[at.wayUp];
  if (!way) throw new Error('no way up');
  return standingShell(net.shell, way, at.cut).shell;
}

describe('what is in the way', () => {
  const shell = halfBall(4);

  it('is every panel of the near wall that a ray through the outline meets, and no other', () => {
    const outline = doorOutline(0.9, 1.9);
    for (const azimuth of [0, 0.3, 1.1, 2.5]) {
      const passage = { azimuth, aside: 0, floor: 0, outline };
      const out = new Set(placesInTheWay(shell, passage));
      const hit = new Set<number>();
      for (let u = -0.44; u <= 0.441; u += 0.02)
        for (let v = 0.01; v < 1.9; v += 0.02) {
          const p = placeBehind(shell, passage, [u, v]);
          if (p !== null) hit.add(p);
        }
      for (const p of hit) expect(out.has(p)).toBe(true);
      for (const p of out) expect([p, reaches(shell, passage, p)]).toEqual([p, true]);
    }
  });

  it('of a round body holds the circle', () => {
    const outline = roundOutline(0.8, 1);
    for (const [u, v] of outline) expect(Math.hypot(u, v - 1)).toBeGreaterThanOrEqual(0.4);
    const area = outline.reduce((sum, [u, v], i) => {
      const [x, y] = outline[(i + 1) % outline.length] as readonly [number, number];
      return sum + (u * y - x * v) / 2;
    }, 0);
    expect(area).toBeGreaterThan(Math.PI * 0.16);
    expect(area).toBeLessThan(Math.PI * 0.16 * 1.01);
  });
});

describe('openings', () => {
  const shell = halfBall(4);

  it('for a door let it pass: nothing left standing is in its way', () => {
    const list = openingsFor(shell, { outline: doorOutline(0.8, 1.8) });
    expect(list.length).toBeGreaterThan(0);
    for (const { passage, places, toBase } of list) {
      expect(toBase).toBe(true);
      expect(placesInTheWay(shell, passage)).toEqual(places);
    }
    for (let i = 1; i < list.length; i++)
      expect(list[i]?.places.length).toBeGreaterThanOrEqual(list[i - 1]?.places.length as number);
  });

  it('have a reveal that is the open rim of what is left, the base ring aside', () => {
    for (const { places, reveal, seamsCut } of openingsFor(shell, {
      outline: doorOutline(0.8, 1.8),
    })) {
      const out = new Set(places);
      const sides = [...shell.mate.keys()].filter((s) => out.has(shell.sidePlace[s] as number));
      const within = sides.filter((s) => {
        const mate = shell.mate[s] as number;
        return mate >= 0 && out.has(shell.sidePlace[mate] as number);
      }).length;
      const open = sides.filter((s) => (shell.mate[s] as number) < 0).length;
      expect(reveal.length).toBe(sides.length - within - open);
      expect(seamsCut).toBe(reveal.length + within / 2);
    }
  });

  it('are none for a door that is larger than the shell', () => {
    expect(openingsFor(shell, { outline: doorOutline(5, 1.8) })).toEqual([]);
    expect(openingsFor(shell, { outline: doorOutline(0.8, 3.5) })).toEqual([]);
  });

  it('come five times over on a shell with five-fold symmetry', () => {
    const sizes = openingsFor(shell, { outline: doorOutline(0.8, 1.8) }).map((one) =>
      [one.places.length, one.seamsCut].join(),
    );
    for (const size of new Set(sizes))
      expect(sizes.filter((one) => one === size).length % 5).toBe(0);
  });
});

describe('a section with inward corners', () => {
  const shell = halfBall(4);
  /** A T on its head: wide below, narrow above. */
  const section: readonly ViewPoint[] = [
    [-0.7, 0],
    [0.7, 0],
    [0.7, 0.4],
    [0.15, 0.4],
    [0.15, 1.7],
    [-0.15, 1.7],
    [-0.15, 0.4],
    [-0.7, 0.4],
  ];

  it('is in the way of what its two rectangles are in the way of, and of nothing else', () => {
    for (const azimuth of [0, 0.4, 1.3, 2.9]) {
      const line = { azimuth, aside: 0, floor: 0 };
      const whole = placesInTheWay(shell, { ...line, outline: section });
      const both = [doorOutline(1.4, 0.4), doorOutline(0.3, 1.7)].flatMap((outline) =>
        placesInTheWay(shell, { ...line, outline }),
      );
      expect(whole).toEqual([...new Set(both)].sort((a, b) => a - b));
      const box = placesInTheWay(shell, { ...line, outline: doorOutline(1.4, 1.7) });
      expect(box.length).toBeGreaterThan(whole.length);
    }
  });

  it('is cut into parts of the same area, and refused where it crosses itself', () => {
    const parts = convexParts(section);
    expect(parts.reduce((sum, part) => sum + areaOf(part), 0)).toBeCloseTo(areaOf(section), 12);
    expect(areaOf(section) / 2).toBeCloseTo(1.4 * 0.4 + 0.3 * 1.3, 12);
    expect(() =>
      convexParts([
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ]),
    ).toThrow('cross or run clockwise');
  });
});

describe('a hatch', () => {
  const shell = halfBall(4);
  const list = hatchesFor(shell, { diameter: 0.7 });

  it('leaves nothing within its circle: every panel that a ray square to the wall meets is out', () => {
    expect(list.length).toBeGreaterThan(3);
    for (const { passage, places } of list.slice(0, 12)) {
      const view = viewAlong(passage);
      const out = new Set(places);
      for (let p = 0; p < placeCount(shell); p++) {
        if (out.has(p)) continue;
        const hubs = hubsOf(shell, p as PlaceId).map((hub) => hubPoint(shell, hub));
        const middle = [0, 1, 2].map((i) =>
          hubs.reduce((sum, hub) => sum + (hub[i] as number) / 3, 0),
        );
        const [x, y, z] = middle as [number, number, number];
        const { azimuth, pitch = 0 } = passage;
        const ahead =
          (x * Math.cos(azimuth) + y * Math.sin(azimuth)) * Math.cos(pitch) + z * Math.sin(pitch);
        if (ahead <= 0) continue;
        // No corner, no middle of a side and not the panel's middle lies in the circle.
        const seen = [
          ...hubs,
          ...hubs.map((hub, i) => hub.map((c, k) => (c + (hubs[(i + 1) % 3]?.[k] as number)) / 2)),
          middle,
        ];
        for (const point of seen) expect(Math.hypot(...view(point))).toBeGreaterThan(0.35 - 0.002);
      }
    }
  });

  it('may be asked for in reach only, and grows with its diameter', () => {
    const low = hatchesFor(shell, { diameter: 0.7, most: 1.2 });
    expect(low.length).toBeLessThan(list.length);
    const least = (diameter: number): number =>
      Math.min(...hatchesFor(shell, { diameter }).map(({ places }) => places.length));
    expect(least(0.3)).toBeLessThan(least(1.2));
    expect(hatchesFor(shell, { diameter: 7 })).toEqual([]);
    expect(() => hatchesFor(shell, { diameter: 0 })).toThrow('diameter: found 0');
  });
});

describe('the ranking of openings', () => {
  const shell = halfBall(4);
  const list = openingsFor(shell, { outline: doorOutline(0.8, 1.8) });
  const family = shell.kind;
  const short = Array.from({ length: 10 }, (_, f) =>
    f === shell.kind[list[0]?.places[0] ?? 0] ? 2 : 0,
  );

  it('puts first what is best by what is asked', () => {
    const by = (rank: OpeningRank) =>
      rankOpenings(shell, list, { family, short, windFrom: 1 }, [rank]);
    const first = (rank: OpeningRank) => by(rank)[0]?.figures;
    const all = by('fewest panels').map(({ figures }) => figures);
    expect(first('stock saved')?.saved).toBe(Math.max(...all.map(({ saved }) => saved)));
    expect(first('away from wind')?.offWind).toBe(
      Math.max(...all.map(({ offWind }) => offWind ?? 0)),
    );
    expect(first('shortest edge')?.edge).toBeCloseTo(Math.min(...all.map(({ edge }) => edge)), 6);
    expect(first('in reach')?.top).toBeCloseTo(Math.min(...all.map(({ top }) => top)), 6);
    expect(first('least harm')?.seamsCut).toBeLessThanOrEqual(
      Math.max(...all.map(({ seamsCut }) => seamsCut)),
    );
    expect(all.every(({ saved, spared }) => saved <= Math.min(2, spared))).toBe(true);
    expect(rankOpenings(shell, list, { family, short }, [])[0]?.figures.offWind).toBeNull();
  });
});

/** Whether some point of a place, of a grid over it, is seen within the outline grown by 2 mm. */
function reaches(shell: Shell, passage: Parameters<typeof viewAlong>[0], p: number): boolean {
  const view = viewAlong(passage);
  const [a, b, c] = hubsOf(shell, p as PlaceId).map((hub) => view(hubPoint(shell, hub)));
  if (!a || !b || !c) throw new Error('a triangle was expected');
  const steps = 150;
  for (let i = 0; i <= steps; i++)
    for (let j = 0; i + j <= steps; j++) {
      const [x, y] = [i / steps, j / steps];
      const u = a[0] + x * (b[0] - a[0]) + y * (c[0] - a[0]);
      const v = a[1] + x * (b[1] - a[1]) + y * (c[1] - a[1]);
      if (Math.abs(u) < 0.452 && v > -0.002 && v < 1.902) return true;
    }
  return false;
}

/** The place of the near wall that lies behind a point of the view, by the signs of three areas. */
function placeBehind(
  shell: Shell,
  passage: Parameters<typeof viewAlong>[0],
  [u, v]: readonly [number, number],
): number | null {
  const view = viewAlong(passage);
  for (let p = 0; p < placeCount(shell); p++) {
    const points = hubsOf(shell, p as PlaceId).map((hub) => hubPoint(shell, hub));
    const ahead = points.reduce(
      (sum, [x, y]) => sum + x * Math.cos(passage.azimuth) + y * Math.sin(passage.azimuth),
      0,
    );
    if (ahead <= 0) continue;
    const flat = points.map(view);
    const turns = flat.map(([x, y], i) => {
      const [s, t] = flat[(i + 1) % flat.length] as readonly [number, number];
      return Math.sign((s - x) * (v - y) - (t - y) * (u - x));
    });
    if (turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)) return p;
  }
  return null;
}
