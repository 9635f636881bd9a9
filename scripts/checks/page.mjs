// docs/checks.md from the outside tests and the figures that they recorded.

import { nameOf, patternsOf } from './stale.mjs';

const CAUTION = `Each of these figures says how near the program comes to a value that this project did not make. None says
that a shell is safe: local codes and a licensed engineer or rigger decide.`;

/** The page; the same tests and figures give the same text. Files of which no test ran keep the rows
 * that the page had before. */
export function page(files, tests, rows, before = '') {
  const parts = files.map((file) => {
    const own = of(file, tests);
    return own.length > 0 ? partOf(file, own, of(file, rows)) : partBefore(file, before);
  });
  const total = (list) => list.reduce((sum, x) => sum + Number(x), 0);
  const figures = total(
    parts.flatMap(({ lines }) => lines.map((text) => text.split(' | ').at(-3))),
  );
  const lines = [
    '# Outside checks',
    '',
    `Made by \`npm run checks\`; not to be edited. ${files.length} files with ${total(parts.map(({ count }) => count))} tests, each file`,
    `held to one source; ${figures} recorded comparisons, of which the worst of a run stands for all of it.`,
    '',
    CAUTION,
    '',
    '- **expected**: the outside value; `< x` where only a bound is held to. **got**: ours.',
    '- **error** and **allowed**: in the unit of the figure, as a share of the expected value (rel.) or of the',
    '  largest of the values beside it (of max.). Exact: a count, or a value that must be the same.',
    '- **figures**: how many comparisons the row stands for. **tests**: how many tests share the title.',
    '- **standing**: as the test or its source says. *Cited*: nothing there speaks of memory, nor of own',
    '  reckoning. *Reckoned*: by a computation apart from this code, in part or whole. *From memory, in part*',
    '  and *common practice*: the source below says which part. A test that compares no single figure (a shape,',
    '  an order, a refusal) has a row without numbers.',
    '',
    '## Checks',
    '',
    '| source | check | expected | got | error | allowed | figures | tests | standing |',
    '|---|---|---|---|---|---|---|---|---|',
    ...parts.flatMap(({ lines }) => lines),
    '',
    '## Sources',
    '',
    '| name | tests | what the test says of its source |',
    '|---|---|---|',
    ...files.map((file, i) => `| ${nameOf(file)} | ${parts[i].count} | ${cell(file.source)} |`),
    '',
  ];
  return lines.join('\n');
}

const of = ({ file }, list) => list.filter((one) => one.file === file);

function partBefore(file, before) {
  const own = before.split('\n').filter((text) => text.startsWith(`| ${nameOf(file)} | `));
  const isSource = (text) => text.split(' | ').length === 3;
  const count = Number(own.find(isSource)?.split(' | ')[1] ?? 0);
  return { lines: own.filter((text) => !isSource(text)), count };
}

function partOf(file, tests, rows) {
  const groups = patternsOf(file).map((is) => ({ is, tests: [] }));
  for (const { test } of tests) {
    const group = groups.find(({ is }) => is.test(test));
    if (!group) throw new Error(`${file.file}: no title in it reads "${test}"`);
    group.tests.push(test);
  }
  const place = (group) => tests.findIndex(({ test }) => test === group.tests[0]);
  const lines = groups
    .filter((group) => group.tests.length > 0)
    .sort((a, b) => place(a) - place(b))
    .flatMap((group) => linesOf(file, group.tests, rows));
  return { lines, count: tests.length };
}

/** Up to a dozen tests of one title each have rows, more of them the worst; the same in a test. */
function linesOf(file, tests, rows) {
  const each = tests.map((test) => ({
    test,
    rows: test.includes('where it is installed') ? [] : rows.filter((row) => row.test === test),
  }));
  if (each.length > 12) {
    const all = each.flatMap((one) => one.rows);
    if (all.length === 0) return [line(file, tests[0], null, tests.length)];
    return [line(file, worst(all).test, together(all), tests.length)];
  }
  return each.flatMap(({ test, rows }) => {
    if (rows.length === 0) return [line(file, test, null, 1)];
    const kept = rows.length > 12 ? [together(rows)] : rows;
    return kept.map((row, i) => line(file, test, row, i === 0 ? 1 : 0));
  });
}

const together = (rows) => ({
  ...worst(rows),
  count: rows.reduce((sum, { count }) => sum + count, 0),
});

/** Nearest to what is allowed; the first of those that are alike. */
function worst(rows) {
  const share = ({ error, got, allowed }) => {
    const size = error ?? got;
    return size === 0 || tiny(size) ? 0 : size / allowed;
  };
  return rows.reduce((most, row) => (share(row) > share(most) ? row : most));
}

function line(file, test, row, tests) {
  const title = cell(test);
  const head = `| ${nameOf(file)} | ${row?.what ? `${title}: *${cell(row.what)}*` : title}`;
  const tail = `${tests || ''} | ${row?.standing ?? standing(file, test)} |`;
  if (!row) return `${head} | holds | holds |  |  |  | ${tail}`;
  return `${head} | ${figure(row.expected)} | ${figure(row.got)} | ${errorOf(row)} | ${allowedOf(row)} | ${row.count} | ${tail}`;
}

const UNITS = { absolute: '', relative: ' rel.', 'of the largest': ' of max.', bound: '' };

function errorOf({ error, allowed, measure }) {
  if (error === null) return '';
  if (allowed === 0) return digits(error, 2);
  return tiny(error)
    ? `< ${digits(Math.min(1e-12, allowed), 3)}`
    : `${digits(error, 2)}${UNITS[measure]}`;
}

function allowedOf({ allowed, measure }) {
  if (measure === 'bound') return '';
  return allowed === 0 ? 'exact' : `${digits(allowed, 3)}${UNITS[measure]}`;
}

// What lies below is rounding, and may differ from one machine to the next.
const tiny = (x) => Math.abs(x) < 1e-12;

function figure(x) {
  if (typeof x === 'string') return cell(x);
  return tiny(x) ? '0' : digits(x, 8);
}

const digits = (x, count) => String(Number(x.toPrecision(count)));

function standing({ source }, test) {
  const said = (text, words) => words.test(text);
  if (said(test, /from memory/i)) return 'from memory';
  if (said(test, /common practice/i)) return 'common practice';
  if (said(source, /common practice/i)) return 'common practice';
  if (said(source, /^Values from memory|From memory; |Values? from memory\.$/))
    return 'from memory';
  if (said(source, /from memory/i)) return 'from memory, in part';
  if (said(source, /reckon|\bown\b|computed|derived|brute|reference notes/i)) return 'reckoned';
  return 'cited';
}

/** Text in one cell of a table. */
export const cell = (text) =>
  String(text)
    .replace(/[\\`*_<|]/g, '\\$&')
    .replace(/\s+/g, ' ')
    .trim();
