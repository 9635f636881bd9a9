import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileOf, folder, run } from './run.ts';

/** Twenty panels all alike, kept as a shell whose datum is turned on by one place of course 1. */
async function ballWith(openings: boolean): Promise<string> {
  const file = fileOf(
    JSON.stringify({
      shellraise: 1,
      pile: {
        measuredAlong: 'hubs',
        hubAllowance: 0,
        readingSd: 0.001,
        kinds: [{ id: '1', sides: [1.6, 1.6, 1.6], good: 20 }],
      },
    }),
  );
  const kept = await run(['places', file, '--arrangement', '1', '--keep']);
  expect([kept.code, kept.err]).toEqual([0, '']);
  const project = JSON.parse(readFileSync(file, 'utf8'));
  project.places.datumTurn = (2 * Math.PI) / 5;
  if (openings) project.places.openings = [{ use: 'door', places: ['1-01'] }];
  writeFileSync(file, JSON.stringify(project));
  return file;
}

/** The sheets of a set, as text. */
async function sheetsOf(file: string, set: string): Promise<string> {
  const out = folder();
  const ran = await run(['papers', file, '--out', out, '--as', 'svg', '--only', set, '--json']);
  expect([ran.code, ran.err]).toEqual([0, '']);
  const pages: readonly string[] = JSON.parse(ran.out).files;
  return pages.map((name) => readFileSync(join(out, name), 'utf8')).join(' ');
}

/** Numbers of places on the sheets of a set. */
const numbersOn = async (file: string, set: string): Promise<ReadonlySet<string>> =>
  new Set((await sheetsOf(file, set)).match(/\b\d-\d\d\b/g) ?? []);

describe('a place left open', () => {
  it('is found by its number before the datum was turned, and bears no label, line, stack or entry', async () => {
    const [whole, open] = [await ballWith(false), await ballWith(true)];
    const gone = async (set: string): Promise<string[]> => {
      const left = await numbersOn(open, set);
      return [...(await numbersOn(whole, set))].filter((number) => !left.has(number));
    };
    const labels = await gone('panel-labels');
    expect(labels).toHaveLength(1);
    expect(labels).not.toEqual(['1-01']);
    expect(await gone('match-marks')).toEqual(labels);
    // Hubs keep their names: those that stand round the opening have its number in them.
    const seam = new RegExp(`${labels[0]}/|/${labels[0]}`);
    expect(await sheetsOf(whole, 'record-on-paper')).toMatch(seam);
    expect(await sheetsOf(open, 'record-on-paper')).not.toMatch(seam);
    expect((await numbersOn(open, 'storage')).has(labels[0] as string)).toBe(false);

    const record = join(folder(), 'record.jsonl');
    await run(['dossier', open, '--invent', record, '--json']);
    const { panels } = JSON.parse((await run(['dossier', open, '--record', record, '--json'])).out);
    const places: string[] = panels.map(({ place }: { place: string }) => place);
    expect(places).not.toContain(labels[0]);
    expect(places.length).toBeGreaterThan(5);
  });
});
