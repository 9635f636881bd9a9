// The order in which kinds and their sides are worked on, so that the answer does not depend on
// the order of the file: sides from their lowest turn, kinds from the smallest; and the way back.

import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';

/** Kinds in working order. */
export interface WorkingKinds {
  readonly kinds: readonly Kind[];
  /** Working kind → index in the list it came from. */
  readonly source: readonly number[];
  /** Working kind → the side of the source that is side 0 here. */
  readonly offset: readonly number[];
}

/** The kinds in working order; the inverse is {@link toSource}. */
export function workingKinds(kinds: readonly Kind[]): WorkingKinds {
  const turned = kinds.map((kind, source) => {
    const offset = lowestOffset(kind.sides);
    const turn = (list: readonly number[]): number[] =>
      list.map((_, i) => list[(i + offset) % list.length] as number);
    return {
      kind: { ...kind, sides: turn(kind.sides), sideSds: turn(kind.sideSds) },
      source,
      offset,
    };
  });
  turned.sort(
    (a, b) =>
      a.kind.sides.length - b.kind.sides.length ||
      compare(a.kind.sides, b.kind.sides) ||
      (a.kind.id < b.kind.id ? -1 : 1),
  );
  return {
    kinds: turned.map(({ kind }) => kind),
    source: turned.map(({ source }) => source),
    offset: turned.map(({ offset }) => offset),
  };
}

/** A shell in working order with the kinds and turns of the list they came from. */
export function toSource(shell: Shell, working: WorkingKinds): Shell {
  const turn = shell.turn.map((own, p) => {
    const kind = shell.kind[p] as number;
    const sides = (working.kinds[kind] as Kind).sides.length;
    return (own + (working.offset[kind] as number)) % sides;
  });
  return { ...shell, kind: shell.kind.map((kind) => working.source[kind] as number), turn };
}

function lowestOffset(sides: readonly number[]): number {
  const turn = (offset: number): number[] =>
    sides.map((_, i) => sides[(i + offset) % sides.length] as number);
  let best = 0;
  for (let offset = 1; offset < sides.length; offset++)
    if (compare(turn(offset), turn(best)) < 0) best = offset;
  return best;
}

function compare(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((x, j) => x !== b[j]);
  return i < 0 ? 0 : (a[i] as number) - (b[i] as number);
}
