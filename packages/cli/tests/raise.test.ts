import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { example, fileOf, folder, type Ran, run } from './run.ts';

const { crew, gear, loads, ground, stages } = JSON.parse(
  readFileSync(example('demo/project.json'), 'utf8'),
);

/** A ball cut in two, 5.4 m across, with the crew and the gear of the demo. */
const [short, long] = [0.546533 * 2.7, 0.618034 * 2.7];
const small = {
  shellraise: 1,
  pile: {
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.001,
    kinds: [
      { id: '1', sides: [short, short, long], good: 30, repair: 1 },
      { id: '2', sides: [long, long, long], good: 10 },
    ],
  },
  ...{ crew, gear, loads, ground, stages },
};
/** Twenty panels all alike, with something inside. */
const twenty = {
  ...small,
  pile: { ...small.pile, kinds: [{ id: '1', sides: [1.6, 1.6, 1.6], good: 20 }] },
  gear: {
    ...gear,
    inside: [{ name: 'crate', shape: { form: 'box', size: [0.3, 0.3, 0.4] }, mass: 12 }],
  },
};
const raise = (...options: string[]): Promise<Ran> =>
  run(['raise', fileOf(JSON.stringify(small)), '--tries', '2', ...options]);

describe('shellraise raise', () => {
  it('plans the weekend with its odds, and writes its tables', async () => {
    const out = folder();
    const { code, out: text } = await raise('--out', out);
    expect(text).toContain('each of which stands');
    expect(text).toContain('done by dark');
    expect(text).toContain('What a change would buy');
    expect(text).toContain('licensed engineer or rigger decide');
    expect([0, 1]).toContain(code);
    const stages = readFileSync(join(out, 'raise-stages.csv'), 'utf8').trim().split('\r\n');
    expect(stages[0]).toContain('stage,what,course,lift');
    expect(readFileSync(join(out, 'raise-tasks.csv'), 'utf8')).toContain('stake out');
  });

  it('plans anew without a helper, and refuses one that nobody knows', async () => {
    const without = JSON.parse((await raise('--without', 'Petra', '--json')).out);
    expect(without.weekend.days[0].odds.done).toBeLessThan(1);
    const unknown = await raise('--without', 'Nobody');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain(
      '--without: found "Nobody", expected a name of the file’s crew: Petra',
    );
  });

  it('says in plain words what was typed wrong', async () => {
    const wrong = async (...options: string[]): Promise<string> => (await raise(...options)).err;
    expect(await wrong('--now', 'plenty')).toContain(
      '--now: found "plenty", expected parts such as',
    );
    expect(await wrong('--storm', '2 h')).toContain('--storm: found no --now');
    expect(await wrong('--now', '6 people', '--storm', 'soon')).toContain('--storm: found "soon"');
    expect(await wrong('--now', '6 people', '--done', 'x')).toContain('--done: found "x"');
  });

  it('without a crew tells the order, and what is missing for a weekend', async () => {
    const { crew: _, ...bare } = small;
    const { code, out } = await run(['raise', fileOf(JSON.stringify(bare)), '--tries', '2']);
    expect(code).toBe(0);
    expect(out).toContain('No day of work is entered');
  });

  it('tells yard, lifts, way out, bags and what may wait, each with its caution', async () => {
    const file = fileOf(JSON.stringify(twenty));
    const flags = [
      '--yard',
      '--lifts',
      '--inside',
      '--bags',
      '--wait',
      '--gust',
      '4',
      '--keep-clear',
      '0-90',
    ];
    const told = await run(['raise', file, '--tries', '2', ...flags, '--stage', '3']);
    expect(told.code).toBe(0);
    for (const words of [
      /stacks, kept down for gusts of 4\.0 m\/s/,
      /Lift card 3\.1: Panel 2-/,
      /UP to one metre short of the place, HOLD/,
      /crate in hands at the latest after stage \d+|crate passes in hands/,
      /Stage 3: course 2\n- /,
      /It may be left in gusts of 4\.0 m\/s/,
    ])
      expect(told.out).toMatch(words);
    expect(told.out).not.toContain('Weekend');
    expect(told.out.match(/licensed engineer or rigger\s+decide/g)?.length).toBeGreaterThan(4);
    const doc = JSON.parse((await run(['raise', file, '--tries', '2', '--json', ...flags])).out);
    expect(doc.yard.stacks[0].stage).toBe(1);
    for (const { azimuth } of doc.yard.stacks) expect(azimuth).toBeGreaterThanOrEqual(Math.PI / 2);
    expect(doc.lifts.at(-1).heights.short).toEqual([]);
    expect(doc.inside.inside.things[0].name).toBe('crate');
    expect(doc.bags.tools).toHaveLength(doc.plan.stages.length);
    expect(doc.wait).toMatchObject({ days: 14, gust: 4 });
    const alone = await run(['raise', file, '--gust', '4', '--tries', '2']);
    expect(alone).toMatchObject({ code: 2 });
    expect(alone.err).toContain('--gust: found alone, expected with --yard, --lifts or --wait');
  });

  it('refuses an order in which a stage falls, with the reason and the mechanism', async () => {
    const file = fileOf(JSON.stringify(twenty));
    const refused = await run(['raise', file, '--tries', '2', '--order', '2,1', '--json']);
    expect(refused.code).toBe(1);
    const { order } = JSON.parse(refused.out);
    expect(order).toMatchObject({ stages: [2, 1, 3, 4, 5, 6, 7], stands: false });
    const fall = order.breaks.find(({ what }: { what: string }) => what === 'falls');
    expect(fall.words).toMatch(/After lift 1 it moves freely in \d+ ways?, most at hub/);
    expect(Math.max(...fall.way.corners.map(Math.abs))).toBeGreaterThan(0.5);
    expect(fall.needs.length).toBeGreaterThan(0);
  });
});
