import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { example, fileOf, run, runOnce } from './run.ts';

const demo = example('demo/project.json');

interface FitDoc {
  readonly status: string;
  readonly proved: boolean;
  readonly outlines: number;
  readonly conflict: readonly string[];
  readonly fits: readonly {
    readonly height: number;
    readonly bought: number;
    readonly mended: number;
    readonly gaps: number;
    readonly places: readonly { readonly kind: string; readonly source: string }[];
  }[];
}

describe('places --fit', () => {
  it('solves the wishes of who said nothing, with a proof, for the demo', async () => {
    const doc = JSON.parse((await runOnce('places', demo, '--fit', '--json')).out) as FitDoc;
    expect(doc).toMatchObject({ status: 'fitted', proved: true });
    expect(doc.fits[0]).toMatchObject({ bought: 0, mended: 0, gaps: 0 });
    expect(doc.fits[0]?.height).toBeCloseTo(3.65, 2);
    for (const fit of doc.fits) {
      const count = (source: string): number =>
        fit.places.filter((place) => place.source === source).length;
      expect([count('bought'), count('mended'), count('open')]).toEqual([
        fit.bought,
        fit.mended,
        fit.gaps,
      ]);
    }
  });

  it('says what it was asked, that it is proved, and what it does not say', async () => {
    const { out, code } = await runOnce('places', demo, '--fit');
    expect(code).toBe(0);
    expect(out).toContain('fewest bought, tallest, fewest mended');
    expect(out).toContain('Proved:');
    expect(out).toContain('Caution.');
  });

  it('names wishes that stand against each other, with exit code 1', async () => {
    const project = JSON.parse(readFileSync(demo, 'utf8')) as object;
    const wishes = { leastHeight: 6, mostFloor: 2.5, flatBase: true, mostBought: 400 };
    const file = fileOf(JSON.stringify({ ...project, wishes }));
    const { out, code } = await run(['places', file, '--fit', '--json']);
    expect(code).toBe(1);
    const doc = JSON.parse(out) as FitDoc;
    expect(doc).toMatchObject({ status: 'conflict', fits: [] });
    expect(doc.conflict.length).toBeGreaterThan(0);
    expect(doc.conflict).not.toContain('mostBought');
  });
});

describe('places --broken', () => {
  it('takes a spare where there is one, and undoes nothing', async () => {
    const { out, code } = await run(['places', demo, '--broken', '2-03', '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      broken: '2-03',
      ways: [{ act: 'move', undone: 0, moves: [{ from: null, to: '2-03' }] }, { act: 'make' }],
    });
  });

  it('refuses a number that is no place, and says what one looks like', async () => {
    const { err, code } = await run(['places', demo, '--broken', '9-99']);
    expect(code).toBe(2);
    expect(err).toContain('--broken: found 9-99, expected a place number');
  });

  it('keeps the caution beside it', async () => {
    const { out } = await run(['places', demo, '--broken', '2-03', '--built', '3']);
    expect(out).toContain('115 of 160 panels are taken to be up');
    expect(out).toContain('Caution.');
  });
});

describe('places --second', () => {
  it('stands caps and rings of the leftovers, no more than there are', async () => {
    const { out, code } = await run(['places', demo, '--second', '--json']);
    expect(code).toBe(0);
    const doc = JSON.parse(out) as {
      left: Record<string, number>;
      second: { what: string; panels: number; lacks: number }[];
    };
    const panels = Object.values(doc.left).reduce((sum, n) => sum + n, 0);
    for (const one of doc.second) expect(one.panels - one.lacks).toBeLessThanOrEqual(panels);
    expect(new Set(doc.second.map(({ what }) => what))).toEqual(new Set(['cap', 'ring']));
  });
});

describe('places --second --out', () => {
  it('names and draws each second shell and both of the best split, and tells their rims', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'second-'));
    const asked = ['places', demo, '--second', '--out', folder, '--date', '2026-05-01'];
    const { out, code } = await run([...asked, '--json']);
    expect(code).toBe(0);
    const doc = JSON.parse(out) as {
      second: { use: string; rims: { inPlane: boolean; shims: number[] }[]; adds: number | null }[];
      split: { shells: { use: string }[] };
    };
    const files = readdirSync(folder).sort();
    expect(files.length).toBe(doc.second.length + 2);
    doc.second.forEach(({ use, rims }, i) => {
      expect(files).toContain(`second-${i + 1}-${use}.svg`);
      expect(rims.length).toBeGreaterThan(0);
    });
    expect(doc.second.some(({ adds }) => (adds ?? 0) > 0)).toBe(true);
    expect(files).toContain(`split-1-${doc.split.shells[0]?.use}.svg`);
  });
});

describe('places --door', () => {
  it('says where a door may be, the fewest panels first', async () => {
    const { out, code } = await run(['places', demo, '--door', '0.8 m x 1.8 m', '--json']);
    expect(code).toBe(0);
    const { openings } = JSON.parse(out) as { openings: { places: string[]; toBase: boolean }[] };
    expect(openings.length).toBeGreaterThan(1);
    expect(openings.every((one) => one.toBase)).toBe(true);
    expect(openings[0]?.places.length).toBeLessThanOrEqual(openings[1]?.places.length ?? 0);
  });

  it('says how much of the stiffness each leaves, the stiffest first where least harm counts', async () => {
    const { out } = await run([
      'places',
      demo,
      '--door',
      '0.9 m x 2 m',
      '--rank',
      'least harm',
      '--json',
    ]);
    const { openings, stiffnessFrom } = JSON.parse(out);
    expect(
      stiffnessFrom.some(
        ({ confirmation }: { confirmation: string }) => confirmation !== 'confirmed',
      ),
    ).toBe(true);
    const kept: number[] = openings
      .slice(0, 10)
      .map((one: { stiffnessKept: number }) => one.stiffnessKept);
    expect(kept.length).toBeGreaterThan(1);
    for (const one of kept) {
      expect(one).toBeGreaterThan(0.05);
      expect(one).toBeLessThan(0.95);
    }
    expect(kept).toEqual([...kept].sort((a, b) => b - a));
  });

  it('says no to a door that is larger than the shell, with exit code 1', async () => {
    const { out, code } = await run(['places', demo, '--door', '8 m x 2 m']);
    expect(code).toBe(1);
    expect(out).toContain('No door');
  });

  it('says where a round hatch may be, and where a thing passes, ranked as asked', async () => {
    const hatch = await run(['places', demo, '--hatch', '0.6 m', '--rank', 'in reach', '--json']);
    expect(hatch.code).toBe(0);
    const { openings } = JSON.parse(hatch.out) as { openings: { top: number; pitch: number }[] };
    expect(openings.length).toBeGreaterThan(1);
    for (let i = 1; i < openings.length; i++)
      expect(openings[i]?.top).toBeGreaterThanOrEqual((openings[i - 1]?.top ?? 0) - 1e-6);
    const section = '0 m, 0 m; 1.4 m, 0 m; 0.9 m, 0.5 m; 0.9 m, 1.5 m; 0.5 m, 1.5 m; 0.5 m, 0.5 m';
    const through = ['places', demo, '--section', section, '--wind', '90', '--rank'];
    const passage = await run([...through, 'away from wind']);
    expect(passage.code).toBe(0);
    expect(passage.out).toContain('off the wind');
    expect(passage.out).toMatch(/1[5-8]\d°/);
    for (const bad of ['0 m, 0 m; 1 m, 1 m', '0 m, 0 m; 1 m, 1 m; 1 m, 0 m; 0 m, 1 m']) {
      const refused = await run(['places', demo, '--section', bad]);
      expect([refused.code, refused.err.includes('--section: found')]).toEqual([2, true]);
    }
  });

  it('refuses a size without units', async () => {
    const { err, code } = await run(['places', demo, '--door', '1 x 2']);
    expect(code).toBe(2);
    expect(err).toContain('--door: found 1 x 2');
  });
});

describe('places --singles', () => {
  it('places each tagged panel once, on a place of its kind, closer than as they come', async () => {
    const { out, code } = await run(['places', demo, '--singles', '--json']);
    expect(code).toBe(0);
    const doc = JSON.parse(out) as {
      before: number;
      after: number;
      places: { kind: string; tag: string | null }[];
    };
    expect(doc.after).toBeLessThan(doc.before);
    const tags = doc.places.flatMap(({ tag }) => tag ?? []);
    expect(new Set(tags).size).toBe(tags.length);
    expect(tags.length).toBeGreaterThan(100);
  });
});

describe('places --account', () => {
  it('counts panels, seams, hubs and bolts twice, and they agree', async () => {
    const { out, code } = await run(['places', demo, '--account', '--json']);
    expect(code).toBe(0);
    const { account } = JSON.parse(out) as {
      account: { what: string; byFormula: number; byList: number; agrees: boolean }[];
    };
    expect(out).toContain('says nothing of what the shell bears');
    expect(account.map(({ what }) => what)).toEqual(['panels', 'seams', 'hubs', 'bolts']);
    expect(account.slice(0, 3).every(({ agrees }) => agrees)).toBe(true);
    expect(account.slice(0, 3).map(({ byList }) => byList)).toEqual([160, 230, 91]);
  });
});

describe('places --make', () => {
  it('tells shape, bevels and holes of a kind, and writes its drawing', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'make-'));
    const asked = ['places', demo, '--make', '1', '--out', folder];
    const { out, code } = await run([...asked, '--date', '2026-05-01', '--json']);
    expect(code).toBe(0);
    const { panel } = JSON.parse(out) as {
      panel: { sides: { flangeAngle: number; bevel: number }[]; corners: number[][] };
    };
    expect(panel.corners.length).toBe(3);
    for (const { flangeAngle, bevel } of panel.sides)
      expect(flangeAngle + bevel).toBeCloseTo(Math.PI / 2, 12);
    expect(readFileSync(join(folder, 'make-1.svg'), 'utf8')).toContain('Kind 1, to be made');
  });

  it('refuses a kind that is none, and names those there are', async () => {
    const { err, code } = await run(['places', demo, '--make', 'Z']);
    expect([code, err.includes('--make: found Z, expected a kind of this pile: 1, 2')]).toEqual([
      2,
      true,
    ]);
  });
});

it('takes one question at a time', async () => {
  const { err, code } = await run(['places', demo, '--fit', '--second']);
  expect(code).toBe(2);
  expect(err).toContain('one of --fit, --broken, --second, --singles, --door, --hatch, --section');
});
