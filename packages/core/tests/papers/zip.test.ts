import { strFromU8, unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { svgFiles } from '../../src/papers/svg.ts';
import { zipOf } from '../../src/papers/zip.ts';

const page = { title: 'a page', description: 'empty', width: 210, height: 297, items: [] };

it('numbers the pages of a set, but not a page alone', () => {
  expect(svgFiles('plan', [page]).map(({ name }) => name)).toEqual(['plan.svg']);
  expect(svgFiles('plan', [page, page]).map(({ name }) => name)).toEqual([
    'plan-1.svg',
    'plan-2.svg',
  ]);
});

it('holds texts and bytes under their names, always the same bytes', () => {
  const files = [
    { name: 'a.svg', text: '<svg/>' },
    { name: 'b.bin', text: Uint8Array.of(1, 2) },
  ];
  const found = unzipSync(zipOf(files));
  expect(strFromU8(found['a.svg'] ?? Uint8Array.of())).toBe('<svg/>');
  expect(found['b.bin']).toEqual(Uint8Array.of(1, 2));
  expect(zipOf(files)).toEqual(zipOf(files));
});
