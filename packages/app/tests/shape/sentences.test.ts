import type { Identification, Shape } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { Relation } from '../../src/engine/relate.ts';
import {
  assumesOf,
  headlineOf,
  listOf,
  percentOf,
  ruleOf,
} from '../../src/sheets/shape/sentences.ts';
import { lengthsIn } from '../../src/ui/lengths.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { answerOf, ball, pileOf, shapeOf } from './notation.ts';

const { shell, kinds } = ball(2);
const found = (shapes: readonly Shape[], complete = true): Identification =>
  answerOf(shapes, { complete });
const one = shapeOf(shell, kinds);
const metric = lengthsIn('metric');
const say = (answer: Identification, relation: Relation | null = null, lengths = metric): string =>
  headlineOf(answer, answer.shapes[0] as Shape, relation, shapeWords, lengths);
const ball80 = 'These kinds close into a ball 6.000 m across, 80 panels; ';

describe('the headline', () => {
  it('says that one net stands alone only where everything was tried', () => {
    expect(say(found([one]))).toBe(`${ball80}no other net fits.`);
    expect(say(found([one], false))).toBe(
      `${ball80}the search was cut short, so there may be others.`,
    );
  });

  it('is in feet and inches for who reads those', () => {
    const large = shapeOf({ ...shell, radius: 3.6576 }, kinds);
    expect(say(found([large]), null, lengthsIn('inch'))).toContain(`a ball 24' 0" across`);
  });

  it('claims no more of several nets than is known', () => {
    expect(say(found([one, one]))).toBe(`${ball80}two nets fit.`);
    expect(say(found([one, one], false))).toBe(
      `${ball80}two nets fit. The search was cut short, so there may be more.`,
    );
  });

  it('says that the cut leaves no difference only where the decided shell is in all of them', () => {
    const four = found([one, one, one, one]);
    const stands = { decided: true, panels: 40, sameIn: [0, 1, 2, 3] };
    expect(say(four, { halves: true, stands })).toBe(
      `${ball80}four nets fit, differing by a turn of one half, and your cut leaves no difference.`,
    );
    expect(say(four, { halves: true, stands: { ...stands, sameIn: [0, 2] } })).toBe(
      `${ball80}four nets fit, differing by a turn of one half, and what you build is the same in two of the four.`,
    );
    expect(say(four, { halves: false, stands: { ...stands, sameIn: [0] } })).toContain(
      'what you build is not the same in each',
    );
    expect(say(four, { halves: true, stands: { ...stands, decided: false } })).toContain(
      'the tallest shell that your stock can stand (40 panels) is the same in all of them',
    );
  });

  it('does not call a part a ball', () => {
    expect(say(found([shapeOf(shell, kinds, { closed: false })]))).toContain('does not close');
  });
});

describe('other sentences', () => {
  it('the rule of a net in plain words', () => {
    const rule = (b: number, c: number) =>
      ruleOf({ solid: 'icosahedron', b, c, division: 'equal chords' }, shapeWords);
    expect(rule(4, 0)).toBe('Icosahedron, each edge in 4 steps, divided by equal chords');
    expect(rule(3, 1)).toBe(
      'Icosahedron, from one hub of five to the next 3 steps along and 1 across, divided by equal chords',
    );
    expect(ruleOf(null, shapeWords)).toContain('no rule that has a name');
  });

  it('probabilities never round to certainty', () => {
    expect([0.9999, 0.25, 0.001].map(percentOf)).toEqual(['over 99 %', '25 %', 'under 1 %']);
  });

  it('what the lengths assume', () => {
    const says = (pile: object) => assumesOf(pileOf(pile), shapeWords, metric);
    expect(says({})).toBe('sides hub to hub');
    expect(says({ measuredAlong: 'holes', hubAllowance: 0.004 })).toBe(
      'sides hole to hole, hub to hub 4.0 mm more',
    );
    expect(says({ measuredAlong: 'skin' })).toBe('sides along the skin, hub to hub not known');
  });

  it('lists', () => {
    expect([[], ['1'], ['1', '2'], ['1', '2', '3L']].map(listOf)).toEqual([
      '',
      '1',
      '1 and 2',
      '1, 2 and 3L',
    ]);
  });
});
