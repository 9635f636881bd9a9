// A place left open on purpose holds no panel: it is on no sheet that has people fetch, lift, bolt, label,
// tick, stack or buy one.

import { expect, it } from 'vitest';
import { defaultFitout } from '../../src/fitout/schema.ts';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { sheetJob } from '../../src/papers/sets/job.ts';
import { sheetMakers } from '../../src/papers/sets/list.ts';
import { type MadeSheets, makeSheets } from '../../src/papers/sets/make.ts';
import { askedOfSmall } from './asked.ts';

const OPEN = 2;
const asked = askedOfSmall({ fitout: { ...defaultFitout, standsFrom: '2026-06-01' } });
const number = asked.numbers[OPEN] as string;

const search = { tries: 1, seed: 1 };

type Made = Extract<MadeSheets, { made: true }>;

const textsOf = ({ items }: Drawing): string[] =>
  flatItems(items).flatMap((item) => (item.type === 'text' ? [item.text] : []));

/** Words with the place's number in them, by set. */
function naming(leftOut: readonly number[]): ReadonlyMap<string, readonly string[]> {
  const job = sheetJob({ ...asked, leftOut }, search);
  return new Map(
    sheetMakers.map((maker) => {
      const set = makeSheets(maker, job);
      if (!set.made) throw new Error(`${maker.name}: ${set.lines.join('; ')}`);
      const texts = set.drawings.flatMap(textsOf);
      return [maker.name, texts.filter((words) => new RegExp(`\\b${number}\\b`).test(words))];
    }),
  );
}

/** Hubs are named by all places around them, so that a name holds whatever is left open. */
const isHub = (words: string): boolean => /^\d+-\d\d( \d+-\d\d)+$/.test(words);

/** Sheets that show where the opening is. */
const SHOWN = ['flat-plan', 'flat-plan-from-inside', 'crew-book', 'door'];

it('is named on plans and the sheet of the door alone, and in the names of its hubs', () => {
  const [whole, open] = [naming([]), naming([OPEN])];
  const named = (of: ReadonlyMap<string, readonly string[]>): string[] =>
    [...of].flatMap(([name, texts]) => (texts.some((words) => !isHub(words)) ? [name] : []));
  // What would name it if it were not left open: else the test holds nothing.
  expect(named(whole)).toEqual([
    ...['flat-plan', 'flat-plan-from-inside', 'crew-book', 'joint-pictures', 'panel-labels'],
    ...['bag-labels', 'match-marks', 'record-on-paper', 'storage'],
  ]);
  expect(named(open)).toEqual(SHOWN);
  // Both flat plans, and the panels that come out for the door.
  expect(open.get('crew-book')).toEqual([number, number, number]);
});

it('is in no count of panels or of seams', () => {
  const words = (leftOut: readonly number[], name: string): string => {
    const maker = sheetMakers.find((one) => one.name === name) as (typeof sheetMakers)[number];
    const { drawings } = makeSheets(maker, sheetJob({ ...asked, leftOut }, search)) as Made;
    return drawings.flatMap((drawing) => textsOf(drawing)).join(' | ');
  };
  expect(words([], 'permit')).toContain('15, 20,');
  expect(words([OPEN], 'permit')).toContain('14, ');
  expect(words([], 'kinds')).toContain('15 places');
  expect(words([OPEN], 'kinds')).toContain('14 places');
  expect(words([], 'flat-plan')).not.toContain('left open');
  expect(words([OPEN], 'flat-plan')).toContain('left open: 1 place');
});
