// Writes examples/ anew, the same bytes each time: node scripts/make-examples.mjs [folder]

import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { demoCsv, demoProject } from './examples/demo.mjs';
import { hardPiles } from './examples/hard.mjs';
import {
  fiveFrequency,
  hexAndPent,
  inchesCsv,
  oneHanded,
  suspectReading,
} from './examples/small.mjs';
import { people } from './examples/tape.mjs';
import { pretty } from './examples/write.mjs';
import { root } from './run.mjs';

const folder = process.argv[2] ? resolve(process.argv[2]) : join(root, 'examples');
const demo = demoProject();
const files = {
  'demo/project.json': pretty(demo),
  ...Object.fromEntries(
    Object.keys(people).map((person) => [
      `demo/readings-${person.toLowerCase()}.csv`,
      demoCsv(demo, person),
    ]),
  ),
  'five-frequency.json': pretty(fiveFrequency()),
  'hex-and-pent.json': pretty(hexAndPent()),
  'one-handed.json': pretty(oneHanded()),
  'suspect-reading.json': pretty(suspectReading()),
  'inches.csv': inchesCsv(),
  ...Object.fromEntries(
    Object.entries(hardPiles()).map(([name, project]) => [`hard/${name}`, pretty(project)]),
  ),
};
for (const part of ['demo', 'hard']) mkdirSync(join(folder, part), { recursive: true });
for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
