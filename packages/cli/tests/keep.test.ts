import { copyFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { example, fileOf, folder, run } from './run.ts';

const copied = (): string => {
  const file = join(folder(), 'pile.json');
  copyFileSync(example('one-handed.json'), file);
  return file;
};

it('keeps the lead’s arrangement in the project file, and every later command goes by it', async () => {
  const file = copied();
  const before = readFileSync(file, 'utf8');
  const kept = await run(['places', file, '--arrangement', '3', '--keep']);
  expect(kept.code).toBe(0);
  expect(kept.out).toContain(`Kept in ${file}`);
  expect(readFileSync(`${file}.previous`, 'utf8')).toBe(before);
  expect(JSON.parse(readFileSync(file, 'utf8')).places.cut.places).toBe(244);
  const [later, other] = await Promise.all([
    run(['takeoff', file, '--json']),
    run(['takeoff', file, '--json', '--arrangement', '1']),
  ]);
  expect(JSON.parse(later.out).arrangement.number).toBe(3);
  expect(JSON.parse(other.out).arrangement.number).toBe(1);
});

it('says so where the kept arrangement is no longer there, and what to do', async () => {
  const file = copied();
  const project = JSON.parse(readFileSync(file, 'utf8'));
  const wayUp = { at: 'hub', kinds: ['5', '5', '5', '5'], orbit: 0 };
  project.places = { wayUp, cut: { places: 200, height: 5 }, repaired: false, datumTurn: 0 };
  const changed = fileOf(JSON.stringify(project));
  const ran = await run(['takeoff', changed]);
  expect(ran.code).toBe(1);
  expect(`${ran.out}${ran.err}`).toContain('no longer there');
  expect(`${ran.out}${ran.err}`).toContain('--keep');
});

it('keeps nothing in a spreadsheet', async () => {
  const ran = await run(['places', example('inches.csv'), '--keep']);
  expect(ran.code).toBe(2);
  expect(ran.err).toContain('expected a project file');
  expect(existsSync(`${example('inches.csv')}.previous`)).toBe(false);
});
