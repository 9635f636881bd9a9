// `npm run soak [-- name]`: the tests that are too long for `npm test`, as long as they ask to be: the
// named one, or all. Each is a test file that reads how much is asked of it from its environment.

import { build } from './build.mjs';
import { install } from './install.mjs';
import { bin, run } from './run.mjs';

const soaks = [
  // The server killed 200 times under twenty recording phones.
  {
    name: 'kills',
    file: 'packages/server/tests/sync/kills.test.ts',
    env: { SHELLRAISE_KILLS: '200' },
  },
  // A hundred seeds of twenty phones with broken lines, full disks and clocks that are off.
  {
    name: 'phones',
    file: 'packages/server/tests/sync/model.test.ts',
    env: { SHELLRAISE_SEEDS: '100' },
  },
];

process.exitCode = soak(process.argv.slice(2));

function soak([name]) {
  if (install() !== 0) return 1;
  const chosen = name === undefined ? soaks : soaks.filter((one) => one.name === name);
  if (chosen.length === 0) {
    console.error(
      `There is no soak ${name}: there are ${soaks.map((one) => one.name).join(', ')}.`,
    );
    return 2;
  }
  const built = build();
  if (built.code !== 0) {
    console.error(built.output.trim());
    return built.code;
  }
  const failed = chosen.filter(({ file, env }) => {
    const options = { env: { ...process.env, ...env } };
    return run(process.execPath, [bin('vitest'), 'run', '--project=unit', file], options) !== 0;
  });
  console.log(
    failed.length === 0
      ? `${chosen.length} of ${chosen.length} soaks passed`
      : `failed: ${failed.map((one) => one.name).join(', ')}`,
  );
  return failed.length === 0 ? 0 : 1;
}
