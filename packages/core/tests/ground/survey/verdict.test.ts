import { expect, test } from 'vitest';
import type { SurveyReading } from '../../../src/ground/survey/readings.ts';
import {
  type SurveyAnswer,
  type SurveyOptions,
  surveyAnswer,
} from '../../../src/ground/survey/verdict.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { baseThere, dome } from '../bases.ts';
import { moved, type Place, readAll } from './standing.ts';

const shell = dome(4, 0, 0, 3.6);
const base = baseThere(shell);
function answer(readings: readonly SurveyReading[], options: SurveyOptions = {}): SurveyAnswer {
  const read = surveyAnswer(shell, base, readings, options);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const at = (off: readonly (readonly [number, Place])[]): SurveyReading[] =>
  readAll(moved(base, new Map(off)), seededRandom(31), 0.3);

test('a base within a millimetre or two is a go', () => {
  const found = answer(at([[5, [0.001, 0, 0.001]]]));
  expect(found.verdict).toBe('go');
  expect(found.moves).toEqual([]);
  expect(found.misfits?.left).toBe(0);
});

test('a hub 25 mm out is a no go, and is the one to move back', () => {
  const found = answer(at([[5, [0.025, 0, 0]]]));
  expect(found.verdict).toBe('no go');
  expect(found.off.outOfRound.hub).toBe(5);
  expect(found.moves[0]?.hub).toBe(5);
  expect(found.moves[0]?.out).toBeLessThan(-0.015);
});

test('a hub 15 mm low is a no go, and is to be raised', () => {
  const found = answer(at([[12, [0, 0, -0.015]]]));
  expect(found.verdict).toBe('no go');
  expect(found.moves[0]?.hub).toBe(12);
  expect(found.moves[0]?.up).toBeGreaterThan(0.01);
});

test('a hub 7 mm out goes, with the seams near it kept slack', () => {
  const found = answer(at([[5, [0.0085, 0, 0]]]), {
    play: { slack: 0.003, gap: 0.003, depth: 0.05 },
  });
  expect(found.verdict).toBe('go, keep slack');
});

test('what is not measured is asked for, and no misfit is reckoned', () => {
  const found = answer(at([]).filter((reading) => reading.what !== 'level' || reading.hub !== 7));
  expect(found.verdict).toBe('measure');
  expect(found.missing.level).toEqual([7]);
  expect(found.misfits).toBeNull();
  expect(found.reasons[0]).toBe('Measure the level at hub 7.');
  expect(answer([]).missing.radius).toHaveLength(base.hubs.length);
});

test('a misread chord is asked for again', () => {
  const readings = at([]).map(
    (reading): SurveyReading =>
      reading.what === 'chord' && reading.from === 3 && reading.to === 4
        ? { ...reading, length: reading.length + 0.05 }
        : reading,
  );
  const found = answer(readings);
  expect(found.verdict).toBe('measure');
  expect(found.reasons.join(' ')).toMatch(/Reading \d+ is .* read it again/);
});

test('a chord longer than the diameter is refused', () => {
  const read = surveyAnswer(shell, base, [{ what: 'chord', from: 1, to: 11, length: 9 }]);
  expect(read.ok).toBe(false);
});

test('tolerances and play from practice carry that flag; entered ones that they were entered', () => {
  const flags = ({ sources }: SurveyAnswer): string[] =>
    sources.map(({ confirmation }) => confirmation);
  expect(flags(answer(at([])))).toContain('common practice');
  const own = answer(at([]), {
    tolerances: {
      radiusGood: 0.02,
      radiusStop: 0.04,
      neighbour: 0.02,
      overall: 0.04,
      hubHeight: 0.02,
    },
    play: { slack: 0.004, gap: 0.004, depth: 0.05 },
  });
  expect(flags(own).filter((flag) => flag === 'entered')).toHaveLength(2);
});
