import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { lengthsIn } from '../src/lengths.ts';
import { fittedWords, sidesWords } from '../src/tape.ts';
import { example, folder, run } from './run.ts';

const metric = lengthsIn('metric');

it('calls sides hub to hub only where the way from the tape to the hubs is known', () => {
  expect(sidesWords({ measuredAlong: 'holes', hubAllowance: 0.004 })).toBe('hub to hub');
  expect(sidesWords({ measuredAlong: 'hubs', hubAllowance: null })).toBe('hub to hub');
  expect(sidesWords({ measuredAlong: 'holes', hubAllowance: null })).toBe('along the holes');
});

it('says how much less or more a tape on the panel shows than the papers do', () => {
  const words = (measuredAlong: 'holes' | 'skin' | 'hubs', hubAllowance: number | null) =>
    fittedWords({ measuredAlong, hubAllowance }, metric);
  expect(words('holes', 0.004)).toMatch(/a tape along the holes shows 4\.0 mm less\.$/);
  expect(words('skin', -0.002)).toMatch(/a tape along the skin shows 2\.0 mm more\.$/);
  expect(words('holes', null)).toMatch(/is not known\.$/);
  expect(words('hubs', null)).not.toMatch(/tape/);
});

it('draws mirror images with the same sides, and says what the tape shows', async () => {
  const out = folder();
  await run(['papers', example('demo/project.json'), '--out', out, '--only', 'kinds, lists']);
  const rows = readFileSync(join(out, 'kinds.csv'), 'utf8').split(/\r?\n/);
  const sides = (id: string): string[] =>
    (rows.find((row) => row.startsWith(`${id},`)) ?? '').split(',').slice(2, 5).sort();
  expect(sides('3L')).toEqual(sides('3R'));
  expect(readFileSync(join(out, 'kinds-1.svg'), 'utf8')).toContain('along the holes shows');
});

it('says of a spreadsheet that its lengths are taken as hub to hub', async () => {
  const [sheet, project] = await Promise.all([
    run(['pile', example('inches.csv')]),
    run(['pile', example('one-handed.json')]),
  ]);
  expect(sheet.out).toContain('taken as hub to hub');
  expect(project.out).not.toContain('taken as hub to hub');
});
