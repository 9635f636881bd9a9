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
      { id: '1', sides: [short, short, long], good: 60, repair: 1 },
      { id: '2', sides: [long, long, long], good: 20 },
    ],
  },
  ...{ crew, gear, loads, ground, stages },
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
});
