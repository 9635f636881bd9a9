// Readings off the tape become kinds, hands told apart.
import { kindsOfPile, readPile } from '@shellraise/core';

const read = readPile({
  readings: [
    { tag: '1', sides: [1.2, 1.1, 1.0], seenFrom: 'outside' },
    { tag: '2', sides: [1.1, 1.0, 1.201], seenFrom: 'outside' },
    { tag: '3', sides: [1.0, 1.1, 1.2], seenFrom: 'outside' },
    { tag: '4', sides: [1.0, 1.0, 1.0], seenFrom: 'outside' },
  ],
});
if (!read.ok) throw new Error('no pile');
for (const { id, sides, good } of kindsOfPile(read.value).kinds)
  console.log(`kind ${id}: ${sides.map((side) => side.toFixed(3)).join(' ')}, ${good} good`);

// → kind 1: 1.000 1.000 1.000, 1 good
// → kind 2L: 1.000 1.201 1.100, 2 good
// → kind 2R: 1.000 1.100 1.200, 1 good
