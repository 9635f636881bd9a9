// The fewest hubs to hold so that nothing moves freely any more. A prop here holds its hub: it is
// tied at head and foot, so that the hub can't go anywhere. Holding a hub takes away as many free
// movements as its joints have independent shares in them; a set of hubs is enough when its shares
// span all movements. The largest share first finds a set; a search by bounds proves that no smaller
// one is enough, or finds it: what a set takes away never grows when others are held before, so the
// largest shares now left bound what so many more hubs can still take away.

import { HAS_A_SAY, MOST_SETS, SAME_HOLD, TRIAL_SETS } from './tolerances.ts';

/** What a hub shares in the free movements: a row for each joint and direction, as long as there are
 * movements. */
export interface HubShare {
  readonly hub: number;
  readonly rows: readonly Float64Array[];
}

/** The hubs to hold. */
export interface FewestProps {
  /** In the order picked: the one that takes away most first. */
  readonly hubs: readonly number[];
  /** Whether no smaller set is enough; false where the search for one was given up. */
  readonly proved: boolean;
}

/** The fewest hubs that take away all of so many movements; null where all hubs together do not.
 * The first set has the largest shares (ties: the lower hub); a smaller one is looked for among at
 * most `sets` sets, and taken only where `holds` agrees. */
export function fewestProps(
  movements: number,
  shares: readonly HubShare[],
  holds: (hubs: readonly number[]) => boolean = () => true,
  sets: number = MOST_SETS,
): FewestProps | null {
  const all = tableOf(movements, shares);
  const greedy = greedySet(all);
  if (greedy === null) return null;
  const named = (picked: readonly number[]): number[] => picked.map((k) => all.hubs[k] as number);
  const search: Search = { left: sets, holds: (picked) => holds(named(picked)) };
  const none = new Uint8Array(shares.length);
  for (let size = leastSize(all); size < greedy.length; size++) {
    const found = smallSet(all, none, size, [], search);
    if (found !== null) return { hubs: named(found), proved: true };
    if (search.left <= 0) return { hubs: named(greedy), proved: false };
  }
  return { hubs: named(greedy), proved: true };
}

/** How many sets may still be looked at, and which are enough. */
interface Search {
  left: number;
  readonly holds: (picked: readonly number[]) => boolean;
}

/** Shares in what is left of the movements. */
interface Table {
  readonly hubs: readonly number[];
  /** Hub by its index here → its first row; one longer. */
  readonly start: Int32Array;
  /** Rows, stride `width`, square to every direction taken away so far. */
  readonly rows: Float64Array;
  readonly width: number;
  /** Movements left. */
  readonly left: number;
}

function tableOf(movements: number, shares: readonly HubShare[]): Table {
  const start = new Int32Array(shares.length + 1);
  shares.forEach(({ rows }, k) => {
    start[k + 1] = start[k] + rows.length;
  });
  const rows = new Float64Array(start[shares.length] * movements);
  shares.forEach((share, k) => {
    share.rows.forEach((row, i) => {
      rows.set(row, (start[k] + i) * movements);
    });
  });
  return { hubs: shares.map(({ hub }) => hub), start, rows, width: movements, left: movements };
}

/** What a hub takes away: unit directions, square to each other, and how surely all together. */
interface Taken {
  readonly directions: readonly Float64Array[];
  readonly volume: number;
}

/** The shares of a hub in what is left, largest first, each less those before it. */
function takenBy({ start, rows, width, left }: Table, k: number): Taken {
  const own = rows.slice(start[k] * width, start[k + 1] * width);
  const directions: Float64Array[] = [];
  let volume = 1;
  while (directions.length < left) {
    let [most, at] = [0, -1];
    for (let r = 0; r < own.length; r += width) {
      let size = 0;
      for (let i = r; i < r + width; i++) size += own[i] * own[i];
      if (size > most) [most, at] = [size, r];
    }
    const length = Math.sqrt(most);
    if (length <= HAS_A_SAY) break;
    const unit = own.slice(at, at + width).map((x) => x / length);
    directions.push(unit);
    volume *= length;
    takeOutInto(own, unit);
  }
  return { directions, volume };
}

/** Makes rows square to a unit direction. */
function takeOutInto(rows: Float64Array, unit: Float64Array): void {
  const width = unit.length;
  for (let r = 0; r < rows.length; r += width) {
    let along = 0;
    for (let i = 0; i < width; i++) along += rows[r + i] * unit[i];
    for (let i = 0; i < width; i++) rows[r + i] -= along * unit[i];
  }
}

function without(table: Table, { directions }: Taken): Table {
  const rows = table.rows.slice();
  for (const unit of directions) takeOutInto(rows, unit);
  return { ...table, rows, left: table.left - directions.length };
}

/** Indices of hubs; null where all together do not take everything away. */
function greedySet(all: Table): number[] | null {
  const picked: number[] = [];
  for (let table = all; table.left > 0; ) {
    let best: Taken = { directions: [], volume: 0 };
    let at = -1;
    for (let k = 0; k < table.hubs.length; k++) {
      const taken = takenBy(table, k);
      const more = taken.directions.length - best.directions.length;
      if (more < 0 || (more === 0 && taken.volume <= best.volume * (1 + SAME_HOLD))) continue;
      best = taken;
      at = k;
    }
    if (best.directions.length === 0) return null;
    picked.push(at);
    table = without(table, best);
  }
  return picked;
}

/** So many hubs at least: the largest counts together reach all movements. */
function leastSize(all: Table): number {
  const counts = all.hubs.map((_, k) => takenBy(all, k).directions.length).sort((a, b) => b - a);
  let sum = 0;
  let size = 0;
  while (sum < all.left) sum += counts[size++] as number;
  return size;
}

/** A set of `size` hubs that are not banned and take away all that is left; null where there is
 * none, or where the search was given up. Those that take most are tried first; one that was tried
 * is in no set looked for after it. */
function smallSet(
  table: Table,
  banned: Uint8Array,
  size: number,
  picked: readonly number[],
  search: Search,
): readonly number[] | null {
  if (table.left === 0) {
    search.left -= TRIAL_SETS;
    return search.holds(picked) ? picked : null;
  }
  if (size === 0 || search.left-- <= 0) return null;
  const taken = table.hubs.map((_, k) => (banned[k] ? null : takenBy(table, k)));
  const count = (k: number): number => taken[k]?.directions.length ?? 0;
  const order = [...taken.keys()].filter((k) => count(k) > 0);
  order.sort((a, b) => count(b) - count(a) || a - b);
  const now = banned.slice();
  for (const [i, k] of order.entries()) {
    let most = 0;
    for (const next of order.slice(i, i + size)) most += count(next);
    if (most < table.left) return null;
    const rest = without(table, taken[k] as Taken);
    const found = smallSet(rest, now, size - 1, [...picked, k], search);
    if (found !== null) return found;
    if (search.left <= 0) return null;
    now[k] = 1;
  }
  return null;
}
