import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { example, fileOf, run } from './run.ts';

const demo = example('demo/project.json');
const project = JSON.parse(readFileSync(demo, 'utf8'));

/** A tetrahedron, or what is left of one, as an STL file. */
function stl(facets: number): string {
  const corners = ['0 0 0', '400 0 0', '0 400 0', '0 0 400'];
  const turns = ['021', '013', '123', '203', '021'].slice(0, facets);
  const facet = (turn: string): string =>
    `facet normal 0 0 0 outer loop ${[...turn].map((i) => `vertex ${corners[Number(i)]}`).join(' ')} endloop endfacet`;
  const file = join(mkdtempSync(join(tmpdir(), 'fitout-')), 'bracket.stl');
  writeFileSync(file, `solid x ${turns.map(facet).join(' ')} endsolid x`);
  return file;
}

const said = {
  door: ['2-08', '2-09', '2-10', '1-08', '1-09', '1-10'],
  carry: [{ name: 'dish', shape: { form: 'dish', diameter: 1.8, depth: 0.3 } }],
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
  doorFrame: { width: 0.05, depth: 0.1, young: 1e10, allowable: 5e6 },
  measured: [{ frequency: 1_420_405_750, lossDb: 0.3 }],
  horizon: { skylineDeg: [0, 0, 25, 0] },
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
    const ran = await fitout(withFitout({}), '--pass', 'all', '--json');
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
    expect(doc.upkeep.down).toHaveLength(160);
    expect(doc.use.focus).toBeGreaterThan(0);
    expect(doc.door.advice.cutOrder).toHaveLength(6);
    expect(doc.door.frame.stiffness.kept).toBeLessThan(0.5);
    expect(doc.door.frame.sag.open).toBeGreaterThan(doc.door.frame.sag.whole);
    const { props, bears, snow } = doc.door.frame.bracing;
    expect(snow).toBe(800);
    expect(props).toHaveLength(doc.door.advice.props.length);
    expect(props[0].push).toBeGreaterThan(0);
    expect(bears.map(({ part }: { part: string }) => part)).toEqual(['header', 'jamb']);
    expect(bears[0].used).toBeGreaterThan(0);
    expect(doc.signal[0].measured).toBe(0.3);
    expect(doc.horizon.filter(({ by }: { by: string }) => by === 'skyline').length).toBeGreaterThan(
      9,
    );
    expect(doc.passes).toMatchObject([{ name: 'dish', status: 'passes', placed: 154 }]);
    expect(doc.cautions).toHaveLength(1);
  });

  it('says it in words, within the line, and takes options before the file', async () => {
    const ran = await fitout(
      withFitout({}),
      '--frequency',
      '4 GHz',
      '--dish',
      '3.4 m',
      '--measured',
      '4 GHz 0.9 dB',
    );
    expect(ran.code).toBe(1);
    expect(ran.out).toMatch(/A dish of 3.400 m .* does NOT swing/);
    expect(ran.out).toMatch(/Sky at 4.000 GHz/);
    expect(ran.out).toMatch(/without a frame the shell keeps \d+ % of its stiffness/);
    expect(ran.out).toMatch(/Taking down/);
    expect(ran.out).toMatch(/the props push \d+ N, .* cut in\s+still air/);
    expect(ran.out).toMatch(/the header bears a pu\w+ of \d+ N and \d+ N·m; that wants/);
    expect(ran.out).toMatch(/Where a loss was measured, square on/);
    expect(ran.out).not.toMatch(/NaN|undefined|Infinity/);
    expect(ran.out.split('\n').filter((line) => line.length > 96)).toEqual([]);
  });

  it('finds the latest moment at which a thing passes the shell while it is built', async () => {
    const carry = [{ name: 'crate', shape: { form: 'box', size: [2.6, 2.2, 1.8] } }];
    const file = withFitout({ carry, door: [], dish: null, frequencies: [] });
    const ran = await fitout(file, '--pass', 'all', '--last', '--json');
    const [last] = JSON.parse(ran.out).last;
    expect([ran.code, ran.err, last.name, last.panels]).toEqual([0, '', 'crate', 160]);
    expect(last.last).toMatchObject({ status: 'passes', placed: last.after.placed - 1 });
    expect(last.last.newest).toMatch(/^\d-\d\d$/);
    const told = await fitout(file, '--pass', 'crate', '--last');
    expect(told.out).toMatch(/crate: the latest way that was found is with \d+ of\s+160 panels/);
    expect((await fitout(file, '--last')).err).toMatch(/--last: only with --pass/);
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
    expect(ran.err).toMatch(/fitout.dish.diameter: found 9 m.*less than the shell’s 7.3/);
    expect(ran.err).toMatch(/fitout.leaks\[0\].between: found 1-01 and 9-99/);
  });

  it('reads a thing from an STL file, and asks for its unit', async () => {
    const small = withFitout({ dish: null, frequencies: [] });
    const read = await fitout(small, '--pass', stl(4), '--pass-unit', 'mm', '--json');
    expect([read.code, read.err]).toEqual([0, '']);
    expect(JSON.parse(read.out).passes[0]).toMatchObject({
      name: 'bracket.stl',
      status: 'passes',
      roughly: false,
    });
  });

  it.each([
    [['--pass', 'piano'], /--pass: found "piano", expected "all", .*dish/],
    [['--door', '9-99'], /fitout.door: found 9-99, expected numbers of places/],
  ])('refuses %j by what the file has', async (options, words) => {
    const ran = await fitout(withFitout({}), ...options);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(words);
  });

  it('refuses an STL file without its unit, or not closed, before it seeks the shell', async () => {
    const unasked = await fitout(demo, '--pass', stl(4));
    expect(unasked.err).toMatch(/--pass-unit: found none for .*bracket.stl, expected one of mm/);
    const open = await fitout(demo, '--pass', stl(5), '--pass-unit', 'mm');
    expect([unasked.code, open.code]).toEqual([2, 2]);
    expect(open.err).toMatch(/3 edges that are not shared/);
    expect((await fitout(demo, '--pass-unit', 'mm')).err).toMatch(/--pass-unit: only with --pass/);
  });

  it.each([
    ['--wall', 'abs thick', /--wall: found "abs thick"/],
    ['--frequency', '1 kHz', /30 MHz to 100 GHz/],
    ['--dish', 'large', /--dish: found large/],
    ['--measured', '4 GHz', /--measured: found "4 GHz", expected a frequency/],
    ['--measured', '1 kHz 1 dB', /30 MHz to 100 GHz and 0 to 40 dB/],
    ['--skyline', '3, 95', /--skyline: found "3, 95", expected 1 to 360 numbers of 0 to 89°/],
  ])('refuses %s "%s" before it seeks the shell', async (option, value, words) => {
    const ran = await fitout(demo, option, value);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toMatch(words);
  });
});
