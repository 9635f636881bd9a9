// What was found about patches in the stage before, for as long as it holds. A patch hangs on its own
// hubs' rows of the ties' matrix alone, and one panel more changes few of them: where the rows of all
// hubs of a list are what they were, to the last digit, so is every patch among them.

import { leastPatch, type Patch, stillPatch, type TiesByHub } from './patches.ts';
import { NEAR_PATCH } from './tolerances.ts';

/** A hub's rows, entry by entry: the other unknown's hub and its place there, and the value. */
interface HubRows {
  /** Another number for other rows. */
  readonly id: number;
  readonly hubs: Int32Array;
  readonly values: Float64Array;
}

/** A memory of patches that goes through the stages of one build, one after another. */
export class PatchMemory {
  private rows = new Map<number, HubRows>();
  private before = new Map<string, Patch | null>();
  private now = new Map<string, Patch | null>();
  private ids = 0;
  private firstNew = 0;

  /** Looks at the ties of the next stage; what was asked neither in it nor in the one before it is
   * forgotten. */
  begin(ties: TiesByHub): void {
    this.before = this.now;
    this.now = new Map();
    this.firstNew = this.ids;
    const rows = new Map<number, HubRows>();
    const at = placesInHubs(ties);
    for (const hub of ties.unknowns.keys()) {
      const own = rowsOf(ties, hub, at);
      const old = this.rows.get(hub);
      const same =
        old !== undefined && isSame(own.hubs, old.hubs) && isSame(own.values, old.values);
      rows.set(hub, same ? old : { id: this.ids++, ...own });
    }
    this.rows = rows;
  }

  /** A patch of the stage before as far as it is one now; see `stillPatch`. */
  still(ties: TiesByHub, patch: Patch): Patch | null {
    const isOld = patch.every((hub) => (this.rows.get(hub)?.id ?? this.firstNew) < this.firstNew);
    return isOld ? patch : stillPatch(ties, patch);
  }

  /** A patch among the first NEAR_PATCH hubs of an order; see `leastPatch`. */
  least(ties: TiesByHub, order: readonly number[]): Patch | null {
    const key = order
      .slice(0, NEAR_PATCH)
      .map((hub) => this.rows.get(hub)?.id)
      .join();
    const known = this.now.get(key) ?? this.before.get(key);
    const isKnown = known !== undefined;
    const patch = isKnown ? known : leastPatch(ties, order, NEAR_PATCH);
    this.now.set(key, patch);
    return patch;
  }
}

/** Unknown → its hub and its place among that hub's unknowns, as one number. */
function placesInHubs({ unknowns, tied }: TiesByHub): Int32Array {
  const at = new Int32Array(tied.matrix.n);
  for (const [hub, list] of unknowns)
    list.forEach((unknown, k) => {
      at[unknown] = MOST_UNKNOWNS * hub + k;
    });
  return at;
}

/** More unknowns than a hub has: three for each of its joints. */
const MOST_UNKNOWNS = 256;

function rowsOf(ties: TiesByHub, hub: number, at: Int32Array): Omit<HubRows, 'id'> {
  const { start, other, value } = ties;
  const list = ties.unknowns.get(hub) as readonly number[];
  let count = 0;
  for (const i of list) count += 1 + start[i + 1] - start[i];
  const hubs = new Int32Array(count);
  const values = new Float64Array(count);
  let k = 0;
  for (const i of list) {
    hubs[k++] = -1;
    for (let e = start[i]; e < start[i + 1]; e++, k++) {
      hubs[k] = at[other[e]];
      values[k] = value[e];
    }
  }
  return { hubs, values };
}

function isSame(a: Int32Array | Float64Array, b: Int32Array | Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return false;
  return true;
}
