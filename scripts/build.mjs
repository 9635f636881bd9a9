// Compiles the packages, core first, and bundles the command line and the app. Each does nothing
// where nothing changed. `npm ci` ends with the first two (as `prepare`), so that `npx shellraise`
// works right after it.

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bin, capture, root } from './run.mjs';

const packages = ['core', 'sync', 'cli', 'server'];

/** Builds if needed. Returns `{ code, output }`; the output is empty where all went well. */
export function build() {
  if (!existsSync(join(root, 'node_modules', 'typescript')))
    return {
      code: 1,
      output: 'The compiler is not installed: run npm ci (with dev dependencies).',
    };
  for (const name of packages) removeOrphans(join(root, 'packages', name));
  return capture(process.execPath, [bin('typescript', 'tsc'), '-b', '--pretty', 'false']);
}

/** Each in turn until one fails; what the last one said. */
export function inTurn(...steps) {
  let done = { code: 0, output: '' };
  for (const step of steps) if (done.code === 0) done = step();
  return done;
}

/** Bundles the command line if what goes into it changed; core must be built. As `buildApp`. */
export const buildCli = () =>
  bundle('packages/cli', 'dist/run', [...filesIn('packages/core/src'), ...filesIn('packages/cli')]);

/** Bundles the app, and beside it the pocket copy's page, if what goes into them changed; core must be
 * built. Returns `{ code, output }`. */
export const buildApp = () =>
  bundle(
    'packages/app',
    'dist',
    [
      'examples/demo/project.json',
      ...filesIn('packages/core/src'),
      ...filesIn('packages/sync/src'),
      ...filesIn('packages/app'),
    ],
    [[], ['--config', 'packages/app/pocket.config.ts']],
  );

/** Compiles what a package's `bench` folder has; core must be built. As `buildApp`. */
export function buildBench(folder) {
  const project = join('packages', folder, 'bench');
  return capture(process.execPath, [bin('typescript', 'tsc'), '-p', project, '--pretty', 'false']);
}

/** `runs`: what each run of the bundler is told besides. */
function bundle(folder, into, sources, runs = [[]]) {
  // Stands in the bundle's folder, so that it goes when the folder is emptied for another.
  const stamp = join(root, folder, into, '.built-from');
  const wanted = hashOf(['package-lock.json', ...sources]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return { code: 0, output: '' };
  const vite = [bin('vite'), 'build', folder, '--logLevel', 'warn'];
  const { code, output } = inTurn(
    ...runs.map((more) => () => capture(process.execPath, [...vite, ...more])),
  );
  if (code === 0) writeFileSync(stamp, wanted);
  return { code, output: code === 0 ? '' : output };
}

/** Of these files: names and contents. */
function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths) hash.update(path).update(readFileSync(join(root, path)));
  return hash.digest('hex');
}

const notBundled = /^packages\/(app|cli)\/(dist|dist-bench|tests|bench|node_modules)\//;

function filesIn(folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(root.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((path) => !notBundled.test(path))
    .sort();
}

/** Compiled files whose source is gone would still be found by an import: away with them. */
function removeOrphans(packageDir) {
  const dist = join(packageDir, 'dist');
  if (!existsSync(dist)) return;
  for (const entry of readdirSync(dist, { recursive: true, withFileTypes: true })) {
    const match = /^(.*?)(\.js|\.d\.ts)(\.map)?$/.exec(entry.name);
    if (!entry.isFile() || !match || entry.parentPath === join(dist, 'run')) continue;
    const folder = join(packageDir, 'src', entry.parentPath.slice(dist.length));
    if (!existsSync(join(folder, `${match[1]}.ts`))) rmSync(join(entry.parentPath, entry.name));
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { code, output } = inTurn(build, buildCli, buildApp);
  if (output.trim()) console.error(output.trim());
  if (code !== 0) console.error('The build failed.');
  process.exitCode = code;
}
