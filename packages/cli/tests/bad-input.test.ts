import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { example, fileOf, folder, type Ran, run } from './run.ts';

const good = { id: '1', sides: [0.9, 0.9, 1] };

/** A project with these parts in its pile. */
const project = (pile: object): string => JSON.stringify({ shellraise: 1, title: 't', pile });
const kinds = (...rows: readonly object[]): string => project({ kinds: rows });
const sides = (...lengths: readonly unknown[]): string => kinds({ ...good, sides: lengths });

/** Refused: exit 2, the words on standard error, nothing on standard output. */
function refused(ran: Ran, ...words: readonly (string | RegExp)[]): void {
  expect(ran.out).toBe('');
  for (const word of words) expect(ran.err).toMatch(word);
  expect(ran.err).not.toMatch(/fault of ours|\n\s+at /);
  expect(ran.code).toBe(2);
}

const cases: readonly (readonly [string, string, readonly (string | RegExp)[]])[] = [
  ['a file that is not JSON', '{ "shellraise": 1, pile', ['line 1, column 20', 'double quotes']],
  ['JSON that ends too soon', '{ "shellraise": 1', ['line 1', 'end of the text']],
  ['a wrong version', '{ "shellraise": 99, "pile": {} }', ['shellraise', '99', 'version 1']],
  ['a file without a version', '{ "pile": {} }', ['shellraise', 'version']],
  ['missing sides', kinds({ id: '1' }), [/pile\.kinds\[0\]\.sides/]],
  ['two sides only', sides(1, 1), [/pile\.kinds\[0\]\.sides/]],
  ['a zero length', sides(0, 0.9, 0.9), [/pile\.kinds\[0\]\.sides\[0\]/, /found 0/]],
  ['a negative length', sides(0.9, -0.9, 1), [/pile\.kinds\[0\]\.sides\[1\]/, '-0.9']],
  ['a length that is no number', sides(0.9, 'NaN', 1), [/sides\[1\]/, 'NaN']],
  ['a length that is null, as JSON writes NaN', sides(0.9, Number.NaN, 1), [/sides\[1\]/, 'null']],
  ['an infinite length', sides(0.9, 0, 1).replace(',0,', ',1e999,'), [/sides\[1\]/, /Infinity/]],
  ['an absurd length', sides(0.9, 928, 1), [/sides\[1\]/, '928', 'millimetres']],
  ['a longest side no shorter than the others', sides(1, 1, 2), [/sides/, 'longest', '2 m']],
  ['two ids alike', kinds(good, good), [/pile\.kinds\[1\]\.id/, '"1"', /pile\.kinds\[0\]/]],
  [
    'a group that names an unknown kind',
    project({ kinds: [good], groups: [{ around: ['1', '9'] }] }),
    [/pile\.groups\[0\]\.around\[1\]/, '"9"', 'kind or mark'],
  ],
  [
    'a count that is not whole',
    kinds({ ...good, good: 3.5 }),
    [/kinds\[0\]\.good/, '3.5', 'whole'],
  ],
  ['a negative count', kinds({ ...good, scrap: -1 }), [/kinds\[0\]\.scrap/, '-1']],
  ['a key that nobody knows', kinds({ ...good, colour: 'red' }), ['colour']],
  ['an empty file', '', ['end of the text']],
  ['a pile without kinds and readings', project({}), ['no kinds and no readings']],
];

describe('a faulty project file is refused, with the place, the value and what was allowed', () => {
  for (const [title, text, words] of cases)
    it(title, async () => {
      refused(await run(['shape', fileOf(text)]), ...words);
    });

  it('every fault is told at once', async () => {
    const text = kinds({ ...good, sides: [0, 1, 1] }, { ...good, good: 1.5 });
    refused(await run(['pile', fileOf(text)]), /sides\[0\]/, /kinds\[1\]\.id/, /kinds\[1\]\.good/);
  });

  it('the same holds for every command', async () => {
    const file = fileOf(sides(0, 1, 1));
    const out = join(folder(), 'out');
    for (const command of [['pile'], ['shape'], ['places'], ['takeoff'], ['papers', '--out', out]])
      refused(await run([...command, file, '--json']), /sides\[0\]/);
    expect(existsSync(out)).toBe(false);
  });
});

const header = 'tag,by,mark,count,side1 mm,side2 mm,side3 mm,seen from,condition';
const row = '1,Ada,x,,900,900,1000,outside,good';

describe('a pile from a spreadsheet', () => {
  const csv = (text: string): string => fileOf(text, 'pile.csv');

  it('may have a byte-order mark, empty rows, quotes and other line ends', async () => {
    const text = `\ufeff${header}\r\n\r\n${row}\r\n"2","Ada","x, faded",,"900","900","1000",outside,good\r\n\r\n`;
    const ran = await run(['pile', csv(text), '--json']);
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out).kinds).toHaveLength(1);
  });

  it('may have units in some cells and not in others', async () => {
    const text = `${header}\n1,Ada,x,,900,"35 7/16""",1.000 m,outside,good\n`;
    const ran = await run(['pile', csv(text), '--json']);
    expect(ran.code).toBe(0);
    const [kind] = JSON.parse(ran.out).kinds;
    expect([...kind.sides].sort()[2]).toBeCloseTo(1, 6);
  });

  it('is refused with mixed separators', async () => {
    refused(await run(['pile', csv(`${header}\n${row.replaceAll(',', ';')}\n`)]), 'row 2');
  });

  it('is refused where a side column is missing', async () => {
    refused(await run(['pile', csv('tag,side1 mm,side2 mm\n1,900,900\n')]), /side3|sides/);
  });

  it('is refused where a length has no unit', async () => {
    const text = 'tag,side1,side2,side3\n1,900,900,1000\n';
    refused(await run(['pile', csv(text)]), 'row 2', 'side1', '900', '--unit mm');
  });

  it('is refused where a cell is no length', async () => {
    refused(
      await run(['pile', csv(`${header}\n1,Ada,x,,900,long,1000,,\n`)]),
      'row 2',
      'side2',
      'long',
    );
  });
});

describe('a file that cannot be read', () => {
  it('is told when it is not there', async () => {
    refused(await run(['shape', '/nowhere/pile.json']), '/nowhere/pile.json', 'no such file');
  });

  it('is told when it is a folder', async () => {
    refused(await run(['shape', folder()]), 'folder', 'expected');
  });

  it('is told when it may not be read', async () => {
    const file = fileOf('{}');
    chmodSync(file, 0o000);
    // Root may read everything but not another process's memory map from its start.
    const target = process.getuid?.() === 0 ? '/proc/self/mem' : file;
    refused(await run(['shape', target]), target, 'read');
  });

  it('is told when it has 50 MB', async () => {
    const file = fileOf(Buffer.alloc(50_000_000, 0x20));
    refused(await run(['shape', file]), '50 MB', 'at most 20 MB');
  });

  it('is told when it is no text', async () => {
    refused(
      await run(['shape', fileOf(Uint8Array.of(0x7b, 0xff, 0x00, 0xc3))]),
      'not text',
      'UTF-8',
    );
  });
});

describe('a folder that cannot be written', () => {
  it('is told when it is a file, which is left as it was', async () => {
    const file = fileOf('mine', 'out');
    refused(
      await run(['papers', example('hex-and-pent.json'), '--out', file]),
      file,
      'nothing was written',
    );
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('is told when it is read-only, and nothing is written', async () => {
    const path = folder();
    chmodSync(path, 0o500);
    const target = process.getuid?.() === 0 ? '/proc/shellraise' : path;
    refused(
      await run(['papers', example('hex-and-pent.json'), '--out', target]),
      target,
      'nothing was written',
    );
    chmodSync(path, 0o700);
    expect(readdirSync(path)).toEqual([]);
  });

  it('writes none of the files where one of them cannot be', async () => {
    const path = folder();
    mkdirSync(join(path, 'places.csv'));
    writeFileSync(join(path, 'mine.txt'), 'mine');
    refused(await run(['papers', example('hex-and-pent.json'), '--out', path]), 'places.csv');
    expect(readdirSync(path).sort()).toEqual(['mine.txt', 'places.csv']);
  });
});

describe('a command line that makes no sense', () => {
  it.each([
    [['shap', 'x'], /did you mean shape/i],
    [['shape'], /FILE/],
    [['shape', 'x', '--lengths', 'cubits'], /metric, inch/],
    [['places', 'x', '--shape', '0'], /whole number from 1/],
    [['papers', 'x', '--date', 'soon'], /2026-05-01/],
    [['shape', 'x', '--no-such-option'], /unknown option/],
  ])('%j', async (args, words) => {
    refused(await run(args), words);
  });

  it('names the number of shapes where one that is not listed is asked for', async () => {
    const ran = await run(['places', example('hex-and-pent.json'), '--shape', '99']);
    refused(ran, '--shape: found 99, expected 1 to');
  });
});
