// What else the heap can stand: caps and rings of the same net out of what a first shell leaves over,
// and the best way to share one heap between two shells. A ring is a band of courses with its top
// left open: the places of one cut that lie below another of the same way up.

import type { Kind } from '../../pile/kind.ts';
import type { Cut } from '../../shell/cuts.ts';
import { placeCount, type Shell } from '../../shell/shell.ts';
import { type Arrangement, type Arrangements, arrangements } from '../arrangements.ts';
import { familiesOf, familyIndex } from '../families.ts';
import type { WayUp } from '../ways-up.ts';

/** A lesser shell. */
export interface SecondShell {
  readonly what: 'cap' | 'ring';
  readonly way: WayUp;
  /** Of a ring the cut that it stands on. */
  readonly cut: Cut;
  /** Its places in the net, ascending. */
  readonly places: Int32Array;
  /** From the lowest base hub to its top, or to the lowest hub of a ring's upper rim, metres. */
  readonly height: number;
  /** Panels that must be got besides what is left: 0, 1 or 2. */
  readonly lacks: number;
  /** The same as kinds (ids of a family joined by "/") with the number of panels. */
  readonly lacking: readonly { readonly kinds: string; readonly panels: number }[];
}

/** Two shells out of one heap. */
export interface Split {
  readonly ways: readonly [WayUp, WayUp];
  readonly cuts: readonly [Cut, Cut];
}

/** What may be asked of lesser shells. */
export interface SecondOptions {
  readonly interchangeable?: readonly (readonly string[])[];
  /** Panels that one would get for it, at most; 2 unless told. */
  readonly mostLacking?: number;
  /** Told of each sort, at most; 6 unless told. */
  readonly most?: number;
  /** Panels that a lesser shell has at least; 4 unless told. */
  readonly least?: number;
}

/** Caps and rings out of the panels that are left (kind → good panels), the tallest first; for each
 * number of panels lacking only what is taller than with fewer. Nothing here says what they bear. */
export function secondShells(
  shell: Shell,
  kinds: readonly Kind[],
  left: readonly number[],
  options: SecondOptions = {},
): SecondShell[] {
  const heap = new Heap(shell, kinds, left, options);
  const found = [...heap.caps(), ...heap.rings()];
  return (['cap', 'ring'] as const).flatMap((what) =>
    worthSeeing(found.filter((one) => one.what === what)).slice(0, options.most ?? 6),
  );
}

/** The two shells that share a heap so that the lower is as tall as can be, then the taller one;
 * null where not even two of the least caps can be had. Every pair of ways up and cuts is looked at. */
export function bestSplit(
  shell: Shell,
  kinds: readonly Kind[],
  stock: readonly number[],
  options: SecondOptions = {},
): Split | null {
  const heap = new Heap(shell, kinds, stock, options);
  const single = heap.outlines.filter((one) => heap.lacking([one.need]) === 0);
  single.sort((a, b) => b.one.cut.rise - a.one.cut.rise);
  let best: readonly [number, number] | null = null;
  const rise = (i: number): number => single[i]?.one.cut.rise ?? 0;
  for (let j = 0; j < single.length; j++)
    for (let i = 0; i <= j; i++) {
      if (best && rise(j) < rise(best[1])) break;
      if (best && rise(j) === rise(best[1]) && rise(i) <= rise(best[0])) break;
      const pair = [single[i], single[j]].map((one) => one?.need as Int32Array);
      if (heap.lacking(pair) === 0) {
        best = [i, j];
        break;
      }
    }
  if (!best) return null;
  const [a, b] = best.map((i) => single[i]?.one as Arrangement) as [Arrangement, Arrangement];
  return {
    ways: [heap.wayOf(a), heap.wayOf(b)],
    cuts: [a.cut, b.cut],
  };
}

interface Outline {
  readonly one: Arrangement;
  readonly need: Int32Array;
}

class Heap {
  readonly outlines: readonly Outline[];
  private readonly list: Arrangements;
  private readonly family: Int32Array;
  private readonly names: readonly string[];
  private readonly stock: Float64Array;

  constructor(
    private readonly shell: Shell,
    kinds: readonly Kind[],
    left: readonly number[],
    private readonly options: SecondOptions,
  ) {
    const { interchangeable } = options;
    const families = familiesOf(kinds, interchangeable);
    const familyOf = familyIndex(kinds, families);
    this.family = Int32Array.from(shell.kind, (kind) => familyOf[kind] as number);
    this.names = families.map((one) => one.kinds.map((k) => (kinds[k] as Kind).id).join('/'));
    this.stock = Float64Array.from(families, (one) =>
      one.kinds.reduce((sum, k) => sum + (left[k] as number), 0),
    );
    this.list = arrangements(shell, kinds, {
      most: MOST_OUTLINES,
      ...(interchangeable && { interchangeable }),
    });
    this.outlines = this.list.arrangements
      .filter(({ cut }) => cut.places.length >= (options.least ?? 4))
      .map((one) => ({ one, need: this.needOf(one.cut.places) }));
  }

  caps(): SecondShell[] {
    return this.outlines.flatMap(({ one, need }) =>
      this.told('cap', one, one.cut.places, one.cut.height, need),
    );
  }

  /** Bands between two cuts of one way up. */
  rings(): SecondShell[] {
    const found: SecondShell[] = [];
    for (const { one: low } of this.outlines) {
      for (const { one: high } of this.outlines) {
        if (high.wayUp !== low.wayUp || high.cut.baseZ.min <= low.cut.baseZ.max) continue;
        const above = new Uint8Array(placeCount(this.shell));
        for (const p of high.cut.places) above[p] = 1;
        const places = low.cut.places.filter((p) => above[p] === 0);
        if (places.length < (this.options.least ?? 4)) continue;
        const height = high.cut.baseZ.min - low.cut.baseZ.min;
        found.push(...this.told('ring', low, places, height, this.needOf(places)));
      }
    }
    return found;
  }

  /** Panels that several outlines together need beyond the stock. */
  lacking(needs: readonly Int32Array[]): number {
    return this.stock.reduce((sum, stock, f) => {
      const need = needs.reduce((total, own) => total + (own[f] as number), 0);
      return sum + Math.max(0, need - stock);
    }, 0);
  }

  wayOf({ wayUp }: Arrangement): WayUp {
    return this.list.waysUp[wayUp] as WayUp;
  }

  private needOf(places: Iterable<number>): Int32Array {
    const need = new Int32Array(this.names.length);
    for (const p of places) {
      const f = this.family[p] as number;
      need[f] = (need[f] as number) + 1;
    }
    return need;
  }

  private told(
    what: SecondShell['what'],
    one: Arrangement,
    places: Int32Array,
    height: number,
    need: Int32Array,
  ): SecondShell[] {
    const lacks = this.lacking([need]);
    if (lacks > (this.options.mostLacking ?? 2)) return [];
    const lacking = [...need].flatMap((n, f) => {
      const panels = n - (this.stock[f] as number);
      return panels > 0 ? [{ kinds: this.names[f] as string, panels }] : [];
    });
    return [{ what, way: this.wayOf(one), cut: one.cut, places, height, lacks, lacking }];
  }
}

const MOST_OUTLINES = 2000;

/** The tallest first with nothing lacking, then those with a panel more that are taller than all with
 * fewer, and so on. Of one height the one with more panels. */
function worthSeeing(found: readonly SecondShell[]): SecondShell[] {
  const sorted = [...found].sort(
    (a, b) => a.lacks - b.lacks || b.height - a.height || b.places.length - a.places.length,
  );
  const out: SecondShell[] = [];
  for (const one of sorted) {
    const taller = out.filter((other) => other.lacks < one.lacks);
    if (taller.some((other) => other.height >= one.height - SAME)) continue;
    const twin = out.some(
      (other) =>
        other.lacks === one.lacks &&
        Math.abs(other.height - one.height) < SAME &&
        other.places.length === one.places.length,
    );
    if (!twin) out.push(one);
  }
  return out;
}

/** Heights nearer than this are one, metres. */
const SAME = 1e-3;
