// Sheets of projects whose names are in any script, very long or empty: laid out or refused, never cut.

import { describe, expect, it } from 'vitest';
import { defaultFitout } from '../../src/fitout/schema.ts';
import type { Drawing } from '../../src/papers/drawing.ts';
import { flatItems } from '../../src/papers/drawing.ts';
import { sheetJob } from '../../src/papers/sets/job.ts';
import { sheetMakers } from '../../src/papers/sets/list.ts';
import { makeSheets } from '../../src/papers/sets/make.ts';
import type { PaperQuestion } from '../../src/papers/sets/question.ts';
import { defaultStorage } from '../../src/papers/storage-section.ts';
import { askedOfSmall } from './asked.ts';
import { outside, overlaps } from './sheet-checks.ts';

const search = { tries: 1, seed: 1 };
const { plan } = sheetJob(askedOfSmall(), search).raised();

/** A project that bears a name wherever people write one. */
function named(name: string, paper: PaperQuestion['paper']): PaperQuestion {
  const asked = askedOfSmall();
  return {
    ...asked,
    ...{ title: name, paper, plan, assumes: name },
    kinds: asked.kinds.map((kind) => ({ ...kind, marks: name === '' ? [] : [name.slice(0, 40)] })),
    fitout: { ...defaultFitout, standsFrom: '2026-06-01' },
    storage: {
      ...defaultStorage,
      vehicles:
        name === ''
          ? []
          : [{ name: name.slice(0, 100), length: 3, width: 2, height: 2, payload: 900 }],
    },
  };
}

/** Words that were shortened with an ellipsis. */
const cut = (drawing: Drawing): string[] =>
  flatItems(drawing.items).flatMap((item) =>
    item.type === 'text' && item.text.endsWith('…') ? [item.text] : [],
  );

/** What is wrong with the sheets of a question, and what was refused. */
function troubles(asked: PaperQuestion): { wrong: string[]; refused: string[] } {
  const job = sheetJob(asked, search);
  const wrong: string[] = [];
  const refused: string[] = [];
  for (const maker of sheetMakers) {
    const set = makeSheets(maker, job);
    if (!set.made) refused.push(...set.lines.map((line) => `${maker.name}: ${line}`));
    else
      for (const drawing of set.drawings)
        for (const [what, found] of Object.entries({
          overlaps: overlaps(drawing),
          outside: outside(drawing),
          cut: cut(drawing),
        }))
          wrong.push(...found.map((words) => `${maker.name} ${what}: ${words}`));
  }
  return { wrong, refused };
}

describe('names on every sheet', () => {
  it.each([
    [
      'many scripts',
      'Κιβωτός Купол قبة כיפה 穹頂 ドーム 돔 e\u0301a\u030a 👩\u200d👩\u200d👧 🙂 ßŁđ',
      [],
    ],
    ['nothing', '', []],
    [
      'a word as long as a line',
      'W'.repeat(60),
      [
        /^panel-labels: label \d-\d\d does not fit A4 3 x 7 .*the nearest that holds all is A4 plain/,
      ],
    ],
  ])(
    'in %s neither overlap, leave their page nor are cut; or they are refused',
    (_, name, refused) => {
      const found = troubles(named(name, 'A4'));
      expect(found.wrong).toEqual([]);
      expect(found.refused).toHaveLength(refused.length);
      for (const [i, why] of refused.entries()) expect(found.refused[i]).toMatch(why);
    },
  );

  it('fit Letter too', () => {
    expect(troubles(named('Κιβωτός قبة 穹頂 🙂', 'Letter'))).toEqual({ wrong: [], refused: [] });
  });

  it('are refused by name where they are too long for any sheet', () => {
    const { wrong, refused } = troubles(named('W'.repeat(1500), 'A4'));
    expect(wrong).toEqual([]);
    expect(refused.length).toBeGreaterThan(10);
    for (const line of refused) expect(line).toMatch(/W{20}|label \d-\d\d|bag|hub|seam/);
  });
});
