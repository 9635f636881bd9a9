// Sides of two kinds, their counts, and no design: what do they close into?
import { identify, kindsOfPile, placeCount, readPile } from '@shellraise/core';

const read = readPile({
  readingSd: 0.001,
  kinds: [
    { id: 'five', sides: [1, 1, 1, 1, 1], good: 12, repair: 0, scrap: 0 },
    { id: 'six', sides: [1, 1, 1, 1, 1, 1], good: 20, repair: 0, scrap: 0 },
  ],
});
if (!read.ok) throw new Error('no pile');
const { kinds, groups } = kindsOfPile(read.value);
for (const { radius, shell } of identify({ kinds, groups }).shapes)
  console.log(`${placeCount(shell)} places, radius ${radius.toFixed(3)} m`);

// → 32 places, radius 2.478 m
