// How the shapes that fit a pile are related: whether they differ by a turn of one half, and whether
// that matters for the shell that will stand.

import {
  arrangements,
  decisionFor,
  familiesOf,
  type Kind,
  labelsOf,
  occursIn,
  type PlacesDecision,
  partOf,
  placeCount,
  type Shape,
  type Shell,
  sameKinds,
  stockOfShape,
} from '@shellraise/core';

/** What is asked of several shapes. */
export interface RelationQuestion {
  /** Two or more. */
  readonly shapes: readonly Shape[];
  readonly prefer: number;
  readonly kinds: readonly Kind[];
  /** What was decided; null where nothing was: then the tallest that the stock can stand counts. */
  readonly decision: PlacesDecision | null;
}

/** How shapes are related. */
export interface Relation {
  /** Some flat ring halves the ball, and both halves of the first shape are in every other. */
  readonly halves: boolean;
  /** The shell that stands: decided, or the tallest that the stock can stand; null where none can. */
  readonly stands: {
    readonly decided: boolean;
    readonly panels: number;
    /** Indices of the shapes in which it is the same. */
    readonly sameIn: readonly number[];
  } | null;
}

/** Finds the shell of a decision in one of the shapes, and in which others it is the same. */
export type Stand = (
  decision: PlacesDecision,
) => { readonly panels: number; readonly sameIn: readonly number[] } | null;

/** How these shapes are related. */
export function relate(question: RelationQuestion, stand: Stand): Relation {
  const { shapes, prefer, decision } = question;
  const shape = shapes[prefer] as Shape;
  const kinds = stockOfShape(shape, question.kinds);
  const { interchangeable } = shape;
  const repaired = decision?.repaired ?? false;
  const list = arrangements(shape.shell, kinds, { interchangeable, repaired });
  const best = list.tallest === null ? undefined : list.arrangements[list.tallest];
  const own = decision ?? (best ? decisionFor(list, best, repaired) : null);
  const found = own && stand(own);
  return {
    halves: list.arrangements.some(
      ({ cut }) =>
        cut.flat &&
        2 * cut.places.length === placeCount(shape.shell) &&
        halvesOf(shape.shell, cut.places).every((half) => inAll(half, question)),
    ),
    stands: found ? { decided: decision !== null, ...found } : null,
  };
}

/** What a cut keeps and what it leaves. */
function halvesOf(shell: Shell, kept: Int32Array): Shell[] {
  const above = new Set(kept);
  const below = Array.from(shell.kind, (_, place) => place).filter((place) => !above.has(place));
  return [kept, below].map((places) => partOf(shell, places).shell);
}

function inAll(part: Shell, { shapes, kinds: asked, prefer }: RelationQuestion): boolean {
  const first = shapes[prefer] as Shape;
  if (!shapes.every((shape) => sameKinds(first, shape))) return false;
  const kinds = stockOfShape(first, asked);
  const families = familiesOf(kinds, first.interchangeable);
  const labelled = (shell: Shell): ArrayLike<number> => labelsOf(shell, kinds, families).labels;
  const own = labelled(part);
  return shapes.every(({ shell }) => occursIn(part, own, shell, labelled(shell)));
}
