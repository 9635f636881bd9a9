// What a shell takes at full size: a panel of each kind, the panels that a level floor cuts, and a plate for
// each class of hub. Metres and radians.

import { TAU } from '../math/angle.ts';
import type { PlaceId } from '../shell/ids.ts';
import { cutAtPlane } from '../shell/plane-cut.ts';
import { baseRing } from '../shell/rims.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { type FullOptions, type FullPanel, fullPanel } from './full-size-panel.ts';
import { hubClasses } from './hub-classes.ts';

/** A panel that is made as often as it counts. */
export interface FullPanelPart {
  readonly name: string;
  readonly count: number;
  readonly panel: FullPanel;
  /** True for one that the floor cuts. */
  readonly base: boolean;
  /** Index of the kind that it is, or is cut down from. */
  readonly kind: number;
}

/** A plate over a hub: flat, seen from outside. Directions in radians anticlockwise from its first seam. */
export interface HubPlate {
  readonly name: string;
  readonly count: number;
  readonly closed: boolean;
  /** Seams as they lie about the hub's ray. */
  readonly seams: readonly number[];
  /** A hole over the middle of each corner. */
  readonly holes: readonly number[];
  /** How far the panel there falls off from the plate, radians. */
  readonly slopes: readonly number[];
}

/** What is told of the floor. */
export interface FloorCut {
  /** The whole net in the standing shell's axes. */
  readonly whole: Shell;
  /** Its places that stay open. */
  readonly leftOut: readonly number[];
  /** Height of the floor in the shell's axes, metres. */
  readonly floor: number;
}

/** Height of the lowest hub of the base ring; null where the shell has none. */
export const lowestHub = (shell: Shell): number | null => baseRing(shell)?.z.min ?? null;

/** A panel of each kind, in order of kind. */
export function fullPanels(
  shell: Shell,
  kinds: readonly string[],
  leftOut: readonly number[],
  options: FullOptions,
): FullPanelPart[] {
  const out = new Set(leftOut);
  const byKind = new Map<number, { first: PlaceId; count: number }>();
  for (let p = 0; p < placeCount(shell); p++) {
    if (out.has(p)) continue;
    const kind = shell.kind[p] as number;
    const known = byKind.get(kind);
    if (known) known.count++;
    else byKind.set(kind, { first: p as PlaceId, count: 1 });
  }
  return [...byKind]
    .sort(([a], [b]) => a - b)
    .flatMap(([kind, { first, count }]) => {
      const panel = fullPanel(shell, first, options);
      return panel === null
        ? []
        : [{ name: `panel ${kinds[kind] ?? kind + 1}`, count, panel, base: false, kind }];
    });
}

/** Panels are alike where no length differs by more, metres. */
const ALIKE = 5e-4;

/** The panels that a level floor cuts, alike ones once, the largest first. A corner that is off the floor by
 * no more than a base ring may be uneven makes no cut. */
export function basePanels(
  { whole, leftOut, floor }: FloorCut,
  kinds: readonly string[],
  options: FullOptions,
): FullPanelPart[] {
  const out = new Set(leftOut);
  const found: { panel: FullPanel; kind: number; count: number }[] = [];
  for (const p of cutAtPlane(whole, floor).crossed) {
    if (out.has(p)) continue;
    const panel = fullPanel(whole, p, options, floor);
    if (panel === null) continue;
    const kind = whole.kind[p] as number;
    const known = found.find((one) => one.kind === kind && alike(one.panel, panel));
    if (known) known.count++;
    else found.push({ panel, kind, count: 1 });
  }
  return found
    .sort((a, b) => b.panel.area - a.panel.area)
    .map(({ panel, kind, count }, i) => ({
      name: `base panel ${i + 1} from kind ${kinds[kind] ?? kind + 1}`,
      count,
      panel,
      base: true,
      kind,
    }));
}

const alike = (a: FullPanel, b: FullPanel): boolean =>
  a.corners.length === b.corners.length &&
  a.corners.every(([x, y], i) => {
    const [u, v] = b.corners[i] as readonly [number, number];
    return Math.hypot(u - x, v - y) < ALIKE && a.sides[i]?.onFloor === b.sides[i]?.onFloor;
  });

/** A plate for each class of hub, closed stars first. */
export function hubPlates(shell: Shell, leftOut: readonly number[]): HubPlate[] {
  const out = new Set(leftOut);
  const places = Array.from(shell.kind.keys()).filter((p) => !out.has(p)) as PlaceId[];
  return hubClasses(shell, places).map(({ rays: { rays, closed }, hubs }, i): HubPlate => {
    const seams = rays.map(([x, y]) => round(Math.atan2(y, x)));
    const corners = closed ? rays.length : rays.length - 1;
    const ways = Array.from({ length: corners }, (_, k) => {
      const [a, b] = [rays[k], rays[(k + 1) % rays.length]] as [
        readonly number[],
        readonly number[],
      ];
      return [0, 1, 2].map((axis) => (a[axis] as number) + (b[axis] as number)) as [
        number,
        number,
        number,
      ];
    });
    return {
      name: `hub plate ${i + 1}`,
      count: hubs.length,
      closed,
      seams,
      holes: ways.map(([x, y]) => round(Math.atan2(y, x))),
      slopes: ways.map(([x, y, z]) => Math.atan2(-z, Math.hypot(x, y))),
    };
  });
}

/** 0 to a full turn; a rounding below 0 is 0. */
const round = (angle: number): number => (angle < -1e-9 ? angle + TAU : Math.max(0, angle));
