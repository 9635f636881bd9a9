// What lies in the pile against what is needed: lots matched by item, thread and length, never by
// a near twin. A lot counts as in hand where its state is usable; the rest is told apart.

import type { TakeoffSettings } from './schema.ts';
import { readNominalSize, readThread } from './threads.ts';
import { SAME_BOLT_LENGTH } from './tolerances.ts';

/** One lot of hardware: a row of the pile's `hardware` is one. A nut whose grade says nylon or lock
 * is a lock nut. */
export interface HardwareLot {
  /** `bolt`, `nut`, `lock nut`, `washer`, `plate`, `tape`, … */
  readonly item: string;
  readonly thread?: string | null | undefined;
  /** Of a bolt under the head, or of one roll of tape, metres. */
  readonly length?: number | null | undefined;
  readonly grade?: string | null | undefined;
  /** Pieces, or rolls of tape. */
  readonly count: number;
  readonly state?: string | null | undefined;
  /** For one piece or roll, in the project's currency. */
  readonly price?: number | null | undefined;
  /** Pieces in a pack. */
  readonly pack?: number | null | undefined;
  /** Corners of a hub plate. */
  readonly corners?: number | null | undefined;
  /** True for a hub plate of the rim. */
  readonly rim?: boolean | null | undefined;
}

/** The items of a take-off. */
export type HardwareItem = 'bolt' | 'nut' | 'lock nut' | 'washer' | 'plate' | 'tape';

/** What one line of the list is about; null where it does not apply. */
export interface ItemSize {
  readonly item: HardwareItem;
  /** Bolts and nuts: short form of the thread. Washers: the nominal size (`5/16`, `M8`). */
  readonly thread: string | null;
  /** Metres. */
  readonly length: number | null;
  readonly corners: number | null;
  readonly rim: boolean | null;
}

/** What the pile holds of one item and size: pieces, of tape metres. */
export interface InHand {
  readonly usable: number;
  /** In a state that does not count (rusted, or lock nuts already used once). */
  readonly unusable: number;
  /** Distinct grades among the usable ones, as marked. */
  readonly grades: readonly string[];
  /** The highest price among the lots, or null where none has one. */
  readonly price: number | null;
  /** The smallest pack among the lots (of tape: the shortest roll, metres), or null where none
   * says. */
  readonly pack: number | null;
}

/** A lot that no line counts, and why. */
export interface LotAside {
  /** Index in the list of lots. */
  readonly lot: number;
  readonly why: string;
}

/** Item by any of its usual names, or null. */
export function itemNamed(name: string): HardwareItem | null {
  const plain = name.trim().toLowerCase().replace(/[-_]/g, ' ');
  const singular = plain.replace(/s$/, '');
  if (/^((nylon insert|lock|locking|self locking) (lock )?nut|nylock?( nut)?)$/.test(singular))
    return 'lock nut';
  if (/^(hex |plain |hexagon )?nut$/.test(singular)) return 'nut';
  if (/^(hex |hexagon )?(bolt|screw|set screw|machine screw)$/.test(singular)) return 'bolt';
  if (/^(flat |plain )?washer$/.test(singular)) return 'washer';
  if (/^(hub )?(plate|cover)$/.test(singular)) return 'plate';
  return /^(seal(ing)? |butyl )?tape$/.test(singular) ? 'tape' : null;
}

/** The size that a lot belongs to, or the reason why it can't be counted. */
function sizeOfLot(lot: HardwareLot): ItemSize | string {
  const named = itemNamed(lot.item);
  const item = named === 'nut' && /nylon|lock/i.test(lot.grade ?? '') ? 'lock nut' : named;
  const nothing = { thread: null, length: null, corners: null, rim: null };
  if (item === null) return `"${lot.item}" is no item of this list`;
  if (item === 'tape')
    return typeof lot.length === 'number'
      ? { ...nothing, item }
      : 'tape needs the length of a roll';
  if (item === 'plate')
    return typeof lot.corners === 'number'
      ? { ...nothing, item, corners: lot.corners, rim: lot.rim ?? false }
      : 'a plate needs its number of corners';
  if (!lot.thread) return `a ${item} needs its thread`;
  const read =
    item === 'washer' ? readNominalSize(lot.thread) : designationOf(readThread(lot.thread));
  if (!read.ok) return `thread ${read.faults[0]?.found}: expected ${read.faults[0]?.expected}`;
  if (item === 'bolt' && typeof lot.length !== 'number') return 'a bolt needs its length';
  return {
    ...nothing,
    item,
    thread: read.value,
    length: item === 'bolt' ? (lot.length ?? null) : null,
  };
}

/** Whether two sizes are the same thing; lengths to under half a standard step. */
export function sameSize(a: ItemSize, b: ItemSize): boolean {
  return (
    a.item === b.item &&
    a.thread === b.thread &&
    a.corners === b.corners &&
    a.rim === b.rim &&
    Math.abs((a.length ?? 0) - (b.length ?? 0)) <= SAME_BOLT_LENGTH
  );
}

/** What the lots hold of one size. */
export function inHand(
  size: ItemSize,
  lots: readonly HardwareLot[],
  settings: Pick<TakeoffSettings, 'usable' | 'lockNutsNew'>,
): InHand {
  const matching = lots.filter((lot) => {
    const other = sizeOfLot(lot);
    return typeof other !== 'string' && sameSize(size, other);
  });
  const usable = matching.filter((lot) => isUsable(size.item, lot, settings));
  const numbers = (of: (lot: HardwareLot) => number | null | undefined): number[] =>
    matching.map(of).filter((n) => typeof n === 'number');
  const [prices, packs] = [
    numbers((lot) => lot.price),
    numbers((lot) => (size.item === 'tape' ? lot.length : lot.pack)),
  ];
  return {
    usable: total(usable),
    unusable: total(matching) - total(usable),
    grades: [...new Set(usable.flatMap((lot) => (lot.grade ? [lot.grade] : [])))].sort(),
    price: prices.length === 0 ? null : Math.max(...prices),
    pack: packs.length === 0 ? null : Math.min(...packs),
  };
}

/** The lots that no line of the list counts, and why. */
export function lotsAside(lots: readonly HardwareLot[], sizes: readonly ItemSize[]): LotAside[] {
  return lots.flatMap((lot, i) => {
    const size = sizeOfLot(lot);
    if (typeof size === 'string') return [{ lot: i, why: size }];
    if (sizes.some((needed) => sameSize(needed, size))) return [];
    return [{ lot: i, why: `no ${size.item} of this size is needed` }];
  });
}

function isUsable(
  item: HardwareItem,
  lot: HardwareLot,
  settings: Pick<TakeoffSettings, 'usable' | 'lockNutsNew'>,
): boolean {
  const state = lot.state ?? 'unknown';
  if (item === 'lock nut' && settings.lockNutsNew) return state === 'new';
  return settings.usable.some((allowed) => allowed === state);
}

const designationOf = (read: ReturnType<typeof readThread>) =>
  read.ok ? { ok: true as const, value: read.value.designation } : read;

const total = (lots: readonly HardwareLot[]): number =>
  lots.reduce(
    (sum, lot) => sum + lot.count * (itemNamed(lot.item) === 'tape' ? (lot.length ?? 0) : 1),
    0,
  );
