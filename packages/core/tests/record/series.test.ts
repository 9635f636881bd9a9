import { zlibSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fromBase45, toBase45 } from '../../src/record/base45.ts';
import type { Entry } from '../../src/record/entry.ts';
import {
  readSeries,
  readSeriesPart,
  recordSeries,
  SERIES_CHARACTERS,
  type SeriesPart,
} from '../../src/record/series.ts';
import { phone, placed } from './fixtures.ts';

/** A phone's entries: enough for several codes. */
function entries(count: number): readonly Entry[] {
  const ada = phone('Ada');
  for (let i = 0; i < count; i++) {
    ada.wait(60 + ((i * 37) % 90));
    ada.say(placed(`1-${String((i % 40) + 1).padStart(2, '0')}`, `${(i * 7919) % 1000}`, 2));
  }
  return ada.log.entries();
}

const partsOf = (codes: readonly string[]): SeriesPart[] =>
  codes.map((code) => {
    const part = readSeriesPart(code);
    if (!part) throw new Error(`no part: ${code}`);
    return part;
  });

describe('Base45', () => {
  it.each([
    ['AB', 'BB8'],
    ['Hello!!', '%69 VD92EX0'],
    ['base-45', 'UJCLQE7W581'],
    ['ietf!', 'QED8WEX0'],
  ])('is as in the examples of RFC 9285: %s', (plain, text) => {
    expect(toBase45(new TextEncoder().encode(plain))).toBe(text);
    expect(new TextDecoder().decode(fromBase45(text) ?? undefined)).toBe(plain);
  });

  it.each(['GGW', ':::', 'A', 'ab', '::', 'É00'])('refuses %j, the text of no bytes', (text) =>
    expect(fromBase45(text)).toBeNull(),
  );
});

describe('a series of codes', () => {
  const said = entries(200);
  const codes = recordSeries(said);

  it('gives the record back, its parts in any order and more than once', () => {
    const parts = partsOf(codes);
    expect(parts.length).toBeGreaterThan(3);
    const mixed = [...parts].reverse().concat(parts.slice(0, 2));
    expect(readSeries(mixed)?.entries).toEqual(said);
    expect(readSeries(mixed)?.faults).toEqual([]);
  });

  it('holds no code longer than version 14 at level M takes, in its characters alone', () => {
    for (const code of codes) {
      expect(code).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
      expect(code.length).toBeLessThanOrEqual(528);
    }
  });

  it('is the same for the same entries', () =>
    expect(recordSeries([...said].reverse())).toEqual(codes));

  it('is not there while a part is missing', () =>
    expect(readSeries(partsOf(codes.slice(1)))).toBeNull());

  it('is refused where parts of two series are mixed', () =>
    expect(
      readSeries(partsOf([...codes.slice(1), recordSeries(entries(180))[0] ?? ''])),
    ).toBeNull());

  it('is refused where one character is another', () => {
    const parts = partsOf(codes);
    const [first, ...others] = parts as [SeriesPart, ...SeriesPart[]];
    for (const at of [3, 40, 250]) {
      const other = first.text[at] === 'A' ? 'B' : 'A';
      const text = first.text.slice(0, at) + other + first.text.slice(at + 1);
      expect(readSeries([{ ...first, text }, ...others])).toBeNull();
    }
  });

  it.each([
    '',
    'https://example.org/',
    'SR1:00000000:0:3:ABC',
    'SR1:00000000:4:3:ABC',
    'SR1:0000:1:3:ABC',
    'SR2:00000000:1:3:ABC',
    `SR1:00000000:1:1:${'A'.repeat(SERIES_CHARACTERS + 1)}`,
  ])('takes no other code for a part: %s', (code) => expect(readSeriesPart(code)).toBeNull());

  it('refuses a promise of more than a record may be', () => {
    const packed = zlibSync(new Uint8Array(9 * 1024 * 1024), { level: 9 });
    const text = toBase45(packed);
    const of = Math.ceil(text.length / SERIES_CHARACTERS);
    const series = [...packed.slice(-4)]
      .map((byte) => byte.toString(16).padStart(2, '0').toUpperCase())
      .join('');
    const parts = Array.from({ length: of }, (_, i) => ({
      series,
      part: i + 1,
      of,
      text: text.slice(i * SERIES_CHARACTERS, (i + 1) * SERIES_CHARACTERS),
    }));
    expect(readSeries(parts)).toBeNull();
  });
});
