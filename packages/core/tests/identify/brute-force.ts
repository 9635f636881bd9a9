// Every net that exact panels close into at a known radius, by plain search: panel after panel is
// laid on the sphere against an open side, whichever fits, with no rotation supposed and nothing
// learned. A corner falls on a hub that is there or makes a new one; a hub's corners may not come to
// more than a full turn. Lengths in metres; for small nets only.

import { TAU } from '../../src/math/angle.ts';
import { distance, type Vec3 } from '../../src/math/vector.ts';
import { lowestCode } from '../../src/shell/canonical.ts';
import { checkShell } from '../../src/shell/check.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { makeShell, type PlaceDraft, type Shell } from '../../src/shell/shell.ts';
import { chordToArc } from '../../src/sphere/chord.ts';
import { placeCorners } from '../../src/sphere/place.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';

/** Lengths nearer than this share of the radius are one, so are points and angles (radians). */
const SAME = 1e-6;

interface Panel {
  readonly kind: number;
  readonly turn: number;
  readonly sides: readonly number[];
  readonly corners: readonly number[];
}

/** Code → net, for every net of panels with these sides (kind → lengths) that uses every kind; nets
 * that a rotation lays on each other are one. `labelsOf`: labels of a shell's sides. */
export function allNets(
  sides: readonly (readonly number[])[],
  radius: number,
  labelsOf: (shell: Shell) => ArrayLike<number>,
): Map<string, Shell> {
  const panels = sides.flatMap((own, kind) => panelsOf(own, kind, radius));
  const found = new Map<string, Shell>();
  const points: Vec3[] = [];
  const angles: number[] = [];
  const places: PlaceDraft[] = [];
  const used = new Map<string, number>();

  const hubNear = (point: Vec3): number => {
    const at = points.findIndex((p) => distance(p, point) < SAME * radius * 10);
    if (at >= 0) return at;
    points.push(point);
    angles.push(0);
    return points.length - 1;
  };
  /** Lays a panel with its corners there; what it changed, to be taken back, or null. */
  const lay = (panel: Panel, corners: readonly Vec3[]): (() => void) | null => {
    const hubsBefore = points.length;
    const hubs = corners.map(hubNear);
    const keys = hubs.map((hub, i) => `${hub}>${hubs[(i + 1) % hubs.length]}`);
    const stands =
      new Set(hubs).size === hubs.length &&
      keys.every((key) => !used.has(key)) &&
      hubs.every(
        (hub, i) => (angles[hub] as number) + (panel.corners[i] as number) < TAU + SAME * 10,
      );
    if (!stands) {
      points.length = hubsBefore;
      angles.length = hubsBefore;
      return null;
    }
    for (const key of keys) used.set(key, places.length);
    hubs.forEach((hub, i) => {
      angles[hub] = (angles[hub] as number) + (panel.corners[i] as number);
    });
    places.push({ hubs, kind: panel.kind, turn: panel.turn });
    return () => {
      places.pop();
      for (const key of keys) used.delete(key);
      hubs.forEach((hub, i) => {
        angles[hub] = (angles[hub] as number) - (panel.corners[i] as number);
      });
      points.length = hubsBefore;
      angles.length = hubsBefore;
    };
  };
  /** The open side at the hub nearest to closing, as it is seen from the panel to be laid. */
  const fullest = (): [number, number] | null => {
    let best: [number, number] | null = null;
    for (const { hubs } of places)
      hubs.forEach((from, i) => {
        const to = hubs[(i + 1) % hubs.length] as number;
        if (used.has(`${to}>${from}`)) return;
        if (!best || (angles[to] as number) > (angles[best[0]] as number)) best = [to, from];
      });
    return best;
  };
  const keep = (): void => {
    if (new Set(places.map(({ kind }) => kind)).size < sides.length) return;
    const hubs = Float64Array.from(points.flat());
    const shell = makeShell({ radius, hubs, places: [...places] });
    if (!checkShell(shell).sound) return;
    const starts = Array.from(shell.sideHub, (_, s) => s as SideId);
    found.set(lowestCode(shell, labelsOf(shell), starts).code.join(), shell);
  };
  const grow = (): void => {
    const side = fullest();
    if (!side) {
      keep();
      return;
    }
    const [from, to] = side.map((hub) => points[hub] as Vec3) as [Vec3, Vec3];
    const length = distance(from, to);
    for (const panel of panels) {
      if (Math.abs((panel.sides[0] as number) - length) > SAME * radius) continue;
      const laid = placeCorners(from, to, panel.sides, radius);
      const back = laid.ok ? lay(panel, laid.corners) : null;
      if (!back) continue;
      grow();
      back();
    }
  };
  const first = panels[0] as Panel;
  const arc = chordToArc(first.sides[0] as number, radius);
  const start = placeCorners(
    [radius, 0, 0],
    [radius * Math.cos(arc), radius * Math.sin(arc), 0],
    first.sides,
    radius,
  );
  if (start.ok && lay(first, start.corners)) grow();
  return found;
}

/** A kind turned every way that looks different. */
function panelsOf(own: readonly number[], kind: number, radius: number): Panel[] {
  const polygon = polygonOnSphere(own, radius);
  if (!polygon.ok) throw new Error(`kind ${kind} has no place on the sphere`);
  const turned = (list: readonly number[], turn: number): number[] =>
    list.map((_, i) => list[(i + turn) % list.length] as number);
  const same = (a: readonly number[], b: readonly number[]): boolean =>
    a.every((x, i) => Math.abs(x - (b[i] as number)) < SAME * radius);
  const turns = own.map((_, turn) => turn);
  return turns
    .filter((turn) => !turns.slice(0, turn).some((t) => same(turned(own, t), turned(own, turn))))
    .map((turn) => ({
      kind,
      turn,
      sides: turned(own, turn),
      corners: turned(polygon.corners, turn),
    }));
}
