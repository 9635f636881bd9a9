// `npm run release`: what is handed out, in dist/release. The engine as an npm package; the command line
// as one, with server, app and demo in it; the app as one page that opens without a server; the licences
// of everything in them; and a sum of each file. Then each package is tried in an empty folder.
// `-- --twice` does the same in a fresh clone of HEAD and compares the sums.

import { createHash } from 'node:crypto';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, buildApp, buildCli, inTurn } from './build.mjs';
import { install } from './install.mjs';
import { licencesText } from './licences.mjs';
import { capture, root } from './run.mjs';

const out = join(root, 'dist', 'release');
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const shell = process.platform === 'win32';
const sums = 'SHA256SUMS';

function release(twice) {
  if (install() !== 0) return 1;
  // From nothing: what was built step by step holds its types in another order.
  for (const name of ['core', 'sync', 'server', 'cli', 'app'])
    for (const made of ['dist', 'tsconfig.tsbuildinfo'])
      rmSync(join(root, 'packages', name, made), { recursive: true, force: true });
  const { code, output } = inTurn(build, buildCli, buildApp);
  if (code !== 0) {
    console.error(output.trim());
    return code;
  }
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  const { version } = packageOf('core');
  const packed = [pack('core', stageCore), pack('cli', stageCli)];
  copyFileSync(
    join(root, 'packages/app/dist/pocket.html'),
    join(out, `shellraise-${version}.html`),
  );
  copyFileSync(join(root, 'CHANGELOG.md'), join(out, 'CHANGELOG.md'));
  writeFileSync(join(out, 'LICENCES.md'), licencesText());
  const lines = readdirSync(out)
    .sort()
    .map((name) => `${sumOf(join(out, name))}  ${name}`);
  writeFileSync(join(out, sums), `${lines.join('\n')}\n`);
  console.log(lines.join('\n'));
  return tried(...packed) && (!twice || sameAgain()) ? 0 : 1;
}

const packageOf = (name) =>
  JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'));

const sumOf = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');

/** Copies what was compiled, without what only tests and this checkout's compiler need. */
function copyBuilt(name, into, folders) {
  for (const folder of folders)
    cpSync(join(root, 'packages', name, folder), join(into, folder), {
      recursive: true,
      filter: (path) => !/(\.tsbuildinfo|\.built-from|\.map)$/.test(path),
    });
}

function stageCore(into) {
  copyBuilt('core', into, ['dist']);
  return packageOf('core');
}

/** The bundle, and beside it what is no part of it: the server, what it needs of ours, app and demo. */
function stageCli(into) {
  copyBuilt('cli', into, ['bin', 'dist/run']);
  cpSync(join(root, 'examples/demo'), join(into, 'examples/demo'), { recursive: true });
  const own = ['core', 'sync', 'server', 'app'];
  for (const name of own) {
    const folder = join(into, 'node_modules/@shellraise', name);
    copyBuilt(name, folder, ['dist']);
    // What the app runs with is in its files.
    const dependencies = name === 'app' ? {} : packageOf(name).dependencies;
    writeFileSync(join(folder, 'package.json'), json({ ...plain(packageOf(name)), dependencies }));
  }
  const needed = ['core', 'sync', 'server', 'cli'].flatMap((name) =>
    Object.entries(packageOf(name).dependencies),
  );
  const version = (name) => packageOf(name).version;
  return {
    ...packageOf('cli'),
    dependencies: {
      ...Object.fromEntries(needed.filter(([name]) => !name.startsWith('@shellraise/')).sort()),
      ...Object.fromEntries(own.map((name) => [`@shellraise/${name}`, version(name)])),
    },
    bundleDependencies: own.map((name) => `@shellraise/${name}`),
  };
}

/** A package's own file as it goes out: what only a checkout has use for is left out. */
const plain = ({ private: _, devDependencies: __, ...rest }) => rest;

const json = (value) => `${JSON.stringify(value, null, 2)}\n`;

/** Packs a package that `stage` lays out in an empty folder; the file's name. */
function pack(name, stage) {
  const into = mkdtempSync(join(tmpdir(), 'shellraise-release-'));
  const about = stage(into);
  writeFileSync(join(into, 'package.json'), json(plain(about)));
  copyFileSync(join(root, 'LICENSE'), join(into, 'LICENSE'));
  copyFileSync(join(root, 'README.md'), join(into, 'README.md'));
  const { code, output } = capture(npm, ['pack', '--silent', '--pack-destination', out], {
    cwd: into,
    shell,
  });
  rmSync(into, { recursive: true });
  if (code !== 0) throw new Error(`npm pack of ${name} failed:\n${output}`);
  return join(out, output.trim().split('\n').at(-1));
}

/** Whether both packages work where nothing else is. */
function tried(core, cli) {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-try-'));
  const at = { cwd: folder, shell };
  writeFileSync(join(folder, 'package.json'), json({ private: true, type: 'module' }));
  writeFileSync(
    join(folder, 'use.mjs'),
    "import { readLength } from '@shellraise/core';\nconsole.log(JSON.stringify(readLength('43 7/16\"')));\n",
  );
  const node = process.execPath;
  const command = join(folder, 'node_modules/shellraise/bin/shellraise.js');
  const demo = join(folder, 'node_modules/shellraise/examples/demo/project.json');
  const steps = [
    [
      'the packages install in an empty folder',
      npm,
      ['install', '--no-audit', '--no-fund', '--loglevel=error', core, cli],
      '',
    ],
    ['core reads a length', node, ['use.mjs'], '1.103'],
    ['shellraise tells its version', node, [command, '--version'], packageOf('cli').version],
    ['shellraise reads a pile', node, [command, 'pile', demo], '6 kinds'],
    [
      'shellraise makes the papers of the demo',
      node,
      [command, 'demo', '--out', 'papers'],
      'Demo: ',
    ],
    [
      'shellraise serves the app',
      node,
      ['--input-type=module', '-e', served(folder)],
      'Shellraise',
    ],
  ];
  const failed = steps.filter(([what, program, args, wanted]) => {
    const { code, output } = capture(program, args, at);
    const ok = code === 0 && output.includes(wanted);
    console.log(`${ok ? 'ok    ' : 'FAILED'}  ${what}`);
    if (!ok) console.log(output.trim());
    return !ok;
  });
  rmSync(folder, { recursive: true, force: true });
  return failed.length === 0;
}

/** Starts the installed server on a free port and prints the page's title. */
const served = (folder) => `
import { createServer } from '${join(folder, 'node_modules/shellraise/node_modules/@shellraise/server/dist/index.js').replaceAll('\\', '/')}';
const server = createServer({ root: '${join(folder, 'node_modules/shellraise/node_modules/@shellraise/app/dist').replaceAll('\\', '/')}' });
await server.listen({ host: '127.0.0.1', port: 0 });
const page = await fetch('http://127.0.0.1:' + server.server.address().port + '/');
console.log((await page.text()).match(/<title>.*<\\/title>/)[0]);
await server.close();
process.exit();`;

/** Whether a fresh clone of HEAD gives the same files; those that differ are named. */
function sameAgain() {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-again-'));
  const steps = [
    ['git', ['clone', '--quiet', root, folder], root],
    [npm, ['run', '--silent', 'release'], folder],
  ];
  const done = steps.every(([program, args, cwd]) => {
    const { code, output } = capture(program, args, { cwd, shell });
    if (code !== 0) console.log(output.trim());
    return code === 0;
  });
  const [here, there] = [root, folder].map((checkout) => sumsIn(join(checkout, 'dist/release')));
  const other = here.filter((line) => !there.includes(line));
  const same = done && other.length === 0 && here.length === there.length;
  console.log(`${same ? 'ok    ' : 'FAILED'}  a fresh clone gives the same files`);
  for (const line of other) console.log(`        another: ${line.split('  ')[1]}`);
  rmSync(folder, { recursive: true, force: true });
  return same;
}

const sumsIn = (folder) =>
  existsSync(join(folder, sums)) ? readFileSync(join(folder, sums), 'utf8').trim().split('\n') : [];

process.exitCode = release(process.argv.includes('--twice'));
