// The fewest hubs to hold so that nothing moves freely any more. A prop here holds its hub: it is
// tied at head and foot, so that the hub can't go anywhere. Whatever hubs are held, one of them must
// lie in each patch (see patches.ts). So the fewest hubs that hit all patches known so far are a
// bound from below; where holding them leaves nothing free they are the answer, and proved; else what
// moves on shows patches that they miss, which are added (E. Moreno-Centeno and R. M. Karp, Oper. Res.
// 61 (2013) 453: the implicit hitting set). Patches last from stage to stage: those of the one before
// are looked at again, and most still hold.

import { fewestHits } from '../math/hitting-set.ts';
import { PatchMemory } from './patch-memory.ts';
import {
  leastPatch,
  nearestFirst,
  type Patch,
  reachedFrom,
  type TiesByHub,
  tiesByHub,
} from './patches.ts';
import { freeCount, freeMovements, heldToo, type Tied } from './tied.ts';
import { HIT_NODES, MOST_SETS, MOVES, NEAR_PATCH } from './tolerances.ts';

/** The hubs to hold. */
export interface FewestProps {
  /** Those that move most first. */
  readonly hubs: readonly number[];
  /** Whether no smaller set is enough; false where the search for one was given up. */
  readonly proved: boolean;
  /** Patches that were found: one hub of each must be held. */
  readonly patches: readonly Patch[];
}

/** Options of the search for props. */
export interface PropOptions {
  /** Which hubs may be propped; all of placed panels where left out. */
  readonly mayProp?: (hub: number) => boolean;
  /** Sets of props looked at before the search for fewer gives up. */
  readonly sets?: number;
  /** Patches of a stage like this one, to be looked at first: the answer is the same without. */
  readonly patches?: readonly Patch[];
}

/** Options of the search, and what it goes on with. */
export interface PropSearch extends PropOptions {
  /** What was found in the stage before: the answer is the same without. */
  readonly memory?: PatchMemory;
}

/** The fewest hubs to hold in a stage that moves freely in `space`; null where those that may be
 * propped are not enough. */
export function fewestProps(
  tied: Tied,
  space: readonly Float64Array[],
  {
    mayProp = () => true,
    sets = MOST_SETS,
    patches: known = [],
    memory = new PatchMemory(),
  }: PropSearch = {},
): FewestProps | null {
  const ties = tiesByHub(tied);
  memory.begin(ties);
  const found = new Patches(ties, memory);
  for (const patch of known) if (patch.length <= NEAR_PATCH) found.add(memory.still(ties, patch));
  found.addFrom(space);
  const weight = shareOf(ties, space);
  const told = (hubs: readonly number[], proved: boolean): FewestProps => ({
    hubs: [...hubs].sort((a, b) => weight(b) - weight(a) || a - b),
    proved,
    patches: found.list,
  });
  let best: readonly number[] = [];
  for (let looked = 0; looked < sets; looked++) {
    const allowed = found.list.map((patch) => patch.filter(mayProp));
    const hits = fewestHits(allowed, { nodes: HIT_NODES, least: best.length, weight });
    if (hits === 'empty') return null;
    if (hits === 'gave up') break;
    best = hits.hits;
    const held = heldToo(tied, best);
    if (freeCount(held) === 0) return told(best, true);
    if (!found.addFrom(freeMovements(held))) break;
  }
  const enough = filledUp(ties, best, mayProp);
  return enough && told(enough, false);
}

/** Different patches of one stage. */
class Patches {
  readonly list: Patch[] = [];
  private readonly keys = new Set<string>();
  private readonly ties: TiesByHub;
  private readonly memory: PatchMemory;

  constructor(ties: TiesByHub, memory: PatchMemory) {
    this.ties = ties;
    this.memory = memory;
  }

  /** Adds a patch; whether it is new. */
  add(patch: Patch | null): boolean {
    if (patch === null || this.keys.has(patch.join())) return false;
    this.keys.add(patch.join());
    this.list.push(patch);
    return true;
  }

  /** Adds patches about the hubs that move most in a space, each of hubs that are in none of the
   * others; whether one is new. */
  addFrom(space: readonly Float64Array[]): boolean {
    if (space.length === 0) return false;
    const share = shareOf(this.ties, space);
    const hubs = [...this.ties.unknowns.keys()].filter((hub) => share(hub) > MOVES);
    hubs.sort((a, b) => share(b) - share(a) || a - b);
    const covered = new Set<number>();
    let added = false;
    let missed = 0;
    for (const hub of hubs) {
      if (covered.has(hub)) continue;
      const order = reachedFrom(this.ties, hub, hubs, NEAR_PATCH);
      const patch = this.memory.least(this.ties, order);
      if (patch === null && ++missed > 3) break;
      for (const one of patch ?? order.slice(0, NEAR_PATCH / 2)) covered.add(one);
      added = this.add(patch) || added;
    }
    if (added) return true;
    return this.add(leastPatch(this.ties, nearestFirst(this.ties, hubs[0] as number, hubs)));
  }
}

/** Hub → how much of all movements of a space it shares: the sum of their squares there. */
function shareOf(ties: TiesByHub, space: readonly Float64Array[]): (hub: number) => number {
  const shares = new Map<number, number>();
  for (const [hub, unknowns] of ties.unknowns) {
    let sum = 0;
    for (const v of space) for (const i of unknowns) sum += v[i] * v[i];
    shares.set(hub, sum);
  }
  return (hub) => shares.get(hub) ?? 0;
}

/** Hubs with so many more that nothing moves freely; null where all that may be propped do not do. */
function filledUp(
  { tied, unknowns }: TiesByHub,
  hubs: readonly number[],
  mayProp: (hub: number) => boolean,
): readonly number[] | null {
  const all = [...hubs];
  for (;;) {
    const space = freeMovements(heldToo(tied, all));
    if (space.length === 0) return all;
    const share = shareOf({ unknowns } as TiesByHub, space);
    let best = -1;
    for (const hub of unknowns.keys())
      if (mayProp(hub) && share(hub) > MOVES && (best < 0 || share(hub) > share(best))) best = hub;
    if (best < 0 || all.includes(best)) return null;
    all.push(best);
  }
}
