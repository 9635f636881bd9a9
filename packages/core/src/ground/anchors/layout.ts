// Where the anchors of each base hub stand, for the drawing and for the spacing they need. Plan as
// in base.ts, metres. An anchor pulled straight up stands just outside its hub; one on a guy stands
// where the guy meets the ground, straight out from the centre; further ones stand beside it.

import { type Base, type PlanPoint, planDistance } from '../base.ts';
import type { Pull } from './capacity.ts';
import { type AnchorChoice, piecesOf, spacingOf } from './choice.ts';

/** One anchor on the ground. */
export interface AnchorSpot {
  /** Number of the base hub that it holds. */
  readonly hub: number;
  /** Where the strap or guy meets it. */
  readonly at: PlanPoint;
  /** Its pieces: pickets of a holdfast, else itself alone. */
  readonly pieces: readonly PlanPoint[];
}

/** Two anchors nearer than they may stand. */
export interface SpacingFault {
  readonly hubs: readonly [number, number];
  /** Metres. */
  readonly apart: number;
  readonly needed: number;
}

/** How anchors are tied; metres. */
export interface Tie {
  readonly pull: Pull;
  /** Height at which the guy leaves the shell, over the ground at the hub; its foot stands
   * height / tan(elevation) out. Not used for a straight lift. */
  readonly height: number;
}

/** A straight-up anchor stands this far outside the hub's middle: room for the sleeper. */
const OUTSIDE = 0.15;

/** Pickets of one row stand this far apart. */
const ROW = 0.12;

/** The spots of `count` anchors at each hub by number. */
export function anchorSpots(
  base: Base,
  anchor: AnchorChoice,
  tie: Tie,
  counts: ReadonlyMap<number, number>,
): AnchorSpot[] {
  const gap = Math.max(spacingOf(anchor).value, 0.3);
  const out =
    tie.pull.way === 'up' ? OUTSIDE : Math.max(OUTSIDE, tie.height / Math.tan(tie.pull.elevation));
  const { rows, step } = piecesOf(anchor);
  return base.hubs.flatMap((hub) => {
    const count = counts.get(hub.number) ?? 0;
    const [ux, uy] = [hub.at[0] / hub.radius, hub.at[1] / hub.radius];
    const place = (away: number, aside: number): PlanPoint => [
      hub.at[0] + ux * away - uy * aside,
      hub.at[1] + uy * away + ux * aside,
    ];
    return Array.from({ length: count }, (_, k): AnchorSpot => {
      const aside = (k - (count - 1) / 2) * gap;
      return {
        hub: hub.number,
        at: place(out, aside),
        pieces: rows.flatMap((many, r) =>
          Array.from({ length: many }, (_p, i) =>
            place(out + r * step, aside + (i - (many - 1) / 2) * ROW),
          ),
        ),
      };
    });
  });
}

/** Pairs of anchors whose pieces stand nearer than the anchor's spacing, the nearest pair of each
 * two hubs. */
export function spacingFaults(spots: readonly AnchorSpot[], anchor: AnchorChoice): SpacingFault[] {
  const needed = spacingOf(anchor).value;
  const nearest = new Map<string, SpacingFault>();
  spots.forEach((a, i) => {
    for (const b of spots.slice(i + 1)) {
      const apart = Math.min(...a.pieces.flatMap((p) => b.pieces.map((q) => planDistance(p, q))));
      const key = `${a.hub} ${b.hub}`;
      if (
        apart < needed * (1 - 1e-6) &&
        apart < (nearest.get(key)?.apart ?? Number.POSITIVE_INFINITY)
      )
        nearest.set(key, { hubs: [a.hub, b.hub], apart, needed });
    }
  });
  return [...nearest.values()];
}
