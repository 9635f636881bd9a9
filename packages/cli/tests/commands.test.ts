import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { netShell } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { example, fileOf, folder, run, runAlone, runOnce } from './run.ts';

const demo = example('demo/project.json');
const commands = ['pile', 'shape', 'places', 'takeoff', 'ground'] as const;

describe.each(commands)('shellraise %s', (command) => {
  it('prints one JSON document and nothing else with --json, in a process of its own too', async () => {
    const ran = await runOnce(command, demo, '--json');
    expect(ran.err).toBe('');
    expect(typeof JSON.parse(ran.out)).toBe('object');
    expect(ran.code).toBe(0);
    const own = example('hex-and-pent.json');
    expect(await runAlone([command, own, '--json'])).toEqual(await run([command, own, '--json']));
  });

  it('prints plain text where there is no terminal: no colour, no bar', async () => {
    const ran = await runOnce(command, demo);
    expect(ran.err).toBe('');
    expect(ran.out).not.toContain('\u001b');
    expect(ran.out.length).toBeGreaterThan(100);
  });

  it('shows lengths in millimetres, or in inches when asked', async () => {
    const [metric, inch] = await Promise.all([
      runOnce(command, demo),
      run([command, demo, '--lengths', 'inch']),
    ]);
    expect(metric.out).toMatch(/\d mm|\d m\b/);
    expect(inch.out).toMatch(/\d"/);
    // Apart from the warning of mixed threads, whose source is in millimetres.
    expect(inch.out.replace(/\d mm apart/g, '')).not.toMatch(/\d mm\b/);
  });

  it('has help with an example', async () => {
    const { out, code } = await run([command, '--help']);
    expect(out).toContain(`$ shellraise ${command} examples/`);
    expect(code).toBe(0);
  });
});

describe('shellraise shape', () => {
  it('ends with 1, no shapes and reasons where nothing closes', async () => {
    const file = fileOf(
      JSON.stringify({ shellraise: 1, pile: { kinds: [{ id: 'a', sides: [1, 1.31, 0.83] }] } }),
    );
    const json = await run(['shape', file, '--json']);
    expect(json.code).toBe(1);
    expect(JSON.parse(json.out)).toMatchObject({
      shapes: [],
      reasons: expect.arrayContaining([expect.any(String)]),
    });
    const text = await run(['shape', file]);
    expect(text.code).toBe(1);
    expect(text.out).toMatch(/close into no shell/);
    const places = await run(['places', file]);
    expect(places.code).toBe(1);
    expect(places.err).toMatch(/close into no shell/);
  });

  it('says the same twice, whatever the order of the kinds and the turn of their sides', async () => {
    const file = JSON.parse(readFileSync(example('one-handed.json'), 'utf8'));
    const kinds: { sides: number[] }[] = file.pile.kinds;
    const other = [...kinds].reverse().map((kind) => ({
      ...kind,
      sides: [...kind.sides.slice(1), kind.sides[0]],
    }));
    const pile = { ...file.pile, kinds: other };
    const [a, b, c] = await Promise.all([
      run(['shape', example('one-handed.json'), '--json']),
      runAlone(['shape', example('one-handed.json'), '--json']),
      run(['shape', fileOf(JSON.stringify({ ...file, pile })), '--json']),
    ]);
    expect(a.out).toBe(b.out);
    const [first, turned] = [JSON.parse(a.out).shapes, JSON.parse(c.out).shapes];
    expect(turned).toHaveLength(first.length);
    expect(turned[0].radius).toBeCloseTo(first[0].radius, 9);
    expect(turned[0].probability).toBeCloseTo(first[0].probability, 9);
  });

  it('finds the hub allowance with the shape where nobody knows it, and is less sure of the radius', async () => {
    const file = JSON.parse(readFileSync(demo, 'utf8'));
    const unknown = { ...file, pile: { ...file.pile, hubAllowance: null } };
    const [known, found] = await Promise.all([
      runOnce('shape', demo, '--json'),
      run(['shape', fileOf(JSON.stringify(unknown)), '--json']),
    ]);
    const [a, b] = [JSON.parse(known.out).shapes[0], JSON.parse(found.out).shapes[0]];
    expect(b.places).toHaveLength(320);
    expect(b.radiusSd).toBeGreaterThan(5 * a.radiusSd);
    expect(Math.abs(b.radius - 3.65)).toBeLessThan(3 * b.radiusSd);
    const sides = Object.values<number[]>(b.fittedSides).flat();
    expect(Math.max(...sides)).toBeGreaterThan(1.182 + 0.002);
  });

  it('is ended at once by an interrupt, with 130 and nothing written', async () => {
    // A net of 1280 places without one of its kinds closes into nothing, which takes 2.6 s to find
    // out where nothing else runs: the interrupt comes long before, and long after the start.
    const net = netShell({ solid: 'icosahedron', b: 8, c: 0, division: 'equal chords' }, 2.7);
    const kinds = net.kinds.flatMap(({ sides }, i) => (i === 3 ? [] : [{ id: `${i + 1}`, sides }]));
    const slow = fileOf(JSON.stringify({ shellraise: 1, pile: { kinds } }));
    const out = join(folder(), 'out');
    const ran = await runAlone(['papers', slow, '--out', out], { interruptAfter: 700 });
    expect(ran).toEqual({ code: 130, out: '', err: 'Interrupted; nothing was written.\n' });
    expect(existsSync(out)).toBe(false);
  });
});

describe('shellraise places and takeoff', () => {
  it('carry a caution beside what could be taken for permission', async () => {
    for (const command of ['places', 'takeoff', 'ground', 'fitout'])
      expect((await runOnce(command, demo)).out.match(/Caution\./g)).toHaveLength(1);
  });

  it('name what each near miss lacks within the line, kind and number together', async () => {
    const lines = (await runOnce('places', demo)).out.split('\n');
    const near = lines.slice(lines.findIndex((line) => line.startsWith('Taller, but')));
    expect(near.filter((line) => /^ {7}lacks kind \S+: \d/.test(line))).toHaveLength(8);
    expect(lines.filter((line) => line.length > 96)).toEqual([]);
    expect(lines.filter((line) => / kind$| kind \S+:$/.test(line))).toEqual([]);
  });

  it('say what is taken for granted where the file has no take-off settings', async () => {
    const bare = await run(['takeoff', example('hex-and-pent.json'), '--json']);
    const set = await runOnce('takeoff', demo, '--json');
    expect(JSON.parse(bare.out).assumes.join()).toContain('common practice');
    expect(JSON.parse(set.out).assumes).toEqual([]);
    const { out } = await run(['takeoff', example('hex-and-pent.json')]);
    expect(out).toContain('no prices are known');
    expect(out).not.toContain('0.00');
  });

  it('agree with the count formulas of a dome', async () => {
    const { out } = await runOnce('takeoff', demo, '--json');
    const { account } = JSON.parse(out);
    const { places: f, openSides: b } = account;
    expect(account.agrees).toBe(true);
    expect(account.seams.counted).toBe((3 * f - b) / 2);
    expect(account.hubs.counted).toBe(1 + (f + b) / 2);
  });

  it('warn of threads that pass for each other', async () => {
    const { out } = await runOnce('takeoff', demo);
    expect(out).toMatch(/5\/16-18 UNC/);
    expect(out.replace(/\s+/g, ' ')).toMatch(/M8 × 1\.25.*5\/16-18|5\/16-18.*M8 × 1\.25/);
  });
});

describe('shellraise papers', () => {
  it('writes the drawings and lists, the same bytes for the same day', async () => {
    const [a, b] = [join(folder(), 'a'), join(folder(), 'b')];
    const only = ['--date', '2026-05-01', '--only', 'flat-plan, take-off, stake-out, lists'];
    const run1 = await run(['papers', demo, '--out', a, ...only, '--json']);
    await runAlone(['papers', demo, '--out', b, ...only]);
    expect(run1.code).toBe(0);
    const names = readdirSync(a).sort();
    expect(names).toEqual([...JSON.parse(run1.out).files].sort());
    for (const name of ['flat-plan.svg', 'stake-out.pdf', 'take-off.csv'])
      expect(names).toContain(name);
    for (const name of names)
      expect(readFileSync(join(a, name)).equals(readFileSync(join(b, name))), name).toBe(true);
  });

  it('makes the crew book alone: a PDF with its pages, no list', async () => {
    const out = folder();
    const only = ['--only', 'crew-book', '--as', 'pdf', '--paper', 'Letter', '--json'];
    const ran = await run(['papers', example('hex-and-pent.json'), '--out', out, ...only]);
    const told = JSON.parse(ran.out);
    expect(told).toMatchObject({ files: ['crew-book.pdf'], missed: [], letters: [] });
    expect(told.sets[0].pages).toBeGreaterThan(10);
    expect(readFileSync(join(out, 'crew-book.pdf')).toString('latin1')).toContain('%PDF-1.');
  });

  it('refuses a set that is not there, with those that are', async () => {
    const ran = await run(['papers', demo, '--out', folder(), '--only', 'crewbook']);
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/--only: found "crewbook", expected some of .*crew-book.*lists/);
  });

  it('draws the upper courses of a nearly whole ball on sheets of their own, no dome’s', async () => {
    const filesOf = async (name: string): Promise<string[]> => {
      const sets = 'flat-plan-upper, flat-plan-upper-from-inside';
      const ran = await run([
        ...['papers', example(name), '--out', folder(), '--json', '--only', sets],
      ]);
      return JSON.parse(ran.out).files;
    };
    const [ball, dome] = await Promise.all([
      filesOf('one-handed.json'),
      filesOf('demo/project.json'),
    ]);
    expect(ball).toContain('flat-plan-upper.svg');
    expect(ball).toContain('flat-plan-upper-from-inside.svg');
    expect(dome.filter((name) => name.includes('upper'))).toEqual([]);
  });
});

describe('shellraise demo', () => {
  it('does the whole job and leaves the papers in out/', async () => {
    const cwd = folder();
    const ran = await runAlone(['demo'], { cwd });
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    for (const words of ['orchard shell', 'radius', 'What can stand', 'Take-off', 'Written to out'])
      expect(ran.out).toContain(words);
    expect(existsSync(join(cwd, 'out', 'flat-plan.svg'))).toBe(true);
    // All papers, and the search for an order of work: fifteen seconds of an idle machine.
  }, 180_000);
});

describe('a narrow terminal', () => {
  it.each(commands)('of 80 columns holds every line of shellraise %s', async (command) => {
    for (const file of [demo, example('hex-and-pent.json')])
      for (const lengths of ['metric', 'inch']) {
        const ran = await run([command, file, '--lengths', lengths], { env: { COLUMNS: '80' } });
        expect(ran.out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
      }
  });
});

describe('completion', () => {
  it.each(['bash', 'zsh', 'fish'])('has a script for %s', async (shell) => {
    const ran = await run(['complete', shell]);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('shellraise');
  });

  it('offers commands, options and the values of options', async () => {
    expect((await run(['complete', '--', 'ta'])).out).toContain('takeoff');
    expect((await run(['complete', '--', 'shape', '--'])).out).toContain('--json');
    expect((await run(['complete', '--', 'shape', '--lengths', ''])).out).toContain('inch');
  });
});

describe('help', () => {
  it('names every command and shows examples', async () => {
    const { out, code } = await runAlone(['--help']);
    expect(code).toBe(0);
    for (const command of [...commands, 'papers', 'demo', 'complete'])
      expect(out).toContain(command);
    expect(out).toContain('Examples:');
  });
});

describe('shellraise places on a pile that closes into four shapes', () => {
  it('says that the half ball is the same in all of them', async () => {
    const [text, json] = await Promise.all([
      runOnce('places', demo),
      runOnce('places', demo, '--json'),
    ]);
    expect(text.out).toContain('the same in all 4 shapes');
    expect(JSON.parse(json.out).chosen.shapes).toEqual([1, 2, 3, 4]);
  });

  it('and that a taller one is not', async () => {
    const ran = await run(['places', demo, '--arrangement', '133', '--json']);
    expect(JSON.parse(ran.out).chosen.shapes).toEqual([1]);
  });
});
