// `npm ci` ends here: builds, so that `npx shellraise` works at once, and notes what was installed.

import { build, buildCli, inTurn } from './build.mjs';
import { markInstalled } from './install.mjs';

const { code, output } = inTurn(build, buildCli);
if (code === 0) markInstalled();
else console.error(`${output.trim()}\nThe build failed; nothing of Shellraise will run.`);
process.exitCode = code;
