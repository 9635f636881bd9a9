// `npm run soak [-- name]`: the tests that are too long for `npm test`, at full length: the named one, or
// all. `npm run soak -- 20` asks for so many raising plans alone.

import { build } from './build.mjs';
import { install } from './install.mjs';
import { bin, run } from './run.mjs';

const [asked] = process.argv.slice(2);
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
];
const name = plans ? 'plans' : asked;
const chosen = soaks.filter((one) => name === undefined || one.name === name);
if (chosen.length === 0) {
  console.error(
    `soak: found ${name}, expected ${soaks.map((one) => one.name).join(', ')} or a number of plans`,
  );
  process.exitCode = 2;
} else if (install() !== 0 || build().code !== 0) process.exitCode = 1;
else
  for (const { env, args } of chosen)
    if (
      run(process.execPath, [bin('vitest'), 'run', ...args], {
        env: { ...process.env, ...env },
      }) !== 0
    )
      process.exitCode = 1;
