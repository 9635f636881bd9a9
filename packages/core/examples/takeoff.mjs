// Bolts of a shell of twenty equal panels with four holes on each side.
import {
  countedHoles,
  defaultTakeoff,
  kindsOfPile,
  netShell,
  readPile,
  takeOff,
} from '@shellraise/core';

const { shell, kinds: wanted } = netShell(
  { solid: 'icosahedron', b: 1, c: 0, division: 'equal chords' },
  2,
);
const read = readPile({ kinds: [{ id: '1', sides: wanted[0].sides, holes: [4, 4, 4] }] });
if (!read.ok) throw new Error('no pile');
const worked = kindsOfPile(read.value);
const settings = { ...defaultTakeoff, seamBolt: { thread: 'M8', length: 0.03 } };
const list = takeOff(shell, worked.kinds, [], settings, countedHoles(read.value, worked));
for (const { length, seams, bolts } of list.seams)
  console.log(`${seams} seams of ${length.toFixed(3)} m, ${bolts} bolts`);
for (const { item, toBuy, packs, pack } of list.lines)
  if (toBuy > 0) console.log(`${item}: ${toBuy}, ${packs} packs of ${pack}`);

// → 30 seams of 2.103 m, 120 bolts
// → bolt: 150, 3 packs of 50
// → lock nut: 200, 2 packs of 100
// → washer: 300, 3 packs of 100
// → plate: 12, 12 packs of 1
