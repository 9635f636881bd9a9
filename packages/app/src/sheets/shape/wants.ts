// Kinds that a shape needs besides those of the pile, and where the kinds it has no place for came
// from: what the sheet says of them, in numbers.

import type { Identification, Kind, Shape, Stranger } from '@shellraise/core';
import { kindsOfShape } from '@shellraise/core';
import { placesOfKinds } from './misfits.ts';

/** A kind that the pile has none of. */
export interface Wanted {
  readonly kind: Kind;
  readonly places: number;
}

/** Kinds that are wanted, with their places, most places first. */
export function wantedOf(shape: Shape, kinds: readonly Kind[]): Wanted[] {
  const all = kindsOfShape(shape, kinds);
  const places = placesOfKinds(shape, all.length);
  return shape.added
    .flatMap(({ why, kind }, i): Wanted[] =>
      why === 'wanted' ? [{ kind, places: places[kinds.length + i] ?? 0 }] : [],
    )
    .sort((a, b) => b.places - a.places);
}

/** Every kind without a place, with what it is instead; `nothing` where the shape does not say. */
export const strangersOf = ({ strangers, explained }: Shape): Stranger[] =>
  strangers.map(
    (kind) => explained.find((one) => one.kind === kind) ?? { kind, as: 'nothing' as const },
  );

/** The kinds that the second shell of a heap goes by: those of the question, or only those that the
 * first has no place for where its numbers run over these alone. */
export function kindsBesides(
  first: Shape,
  besides: Identification,
  kinds: readonly Kind[],
): readonly Kind[] {
  const foreign = new Set(first.strangers);
  const [second] = besides.shapes;
  const used = second ? new Set(second.shell.kind) : new Set<number>();
  const own = kinds.length + (second?.added.length ?? 0);
  const ofAll = [...used].every((k) => k >= kinds.length || foreign.has(kinds[k]?.id ?? ''));
  if (ofAll && second?.fittedSides.length === own) return kinds;
  return kinds.filter(({ id }) => foreign.has(id));
}
