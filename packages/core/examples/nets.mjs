// The kinds of a named net: sides in metres, and how many of each.
import { netShell } from '@shellraise/core';

const { kinds } = netShell({ solid: 'icosahedron', b: 3, c: 0, division: 'equal chords' }, 3);
for (const { sides, count } of kinds)
  console.log(sides.map((side) => side.toFixed(4)).join(' '), '×', count);

// → 1.0458 1.0458 1.2106 × 60
// → 1.2106 1.2372 1.2372 × 120
