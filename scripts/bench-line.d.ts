// What a benchmark tells `npm run bench`, one for each line of its table.

/** A line: what was measured, and what is wanted of it. */
export interface Line {
  readonly what: string;
  readonly found: number;
  readonly unit: 's' | 'ms' | 'kB' | 'MB' | '%' | '×' | 'piles';
  /** The most it may be, or the least where `least` is true; absent where it is told and no more. */
  readonly wanted?: number;
  readonly least?: boolean;
  /** A general-purpose library on the same task in the same run: how many times its time we take, and the
   * most that may be. */
  readonly beside?: { readonly library: string; readonly ratio: number; readonly most?: number };
}
