import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { example, fileOf, folder, type Ran, run } from './run.ts';

const demo = example('demo/project.json');
const project = JSON.parse(readFileSync(demo, 'utf8'));

const site = {
  loads: { wind: { as: 'gust', speed: 20 }, panelMass: 9, groundSnow: 500 },
  ground: {
    soil: { kind: 'loam', firm: true, wet: false },
    anchor: { type: 'lawn stake' },
    levels: [
      {
        method: 'laser',
        readings: Array.from({ length: 20 }, (_, i) => ({ at: i + 1, reading: 1 + 0.001 * i })),
      },
    ],
  },
  stages: { propBears: 3000, hubBears: 8000 },
  parts: {
    panel: { material: 'fibreglass', thickness: 0.004, strength: 2e7 },
    bolt: { thread: '5/16-18', grade: 'SAE J429 Gr 5' },
  },
};

/** The demo on a site; sections of it changed. */
const onSite = (changed: Partial<typeof site> | object = {}): string =>
  fileOf(JSON.stringify({ ...project, ...site, ...changed }));

const ground = (file: string, ...options: string[]): Promise<Ran> =>
  run(['ground', file, ...options]);

describe('shellraise ground', () => {
  it('stakes out the base and says what is not known, on a file that says nothing of the site', async () => {
    const { parts: _p, loads: _l, ground: _g, stages: _s, ...bare } = project;
    const doc = JSON.parse((await ground(fileOf(JSON.stringify(bare)), '--json')).out);
    expect(doc.base.hubs).toHaveLength(20);
    expect(doc.stakeOut.polar).toHaveLength(20);
    expect(doc.stakeOut.tape.checks.length).toBeGreaterThan(20);
    expect(doc.loads).toMatchObject({ wind: null, drag: null, weight: 0 });
    expect(doc.anchors.status).toBe('unknown');
    expect(doc.anchors.why[0].path).toBe('loads.wind');
    expect(doc).toMatchObject({ shims: null, stage: null });
    expect(doc.stability.buckling).toMatchObject({
      status: 'not reckoned',
      why: expect.stringMatching(/^nobody said what the parts are/),
    });
    const { out } = await ground(fileOf(JSON.stringify(bare)));
    expect(out).toContain('No design wind is entered');
    expect(out).toContain('No levels are entered');
    expect(out).toContain('Not reckoned: nobody said what the parts are');
  });

  it('ends with 1 where a stage does not stand, with its place and the props that it needs', async () => {
    const json = await ground(demo, '--stage', '120', '--json');
    expect(json.code).toBe(1);
    const { stage, stability, cautions } = JSON.parse(json.out);
    expect(stability).toMatchObject({ seams: 'snug', swing: { slow: false } });
    expect(stability.buckling.real.least).toBeGreaterThan(1);
    expect(stability.buckling.mode[stability.buckling.hub]).toHaveLength(3);
    expect(stage.stability.gust).toBe(stage.answer.bears.stopWork.gust.value);
    expect(stage.stability.buckling.real.least).toBeLessThan(1);
    expect(stage.stability.snapThrough.status).toBe('snaps');
    expect(stage).toMatchObject({ number: 120, of: 160, answer: { status: 'needs props' } });
    expect(stage.answer.movements).toBeGreaterThan(0);
    expect(stage.answer.moving.length).toBeGreaterThan(0);
    expect(stage.answer.props.length).toBeGreaterThan(0);
    expect(stage.answer.bears.stopWork.gust.value).toBeLessThanOrEqual(11.6);
    expect(stage.answer.bears.limits.map(({ what }: { what: string }) => what).sort()).toEqual([
      'anchor',
      'hub',
      'panel',
      'prop',
      'seam',
    ]);
    expect(cautions.join()).toMatch(/licensed engineer/);
    const text = await run(['ground', demo, '--stage', '120'], { env: { COLUMNS: '80' } });
    expect(text.out).toMatch(/wind presses .* wind lifts .* sideways/);
    expect(text.out.replace(/\s+/g, ' ')).toMatch(
      /Buckling and swing of stage 120 .*a real shell may buckle at 0\.\d+ to 1\.\d+ times.*a real one sooner.*Swing: \d\.\d times a second.*It may fold in that load/,
    );
    expect(text.out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
  });

  it('plans anchors, shims and loads where the site is entered; 0 where all that is known holds', async () => {
    const file = onSite();
    const [json, text] = await Promise.all([
      ground(file, '--json'),
      run(['ground', file, '--stage', '160', '--tonight', '5'], { env: { COLUMNS: '80' } }),
    ]);
    expect(json.code).toBe(0);
    const doc = JSON.parse(json.out);
    expect(doc.anchors.status).toBe('planned');
    expect(doc.anchors.hubs).toHaveLength(20);
    expect(doc.loads.wind.value).toBeGreaterThan(200);
    expect(doc.loads.snow.length).toBeGreaterThan(0);
    expect(doc.shims.shims).toHaveLength(20);
    expect(
      Math.max(...doc.shims.shims.map((one: { thickness: number }) => one.thickness)),
    ).toBeCloseTo(0.019, 3);
    expect(text.code).toBe(0);
    expect(text.out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
    expect(text.out).toContain('It stands');
    expect(text.out).toMatch(/Stop work at a gust of [\d.]+ m\/s/);
    expect(text.out).toMatch(/common practice: /);
    expect(text.out).toMatch(/seam +(\d|beyond)/);
    expect(text.out).toMatch(/hub +(\d|beyond)/);
    expect(text.out).toContain('it holds by all that is known');
    const flat = text.out.replace(/\s+/g, ' ');
    expect(flat.match(/shared as if all sides/g)).toHaveLength(2);
    expect(flat).toContain('Anchors: stake 25 mm × 0.9 m, as many at each hub as the plan has.');
    expect(text.out).toMatch(/Caution\. [^.]*no design\s+approval/);
  }, 120_000);

  it('tells lift and drag in the air that is entered, not in another', async () => {
    const overrides = [{ number: 'airDensity', value: 1, reason: 'a warm site at 1,800 m' }];
    const file = onSite({ loads: { ...site.loads, overrides } });
    const [json, text] = await Promise.all([
      ground(file, '--stage', '8', '--json'),
      run(['ground', file, '--stage', '8'], { env: { COLUMNS: '400' } }),
    ]);
    const { uplift, stopWork } = JSON.parse(json.out).stage.answer.bears;
    const lift = (density: number): string =>
      `lift up to ${(uplift.perPascal * 0.5 * density * stopWork.gust.value ** 2).toFixed(0)} N`;
    expect(text.out).toContain(lift(1));
    expect(text.out).not.toContain(lift(1.1));
  }, 120_000);

  it('ends with 1 where the anchors do not hold', async () => {
    const anchor = { type: 'bar', diameter: 0.01, depth: 0.3 };
    const weak = await ground(
      onSite({
        loads: { ...site.loads, wind: { as: 'gust', speed: 60 } },
        ground: { ...site.ground, anchor },
      }),
      '--json',
    );
    expect(weak.code).toBe(1);
    expect(JSON.parse(weak.out).anchors.status).toBe('too much asked');
  });

  it('says that anchors are unknown in unknown soil, and reckons none', async () => {
    const file = onSite({ ground: { ...site.ground, soil: null } });
    const { anchors } = JSON.parse((await ground(file, '--json')).out);
    const night = await ground(file, '--stage', '160', '--tonight', '50');
    expect(night.out.replace(/\s+/g, ' ')).toContain(
      'may GIVE WAY: first the hub that is not tied.',
    );
    expect(anchors.status).toBe('unknown');
    expect(JSON.stringify(anchors.why)).toMatch(/soil/);
  });

  it('ends with 2 for bad input, naming what was found and what was allowed', async () => {
    const cases: [Promise<Ran>, RegExp][] = [
      [ground(demo, '--stage', '161'), /--stage: found 161, expected 1 to 160/],
      [ground(demo, '--stage', '0'), /whole number from 1 up/],
      [ground(demo, '--tonight', '12'), /expected --stage as well/],
      [ground(demo, '--stage', '12', '--tonight', 'gale'), /0 to 115/],
      [ground(onSite({ loads: { wind: { as: 'gust', speed: 0 } } })), /loads\.wind\.speed/],
      [
        ground(
          onSite({
            ground: { levels: [{ method: 'laser', readings: [{ at: 77, reading: 1.2 }] }] },
          }),
        ),
        /levels\[0\]\.readings\[0\]\.at: found base hub 77, expected 1 to 20/,
      ],
      [
        ground(onSite({ ground: { survey: [{ what: 'chord', from: 1, to: 11, length: 9.5 }] } })),
        /survey\[0\]: found a chord of 9\.5 m, expected over 0, at most 7\.\d+ m: the sphere’s diameter/,
      ],
    ];
    for (const [ran, message] of cases) {
      const { code, out, err } = await ran;
      expect(err).toMatch(message);
      expect({ code, out }).toEqual({ code: 2, out: '' });
    }
  });

  it('writes every sheet that the entries allow, and tells which hub keeps course 2 from starting', async () => {
    const out = folder();
    const hubs = Array.from({ length: 20 }, (_, i) => i + 1);
    const survey = hubs.flatMap((hub) => [
      { what: 'radius', hub, length: hub === 4 ? 3.68 : 3.65 },
      { what: 'level', hub, height: 0 },
    ]);
    const levels = [{ method: 'laser', readings: [{ at: 1, reading: 1.2 }] }];
    const beam = { ...site.ground, survey, ringBeam: { width: 0.1, stock: 4.8 } };
    const [written, part] = await Promise.all([
      ground(onSite({ ground: beam }), '--out', out, '--date', '2026-05-01'),
      ground(onSite({ ground: { ...site.ground, levels } })),
    ]);
    const names = readdirSync(out);
    expect(written.code).toBe(1);
    expect(written.out).toMatch(
      /NO GO: move hubs before course 2\.\n\nHubs to move[^\n]*\n- hub 4: 2\d\.\d mm inwards/,
    );
    expect(part.out).toContain('the level is still to be read at hub 2, 3,');
    for (const one of ['stake-out', 'shims', 'ring-beam', 'survey'])
      expect(names.some((name) => name.startsWith(one))).toBe(true);
    for (const name of names) {
      expect(written.out).toContain(name);
      expect(readFileSync(join(out, name), 'utf8')).toContain('2026-05-01');
    }
  });
});
