// `npm test`: installs what is needed, then types, lint, layers, docs and all tests. The last
// line counts them: each check is one, each test is one. Anything failed or unexplained is an
// exit code other than 0. Arguments go to vitest: `npm test -- packages/core/tests/measure`.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, buildApp, buildCli } from './build.mjs';
import { chromium } from './chromium.mjs';
import { install } from './install.mjs';
import { bin, capture, root, run, since } from './run.mjs';

const node = process.execPath;
const tsc = (project) =>
  capture(node, [bin('typescript', 'tsc'), '-p', project, '--pretty', 'false']);
const script = (name, ...args) => capture(node, [join(root, 'scripts', name), ...args]);

process.exitCode = test(process.argv.slice(2));

function test(args) {
  if (install() !== 0) return closing(0, 1, 0);
  const checks = [
    ['types of the sources', build],
    ['types of the core tests', () => tsc('packages/core/tests')],
    ['types of the sync tests', () => tsc('packages/sync/tests')],
    ['types of the cli tests', () => tsc('packages/cli/tests')],
    ['types of the server tests', () => tsc('packages/server/tests')],
    ['types of the app and its tests', () => tsc('packages/app/tests')],
    ['the command line bundles', buildCli],
    ['the app bundles', buildApp],
    [
      'lint and format',
      () => capture(node, [bin('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', '.']),
    ],
    ['layers', () => script('check-layers.mjs')],
    ['docs', () => script('check-docs.mjs')],
    ['the list of licences', () => script('licences.mjs', '--check')],
    ['the drawing of the imports', () => script('make-architecture.mjs', '--check')],
    ['outside checks are listed', () => script('checks.mjs', '--names')],
  ];
  const failed = checks.filter(([name, check]) => !passes(name, check)).length;
  const tests = runTests(args);
  tellSkipped(tests.skipped);
  const unexplained = tests.skipped.filter(({ reason }) => !reason).length;
  return closing(
    checks.length - failed + tests.passed,
    failed + tests.failed + unexplained,
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

function passes(name, check) {
  const start = performance.now();
  const { code, output } = check();
  console.log(`${code === 0 ? 'ok    ' : 'FAILED'}  ${name} (${since(start)})`);
  if (code !== 0) console.log(output.trim());
  return code === 0;
}

function runTests(args) {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-test-'));
  const counts = join(folder, 'counts.json');
  const reporter = join(root, 'scripts', 'test-reporter.mjs');
  const browser = asksBrowser(args) ? chromium() : { reason: 'no browser test was asked for' };
  const code = run(
    node,
    [bin('vitest'), 'run', '--reporter=dot', `--reporter=${reporter}`, ...args],
    {
      env: {
        ...process.env,
        ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }),
        SHELLRAISE_COUNTS: counts,
        SHELLRAISE_CHROMIUM: browser.path ?? '',
        SHELLRAISE_NO_CHROMIUM: browser.reason ?? '',
      },
    },
  );
  try {
    const result = JSON.parse(readFileSync(counts, 'utf8'));
    // Vitest may fail for a reason that is no test's: none found, a crash.
    return code !== 0 && result.failed === 0 ? { ...result, failed: 1 } : result;
  } catch {
    console.log('vitest ended without counts');
    return { passed: 0, failed: 1, skipped: [] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
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
