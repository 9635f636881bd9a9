// A ball of eighty triangles: where it may be cut, and how many corners meet at its hubs.
import { naturalCuts, netShell, starsOf } from '@shellraise/core';

const { shell } = netShell({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }, 3);
for (const { places, height } of naturalCuts(shell))
  console.log(`${places.length} places, ${height.toFixed(3)} m tall`);
console.log(starsOf(shell).filter(({ corners }) => corners.length === 5).length, 'hubs of five');

// → 75 places, 5.552 m tall
// → 60 places, 4.577 m tall
// → 40 places, 3.000 m tall
// → 20 places, 1.658 m tall
// → 5 places, 0.448 m tall
// → 12 hubs of five
