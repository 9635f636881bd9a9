// The closed-form counts of a shell held against the counted ones. For a dome of F triangles with
// B open sides: bolted seams (3F − B)/2, hubs 1 + (F + B)/2, one hub less for each opening apart
// from the rim; a whole ball has 3F/2 and 2 + F/2. General form, Euler: hubs = 2C − rims + E − F,
// with C pieces, E seams and open sides; a hub where two rims touch is counted once, so less one
// for each such touch. Own derivation; holds for surfaces without handles, which a shell is.

import { componentsOf } from '../shell/check.ts';
import { rims as rimsOf } from '../shell/rims.ts';
import type { Shell } from '../shell/shell.ts';
import { placeCount, seamCount, sideCount } from '../shell/shell.ts';
import { cornersAtHubs } from './hubs.ts';

/** Counted and by formula. */
export interface CountAccount {
  readonly places: number;
  readonly openSides: number;
  /** Closed runs of open sides: none for a whole ball, one for a dome, one more for each opening
   * that does not reach the rim. */
  readonly rims: number;
  /** Pieces that no seam joins: one for a shell in one piece. */
  readonly pieces: number;
  readonly allTriangles: boolean;
  readonly seams: { readonly counted: number; readonly byFormula: number };
  readonly hubs: { readonly counted: number; readonly byFormula: number };
  /** False where the places don't form a surface without handles: something is joined wrongly. */
  readonly agrees: boolean;
}

/** The account of a shell; hubs that no place uses are not counted. */
export function countAccount(shell: Shell): CountAccount {
  const places = placeCount(shell);
  const sides = sideCount(shell);
  const starts = openStarts(shell);
  const openSides = [...starts.values()].reduce((sum, n) => sum + n, 0);
  const touches = [...starts.values()].reduce((sum, n) => sum + n - 1, 0);
  const rims = rimsOf(shell).length;
  const pieces = new Set(componentsOf(shell)).size;
  const seams = { counted: seamCount(shell), byFormula: (sides - openSides) / 2 };
  const hubs = {
    counted: cornersAtHubs(shell).filter((corners) => corners > 0).length,
    byFormula: 2 * pieces - rims + seams.byFormula + openSides - places - touches,
  };
  return {
    places,
    openSides,
    rims,
    pieces,
    allTriangles: sides === 3 * places && !hasOddPlace(shell),
    seams,
    hubs,
    agrees: seams.counted === seams.byFormula && hubs.counted === hubs.byFormula,
  };
}

/** Rim hub → open sides that start from it; more than one where rims touch. */
function openStarts(shell: Shell): Map<number, number> {
  const starts = new Map<number, number>();
  shell.mate.forEach((mate, side) => {
    if (mate >= 0) return;
    const hub = shell.sideHub[side] as number;
    starts.set(hub, (starts.get(hub) ?? 0) + 1);
  });
  return starts;
}

const hasOddPlace = (shell: Shell): boolean =>
  shell.placeStart.some((start, p) => p > 0 && start - (shell.placeStart[p - 1] as number) !== 3);
