import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example, fileOf, run } from './run.ts';

const demo = example('demo/project.json');
const project = JSON.parse(readFileSync(demo, 'utf8'));

const said = {
  wall: [{ material: 'glass polyester', thickness: 0.003 }],
  frequencies: [1_420_405_750],
  dish: { diameter: 2.4 },
  systemK: 80,
  paint: { coats: 1, dryFilm: 1e-4, year: 2020 },
  seal: { joint: 0.01, tapeRoll: 15 },
  weather: Array.from({ length: 12 }, (_, h) => ({
    at: `2026-06-12T${String(h + 6).padStart(2, '0')}:00`,
    temperatureC: 18,
    humidity: 0.6,
    rainMm: h === 11 ? 1 : 0,
  })),
  leaks: [{ between: ['1-01', '1-02'], seen: 'drip by the door' }],
  standsFrom: '2026-06-14',
  use: { boxes: [{ name: 'bed', length: 2, depth: 0.9, height: 0.6 }] },
};
const withFitout = (fitout: object): string =>
  fileOf(
    JSON.stringify({ ...project, loads: { groundSnow: 800 }, fitout: { ...said, ...fitout } }),
  );
const fitout = (file: string, ...options: string[]) =>
  run(['fitout', file, '--step', '10', ...options]);

describe('shellraise fitout', () => {
  it('answers all that the file asks in one document', async () => {
    const ran = await fitout(withFitout({}), '--json');
    const doc = JSON.parse(ran.out);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(doc.swing.swings).toBe(true);
    expect(doc.swing.best.largest).toBeGreaterThan(doc.swing.largest);
    expect(doc.signal[0].sky.points.length).toBeGreaterThan(200);
    expect(doc.signal[0].worst.most.db).toBeLessThan(doc.signal[0].best.db);
    expect(doc.seal.lines.map(({ item }: { item: string }) => item)).toEqual([
      'tape',
      'sealant',
      'backer rod',
    ]);
    expect(doc.seal.windows).toEqual([{ from: 0, to: 7 }]);
    expect(doc.leaks[0].along).toBe(0);
    expect(doc.upkeep.round).toHaveLength(160);
    expect(doc.upkeep.snow).toHaveLength(4);
    expect(doc.use.boxes[0].room.out).toBeGreaterThan(1);
    expect(doc.cautions).toHaveLength(1);
  });

  it('says it in words, within the line, and takes options before the file', async () => {
    const ran = await fitout(withFitout({}), '--frequency', '4 GHz', '--dish', '3.4 m');
    expect(ran.code).toBe(1);
    expect(ran.out).toMatch(/A dish of 3.400 m .* does NOT swing/);
    expect(ran.out).toMatch(/Sky at 4.000 GHz/);
    expect(ran.out).not.toMatch(/NaN|undefined|Infinity/);
    expect(ran.out.split('\n').filter((line) => line.length > 96)).toEqual([]);
  });

  it('names every fault of a file at once, with what was allowed', async () => {
    const wall = [
      { material: 'cheese', thickness: 0.01 },
      { material: 'abs', thickness: 3 },
    ];
    const ran = await fitout(withFitout({ wall, frequencies: [10] }));
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(/fitout.wall\[0\].material: found "cheese", expected one of glass/);
    expect(ran.err).toMatch(/fitout.wall\[1\].thickness: found 3/);
    expect(ran.err).toMatch(/fitout.frequencies\[0\]: found 10/);
  });

  it('refuses a dish larger than the shell and a seam that is not there', async () => {
    const ran = await fitout(
      withFitout({ dish: { diameter: 9 }, leaks: [{ between: ['1-01', '9-99'] }] }),
    );
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(/fitout.dish.diameter: found 9 m.*less than the shell's 7.3/);
    expect(ran.err).toMatch(/fitout.leaks\[0\].between: found 1-01 and 9-99/);
  });

  it.each([
    ['--wall', 'abs thick', /--wall: found "abs thick"/],
    ['--frequency', '1 kHz', /30 MHz to 100 GHz/],
    ['--dish', 'large', /--dish: found large/],
  ])('refuses %s "%s" before it seeks the shell', async (option, value, words) => {
    const ran = await fitout(demo, option, value);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(words);
  });
});
