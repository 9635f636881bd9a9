import { describe, expect, it } from 'vitest';
import { distance } from '../../src/math/vector.ts';
import { convexOverlap, doubleArea, type GridPoint } from '../../src/patterns/grid.ts';
import { type PaperNet, type PaperNetOptions, paperNet } from '../../src/patterns/paper-net.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { hubPoint } from '../../src/shell/geometry.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { ball, dome } from './fixtures.ts';

const a4: Pick<PaperNetOptions, 'room' | 'tab'> = { room: [176, 230], tab: 5 };
const netOf = (shell: Shell, scale: number, more: Partial<PaperNetOptions> = {}): PaperNet => {
  const net = paperNet(shell, { ...a4, scale, ...more });
  if (!net.ok) throw new Error(net.reason);
  return net;
};

/** Everything that lies on one sheet, as convex polygons. */
const onSheet = (net: PaperNet, sheet: number): (readonly GridPoint[])[] =>
  net.pieces
    .filter((piece) => piece.sheet === sheet)
    .flatMap(({ faces, tabs }) => [...faces, ...tabs].map(({ corners }) => corners));

/** Pairs that overlap once every polygon is pulled in by two micrometres towards its middle. */
function overlaps(polygons: readonly (readonly GridPoint[])[], pull = 0.0001): number {
  const small = polygons.map((points) => {
    const x = points.reduce((sum, p) => sum + p[0], 0) / points.length;
    const y = points.reduce((sum, p) => sum + p[1], 0) / points.length;
    return points.map(
      (p): GridPoint => [
        Math.round(p[0] + (x - p[0]) * pull),
        Math.round(p[1] + (y - p[1]) * pull),
      ],
    );
  });
  let count = 0;
  small.forEach((a, i) => {
    for (let j = 0; j < i; j++) if (convexOverlap(a, small[j] as GridPoint[])) count++;
  });
  return count;
}

const cases: readonly (readonly [string, Shell, number])[] = [
  ['an icosahedron', ball(1), 40],
  ['a 2-frequency ball', ball(2), 40],
  ['a 3-frequency dome', dome(3), 20],
  ['a 4-frequency ball', ball(4), 25],
];

describe('the paper net', () => {
  it.each(cases)('has every place of %s once, in its true size', (_, shell, scale) => {
    const net = netOf(shell, scale);
    const faces = net.pieces.flatMap((piece) => piece.faces);
    expect(faces.map(({ place }) => place).sort((a, b) => a - b)).toEqual(
      Array.from({ length: placeCount(shell) }, (_, p) => p),
    );
    let worst = 0;
    for (const { place, corners } of faces) {
      const points = hubsOf(shell, place).map((hub) => hubPoint(shell, hub));
      points.forEach((a, i) => {
        points.forEach((b, j) => {
          const [p, q] = [corners[i], corners[j]] as [GridPoint, GridPoint];
          const off = Math.hypot(p[0] - q[0], p[1] - q[1]) - (distance(a, b) * 1e6) / scale;
          worst = Math.max(worst, Math.abs(off));
        });
      });
      expect(doubleArea(corners)).toBeGreaterThan(0);
    }
    expect(worst).toBeLessThan(10);
    // Ten times nearer than that, rounding to the grid shows.
    expect(worst).toBeGreaterThan(0.1);
  });

  it.each(cases)(
    'of %s lets nothing lie on anything else, nor off the sheet',
    (_, shell, scale) => {
      const net = netOf(shell, scale);
      for (let sheet = 0; sheet < net.sheets; sheet++) {
        const polygons = onSheet(net, sheet);
        expect(overlaps(polygons)).toBe(0);
        // A polygon moved by a millimetre is found out.
        const [first, ...rest] = polygons as [GridPoint[], ...GridPoint[][]];
        expect(
          overlaps([first, ...rest, first.map(([x, y]): GridPoint => [x + 1000, y])]),
        ).not.toBe(0);
        for (const [x, y] of polygons.flat()) {
          expect(x >= 0 && x <= a4.room[0] * 1000).toBe(true);
          expect(y >= 0 && y <= a4.room[1] * 1000).toBe(true);
        }
      }
    },
  );

  it.each(cases)('of %s joins every seam once: a fold, a tab, or tape', (_, shell, scale) => {
    const net = netOf(shell, scale);
    const folds = net.pieces.flatMap(({ folds }) => folds);
    const inner = folds.filter(({ atTab }) => !atTab).length;
    const tabs = net.pieces.reduce((sum, { tabs }) => sum + tabs.length, 0);
    expect(folds.length - inner).toBe(tabs);
    expect(inner + tabs + net.taped.length).toBe(shell.seams.length / 2);
    // A tree in every piece.
    expect(inner).toBe(placeCount(shell) - net.pieces.length);
    const open = net.pieces.flatMap(({ edges }) => edges).filter((e) => e.meets === 'nothing');
    expect(open.length).toBe(shell.mate.filter((mate) => mate < 0).length);
  });

  it('of an icosahedron is one piece, and that is shown to be the least', () => {
    const net = netOf(ball(1), 80);
    expect([net.pieces.length, net.leastPieces, net.taped.length]).toEqual([1, 1, 0]);
  });

  it('folds every seam of a ball away from the reader, and none of a flat one', () => {
    const ways = new Set(netOf(ball(2), 40).pieces.flatMap((p) => p.folds.map((f) => f.way)));
    expect([...ways]).toEqual(['mountain']);
  });

  it('leaves a door open: its places are not there and nothing is stuck to their sides', () => {
    const shell = dome(3);
    const net = netOf(shell, 20, { leftOut: [4, 5] });
    const faces = net.pieces.flatMap((piece) => piece.faces.map(({ place }) => place));
    expect(faces).not.toContain(4);
    const open = net.pieces.flatMap(({ edges }) => edges).filter((e) => e.meets === 'nothing');
    const rim = shell.mate.filter((mate) => mate < 0).length;
    expect(open.length).toBeGreaterThan(rim - 4);
    expect(open.some(({ side }) => (shell.mate[side] as number) >= 0)).toBe(true);
  });

  it('by courses keeps every piece within one course', () => {
    const shell = dome(3);
    const { course } = coursesOf(shell);
    const net = netOf(shell, 30, { courses: course });
    for (const { faces } of net.pieces)
      expect(new Set(faces.map(({ place }) => course[place])).size).toBe(1);
    expect(net.pieces.length).toBeGreaterThanOrEqual(net.leastPieces);
  });

  it('says which place does not fit where the scale is too large', () => {
    const net = paperNet(dome(3), { ...a4, scale: 4 });
    expect(net).toMatchObject({ ok: false, reason: 'panel larger than the room' });
  });

  it('is the same each time', () => {
    const make = () => JSON.stringify(netOf(dome(3), 20));
    expect(make()).toBe(make());
  });
});
