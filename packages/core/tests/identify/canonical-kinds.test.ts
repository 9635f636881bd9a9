import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toSource, workingKinds } from '../../src/identify/canonical-kinds.ts';
import { identify } from '../../src/identify/identify.ts';
import type { Identification, Shape } from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindSide, placeAt, type Shell, sideCount } from '../../src/shell/shell.ts';
import { readKinds, truthOf } from './piles.ts';

/** Kinds in another order, each from another side on; `offsets` by the new order. */
function shuffled(kinds: readonly Kind[], seed: number): { kinds: Kind[]; offsets: number[] } {
  const random = seededRandom(seed);
  const order = random.shuffle(kinds);
  const offsets = order.map(({ sides }) => random.below(sides.length));
  const turn = (list: readonly number[], by: number): number[] =>
    list.map((_, i) => list[(i + by) % list.length] as number);
  return {
    kinds: order.map((kind, k) => ({
      ...kind,
      sides: turn(kind.sides, offsets[k] as number),
      sideSds: turn(kind.sideSds, offsets[k] as number),
    })),
    offsets,
  };
}

/** What lies on every side of the shell: the kind's id and its length there. */
const laid = (shell: Shell, kinds: readonly Kind[]): string[] =>
  Array.from({ length: sideCount(shell) }, (_, s) => {
    const kind = kinds[shell.kind[placeAt(shell, s as never)] as number] as Kind;
    return `${kind.id}: ${kind.sides[kindSide(shell, s as never)]}`;
  });

test('kinds and their sides come into one order from any other, seed 21', () => {
  const kinds = readKinds(truthOf(4, 2), 1e-3, 1);
  const home = workingKinds(kinds);
  const law = fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
    const other = workingKinds(shuffled(kinds, seed).kinds);
    expect(other.kinds).toEqual(home.kinds);
  });
  fc.assert(law, { seed: 21 });
});

test('working kinds run from their lowest turn, panels of fewer sides first', () => {
  const { kinds } = workingKinds([
    { ...(readKinds(truthOf(1, 0), 0, 1)[0] as Kind), id: 'b', sides: [2, 1, 3, 1] },
    { ...(readKinds(truthOf(1, 0), 0, 1)[0] as Kind), id: 'a', sides: [3, 2, 1] },
  ]);
  expect(kinds.map(({ sides }) => sides)).toEqual([
    [1, 3, 2],
    [1, 2, 1, 3],
  ]);
});

test('the way back lays the same kind and the same side on every side of the shell', () => {
  const { shell } = truthOf(3, 1);
  const { kinds } = shuffled(readKinds(truthOf(3, 1), 1e-3, 4), 9);
  const working = workingKinds(kinds);
  expect(laid(toSource(shell, working), kinds)).toEqual(laid(shell, working.kinds));
  expect(laid(shell, kinds)).not.toEqual(laid(shell, working.kinds));
});

/** An answer with all that depends on order and start of the kinds taken back to the first list. */
function mapped(
  answer: Identification,
  kinds: readonly Kind[],
  offsets: readonly number[],
): unknown {
  const offsetOf = (id: string): number => offsets[kinds.findIndex((k) => k.id === id)] as number;
  const one = (shape: Shape): unknown => ({
    ...shape,
    shell: { ...shape.shell, kind: [], turn: [] },
    laid: laid(shape.shell, kinds),
    fittedSides: kinds
      .map(({ id }, k) => {
        const own = shape.fittedSides[k] as readonly number[];
        const n = own.length;
        return [id, own.map((_, i) => own[(i - offsetOf(id) + n) % n])] as const;
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
    suspects: shape.suspects.map((suspect) => {
      const n = (kinds.find((kind) => kind.id === suspect.kind) as Kind).sides.length;
      return { ...suspect, side: (suspect.side + offsetOf(suspect.kind)) % n };
    }),
    mends: shape.mends.map((mend) => {
      const n = mend.measured.length;
      const back = <T>(own: readonly T[]): T[] =>
        own.map((_, i) => own[(i - offsetOf(mend.kind) + n) % n] as T);
      return {
        ...mend,
        sides: mend.sides.map((side) => (side + offsetOf(mend.kind)) % n),
        measured: back(mend.measured),
        expected: back(mend.expected),
      };
    }),
  });
  // What to measure again is said by the side's number in the file; that it follows is seen above.
  return { shapes: answer.shapes.map(one), complete: answer.complete };
}

test.each([
  ['all well', 0, 0],
  ['with a side 10 mm off', 0.01, 0],
  ['with a group that fits nowhere', 0, 1],
] as const)(
  'order and start of the kinds change nothing of the answer: %s, seed 31',
  (_, by, count) => {
    const read = readKinds(truthOf(4, 0), 5e-4, 7).map((kind, k) => ({
      ...kind,
      good: 60,
      counted: true,
      sides: kind.sides.map((side, i) => (k === 2 && i === 1 ? side + by : side)),
    }));
    const groups = count ? [{ around: ['1', '6', '1'], closed: false, count }] : [];
    const home = mapped(
      identify({ kinds: read, groups }),
      read,
      read.map(() => 0),
    );
    const law = fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const { kinds, offsets } = shuffled(read, seed);
      expect(mapped(identify({ kinds, groups }), kinds, offsets)).toEqual(home);
    });
    fc.assert(law, { seed: 31, numRuns: by === 0 ? 8 : 3 });
  },
);
