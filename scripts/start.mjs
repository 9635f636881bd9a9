// `npm start`: installs what is needed, builds, and runs the main job on the demo project.

import { join } from 'node:path';
import { build } from './build.mjs';
import { install } from './install.mjs';
import { root, run } from './run.mjs';

process.exitCode = start();

function start() {
  const installed = install();
  if (installed !== 0) return installed;
  const built = build();
  if (built.code !== 0) {
    console.error(built.output.trim());
    console.error('The build failed.');
    return built.code;
  }
  const shellraise = join(root, 'packages', 'cli', 'bin', 'shellraise.js');
  return run(process.execPath, [shellraise, 'demo', ...process.argv.slice(2)]);
}
