import { describe, expect, it } from 'vitest';
import { type ProjectParts, projectNews } from '../../src/project/from-record.ts';
import { phone } from '../record/fixtures.ts';

const parts: ProjectParts = {
  readings: [
    { tag: '017', sides: [1, 1, 1], seenFrom: 'outside' },
    { tag: '018', sides: [1, 1, 1], seenFrom: 'outside', condition: 'scrap' },
  ],
  hardware: [
    { item: 'bolt', thread: 'M8', length: 0.025, count: 40, state: 'used' },
    { item: 'bolt', thread: 'M8', length: 0.025, count: 10, state: 'new' },
    { item: 'nut', thread: 'M8', count: 50, state: 'used' },
  ],
  survey: [{ what: 'level', hub: 1, height: 0.002 }],
  patterns: [
    { holes: 5, thread: 'M8', length: 0.025 },
    { holes: 4, thread: 'M8', length: 0.025 },
    null,
  ],
  passes: ['finger', 'none', 'final'],
};

describe('what the record knows better than the project', () => {
  it('is nothing where nobody said anything, or the same', () => {
    const ada = phone('Ada');
    const none = { readings: null, hardware: null, survey: null, tags: [], surveyed: 0, sizes: 0 };
    expect(projectNews(ada.log, parts)).toEqual(none);
    ada.say({ kind: 'panel condition', tag: '018', condition: 'scrap' });
    ada.say({ kind: 'panel condition', tag: '017', condition: 'good' });
    ada.say({ kind: 'surveyed', reading: { what: 'level', hub: 1, height: 0.002 } });
    // Five bolts are in the shell.
    ada.say({ kind: 'bolts counted', thread: 'M8', length: 0.025, count: 45 });
    expect(projectNews(ada.log, parts)).toEqual(none);
  });

  it('is the condition of panels by their tags, as it stands', () => {
    const ada = phone('Ada');
    const broken = ada.say({ kind: 'panel condition', tag: '017', condition: 'scrap' });
    ada.say({ kind: 'panel condition', tag: '999', condition: 'scrap' });
    const news = projectNews(ada.log, parts);
    expect(news.tags).toEqual(['017']);
    expect(news.readings?.map(({ condition }) => condition)).toEqual(['scrap', 'scrap']);
    ada.undo(broken);
    expect(projectNews(ada.log, parts).readings).toBeNull();
  });

  it('is the survey, the last reading of each thing, a chord from either end', () => {
    const ada = phone('Ada');
    for (const height of [0.001, 0.004])
      ada.say({ kind: 'surveyed', reading: { what: 'level', hub: 1, height } });
    ada.say({ kind: 'surveyed', reading: { what: 'chord', from: 2, to: 1, length: 1.1 } });
    ada.say({ kind: 'surveyed', reading: { what: 'chord', from: 1, to: 2, length: 1.2 } });
    const news = projectNews(ada.log, parts);
    expect(news.surveyed).toBe(2);
    expect(news.survey).toEqual([
      { what: 'level', hub: 1, height: 0.004 },
      { what: 'chord', from: 1, to: 2, length: 1.2 },
    ]);
  });

  it('is the bolts counted with those in the shell, however the thread is written', () => {
    const ada = phone('Ada');
    ada.say({ kind: 'bolts counted', thread: 'M8 × 1.25', length: 0.0252, count: 20 });
    ada.say({ kind: 'bolts counted', thread: 'M6', length: 0.02, count: 7 });
    const news = projectNews(ada.log, parts);
    expect(news.sizes).toBe(2);
    expect(news.hardware?.map(({ item, count }) => [item, count])).toEqual([
      ['bolt', 25],
      ['bolt', 0],
      ['nut', 50],
      ['bolt', 7],
    ]);
  });
});
