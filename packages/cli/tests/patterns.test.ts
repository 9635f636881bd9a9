import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { example, folder, run } from './run.ts';

const demo = example('demo/project.json');

it('refuses what does not fit with the nearest that works, and writes nothing', async () => {
  const out = folder();
  const [scale, bed] = await Promise.all([
    run(['patterns', demo, '--scale', '2', '--out', out]),
    run(['patterns', demo, '--as', 'print', '--scale', '10', '--out', out]),
  ]);
  expect([scale.code, bed.code]).toEqual([2, 2]);
  expect(scale.err).toMatch(/--scale: found 2, .* the nearest that works is \d/);
  expect(bed.err).toMatch(/--bed: found .* the nearest scale that fits is \d/);
  expect(readdirSync(out)).toEqual([]);
});

it('writes the print and says how large it is', async () => {
  const out = folder();
  const ran = await run([
    'patterns',
    demo,
    '--as',
    'print',
    '--scale',
    '40',
    '--out',
    out,
    '--json',
  ]);
  expect(JSON.parse(ran.out)).toMatchObject({ as: 'print', scale: 40 });
  expect(readdirSync(out).sort()).toEqual([
    'person.stl',
    'shell.3mf',
    'shell.glb',
    'shell.stl',
    'shell.svg',
  ]);
});
