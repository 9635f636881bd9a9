// What the tables list, computed for one of our nets at radius 1; angles in degrees.

import { toDegrees } from '../../../src/math/angle.ts';
import { pointAt, type Vec3 } from '../../../src/math/vector.ts';
import { kindsOfNet, type NetKinds, shellOfNet } from '../../../src/nets/kinds.ts';
import type { Net } from '../../../src/nets/net.ts';
import type { HubId, SideId } from '../../../src/shell/ids.ts';
import {
  hubAt,
  hubCount,
  mateOf,
  nextSide,
  placeAt,
  previousSide,
  type Shell,
} from '../../../src/shell/shell.ts';
import { dihedral } from '../../../src/sphere/dihedral.ts';
import { eitherHand, foldKey, starKey } from './net-table.ts';

/** A net, its kinds and its shell of radius 1. */
export interface Facts {
  readonly kinds: NetKinds;
  readonly shell: Shell;
  /** Dihedral angles by the name of the seam. */
  readonly folds: Map<string, number[]>;
  /** Hubs by the name of their star. */
  readonly stars: Map<string, number>;
}

/** The facts of a net. */
export function factsOf(net: Net): Facts {
  const kinds = kindsOfNet(net.hubs, net.places, 1e-9);
  const { shell } = shellOfNet(net, 1);
  const folds = new Map<string, number[]>();
  for (let side = 0; side < shell.sideHub.length; side++) {
    const mate = mateOf(shell, side as SideId);
    if (mate === null || mate < side) continue;
    const key = foldKey(
      sideClass(shell, kinds, side as SideId),
      panelName(shell, kinds, side as SideId),
      panelName(shell, kinds, mate),
    );
    folds.set(key, [...(folds.get(key) ?? []), foldAt(shell, side as SideId, mate)]);
  }
  const stars = new Map<string, number>();
  for (const start of firstSides(shell)) {
    const key = starAt(shell, kinds, start);
    stars.set(key, (stars.get(key) ?? 0) + 1);
  }
  return { kinds, shell, folds, stars };
}

/** Dihedral angle at a seam, degrees. */
function foldAt(shell: Shell, side: SideId, mate: SideId): number {
  const at = (s: SideId): Vec3 => pointAt(shell.hubs, hubAt(shell, s));
  const apex = (s: SideId): Vec3 => at(previousSide(shell, s));
  return toDegrees(dihedral(at(side), at(nextSide(shell, side)), apex(side), apex(mate)));
}

const sideClass = (shell: Shell, kinds: NetKinds, side: SideId): number => {
  const place = placeAt(shell, side);
  return kinds.sideClass[place]?.[side - (shell.placeStart[place] as number)] as number;
};

const panelName = (shell: Shell, kinds: NetKinds, side: SideId): string =>
  eitherHand(kinds.sideClass[placeAt(shell, side)] as readonly number[]);

/** One side starting at each hub. */
function firstSides(shell: Shell): SideId[] {
  const first = new Map<HubId, SideId>();
  for (let side = 0; side < shell.sideHub.length; side++)
    first.set(hubAt(shell, side as SideId), side as SideId);
  if (first.size !== hubCount(shell)) throw new Error('a hub without places');
  return [...first.values()];
}

/** Corners round a hub anticlockwise, each with the side it starts with. */
function starAt(shell: Shell, kinds: NetKinds, start: SideId): string {
  const corners: [number, string][] = [];
  let side = start;
  do {
    corners.push([sideClass(shell, kinds, side), panelName(shell, kinds, side)]);
    side = mateOf(shell, previousSide(shell, side)) as SideId;
  } while (side !== start);
  return starKey(corners);
}
