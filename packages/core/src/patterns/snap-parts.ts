// All parts of a snap model: one solid for each kind of panel and each class of hub, with how many of it
// are printed and where they go. Millimetres at scale.

import type { PlaceId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { type FlatPanel, framedPanel } from './flat-panel.ts';
import { cornersOf, hubClasses } from './hub-classes.ts';
import { type Mesh, meshBox } from './mesh.ts';
import { type SnapFit, type SnapOptions, snapFit } from './snap-fit.ts';
import { snapHub } from './snap-hub.ts';
import { snapFaces, snapPanel } from './snap-panel.ts';

/** A part that is printed as often as it counts. */
export interface SnapPart {
  readonly sort: 'panel' | 'hub';
  /** `panel` and its kind, or `hub` and a number. */
  readonly name: string;
  readonly count: number;
  readonly mesh: Mesh;
  /** What it covers of the bed: convex, anticlockwise, as the mesh lies. */
  readonly cover: readonly FlatPanel[];
  /** Places of the shell that take it, or hubs of it. */
  readonly at: readonly number[];
}

/** The parts and the sizes they share. */
export interface SnapParts {
  readonly ok: true;
  readonly fit: SnapFit;
  /** Panels in order of kind, then hubs by number of corners. */
  readonly parts: readonly SnapPart[];
  /** How far panels of one kind differ in this shell, at most, millimetres at scale. */
  readonly spread: number;
}

/** Why there are none: pegs find no room behind this place's panel, or hubs touch along its sides. */
export interface NoSnapParts {
  readonly ok: false;
  readonly reason: 'no room for pegs' | 'no places';
  readonly place: PlaceId | null;
}

/** The parts of a shell; `kinds`: kind (index) → its id. RangeError as `snapFit`. */
export function snapParts(
  shell: Shell,
  kinds: readonly string[],
  options: SnapOptions,
): SnapParts | NoSnapParts {
  const out = new Set(options.leftOut ?? []);
  const places = Array.from(shell.kind.keys()).filter((p) => !out.has(p)) as PlaceId[];
  if (places.length === 0) return { ok: false, reason: 'no places', place: null };
  const fit = snapFit(shell, places, options);
  const framed = new Map(places.map((p) => [p, framedPanel(shell, p, 1000 / options.scale)]));
  for (const [place, panel] of framed)
    if (snapFaces(panel, fit) === null || !keepsApart(panel.corners, fit))
      return { ok: false, reason: 'no room for pegs', place };
  const byKind = new Map<number, PlaceId[]>();
  for (const p of places) {
    const kind = shell.kind[p] as number;
    byKind.set(kind, [...(byKind.get(kind) ?? []), p]);
  }
  let spread = 0;
  const panels = [...byKind]
    .sort(([a], [b]) => a - b)
    .map(([kind, at]): SnapPart => {
      const [first] = at as [PlaceId];
      const faces = snapFaces(framed.get(first) as never, fit) as NonNullable<
        ReturnType<typeof snapFaces>
      >;
      const own = sizesOf(shell, first, framed.get(first)?.corners ?? []);
      for (const p of at)
        sizesOf(shell, p, framed.get(p)?.corners ?? []).forEach((size, i) => {
          spread = Math.max(spread, Math.abs(size - (own[i] as number)));
        });
      const seen = faces.outer.map(([x, y]): readonly [number, number] => [x, -y]).reverse();
      const mesh = snapPanel(faces, fit);
      return {
        sort: 'panel',
        name: `panel ${kinds[kind] ?? kind + 1}`,
        count: at.length,
        mesh,
        cover: [seen],
        at,
      };
    });
  return { ok: true, fit, parts: [...panels, ...hubsOfShell(shell, places, fit)], spread };
}

/** Two hubs on each side leave each other room. */
const keepsApart = (corners: FlatPanel, { rim, clearance }: SnapFit): boolean =>
  corners.every(([x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length] as readonly [number, number];
    return Math.hypot(u - x, v - y) * 0.97 > 2 * rim + clearance;
  });

/** Sides in the kind's order, then the ways from the corner of the kind's first side to the others. */
function sizesOf(shell: Shell, place: PlaceId, corners: FlatPanel): number[] {
  const n = corners.length;
  const turn = shell.turn[place] as number;
  const inOrder = corners.map((_, i) => corners[(i + n - turn) % n] as readonly [number, number]);
  return inOrder.flatMap(([x, y], i) =>
    inOrder.slice(i + 1).map(([u, v]) => Math.hypot(u - x, v - y)),
  );
}

function hubsOfShell(shell: Shell, places: readonly PlaceId[], fit: SnapFit): SnapPart[] {
  return hubClasses(shell, places).map(({ rays, hubs }, i): SnapPart => {
    const rim = rays.rays.map(([x, y]): readonly [number, number] => [fit.rim * x, fit.rim * y]);
    return {
      sort: 'hub',
      name: `hub ${i + 1}`,
      count: hubs.length,
      mesh: snapHub(rays, fit),
      cover: Array.from({ length: cornersOf(rays) }, (_, k) => [
        [0, 0] as const,
        rim[k] as FlatPanel[number],
        rim[(k + 1) % rim.length] as FlatPanel[number],
      ]),
      at: hubs,
    };
  });
}

/** Height of a part as it lies, millimetres. */
export const partHeight = ({ mesh }: SnapPart): number => {
  const { least, most } = meshBox(mesh);
  return most[2] - least[2];
};
