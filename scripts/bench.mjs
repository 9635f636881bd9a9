// `npm run bench`: compiles packages/*/bench, runs all benchmarks one after the other and ends with one
// table of all their lines; `-- NAME [arguments]` runs one of them; `-- --write` runs all and puts the table
// into docs/figures.md. A benchmark exports `main(args)`, which gives its lines (`bench-line.d.ts`). The
// exit code is 1 where a line is over what is wanted.

import { fork } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { build, buildApp, buildBench } from './build.mjs';
import { chromium } from './chromium.mjs';
import { install } from './install.mjs';
import { root, since } from './run.mjs';

const FIGURES = join(root, 'docs', 'figures.md');
const [BEGIN, END] = ['<!-- npm run bench -- --write -->', '<!-- end -->'];

async function bench([asked, ...args]) {
  if (install() !== 0) return 1;
  const all = listed();
  const isWritten = asked === '--write';
  const chosen = asked === undefined || isWritten ? all : all.filter(({ name }) => name === asked);
  if (chosen.length === 0) {
    console.error(
      `There is no benchmark ${asked}: there are ${all.map(({ name }) => name).join(', ')}.`,
    );
    return 2;
  }
  const fault = prepared(chosen);
  if (fault) {
    console.error(fault.trim());
    return 1;
  }
  const rows = [];
  let broken = 0;
  for (const topic of chosen) {
    const start = performance.now();
    console.log(`\n--- ${topic.name} ---`);
    const lines = await linesOf(topic, args);
    if (lines === null) broken++;
    for (const line of lines ?? []) rows.push({ topic: topic.name, ...line });
    console.log(`(${since(start)})`);
  }
  const table = tableOf(rows);
  console.log(`\n${table}`);
  const over = rows.filter(isOver);
  console.log(`\n${rows.length} lines, ${over.length} over, ${broken} topics without an end.`);
  // Not where a topic is missing: the table tells of all.
  const isWhole = chosen.every(({ name }) => rows.some(({ topic }) => topic === name));
  if (isWritten && isWhole) write(table);
  return over.length > 0 || broken > 0 ? 1 : 0;
}

function listed() {
  return readdirSync(join(root, 'packages')).flatMap((folder) => {
    const bench = join(root, 'packages', folder, 'bench');
    if (!existsSync(bench)) return [];
    return readdirSync(bench)
      .filter((file) => file.endsWith('.ts') && exportsMain(join(bench, file)))
      .map((file) => ({ package: folder, name: file.slice(0, -3) }));
  });
}

function exportsMain(file) {
  return /^export (async )?function main\b/m.test(readFileSync(file, 'utf8'));
}

/** Builds what the benchmarks need; the compiler's words where it could not, else null. */
function prepared(chosen) {
  const steps = chosen.some((one) => one.package === 'app') ? [build, buildApp] : [build];
  const folders = [...new Set(chosen.map((one) => one.package))];
  for (const step of [...steps, ...folders.map((folder) => () => buildBench(folder))]) {
    const { code, output } = step();
    if (code !== 0) return output;
  }
  return null;
}

/** What a topic tells; null where it came to no end. */
function linesOf({ package: folder, name }, args) {
  const env = { ...process.env };
  if (folder === 'app') {
    const { path, reason } = chromium();
    if (!path) {
      console.log(`${name} is left out: ${reason}`);
      return [];
    }
    env.SHELLRAISE_CHROMIUM = path;
  }
  const file = join(root, 'packages', folder, 'dist-bench', 'bench', `${name}.js`);
  return new Promise((resolve) => {
    let lines = null;
    const child = fork(join(root, 'scripts', 'bench-topic.mjs'), [file, ...args], {
      cwd: root,
      env,
    });
    child.on('message', (told) => {
      lines = told;
    });
    child.on('close', (code) => resolve(code === 0 ? lines : null));
  });
}

const isLate = ({ found, wanted, least }) =>
  wanted !== undefined && !(least ? found >= wanted : found <= wanted);
const isSlower = ({ beside }) => beside?.most !== undefined && !(beside.ratio <= beside.most);
const isOver = (line) => isLate(line) || isSlower(line);

const HEAD = ['topic', 'line', 'measured', 'wanted', 'beside a general library', ''];

function tableOf(rows) {
  const cells = rows.map((line) => [
    line.topic,
    line.what,
    amount(line.found, line.unit),
    line.wanted === undefined
      ? ''
      : `${line.least ? 'at least ' : ''}${amount(line.wanted, line.unit)}`,
    besides(line.beside),
    line.wanted === undefined && line.beside?.most === undefined
      ? ''
      : isOver(line)
        ? 'over'
        : 'ok',
  ]);
  const rule = HEAD.map(() => '---');
  return [HEAD, rule, ...cells].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

const besides = (beside) =>
  beside
    ? `${digits(beside.ratio)} × ${beside.library}${beside.most === undefined ? '' : `, ${beside.most} wanted`}`
    : '';

const amount = (number, unit) => `${digits(number)} ${unit}`;

/** Three digits that say something. */
const digits = (number) =>
  Math.abs(number) >= 100 || Number.isInteger(number)
    ? String(Math.round(number))
    : String(Number(number.toPrecision(3)));

function write(table) {
  const text = readFileSync(FIGURES, 'utf8');
  const [from, to] = [text.indexOf(BEGIN), text.indexOf(END)];
  if (from < 0 || to < from) throw new Error(`${FIGURES} has no ${BEGIN} … ${END}`);
  const day = new Date().toISOString().slice(0, 10);
  const threads = `${availableParallelism()} threads`;
  const said = `Measured on ${day} in one run, Node ${process.versions.node}, a machine of ${threads}.`;
  writeFileSync(
    FIGURES,
    `${text.slice(0, from)}${BEGIN}\n\n${said}\n\n${table}\n\n${text.slice(to)}`,
  );
  console.log('Written to docs/figures.md.');
}

process.exitCode = await bench(process.argv.slice(2));
