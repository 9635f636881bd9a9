// The part of a half-built shell beyond what is known to stand. Where some placed panels stand by
// themselves, their hubs do not move (to first order), whatever is bolted on; so only the panels
// beyond need be asked, with those hubs held. Exact for movements without resistance; a little too
// stiff for soft ones, so a finished plan is asked again whole.
//
//     ────●────●────  beyond     A corner beyond that seams join to a standing panel round its hub is
//      ╲ ╱ ╲  ╱ ╲                held: it is hub h + n here. One that only touches there is free: h.
//    ───●───●────●── stands

import type { FrameModel, FrameSeam, SeamPass } from '../../frame/model.ts';
import { freeMovements, tiedFrame } from '../../stages/tied.ts';
import type { OrderSite } from './site.ts';
import { isStiff } from './stiff.ts';

/** A state of the shell and what of it is known to stand. */
export interface Beyond {
  /** Whether a place belongs to what stands. */
  readonly stands: (place: number) => boolean;
  /** Placed panels beyond, in any order. */
  readonly loose: readonly number[];
  /** How far a seam between panels beyond is. */
  readonly pass: (seam: number) => SeamPass;
}

/** The frame of what lies beyond, with props. Hubs from n on (n hubs in the shell) are held ones. */
export function frameBeyond(
  site: OrderSite,
  { stands, loose, pass }: Beyond,
  props: readonly number[],
): FrameModel {
  const count = site.base.length;
  const index = new Map(loose.map((place, i) => [place, i]));
  const supports = new Map<number, { hub: number; stiffness: null }>();
  const hold = (hub: number): void => {
    supports.set(hub, { hub, stiffness: null });
  };
  const panels = loose.map((place) => ({
    place,
    hubs: (site.hubs[place] as readonly number[]).map((hub, i) => {
      const isHeld = site.base[hub] === 1 || meetsStanding(site, place, i, stands, index);
      const at = isHeld ? hub + count : hub;
      if (isHeld) hold(at);
      return at;
    }),
  }));
  const seams: FrameSeam[] = [];
  for (const [place, i] of index)
    for (const { place: other, seam } of site.across[place] as OrderSite['across'][number]) {
      const j = index.get(other);
      if (j === undefined || j < i) continue;
      const at = (hub: number): number =>
        panels[i]?.hubs[(site.hubs[place] as readonly number[]).indexOf(hub)] as number;
      const [a, b] = site.seamHubs[seam] as readonly [number, number];
      seams.push({ panels: [i, j], hubs: [at(a), at(b)], pass: pass(seam) });
    }
  for (const hub of props) hold(hub);
  return {
    hubs: site.doubled,
    panels,
    seams,
    plates: new Uint8Array(2 * count),
    supports: [...supports.values()],
    props: [],
    guys: [],
  };
}

/** Whether seams lead from a corner round its hub, over placed panels, to one that stands. */
function meetsStanding(
  { shell }: OrderSite,
  place: number,
  corner: number,
  stands: (place: number) => boolean,
  loose: ReadonlyMap<number, number>,
): boolean {
  const first = shell.placeStart[place];
  const size = shell.placeStart[place + 1] - first;
  const start = first + corner;
  // Anticlockwise over the side before the corner, then clockwise over its own side.
  for (let s = start; ; ) {
    const from = shell.placeStart[shell.sidePlace[s]];
    const own = shell.placeStart[shell.sidePlace[s] + 1] - from;
    s = shell.mate[from + ((s - from + own - 1) % own)];
    if (s < 0 || s === start) break;
    if (stands(shell.sidePlace[s])) return true;
    if (!loose.has(shell.sidePlace[s])) break;
  }
  for (let s = first + (corner % size); ; ) {
    const other = shell.mate[s];
    if (other < 0) break;
    const p = shell.sidePlace[other];
    if (stands(p)) return true;
    if (!loose.has(p)) break;
    const from = shell.placeStart[p];
    s = from + ((other - from + 1) % (shell.placeStart[p + 1] - from));
    if (s === start) break;
  }
  return false;
}

/** Panels up to which the envelope is the faster way. */
const FEW = 120;

/** Whether what lies beyond stands with props. */
export function standsBeyond(site: OrderSite, beyond: Beyond, props: readonly number[]): boolean {
  if (beyond.loose.length === 0) return true;
  const frame = frameBeyond(site, beyond, props);
  if (beyond.loose.length <= FEW) return isStiff(frame);
  return freeMovements(tiedFrame(frame)).length === 0;
}
