// Every side of every kind, as measured and as the closed net has it.

import type { Kind, Shape } from '@shellraise/core';

/** One side. */
export interface SideMisfit {
  /** From 0. */
  readonly side: number;
  /** Metres, hub to hub. */
  readonly measured: number;
  /** Metres; null where the net has no place for the kind. */
  readonly fitted: number | null;
  /** Measured less fitted, metres. */
  readonly off: number | null;
  readonly suspect: boolean;
}

/** One kind. */
export interface KindMisfit {
  readonly kind: Kind;
  /** Index of the kind in the question. */
  readonly index: number;
  /** Places of the whole net that take it. */
  readonly places: number;
  readonly sides: readonly SideMisfit[];
}

/** The kinds with their misfits, in the order of the pile. */
export function misfitsOf(shape: Shape, kinds: readonly Kind[]): KindMisfit[] {
  const places = placesOfKinds(shape, kinds.length);
  return kinds.map((kind, index) => {
    const used = !shape.strangers.includes(kind.id);
    const sides = kind.sides.map((measured, side) => {
      const fitted = (used ? shape.fittedSides[index]?.[side] : undefined) ?? null;
      const suspect = shape.suspects.some((one) => one.kind === kind.id && one.side === side);
      return { side, measured, fitted, off: fitted === null ? null : measured - fitted, suspect };
    });
    return { kind, index, places: places[index] as number, sides };
  });
}

/** Places of the whole net that take each kind. */
export function placesOfKinds({ shell }: Pick<Shape, 'shell'>, kinds: number): number[] {
  const counts = new Array<number>(kinds).fill(0);
  for (const kind of shell.kind) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

/** The largest misfit, metres; 0 where there is none. */
export const largestMisfit = (kinds: readonly KindMisfit[]): number =>
  Math.max(0, ...kinds.flatMap(({ sides }) => sides.map(({ off }) => Math.abs(off ?? 0))));
