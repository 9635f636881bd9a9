// `npm test`: installs what is needed, then types, lint, layers, docs and all tests. The last
// line counts them: each check is one, each test is one. Anything failed or unexplained is an
// exit code other than 0. Arguments go to vitest: `npm test -- packages/core/tests/measure`.
// Browser tests wait more than they work: without arguments they run beside all that is not built, which
// gives way to them and takes what they leave of the processors.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, buildApp, buildCli } from './build.mjs';
import { chromium } from './chromium.mjs';
import { install } from './install.mjs';
import { bin, root, since, started } from './run.mjs';

const node = process.execPath;
const tsc = (project) =>
  started(node, [bin('typescript', 'tsc'), '-p', project, '--pretty', 'false']);
const script = (name, ...args) => started(node, [join(root, 'scripts', name), ...args]);

/** What tests need. */
const builds = [
  ['types of the sources', build],
  ['the command line bundles', buildCli],
  ['the app bundles', buildApp],
];

const checks = [
  ['types of the core tests', () => tsc('packages/core/tests')],
  ['types of the sync tests', () => tsc('packages/sync/tests')],
  ['types of the cli tests', () => tsc('packages/cli/tests')],
  ['types of the server tests', () => tsc('packages/server/tests')],
  ['types of the app and its tests', () => tsc('packages/app/tests')],
  [
    'lint and format',
    () => started(node, [bin('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', '.']),
  ],
  ['layers', () => script('check-layers.mjs')],
  ['docs', () => script('check-docs.mjs')],
  ['words', () => script('words.mjs', '--check')],
  ['the list of licences', () => script('licences.mjs', '--check')],
  ['the drawing of the imports', () => script('make-architecture.mjs', '--check')],
  ['outside checks are listed', () => script('checks.mjs', '--names')],
];

process.exitCode = await test(process.argv.slice(2));

async function test(args) {
  if (install() !== 0) return closing(0, 1, 0);
  const built = await countPassed(builds);
  const browser = asksBrowser(args) ? chromium() : { reason: 'no browser test was asked for' };
  const beside =
    args.length === 0 ? runTests(['--project=browser'], browser, { stdio: 'pipe' }) : null;
  const held = await countPassed(checks);
  const others = beside
    ? await runTests(['--project=unit'], browser, { patient: true })
    : await runTests(args, browser);
  const ran = [others, ...(beside ? [await beside] : [])];
  const tests = {
    passed: ran.reduce((sum, { passed }) => sum + passed, 0),
    failed: ran.reduce((sum, { failed }) => sum + failed, 0),
    skipped: ran.flatMap(({ skipped }) => skipped),
  };
  tellSkipped(tests.skipped);
  const unexplained = tests.skipped.filter(({ reason }) => !reason).length;
  return closing(
    built + held + tests.passed,
    builds.length + checks.length - built - held + tests.failed + unexplained,
    tests.skipped.length - unexplained,
  );
}

/** Each skipped test with its reason; many with one reason in one line. */
function tellSkipped(skipped) {
  const reasons = new Map();
  for (const { title, reason } of skipped)
    reasons.set(reason, [...(reasons.get(reason) ?? []), title]);
  for (const [reason, titles] of reasons)
    for (const title of titles.length > 3 && reason ? [`${titles.length} tests`] : titles)
      console.log(`skipped: ${title}: ${reason || 'NO REASON GIVEN'}`);
}

/** How many of the named checks pass; each is told, with what it printed where it fails. */
async function countPassed(named) {
  let count = 0;
  for (const [name, check] of named) {
    const start = performance.now();
    const { code, output } = await check();
    console.log(`${code === 0 ? 'ok    ' : 'FAILED'}  ${name} (${since(start)})`);
    if (code === 0) count += 1;
    else console.log(output.trim());
  }
  return count;
}

/** Vitest with these arguments: its counts. What it prints is shown at once or, piped, when it ends. */
async function runTests(args, browser, options = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-test-'));
  const counts = join(folder, 'counts.json');
  const reporter = join(root, 'scripts', 'test-reporter.mjs');
  const { code, output } = await started(
    node,
    [bin('vitest'), 'run', '--reporter=dot', `--reporter=${reporter}`, ...args],
    {
      stdio: 'inherit',
      ...options,
      env: {
        ...process.env,
        ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }),
        SHELLRAISE_COUNTS: counts,
        SHELLRAISE_CHROMIUM: browser.path ?? '',
        SHELLRAISE_NO_CHROMIUM: browser.reason ?? '',
      },
    },
  );
  if (output) console.log(output.trimEnd());
  try {
    const result = JSON.parse(readFileSync(counts, 'utf8'));
    tellLongest(result.files);
    // Vitest may fail for a reason that is no test's: none found, a crash.
    return code !== 0 && result.failed === 0 ? { ...result, failed: 1 } : result;
  } catch {
    console.log('vitest ended without counts');
    return { passed: 0, failed: 1, skipped: [] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The files that took longest, where there are many. */
function tellLongest(files) {
  const longest = [...files].sort((a, b) => b.seconds - a.seconds).slice(0, 12);
  if (files.length > longest.length)
    console.log(
      `longest: ${longest.map(({ name, seconds }) => `${name} ${seconds.toFixed(0)} s`).join(', ')}`,
    );
}

/** Whether the arguments leave any browser test in: `packages/core` does not. */
function asksBrowser(args) {
  const paths = args.filter((arg) => !arg.startsWith('-'));
  const folder = 'packages/app/tests/browser';
  return (
    paths.length === 0 || paths.some((path) => folder.includes(path) || path.includes('browser'))
  );
}

function closing(passed, failed, skipped) {
  console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  return failed > 0 ? 1 : 0;
}
