// Which parts of a ball this stock can stand: ten panels of kind 1 are gone.
import { arrangements, kindsOfPile, netShell, readPile } from '@shellraise/core';

const ball = netShell({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }, 3);
const rows = ball.kinds.map(({ sides, count }, k) => ({
  id: `${k + 1}`,
  sides,
  good: count - 10,
  repair: 0,
  scrap: 0,
}));
const read = readPile({ kinds: rows });
if (!read.ok) throw new Error('no pile');
const found = arrangements(ball.shell, kindsOfPile(read.value).kinds);
const best = found.arrangements[found.tallest];
console.log(`${best.cut.places.length} places, ${best.cut.rise.toFixed(2)} m tall`);

// → 40 places, 3.00 m tall
