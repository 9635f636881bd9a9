// Every side of every kind, as measured and as the closed net has it.

import { type AddedKind, type Kind, kindsOfShape, type Shape } from '@shellraise/core';

/** One side. */
export interface SideMisfit {
  /** From 0. */
  readonly side: number;
  /** Metres, hub to hub; null where the pile has none of the kind. */
  readonly measured: number | null;
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
  /** Why the shape has it besides those of the pile; null for those. */
  readonly added: AddedKind | null;
}

/** The kinds with their misfits, in the order of the pile, then those that the shape needs besides. */
export function misfitsOf(shape: Shape, kinds: readonly Kind[]): KindMisfit[] {
  const all = kindsOfShape(shape, kinds);
  const places = placesOfKinds(shape, all.length);
  return all.map((kind, index) => {
    const used = !shape.strangers.includes(kind.id);
    const added = shape.added[index - kinds.length] ?? null;
    const sides = kind.sides.map((own, side) => {
      const measured = added?.why === 'wanted' ? null : own;
      const fitted = (used ? shape.fittedSides[index]?.[side] : undefined) ?? null;
      const suspect = shape.suspects.some((one) => one.kind === kind.id && one.side === side);
      const off = fitted === null || measured === null ? null : measured - fitted;
      return { side, measured, fitted, off, suspect };
    });
    return { kind, index, places: places[index] as number, sides, added };
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
