// What the other examples share: half of a ball of eighty panels, crown up, and its two kinds.
import {
  crownAtHub,
  kindsOfPile,
  naturalCuts,
  netShell,
  orientShell,
  partOf,
  readPile,
} from '@shellraise/core';

const { shell, kinds: wanted } = netShell(
  { solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' },
  3,
);
const ball = orientShell(shell, crownAtHub(shell, 0));
const half = naturalCuts(ball).find(({ places }) => places.length === 40);

/** Forty places on a base ring of ten hubs; radius 3 m. */
export const halfBall = partOf(ball, half.places).shell;

const read = readPile({
  kinds: wanted.map(({ sides }, k) => ({ id: `${k + 1}`, sides, good: 40, repair: 0, scrap: 0 })),
});
if (!read.ok) throw new Error('no pile');

/** Its kinds, in the order in which its places name them. */
export const { kinds } = kindsOfPile(read.value);
