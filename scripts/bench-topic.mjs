// Runs one benchmark in a process of its own, so that none slows the next, and hands its lines to the
// process that started it: `main(args)` of the file gives them.

import { pathToFileURL } from 'node:url';

const [file, ...args] = process.argv.slice(2);
const { main } = await import(pathToFileURL(file).href);
const lines = await main(args);
process.send?.(lines, () => process.disconnect());
