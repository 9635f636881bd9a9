import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readForecast } from '../../src/crew/forecast-text.ts';
import type { Read } from '../../src/measure/fault.ts';
import { readLength, writeLength } from '../../src/measure/length.ts';
import { readStl } from '../../src/passage/stl.ts';
import { readPile } from '../../src/pile/check.ts';
import { readPileCsv, writePileCsv } from '../../src/pile/csv.ts';
import type { Pile } from '../../src/pile/schema.ts';
import { SIDE_LENGTHS } from '../../src/pile/tolerances.ts';
import { readProject, writeProject } from '../../src/project/project.ts';
import { readRecordFile, writeRecordFile } from '../../src/record/file.ts';
import { inventedWeekend } from '../../src/record/invented.ts';
import { NINE, plan } from '../record/fixtures.ts';
import { damagedBytes, damagedText, fuzz, type Tried } from './fuzzing.ts';

const examples = join(import.meta.dirname, '../../../../examples');
const example = (name: string): string => readFileSync(join(examples, name), 'utf8');

/** A refusal says where, what and what else; there is always one. */
function refused<T>(read: Read<T>): Tried {
  if (read.ok) return 'read';
  expect(read.faults.length).toBeGreaterThan(0);
  for (const { found, expected } of read.faults) {
    expect(found.length).toBeGreaterThan(0);
    expect(expected.length).toBeGreaterThan(0);
  }
  return 'refused';
}

/** Lengths to a millionth of a millimetre, as a spreadsheet has them. */
const inNanometres = (pile: Pile): Pile => ({
  ...pile,
  readings: pile.readings.map((row) => ({
    ...row,
    sides: row.sides.map((side) => Math.round(side * 1e9)),
  })),
});

const timeLimit = 3_600_000;

describe('what comes from outside, damaged', () => {
  it('a project file is refused, or read and written again the same', {
    timeout: timeLimit,
  }, () => {
    const texts = ['hex-and-pent.json', 'suspect-reading.json', 'one-handed.json'].map(example);
    fuzz(
      'project files',
      0.2,
      (random) => damagedText(random, texts),
      (text) => {
        const read = readProject(text);
        if (!read.ok) return refused(read);
        const again = readProject(writeProject(read.value));
        expect(again.ok && writeProject(again.value)).toBe(writeProject(read.value));
        for (const { sides } of [
          ...(read.value.pile.kinds ?? []),
          ...(read.value.pile.readings ?? []),
        ])
          for (const side of sides) {
            expect(side).toBeGreaterThanOrEqual(SIDE_LENGTHS.min);
            expect(side).toBeLessThanOrEqual(SIDE_LENGTHS.max);
          }
        return 'read';
      },
    );
  });

  it('a spreadsheet is refused, or its pile written and read again the same', {
    timeout: timeLimit,
  }, () => {
    const plain =
      'tag,by,mark,count,side1 mm,side2 mm,side3 mm,holes1,seen from,condition,mass kg,note';
    const texts = [
      example('inches.csv'),
      `${plain}\n017,Wim,R,1,928.2,927.9,1081.6,5,inside,repair,9.6,"dent, small"\n018,Ada,L,2,928,928,1082,,outside,good,,`,
      'side1;side2;side3;side4\n900 mm;0,9 m;35 7/16";3\' 2"\n',
    ];
    fuzz(
      'spreadsheets',
      0.15,
      (random) => damagedText(random, texts),
      (text) => {
        const read = readPileCsv(text);
        if (!read.ok) return refused(read);
        const again = readPileCsv(writePileCsv(read.value));
        expect(again.ok && inNanometres(again.value)).toEqual(inNanometres(read.value));
        expect(readPile(read.value).ok).toBe(true);
        return 'read';
      },
    );
  });

  it('a length is refused, or a number that is written and read again', {
    timeout: timeLimit,
  }, () => {
    const texts = [
      '43 7/16"',
      '1103 mm',
      "3' 7-7/16",
      '1.103 m',
      '110,3 cm',
      '3 ft 7 in',
      '43.4375',
      "12'",
    ];
    fuzz(
      'lengths',
      0.4,
      (random) => damagedText(random, texts),
      (text) => {
        const read = readLength(text, { unit: 'mm' });
        if (!read.ok) return refused(read);
        expect(Number.isFinite(read.value)).toBe(true);
        // Nothing is a length without a digit, and no letters are but those of units.
        expect(text).toMatch(/[\d½]/);
        expect(
          text.replace(
            /[\d\s.,/'"′″’”“½¼¾⅛⅜⅝⅞⁄-]|mm|cm|millimet(re|er)s?|centimet(re|er)s?|met(re|er)s?|m|in(ch(es)?)?|ft|f(oo|ee)t/gi,
            '',
          ),
        ).toBe('');
        const again = readLength(writeLength(read.value, { unit: 'mm', step: 0.5 }));
        if (Math.abs(read.value) < 1e5)
          expect(again.ok && Math.abs(again.value - read.value)).toBeLessThanOrEqual(
            0.00025 + 1e-9,
          );
        return 'read';
      },
    );
  });

  it('an STL is refused, or a closed body', { timeout: timeLimit }, () => {
    const corners = [
      [0, 0, 0],
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const;
    const facets = [
      [0, 2, 1],
      [0, 1, 3],
      [1, 2, 3],
      [0, 3, 2],
    ] as const;
    const lines = facets.map(
      (facet) =>
        `facet normal 0 0 0\nouter loop\n${facet.map((c) => `vertex ${corners[c]?.join(' ')}`).join('\n')}\nendloop\nendfacet`,
    );
    const text = new TextEncoder().encode(`solid a\n${lines.join('\n')}\nendsolid a\n`);
    const binary = new Uint8Array(84 + 50 * facets.length);
    const data = new DataView(binary.buffer);
    data.setUint32(80, facets.length, true);
    facets.forEach((facet, f) => {
      facet
        .flatMap((c) => [...(corners[c] as readonly number[])])
        .forEach((x, k) => {
          data.setFloat32(84 + 50 * f + 12 + 4 * k, x, true);
        });
    });
    fuzz(
      'STL files',
      0.1,
      (random) => damagedBytes(random, [text, binary]),
      (bytes) => {
        const read = readStl(bytes, 'm');
        if (!read.ok) return refused(read);
        expect(Number.isFinite(read.value.volume)).toBe(true);
        expect(read.value.corners.flat().every(Number.isFinite)).toBe(true);
        // Every edge is run along once each way.
        const edges = new Set(
          read.value.facets.flatMap(([a, b, c]) => [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]),
        );
        for (const edge of edges) expect(edges.has(edge.split(' ').reverse().join(' '))).toBe(true);
        return 'read';
      },
    );
  });

  it('a record keeps every line that is whole, and names the others', {
    timeout: timeLimit,
  }, () => {
    const text = writeRecordFile(
      inventedWeekend(plan(), { seed: 1, from: NINE, bolts: () => 12 }).slice(0, 60),
    );
    fuzz(
      'record files',
      0.04,
      (random) => damagedText(random, [text]),
      (damaged) => {
        const { entries, faults } = readRecordFile(damaged);
        const again = readRecordFile(writeRecordFile(entries));
        expect(again.faults).toEqual([]);
        expect(again.entries.length).toBe(entries.length);
        // Lines that nobody touched are all there.
        const lines = new Set(
          damaged
            .replace(/^\ufeff/, '')
            .split(/\r?\n/)
            .slice(1),
        );
        const whole = text
          .split('\n')
          .slice(1)
          .filter((line) => line !== '' && lines.has(line));
        if (!faults.some(({ path }) => path === 'line 1'))
          expect(entries.length).toBeGreaterThanOrEqual(whole.length);
        return faults.length === 0 ? 'read' : 'refused';
      },
    );
  });

  it('a forecast is refused, or rows in order of time', { timeout: timeLimit }, () => {
    const texts = [
      'Fri 2026-06-12\n09:00 5 9 m/s\n10:00 18 km/h 36 km/h 31 °C\n',
      'time;direction;gust mph;wind mph;temp °C\n2026-06-12 09:00;SW;20;10;17\n2026-06-12 10:00;W;22;11;18',
    ];
    fuzz(
      'forecasts',
      0.05,
      (random) => damagedText(random, texts),
      (text) => {
        const read = readForecast(text, '2026-06-12');
        if (!read.ok) return refused(read);
        const times = read.value.hours.map(({ at }) => at);
        expect(times).toEqual([...times].sort());
        for (const { mean, gust } of read.value.hours)
          for (const speed of [mean, gust])
            expect(speed === null || (speed >= 0 && speed < 120)).toBe(true);
        return 'read';
      },
    );
  });
});
