// Piles for the tests of the identification: the kinds of a net whose truth is known, each side
// read once with a seeded normal error; lengths in metres, the truth at a radius of 2.7 m.

import { firstSides } from '../../src/identify/corner-model.ts';
import { type SideBelief, sideBelief } from '../../src/identify/side-belief.ts';
import { seededRandom } from '../../src/math/random.ts';
import { type NetShell, netShell } from '../../src/nets/kinds.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindSide, placeAt, type Shell } from '../../src/shell/shell.ts';

/** The radius of every truth. */
export const RADIUS = 2.7;

/** A named net by equal chords. */
export const truthOf = (b: number, c: number, solid: SolidName = 'icosahedron'): NetShell =>
  netShell({ solid, b, c, division: 'equal chords' }, RADIUS);

/** A kind that nobody counted, its sides read with a deviation of `sd`. */
export const kindWith = (id: string, sides: readonly number[], sd: number): Kind => ({
  id,
  marks: [],
  sides,
  sideSds: sides.map(() => sd),
  hand: null,
  good: 0,
  repair: 0,
  scrap: 0,
  counted: false,
  mass: null,
});

/** The kinds of a net, ids from '1', each side off by a normal error of `sd`. */
export function readKinds({ kinds }: Pick<NetShell, 'kinds'>, sd: number, seed: number): Kind[] {
  const random = seededRandom(seed);
  return kinds.map(({ sides }, i) =>
    kindWith(
      `${i + 1}`,
      sides.map((side) => side + sd * random.normal()),
      sd,
    ),
  );
}

/** The same as readings. */
export const readSides = (truth: Pick<NetShell, 'kinds'>, sd: number, seed: number): SideBelief =>
  sideBelief(readKinds(truth, sd, seed), 0);

/** Side → its kind-side, numbered through all kinds: the labels under which nothing is alike. */
export function ownLabels(shell: Shell, sides: readonly (readonly number[])[]): Int32Array {
  const first = firstSides(sides);
  return Int32Array.from(shell.sideHub, (_, s) => {
    const kind = shell.kind[placeAt(shell, s as never)] as number;
    return (first[kind] as number) + kindSide(shell, s as never);
  });
}
