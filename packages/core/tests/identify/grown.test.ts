import { describe, expect, it } from 'vitest';
import { namedTrial, trialNets } from '../../bench/trials.ts';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import { identify } from '../../src/identify/identify.ts';
import type {
  GrownPart,
  Identification,
  IdentifyProgress,
  ShapeQuestion,
} from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import { cross, distance, dot, norm, pointAt, subtract, type Vec3 } from '../../src/math/vector.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { pileSection } from '../../src/pile/schema.ts';
import { checkShell } from '../../src/shell/check.ts';
import { occursIn } from '../../src/shell/embed.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import {
  kindSide,
  makeShell,
  mateOf,
  placeAt,
  placeCount,
  type Shell,
  sidesOf,
} from '../../src/shell/shell.ts';
import { readKinds, truthOf } from './piles.ts';

interface Watched {
  readonly answer: Identification;
  readonly reports: readonly IdentifyProgress[];
  readonly parts: readonly GrownPart[];
}

function watched(question: ShapeQuestion): Watched {
  const reports: IdentifyProgress[] = [];
  const answer = identify(question, { onProgress: (report) => reports.push(report) });
  const parts = [...new Set(reports.flatMap(({ part }) => part ?? []))];
  return { answer, reports, parts };
}

const panels = ({ kind }: GrownPart): number[] => [...kind.keys()];
const cornersOf = ({ corners, placeStart }: GrownPart, p: number): Vec3[] =>
  Array.from({ length: (placeStart[p + 1] as number) - (placeStart[p] as number) }, (_, i) =>
    pointAt(corners, (placeStart[p] as number) + i),
  );
const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;
const centre = (corners: readonly Vec3[]): Vec3 => {
  const sum = (axis: 0 | 1 | 2): number => corners.reduce((s, c) => s + c[axis], 0);
  return [sum(0) / corners.length, sum(1) / corners.length, sum(2) / corners.length];
};

/** The part as a shell: corners nearer than a tenth of the shortest side are one hub. */
function shellOf(part: GrownPart, kinds: readonly Kind[]): Shell {
  const near = 0.1 * Math.min(...kinds.flatMap(({ sides }) => sides));
  const hubs: Vec3[] = [];
  const hubAt = (point: Vec3): number => {
    const there = hubs.findIndex((hub) => distance(hub, point) < near);
    return there < 0 ? hubs.push(point) - 1 : there;
  };
  const places = panels(part).map((p) => ({
    hubs: cornersOf(part, p).map(hubAt),
    kind: part.kind[p] as number,
    turn: 0,
  }));
  const flat = Float64Array.from(
    hubs.flatMap((hub) => hub.map((x) => (x * part.radius) / norm(hub))),
  );
  return makeShell({ radius: part.radius, hubs: flat, places });
}
const labelsOf = (shell: Shell, kinds: readonly Kind[]): number[] => {
  const first = kinds.map((_, k) => kinds.slice(0, k).reduce((n, one) => n + one.sides.length, 0));
  return Array.from(shell.sideHub, (_, s) => {
    const kind = shell.kind[placeAt(shell, s as never)] as number;
    return (first[kind] as number) + kindSide(shell, s as never);
  });
};

const trials = trialNets.map(([b, c]) => {
  const { kinds } = namedTrial(b, c, 3e-4, true, 2);
  return { name: `(${b}, ${c})`, kinds, ...watched({ kinds, groups: [] }) };
});

describe('the part that grows', () => {
  it.each(trials)(
    'of $name has its corners on the sphere, panels facing out, sides as read',
    ({ kinds, parts }) => {
      expect(parts.length).toBeGreaterThan(0);
      for (const part of parts)
        for (const p of panels(part)) {
          const corners = cornersOf(part, p);
          const { sides } = kinds[part.kind[p] as number] as Kind;
          expect(corners).toHaveLength(sides.length);
          const out = cross(
            subtract(corners[1] as Vec3, corners[0] as Vec3),
            subtract(corners[2] as Vec3, corners[1] as Vec3),
          );
          expect(dot(out, centre(corners))).toBeGreaterThan(0);
          corners.forEach((corner, i) => {
            expect(norm(corner)).toBeCloseTo(part.radius, 9);
            // Six deviations of a reading.
            expect(
              Math.abs(distance(corner, next(corners, i)) - (sides[i] as number)),
            ).toBeLessThan(6 * 3e-4);
          });
        }
    },
  );

  it.each(trials)('of $name grows, each panel beside an earlier one', ({ reports, parts }) => {
    const placed = reports.map((report) => report.placed);
    expect(placed).toEqual([...placed].sort((a, b) => a - b));
    for (const part of parts) {
      const sides = new Set<string>();
      const near = (x: number): string => (Math.round((20 * x) / part.radius) + 0).toString();
      const key = (a: Vec3, b: Vec3): string => centre([a, b]).map(near).join();
      // A middle may round either way: look for it in the cells around as well.
      const beside = (a: Vec3, b: Vec3): boolean => {
        const cell = part.radius / 20;
        const shifts = [-0.02, 0, 0.02].map((x) => x * cell);
        return shifts.some((x) =>
          shifts.some((y) =>
            shifts.some((z) => {
              const [cx, cy, cz] = centre([a, b]);
              return sides.has([cx + x, cy + y, cz + z].map(near).join());
            }),
          ),
        );
      };
      for (const p of panels(part)) {
        const corners = cornersOf(part, p);
        if (p > 0 && part.kind.length > 1)
          expect(corners.some((a, i) => beside(a, next(corners, i)))).toBe(true);
        corners.forEach((a, i) => {
          sides.add(key(a, next(corners, i)));
        });
      }
    }
  });

  it.each(trials)('of $name is a cap about its pole', ({ parts }) => {
    const last = parts.at(-1) as GrownPart;
    const spots = (turn: number): string[] =>
      panels(last)
        .map((p) => {
          const [x, y, z] = centre(cornersOf(last, p));
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          return [c * x - s * y, s * x + c * y, z].map((v) => (v + 1e-7).toFixed(5)).join();
        })
        .sort();
    expect(new Set(spots(0)).size).toBe(last.kind.length);
    expect(spots((2 * Math.PI) / 5)).toEqual(spots(0));
  });

  it('is in the end a part of the net that is found, where sides are sure', () => {
    for (const [b, c] of [
      [3, 0],
      [4, 1],
      [3, 1],
    ] as const) {
      const kinds = readKinds(truthOf(b, c), 5e-5, 3);
      const { answer, parts } = watched({ kinds, groups: [] });
      const whole = answer.shapes[0]?.shell as Shell;
      const part = shellOf(parts.at(-1) as GrownPart, kinds);
      expect(placeCount(part)).toBeGreaterThan(3);
      expect(occursIn(part, labelsOf(part, kinds), whole, labelsOf(whole, kinds))).toBe(true);
      const wrong = { ...part, kind: part.kind.map((k) => (k + 1) % kinds.length) };
      expect(occursIn(wrong, labelsOf(wrong, kinds), whole, labelsOf(whole, kinds))).toBe(false);
    }
  });

  it('is the same object until it grows, and stays to the end', () => {
    const { reports } = trials[2] as (typeof trials)[number];
    const seen = new Set<GrownPart>();
    let last: GrownPart | null = null;
    for (const { part } of reports) {
      if (part !== last) expect(seen.has(part as GrownPart)).toBe(false);
      if (part) seen.add(part);
      last = part;
    }
    expect(reports.at(-1)?.part).toBe(last);
    expect(last).not.toBeNull();
  });

  it('makes few reports: what is new, and one in hundreds of tries', () => {
    let asked = 0;
    const reports: IdentifyProgress[] = [];
    const { kinds } = namedTrial(5, 0, 1e-3, false, 3);
    identify(
      { kinds, groups: [] },
      { onProgress: (report) => reports.push(report), shouldStop: () => ++asked < 0 },
    );
    expect(asked).toBeGreaterThan(1000);
    expect(reports.length).toBeLessThan(60 + asked / 100);
  });
});

describe('the places of a shape', () => {
  it('stand in the order in which they were laid, each beside an earlier one', () => {
    const four = identify({ kinds: readKinds(truthOf(4, 0), 2e-4, 3), groups: [] });
    const cube = identify({ kinds: readKinds(truthOf(4, 0, 'octahedron'), 2e-4, 3), groups: [] });
    const shapes = [...trials.map(({ answer }) => answer), four, cube].flatMap((a) => a.shapes);
    expect(four.shapes).toHaveLength(4);
    for (const { shell } of shapes)
      for (let p = 1; p < placeCount(shell); p++) {
        const mates = sidesOf(shell, p as PlaceId).map((side) => mateOf(shell, side));
        expect(mates.some((mate) => mate !== null && placeAt(shell, mate) < p)).toBe(true);
      }
  });
});

// Every other kind of a net spoiled, each side by its own factor: what is left closes nothing.
const spoiled = (b: number, c: number, seed: number): Kind[] => {
  const { uniform } = seededRandom(seed);
  return namedTrial(b, c, 5e-4, false, 2).kinds.map((kind, k) =>
    k % 2 === seed % 2
      ? kind
      : { ...kind, sides: kind.sides.map((side) => side * (0.8 + 0.5 * uniform())) },
  );
};
const stuckAnswers = [spoiled(5, 0, 2), spoiled(5, 0, 3), spoiled(4, 2, 1)]
  .map((some) => ({ some, answer: identify({ kinds: some, groups: [] }) }))
  .filter(({ answer }) => answer.shapes.length === 0);

describe('where nothing closes', () => {
  it('tells the furthest part and the side at which it stuck, which nothing meets', () => {
    expect(stuckAnswers.length).toBeGreaterThan(1);
    expect(stuckAnswers.some(({ answer }) => answer.stuck.length > 0)).toBe(true);
    for (const { some, answer } of stuckAnswers) {
      const part = answer.furthest as GrownPart;
      expect(part.kind.length).toBeGreaterThan(0);
      expect(checkShell(shellOf(part, some))).toMatchObject({ components: 1, insideOut: [] });
      for (const { kind, side, length, panel } of answer.stuck) {
        const own = some[part.kind[panel] as number] as Kind;
        expect(own.id).toBe(kind);
        expect(own.sides[side]).toBe(length);
        const shell = shellOf(part, some);
        expect(mateOf(shell, sidesOf(shell, panel as PlaceId)[side] as never)).toBeNull();
        const said = answer.reasons.join('\n');
        expect(said).toContain(`side ${side + 1} of kind ${kind} lies open`);
        expect(said).toContain(`${(1000 * length).toFixed(0)} mm long`);
      }
    }
  });

  it('tells neither where something closes, nor where nothing ever stood', () => {
    for (const { answer } of trials) expect(answer).toMatchObject({ furthest: null, stuck: [] });
    expect(identify({ kinds: [], groups: [] })).toMatchObject({ furthest: null, stuck: [] });
  });
});

describe('what a worker hands over', () => {
  it('is plain data: it comes out of a copy between threads as it was', () => {
    const pile = pileSection.parse({
      kinds: readKinds(truthOf(3, 0), 5e-4, 2).map(({ id, sides }) => ({ id, sides: [...sides] })),
    });
    const worked = kindsOfPile(pile);
    const { answer, reports } = watched({ kinds: worked.kinds, groups: worked.groups });
    const shell = (answer.shapes[0] as Identification['shapes'][number]).shell;
    const list = arrangements(shell, worked.kinds);
    const [first] = list.arrangements;
    const way = list.waysUp[first?.wayUp as number];
    if (!first || !way) throw new Error('nothing stands');
    const standing = standingShell(shell, way, first.cut);
    const failed = stuckAnswers[0]?.answer;
    for (const value of [worked, answer, reports, list, standing, failed]) {
      expect(value).toBeDefined();
      expect(structuredClone(value)).toEqual(value);
    }
  });
});
