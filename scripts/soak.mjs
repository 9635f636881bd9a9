// `npm run soak`: what takes too long for `npm test`: 200 seeded raising plans, each state of each asked
// of the frame. A number says how many others: `npm run soak -- 20`.

import { join } from 'node:path';
import { install } from './install.mjs';
import { bin, root, run } from './run.mjs';

const plans = process.argv[2] ?? '200';
if (!/^[1-9]\d{0,4}$/.test(plans)) {
  console.error(`soak: found ${plans} plans, expected a whole number from 1 to 99999`);
  process.exitCode = 2;
} else if (install() !== 0) process.exitCode = 1;
else
  process.exitCode = run(
    process.execPath,
    [
      bin('vitest'),
      'run',
      join(root, 'packages', 'core', 'tests', 'raise', 'order', 'raise.test.ts'),
      '-t',
      'no stage is called unstable by the frame',
    ],
    { env: { ...process.env, SHELLRAISE_PLANS: plans } },
  );
