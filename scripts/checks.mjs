// `npm run checks`: runs the outside tests (packages/*/tests/outside/) and writes docs/checks.md, one
// table of what they hold to figures that this project did not make. `--names` only tells, without
// running them, whether that table lists the files, sources and tests that are there now. With names of
// files (`npm run checks -- weaver logan`) only those are run, the other rows stay.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { outsideFiles } from './checks/outside-files.mjs';
import { page } from './checks/page.mjs';
import { faultsOf, nameOf } from './checks/stale.mjs';
import { bin, root, capture as runKept } from './run.mjs';

const target = join(root, 'docs', 'checks.md');
process.exitCode = process.argv.includes('--names') ? compareNames() : writePage();

function compareNames() {
  const faults = faultsOf(outsideFiles(root), readFileSync(target, 'utf8'));
  for (const fault of faults) console.error(`docs/checks.md: ${fault}`);
  if (faults.length > 0)
    console.error('`npm run checks -- NAME` runs the files named and makes their rows again');
  return faults.length > 0 ? 1 : 0;
}

function writePage() {
  const files = outsideFiles(root);
  const asked = process.argv.slice(2);
  const chosen = files.filter((file) => asked.length === 0 || asked.includes(nameOf(file)));
  if (chosen.length === 0) {
    console.error(`no outside test is named ${asked.join(', ')}`);
    return 2;
  }
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-checks-'));
  try {
    const { code, output, tests, rows } = runOutside(chosen, folder);
    if (code !== 0) {
      console.error(output.trim());
      console.error('the outside tests did not pass: docs/checks.md is left as it was');
      return 1;
    }
    writeFileSync(
      target,
      page(files, tests, rows, asked.length > 0 ? readFileSync(target, 'utf8') : ''),
    );
    console.log(`docs/checks.md: ${chosen.length} files, ${tests.length} tests run`);
    return compareNames();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Tests as `{ file, test }` and figures as the tests recorded them, in the order of the files. */
function runOutside(files, folder) {
  const [lines, report] = [join(folder, 'rows.jsonl'), join(folder, 'tests.json')];
  writeFileSync(lines, '');
  const { code, output } = runKept(
    process.execPath,
    [
      bin('vitest'),
      'run',
      '--project=unit',
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...files.map(({ file }) => file),
    ],
    { env: { ...process.env, NO_COLOR: '1', SHELLRAISE_CHECKS: lines } },
  );
  if (code !== 0) return { code, output, tests: [], rows: [] };
  const named = (path) => files.find(({ file }) => path.endsWith(file))?.file;
  const tests = JSON.parse(readFileSync(report, 'utf8')).testResults.flatMap(
    ({ name, assertionResults }) =>
      assertionResults.map(({ ancestorTitles, title }) => ({
        file: named(name),
        test: [...ancestorTitles, title].join(' > '),
      })),
  );
  const rows = readFileSync(lines, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line))
    .map(({ testPath, ...row }) => ({ file: named(testPath), ...row }));
  return { code, output, tests, rows };
}
