// The order in which kinds and their sides are worked on, so that the answer does not depend on
// the order of the file: sides from their lowest turn, kinds from the smallest; and the way back.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists, compareText } from '../math/order.ts';
import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import { jointsOf, makeOf } from './joints.ts';

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
    const offset = firstSideOf(kind);
    return { kind: turnedKind(kind, offset), source, offset };
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

/** The side from which the sides run lowest; of equals the one from which the joints do. */
function firstSideOf(kind: Kind): number {
  const lowest = lowestTurn(kind.sides);
  const makes = jointsOf([kind])?.[0]?.map(makeOf);
  if (!makes) return lowest;
  const best = turned(kind.sides, lowest);
  return kind.sides
    .map((_, turn) => turn)
    .filter((turn) => compareLists(turned(kind.sides, turn), best) === 0)
    .reduce((a, b) => (compareLists(turned(makes, b), turned(makes, a)) < 0 ? b : a));
}

/** The same panel with its sides counted from another. */
function turnedKind(kind: Kind, offset: number): Kind {
  const { laps, holes, dihedrals } = kind;
  return {
    ...kind,
    sides: turned(kind.sides, offset),
    sideSds: turned(kind.sideSds, offset),
    ...(laps && { laps: turned(laps, offset) }),
    ...(holes && { holes: turned(holes, offset) }),
    ...(dihedrals && { dihedrals: turned(dihedrals, offset) }),
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
