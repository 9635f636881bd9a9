// US Patent 4,026,078 (1977), "Spherical structural arrangement"; its background says of US 3,392,495:
// "nineteen panels per section and twenty triangular sections per dome". Read; that this is the net
// (3, 2) follows from the count alone, how its hubs were placed was not seen.

import { expect, test } from 'vitest';
import { namedNet, placesPerFace } from '../../src/nets/named.ts';

test('(3, 2) has nineteen panels on each of twenty faces, and no other net has', () => {
  const net = namedNet({ solid: 'icosahedron', b: 3, c: 2, division: 'equal chords' });
  expect(net.places).toHaveLength(19 * 20);
  const alike = [0, 1, 2, 3, 4, 5].flatMap((b) =>
    [0, 1, 2, 3, 4, 5].filter((c) => placesPerFace(b, c) === 19).map((c) => [b, c]),
  );
  expect(alike).toEqual([
    [2, 3],
    [3, 2],
  ]);
});
