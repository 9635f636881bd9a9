// Whether docs/checks.md still lists the outside tests: by names alone, nothing is measured.

import { cell } from './page.mjs';

/** The name of a test file in the table. */
export const nameOf = ({ file }) =>
  file
    .split('/')
    .at(-1)
    .replace(/\.test\.ts$/, '');

/** The titles of a file's tests, to be found at the end of a test's full name. */
export const patternsOf = ({ titles }) =>
  [...titles]
    // The wordiest first, so that a test is counted under its own title.
    .sort((a, b) => b.replaceAll('.*', '').length - a.replaceAll('.*', '').length)
    .map((title) => new RegExp(`(^| > )${title}$`, 's'));

/** What the page lists too little, too much, or under another source; empty where it is fresh. */
export function faultsOf(files, text) {
  const rows = text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) => line.slice(2, -2).split(/ \| /));
  const checks = rows.filter((row) => row.length > 3).slice(1);
  const sources = rows.filter((row) => row.length === 3).slice(1);
  const names = files.map(nameOf);
  const listed = [...checks, ...sources].map(([name]) => name);
  return [
    ...[...new Set(listed.filter((name) => !names.includes(name)))].map(
      (name) => `lists ${name}, which is no outside test`,
    ),
    ...files.flatMap((file) => [
      ...sourceFault(file, sources),
      ...titleFaults(
        file,
        checks.filter(([name]) => name === nameOf(file)).map(([, check]) => check),
      ),
    ]),
  ];
}

function sourceFault(file, sources) {
  const found = sources.find(([name]) => name === nameOf(file));
  if (!found) return [`does not list ${nameOf(file)}`];
  return found[2] === cell(file.source)
    ? []
    : [`tells the source of ${nameOf(file)} otherwise than its test`];
}

function titleFaults(file, checks) {
  // What a row adds to the name of its test is set apart by ": *".
  const found = checks.map((check) => plain(check.split(/: (?<!\\)\*/)[0]));
  const patterns = patternsOf(file);
  return [
    ...patterns
      .filter((is) => !found.some((test) => is.test(test)))
      .map((is) => `lacks a test of ${nameOf(file)}: ${is.source}`),
    ...found
      .filter((test) => !patterns.some((is) => is.test(test)))
      .map((test) => `lists a test that ${nameOf(file)} does not have: ${test}`),
  ];
}

/** The text that was put into a cell. */
const plain = (text) => text.replace(/\\([\\`*_<|])/g, '$1');
