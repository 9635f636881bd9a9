// The order in which kinds and their sides are worked on, so that the answer does not depend on
// the order of the file: sides from their lowest turn, kinds from the smallest; and the way back.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists, compareText } from '../math/order.ts';
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
  const rows = kinds.map((kind, source) => {
    const offset = lowestTurn(kind.sides);
    const sides = turned(kind.sides, offset);
    return { kind: { ...kind, sides, sideSds: turned(kind.sideSds, offset) }, source, offset };
  });
  rows.sort(
    (a, b) =>
      a.kind.sides.length - b.kind.sides.length ||
      compareLists(a.kind.sides, b.kind.sides) ||
      compareText(a.kind.id, b.kind.id),
  );
  return {
    kinds: rows.map(({ kind }) => kind),
    source: rows.map(({ source }) => source),
    offset: rows.map(({ offset }) => offset),
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
