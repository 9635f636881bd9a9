// `npm run soak [-- name]`: the tests that are too long for `npm test`, at full length: the named one, or
// all. `npm run soak -- 20` asks for so many raising plans alone, `-- weekend 7` for the weekend of seed 7.

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, buildBench, inTurn } from './build.mjs';
import { install } from './install.mjs';
import { bin, root, run } from './run.mjs';

const [asked, ...more] = process.argv.slice(2);
const plans = /^[1-9]\d{0,4}$/.test(asked ?? '') ? asked : null;
const sync = 'packages/server/tests/sync';
const soaks = [
  // Seeded raising plans, each state of each asked of the frame.
  {
    name: 'plans',
    env: { SHELLRAISE_PLANS: plans ?? '200' },
    args: [
      'packages/core/tests/raise/order/raise.test.ts',
      '-t',
      'no stage is called unstable by the frame',
      // A plan of a large shell takes minutes where others use the machine too.
      '--testTimeout=900000',
    ],
  },
  // Every sheet of a shell as large as the demo's, with names of many scripts.
  {
    name: 'sheets',
    env: { SHELLRAISE_SHEETS: '4' },
    args: ['packages/core/tests/papers/any-name.test.ts', '--testTimeout=900000'],
  },
  // The server killed under twenty recording phones.
  { name: 'kills', env: { SHELLRAISE_KILLS: '200' }, args: [`${sync}/kills.test.ts`] },
  // Damaged files, texts, updates and certificates: a million in all.
  {
    name: 'fuzz',
    env: { SHELLRAISE_FUZZ: '1000000' },
    args: [
      'packages/core/tests/fuzz',
      'packages/sync/tests/fuzz.test.ts',
      'packages/server/tests/https/fuzz.test.ts',
    ],
  },
  // Seeds of twenty phones with broken lines, full disks and clocks that are off.
  { name: 'phones', env: { SHELLRAISE_SEEDS: '100' }, args: [`${sync}/model.test.ts`] },
  // Two days of twenty phones with the app's own code, in processes whose memory is weighed by the hour.
  { name: 'weekend', main: 'packages/app/dist-bench/bench/weekend/weekend.js' },
];
const name = plans ? 'plans' : asked;
const chosen = soaks.filter((one) => name === undefined || one.name === name);
if (chosen.length === 0) {
  console.error(
    `soak: found ${name}, expected ${soaks.map((one) => one.name).join(', ')} or a number of plans`,
  );
  process.exitCode = 2;
} else if (install() !== 0 || !isBuilt()) process.exitCode = 1;
else
  for (const one of chosen)
    if ((one.main ? await own(one.main) : tests(one)) !== 0) process.exitCode = 1;

function isBuilt() {
  const { code, output } = inTurn(build, () => buildBench('app'));
  if (code !== 0) console.error(output.trim());
  return code === 0;
}

function tests({ env, args }) {
  const options = { env: { ...process.env, ...env } };
  return run(process.execPath, [bin('vitest'), 'run', ...args], options);
}

/** A soak that is no test: its file's `main(args)` gives the exit code. */
async function own(file) {
  const { main } = await import(pathToFileURL(join(root, file)).href);
  return main(more);
}
