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

interface Place {
  readonly number: string;
  readonly kind: string;
  readonly course: number;
}
interface Chosen {
  readonly numbers: { readonly status: string; readonly painted: number; readonly idle: string[] };
  readonly places: readonly Place[];
}
const chosenIn = (out: string): Chosen => JSON.parse(out).chosen;
const kindByNumber = ({ places }: Chosen): Map<string, string> =>
  new Map(places.map(({ number, kind }) => [number, kind]));

it('keeps painted numbers through a later change of cut, in lists and drawings', async () => {
  const file = copied();
  const painted = await run(['places', file, '--arrangement', '3', '--freeze', '--json']);
  expect(painted.code).toBe(0);
  const first = JSON.parse(readFileSync(file, 'utf8')).places;
  expect(first.frozen).toEqual({ wayUp: first.wayUp, cut: first.cut, datumTurn: 0 });
  const list: { crown: object; panels: number; number: number }[] = JSON.parse(
    painted.out,
  ).arrangements;
  const own = list[2] as (typeof list)[number];
  const sameCrown = list.filter(
    (one) => JSON.stringify(one.crown) === JSON.stringify(own.crown) && one.panels !== own.panels,
  );
  const other = sameCrown.find((one) => one.panels > own.panels) ?? sameCrown[0];
  const now = await run([
    'places',
    file,
    '--arrangement',
    String(other?.number),
    '--keep',
    '--json',
  ]);
  expect(JSON.parse(readFileSync(file, 'utf8')).places.frozen).toEqual(first.frozen);
  const [was, is] = [chosenIn(painted.out), chosenIn(now.out)];
  const kinds = kindByNumber(was);
  for (const { number, kind } of is.places)
    if (kinds.has(number)) expect(kind).toBe(kinds.get(number));
    else expect(number).toMatch(/^[A-Z]+-\d\d/);
  expect(is.numbers.status).toBe('frozen');
  expect(is.numbers.painted + is.numbers.idle.length).toBe(was.places.length);
  expect(is.places.length).not.toBe(was.places.length);

  const out = join(folder(), 'sheets');
  const [papers, report] = await Promise.all([
    run(['papers', file, '--out', out, '--only', 'flat-plan, lists']),
    run(['places', file]),
  ]);
  expect(report.out).toContain(`Painted numbers are kept on ${is.numbers.painted} panels`);
  expect(papers.out).toContain('Painted numbers are kept');
  expect(readFileSync(join(out, 'flat-plan.svg'), 'utf8')).toContain('Numbers as painted');
  const rows = readFileSync(join(out, 'places.csv'), 'utf8').trim().split('\n').slice(1);
  const numbers = rows.map((row) => row.split(',')[0]);
  expect([...numbers].sort()).toEqual(is.places.map(({ number }) => number).sort());
});

it('freezes other numbers only when the painted ones are forgotten', async () => {
  const file = copied();
  const freeze = (...more: string[]) => run(['places', file, '--freeze', ...more]);
  expect((await freeze('--arrangement', '3')).code).toBe(0);
  const first = JSON.parse(readFileSync(file, 'utf8')).places;
  expect((await freeze()).code).toBe(0);
  expect(JSON.parse(readFileSync(file, 'utf8')).places).toEqual(first);
  const refused = await freeze('--arrangement', '1');
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('--unfreeze');
  expect(JSON.parse(readFileSync(file, 'utf8')).places).toEqual(first);
  const anew = await freeze('--arrangement', '1', '--unfreeze');
  expect(anew.out).toContain('its numbers frozen');
  const second = JSON.parse(readFileSync(file, 'utf8')).places;
  expect(second.frozen.cut).toEqual(second.cut);
  expect(second.frozen.cut).not.toEqual(first.frozen.cut);
  const forgot = await run(['places', file, '--unfreeze']);
  expect(forgot.out).toContain('no longer frozen');
  const { frozen: _, ...plain } = second;
  expect(JSON.parse(readFileSync(file, 'utf8')).places).toEqual(plain);
  expect((await run(['places', file, '--unfreeze'])).out).toContain('No numbers were frozen');
});

it('says on every list and sheet where painted numbers could not be kept', async () => {
  const file = copied();
  await run(['places', file, '--arrangement', '3', '--freeze']);
  const project = JSON.parse(readFileSync(file, 'utf8'));
  project.places.frozen.cut = { places: 7, height: 1 };
  const changed = fileOf(JSON.stringify(project));
  const out = join(folder(), 'sheets');
  const [papers, places] = await Promise.all([
    run(['papers', changed, '--out', out, '--only', 'flat-plan']),
    run(['places', changed, '--json']),
  ]);
  expect(papers.code).toBe(0);
  expect(papers.out).toContain('NOT those on the panels');
  expect(readFileSync(join(out, 'flat-plan.svg'), 'utf8')).toContain('NOT those painted');
  expect(chosenIn(places.out).numbers).toMatchObject({ status: 'lost', painted: 0 });
});

it('keeps nothing in a spreadsheet', async () => {
  for (const option of ['--freeze', '--unfreeze'])
    expect((await run(['places', example('inches.csv'), option])).code).toBe(2);
  const ran = await run(['places', example('inches.csv'), '--keep']);
  expect(ran.code).toBe(2);
  expect(ran.err).toContain('expected a project file');
  expect(existsSync(`${example('inches.csv')}.previous`)).toBe(false);
});
