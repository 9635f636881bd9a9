// What there is to hold a half-built shell besides props: guys to points of the ground, and a mast
// in the middle with chains. Shell's frame, metres, newtons.

import type { Base } from '../../ground/base.ts';
import { dot, norm, pointAt, scale, subtract, type Vec3 } from '../../math/vector.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import type { StagesKnown } from '../schema.ts';
import { CLEAR } from '../tolerances.ts';

/** A mast on the centre peg. */
export interface Mast {
  readonly head: Vec3;
  readonly foot: Vec3;
  readonly chains: number;
  /** Whether guys of its own hold its head; else its chains do. */
  readonly guyed: boolean;
  /** What one chain bears, and what may press on the head, N; null: unknown. */
  readonly chainBears: number | null;
  readonly bears: number | null;
}

/** What there is to hold a shell besides props. */
export interface SupportGear {
  /** Where guys may be anchored, numbered from 1: ring by ring from the first radius, clockwise. */
  readonly points: readonly Vec3[];
  /** Least and greatest slope of a guy, radians. */
  readonly slopes: { readonly least: number; readonly most: number };
  /** What a guy with its anchor bears, N; null: unknown. */
  readonly guyBears: number | null;
  readonly mast: Mast | null;
}

/** A line from a hub: it pulls, and cannot push. */
export interface Line {
  readonly kind: 'guy' | 'chain';
  readonly hub: number;
  /** Number of the guy's anchor point; 0 for a chain. */
  readonly anchor: number;
  /** Its other end. */
  readonly to: Vec3;
}

/** The gear that the lead has; null where there is none. A fault where the mast's head would stand
 * outside the shell. */
export function gearOf({ guys, mast }: StagesKnown, base: Base): Read<SupportGear | null> {
  if (guys === null && mast === null) return { ok: true, value: null };
  const room = base.sphereRadius - base.level;
  if (mast !== null && mast.height >= room)
    return refuse(
      'stages.mast.height',
      `${mast.height} m`,
      `less than ${room.toFixed(2)} m, from the lowest base hub to the top of the shell`,
    );
  const points = (guys?.radii ?? []).flatMap((radius) =>
    Array.from({ length: guys?.count ?? 0 }, (_, k): Vec3 => {
      // Bearings run clockwise seen from above, the angle about z the other way.
      const angle = -((guys?.bearing ?? 0) + (2 * Math.PI * k) / (guys?.count ?? 1));
      return [radius * Math.cos(angle), radius * Math.sin(angle), base.level];
    }),
  );
  return {
    ok: true,
    value: {
      points,
      slopes: { least: guys?.least ?? 0, most: guys?.most ?? 0 },
      guyBears: guys?.bears ?? null,
      mast: mast && {
        head: [0, 0, base.level + mast.height],
        foot: [0, 0, base.level],
        chains: mast.chains,
        guyed: mast.guyed,
        chainBears: mast.chainBears,
        bears: mast.bears,
      },
    },
  };
}

/** Slope of a line from its lower end, radians, 0 level. */
export function slopeOf(from: Vec3, to: Vec3): number {
  const [x, y, z] = subtract(to, from);
  return Math.atan2(Math.abs(z), Math.hypot(x, y));
}

/** The lines that may hold a hub: guys within the slopes that run clear of the shell, outside or
 * inside it, and a chain. */
export function linesAt(gear: SupportGear, hubs: Float64Array, hub: number): Line[] {
  const at = pointAt(hubs, hub);
  const radius = norm(at);
  const out = scale(at, 1 / radius);
  const lines: Line[] = [];
  gear.points.forEach((to, k) => {
    const way = subtract(to, at);
    const slope = slopeOf(to, at);
    if (to[2] >= at[2] || slope < gear.slopes.least || slope > gear.slopes.most) return;
    const outwards = dot(way, out) / norm(way);
    const isInside = norm(to) < radius;
    if (isInside ? outwards < -CLEAR : outwards > CLEAR)
      lines.push({ kind: 'guy', hub, anchor: k + 1, to });
  });
  const { mast } = gear;
  if (mast !== null) lines.push({ kind: 'chain', hub, anchor: 0, to: mast.head });
  return lines;
}
