import { defaultTakeoff, takeOff } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { quantitiesOf } from '../../src/engine/drawings.ts';
import { boltWords, seamOf } from '../../src/sheets/places/bolt-words.ts';
import { buyWords, nameOfLine, takeOffText } from '../../src/sheets/places/take-off-text.ts';
import { placesWords } from '../../src/words/places.ts';
import { kinds, shell } from './notation.ts';

const bolt = { thread: '5/16-18', length: 0.0254 };
const settings = { ...defaultTakeoff, seamBolt: bolt };
const holes = kinds.map(({ sides }) => sides.map(() => 5));
const counted = takeOff(shell, kinds, [], settings, holes);
const words = placesWords.takeOff;

describe('the take-off in words', () => {
  it('names each size', () => {
    expect(nameOfLine(counted.lines[0] as (typeof counted.lines)[number])).toBe(
      'bolt 5/16-18 × 1″',
    );
  });

  it('says in packs what is to be bought', () => {
    const line = counted.lines[0] as (typeof counted.lines)[number];
    expect(buyWords(line, words)).toBe(`${line.toBuy} (${line.packs} packs of ${line.pack})`);
    expect(buyWords({ ...line, toBuy: 0 }, words)).toBe('');
  });

  it('lists every line, and the cautions with it', () => {
    const text = takeOffText(counted, 'A shell', words);
    for (const line of counted.lines) expect(text).toContain(nameOfLine(line));
    for (const caution of counted.cautions) expect(text).toContain(caution);
    expect(text.startsWith('A shell: Take-off\n')).toBe(true);
  });

  it('says so where nothing is to be bought', () => {
    expect(takeOffText({ ...counted, lines: [] }, 'A shell', words)).toContain(words.nothingToBuy);
  });
});

describe('the bolts of a seam', () => {
  const quantities = quantitiesOf(shell, kinds, [], settings, holes);
  const side = shell.seams[6] as number;

  it('are told from either side', () => {
    expect(boltWords(shell, side, quantities, placesWords.details)).toBe('5 bolts 5/16-18 × 1″');
    const mate = shell.mate[side] as number;
    expect(seamOf(shell, mate)).toBe(seamOf(shell, side));
  });

  it('are not known where nobody counted', () => {
    const none = quantitiesOf(shell, kinds, [], undefined, []);
    expect(boltWords(shell, side, none, placesWords.details)).toBe(
      placesWords.details.boltsUnknown,
    );
  });

  it('are left away while they are counted', () => {
    expect(boltWords(shell, side, null, placesWords.details)).toBe('');
  });
});
