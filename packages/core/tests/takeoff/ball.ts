// Shells for the take-off and the papers: an icosahedron whose faces are cut into n × n triangles
// with corners pushed out to the sphere, its kinds worked out from the side lengths, and the part
// of it above a height.

import {
  cross,
  distance,
  dot,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '../../src/math/vector.ts';
import type { Hand, Kind } from '../../src/pile/kind.ts';
import { makeShell, type PlaceDraft, type Shell } from '../../src/shell/shell.ts';

export interface Standing {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
}

/** The whole ball of 20 n² places. */
export function ball(n: number, radius = 2.7): Standing {
  const { corners, faces } = icosahedron();
  const hubs: Vec3[] = [];
  const index = new Map<string, number>();
  const hubAt = (p: Vec3): number => {
    const unit = normalize(p);
    const key = unit.map((x) => Math.round(x * 1e6) + 0).join();
    const known = index.get(key);
    if (known !== undefined) return known;
    hubs.push(scale(unit, radius));
    index.set(key, hubs.length - 1);
    return hubs.length - 1;
  };
  const triples = faces.flatMap((face) => {
    const [a, b, c] = face.map((corner) => corners[corner] as Vec3) as [Vec3, Vec3, Vec3];
    const at = (i: number, j: number): number =>
      hubAt(
        [0, 1, 2].map((x) => {
          const k = n - i - j;
          return (k * (a[x] as number) + i * (b[x] as number) + j * (c[x] as number)) / n;
        }) as unknown as Vec3,
      );
    const out: number[][] = [];
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n - i; j++) {
        out.push([at(i, j), at(i + 1, j), at(i, j + 1)]);
        if (i + j < n - 1) out.push([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
      }
    return out;
  });
  return withKinds(hubs, triples, radius);
}

/** The places of `whole` whose centre stands above `height` radii over the sphere's centre; kinds
 * that are left without a place stay in the list. */
export function above(whole: Standing, height: number): Standing {
  return {
    kinds: whole.kinds,
    shell: only(whole.shell, (place) => centreZ(whole.shell, place) > height * whole.shell.radius),
  };
}

/** The shell without the places that `keep` refuses. Hubs keep their numbers. */
export function only(shell: Shell, keep: (place: number) => boolean): Shell {
  const places: PlaceDraft[] = [];
  for (let p = 0; p + 1 < shell.placeStart.length; p++)
    if (keep(p))
      places.push({
        hubs: [...shell.sideHub.slice(shell.placeStart[p], shell.placeStart[p + 1])],
        kind: shell.kind[p] as number,
        turn: shell.turn[p] as number,
      });
  return makeShell({ radius: shell.radius, hubs: shell.hubs, places });
}

/** Kind rows from lengths, good counts as given (default 0, not counted). */
export function kindOf(id: string, sides: readonly number[], good = 0, hand: Hand = null): Kind {
  const sideSds = sides.map(() => 0.001);
  const counts = { good, repair: 0, scrap: 0, counted: good > 0, mass: 9.5 };
  return { id, marks: [], sides, sideSds, hand, ...counts };
}

function withKinds(hubs: readonly Vec3[], triples: readonly number[][], radius: number): Standing {
  const length = (a: number, b: number): number =>
    Math.round(distance(hubs[a] as Vec3, hubs[b] as Vec3) * 1e6) / 1e6;
  const found = new Map<string, number>();
  const lists: number[][] = [];
  const counts: number[] = [];
  const places = triples.map((triple) => {
    const sides = triple.map((hub, i) => length(hub, triple[(i + 1) % 3] as number));
    const first = smallestTurn(sides);
    const canonical = turned(sides, first);
    const key = canonical.join();
    if (!found.has(key)) {
      found.set(key, lists.length);
      lists.push(canonical);
      counts.push(0);
    }
    const kind = found.get(key) as number;
    counts[kind] = (counts[kind] as number) + 1;
    return { hubs: triple, kind, turn: (3 - first) % 3 };
  });
  const { order, ids } = numbered(lists);
  const kinds = order.map((k) => {
    const id = ids.get(k) as string;
    const hand = /[LR]$/.test(id) ? (id.slice(-1) as Hand) : null;
    return kindOf(id, lists[k] as number[], counts[k], hand);
  });
  const drafts = places.map((place) => ({ ...place, kind: order.indexOf(place.kind) }));
  return {
    kinds,
    shell: makeShell({ radius, hubs: Float64Array.from(hubs.flat()), places: drafts }),
  };
}

function numbered(lists: readonly number[][]): { order: number[]; ids: Map<number, string> } {
  const sum = (k: number): number => (lists[k] as number[]).reduce((a, b) => a + b, 0);
  const order = lists.map((_, k) => k).sort((a, b) => sum(a) - sum(b));
  const mirror = (k: number): string => {
    const back = [...(lists[k] as number[])].reverse();
    return turned(back, smallestTurn(back)).join();
  };
  const ids = new Map<number, string>();
  let number = 0;
  for (const k of order) {
    if (ids.has(k)) continue;
    number += 1;
    const twin = lists.findIndex((list) => list.join() === mirror(k));
    const handed = twin >= 0 && twin !== k;
    ids.set(k, handed ? `${number}L` : String(number));
    if (handed) ids.set(twin, `${number}R`);
  }
  return {
    order: order.sort((a, b) => (ids.get(a) as string).localeCompare(ids.get(b) as string)),
    ids,
  };
}

const turned = (sides: readonly number[], by: number): number[] =>
  sides.map((_, i) => sides[(i + by) % sides.length] as number);

function smallestTurn(sides: readonly number[]): number {
  const keys = sides.map((_, i) => turned(sides, i).join());
  return keys.indexOf([...keys].sort()[0] as string);
}

function centreZ(shell: Shell, place: number): number {
  const hubs = shell.sideHub.slice(shell.placeStart[place], shell.placeStart[place + 1]);
  return hubs.reduce((sum, hub) => sum + (shell.hubs[3 * hub + 2] as number), 0) / hubs.length;
}

/** Twelve corners, one on the z axis, and twenty faces anticlockwise seen from outside. */
function icosahedron(): { corners: Vec3[]; faces: number[][] } {
  const ring = (z: number, from: number): Vec3[] =>
    [0, 1, 2, 3, 4].map((i) => {
      const turn = from + (i * 2 * Math.PI) / 5;
      return [(2 / Math.sqrt(5)) * Math.cos(turn), (2 / Math.sqrt(5)) * Math.sin(turn), z];
    });
  const low = 1 / Math.sqrt(5);
  const corners: Vec3[] = [[0, 0, 1], ...ring(low, 0), ...ring(-low, Math.PI / 5), [0, 0, -1]];
  const side = distance(corners[0] as Vec3, corners[1] as Vec3);
  const touch = (a: number, b: number): boolean =>
    Math.abs(distance(corners[a] as Vec3, corners[b] as Vec3) - side) < 1e-9;
  const faces: number[][] = [];
  for (let a = 0; a < 12; a++)
    for (let b = a + 1; b < 12; b++)
      for (let c = b + 1; c < 12; c++) {
        if (!touch(a, b) || !touch(b, c) || !touch(a, c)) continue;
        const [p, q, r] = [a, b, c].map((i) => corners[i] as Vec3) as [Vec3, Vec3, Vec3];
        const outward = dot(cross(subtract(q, p), subtract(r, p)), p) > 0;
        faces.push(outward ? [a, b, c] : [a, c, b]);
      }
  return { corners, faces };
}
