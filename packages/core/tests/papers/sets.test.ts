// Every set of sheets out of plain data: what is made, what is empty, what is not made and why.

import { describe, expect, it } from 'vitest';
import { defaultFitout } from '../../src/fitout/schema.ts';
import { defaultGround } from '../../src/ground/schema.ts';
import { SheetFault } from '../../src/papers/sets/fault.ts';
import { surveyOfSite } from '../../src/papers/sets/ground-sets.ts';
import { once, sheetJob } from '../../src/papers/sets/job.ts';
import { sheetMakers } from '../../src/papers/sets/list.ts';
import { type MadeSheets, makeSheets } from '../../src/papers/sets/make.ts';
import type { PaperQuestion } from '../../src/papers/sets/question.ts';
import { takenFor } from '../../src/papers/sets/shell-sets.ts';
import { askedOfSmall } from './asked.ts';
import { standing } from './standing.ts';

const { shell, kinds, numbers } = standing(
  { solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' },
  -0.1,
  2.4,
);
const asked = askedOfSmall({ shell, kinds, numbers });
const search = { tries: 1, seed: 1 };

function made(question: PaperQuestion, name: string): MadeSheets {
  const maker = sheetMakers.find((one) => one.name === name);
  if (!maker) throw new Error(`no set is called ${name}`);
  return makeSheets(maker, sheetJob(question, search));
}

const pages = (set: MadeSheets): number => (set.made ? set.drawings.length : -1);

describe('the sets of papers', () => {
  const job = sheetJob(asked, search);
  const all = new Map(sheetMakers.map((maker) => [maker.name, makeSheets(maker, job)]));

  it('are each made, or empty where the project says nothing of them', () => {
    const missed = [...all].filter(([, set]) => !set.made).map(([name]) => name);
    expect(missed).toEqual([]);
    const empty = [...all].filter(([, set]) => pages(set) === 0).map(([name]) => name);
    expect(empty).toEqual([
      ...['flat-plan-upper', 'flat-plan-upper-from-inside', 'shims', 'anchors', 'ring-beam'],
      ...['door', 'ways-in', 'swing', 'signal', 'seal-plan', 'upkeep', 'air', 'floor'],
    ]);
  });

  it('have names of their own, of lower case, digits and hyphens', () => {
    const names = sheetMakers.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('take an order of work just where they are said to', () => {
    const noOrder: PaperQuestion = {
      ...asked,
      raising: {
        ...{ before: [{ place: '1', than: 'no such place' }], order: null, wayOut: null },
        ...{ groups: [], props: [] },
      } as unknown as NonNullable<PaperQuestion['raising']>,
    };
    const without = sheetJob(noOrder, search);
    const stopped = sheetMakers.filter((maker) => !makeSheets(maker, without).made);
    // Storage goes by the plain order where there is none.
    const ordered = sheetMakers.filter((one) => one.ordered && one.name !== 'storage');
    expect(stopped.map(({ name }) => name)).toEqual(ordered.map(({ name }) => name));
    const told = made(noOrder, 'crew-book');
    expect(told.made ? '' : told.lines.join()).toMatch(/no such place/);
  });

  it('go by the order that is handed in, where one is', () => {
    const { plan } = job.raised();
    const handed = sheetJob({ ...asked, plan }, { ...search, onProgress: () => expect.fail() });
    expect(handed.raised().plan).toBe(plan);
    const book = sheetMakers.find(({ name }) => name === 'crew-book') as (typeof sheetMakers)[0];
    expect(makeSheets(book, handed)).toEqual(all.get('crew-book'));
  });

  it('put the door and the seal into the crew book too, where the project says of them', () => {
    const { plan } = job.raised();
    const fitted = { ...asked, plan, fitout: { ...defaultFitout, door: [numbers[0] as string] } };
    const headings = (name: string): string[] => {
      const set = made(fitted, name);
      return set.made ? set.drawings.map(({ title }) => title) : [];
    };
    const own = [...headings('door'), ...headings('seal-plan')];
    expect(own.length).toBeGreaterThan(1);
    const book = headings('crew-book');
    expect(book.slice(-own.length)).toEqual(own);
    expect(book).toHaveLength(pages(all.get('crew-book') as MadeSheets) + own.length);
    // A fit-out that can't be takes no page of the book away: its own set tells why.
    const wrong = { ...fitted, fitout: { ...fitted.fitout, door: ['9-99'] } };
    expect(pages(made(wrong, 'crew-book'))).toBe(pages(all.get('crew-book') as MadeSheets));
    expect(made(wrong, 'door')).toMatchObject({ made: false, why: 'input' });
  });

  it('bear the project and the page below each sheet', () => {
    const book = all.get('crew-book') as MadeSheets;
    if (!book.made) throw new Error('the book is made');
    const last = book.drawings.at(-1)?.items.at(-1);
    const total = book.drawings.length;
    expect(last).toMatchObject({ text: expect.stringContaining(`page ${total} of ${total}`) });
  });
});

describe('a set that can’t be made', () => {
  it('says which level is missing, and which base hub there is not', () => {
    const level = (at: number) => ({
      ...asked,
      ground: {
        ...defaultGround,
        levels: [{ method: 'laser', readings: [1, at].map((hub) => ({ at: hub, reading: 1 })) }],
      },
    });
    const part = made(level(2) as unknown as PaperQuestion, 'shims');
    expect(part).toMatchObject({ made: false, why: 'input' });
    expect(part.made ? '' : part.lines[0]).toMatch(/no level of base hub 3, 4/);
    const strange = made(level(99) as unknown as PaperQuestion, 'stake-out');
    expect(strange.made ? '' : strange.lines[0]).toMatch(/readings\[1\]\.at: found base hub 99/);
  });

  it('says that a title fits no sheet, and throws on what is no fault of the input', () => {
    const long = made({ ...asked, title: 'W'.repeat(4000) }, 'tally');
    expect(long).toMatchObject({ made: false, why: 'input' });
    const broken = {
      name: 'broken',
      what: '',
      make: () => {
        throw new TypeError('ours');
      },
    };
    expect(() => makeSheets(broken, sheetJob(asked, search))).toThrow('ours');
  });
});

describe('the parts of a job', () => {
  it('are reckoned once, and a fault is thrown again at each', () => {
    let count = 0;
    const value = once(() => ++count);
    expect([value(), value()]).toEqual([1, 1]);
    const fault = once<number>(() => {
      count += 1;
      throw new SheetFault('no', ['never']);
    });
    expect(fault).toThrow('never');
    expect(fault).toThrow('never');
    expect(count).toBe(2);
  });

  it('say what a take-off supposes, and nothing where settings and places are known', () => {
    expect(takenFor({ takeoff: undefined, leftOut: [1, 2] })).toMatch(/no take-off.*2 places/);
    expect(takenFor({ takeoff: {} as never, leftOut: [] })).toBe('');
  });

  it('have no survey where nothing was read', () => {
    const { site } = sheetJob(asked, search);
    expect(surveyOfSite(asked, site())).toBeNull();
  });
});
