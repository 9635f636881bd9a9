import { describe, expect, it } from 'vitest';
import { taggedPlaces } from '../../src/engine/singles.ts';
import { tagCsv, tagRows } from '../../src/sheets/places/tags/tag-list.ts';
import { courses, kinds, numbers, placeOf, shell } from './notation.ts';

const [first = [], second = []] = kinds.map(({ sides }) => [...sides]);
const reading = (tag: string, sides: number[], off: number, condition?: 'repair' | 'scrap') => ({
  tag,
  sides: sides.map((side) => side + off),
  seenFrom: 'outside' as const,
  ...(condition && { condition }),
});
const readings = [
  reading('a', first, 0.001),
  reading('b', first, -0.001, 'repair'),
  reading('c', second, 0),
  reading('d', second, 0, 'scrap'),
];
const assigned = readings.map(({ tag }, i) => ({
  reading: i,
  tag,
  kind: i < 2 ? '1' : '2',
  probability: 1,
  candidates: [],
  turn: 0,
  mirrored: false,
  misfit: 0,
  liesOn: [0, 1, 2],
}));
const question = {
  shell,
  kinds,
  course: courses.course,
  leftOut: [] as number[],
  pile: { readings, hubAllowance: 0 },
  worked: { assigned, people: [] },
};

describe('which tag goes where', () => {
  it('gives each tagged panel one place of its kind, and none to scrap', () => {
    const answer = taggedPlaces(question);
    const placed = answer.tagAt.flatMap((tag, place) => (tag === null ? [] : [[tag, place]]));
    expect(placed.map(([tag]) => tag).sort()).toEqual(['a', 'b', 'c']);
    for (const [tag, place] of placed)
      expect(kinds[shell.kind[place as number] as number]?.id).toBe(tag === 'c' ? '2' : '1');
    expect([answer.placed, answer.panels]).toEqual([3, 3]);
  });

  it('puts the panel to be mended no higher than the sound one of its kind', () => {
    const { tagAt, weak } = taggedPlaces(question);
    const place = tagAt.indexOf('b');
    expect(weak[place]).toBe(1);
    expect(courses.course[place] as number).toBeLessThanOrEqual(
      courses.course[tagAt.indexOf('a')] as number,
    );
  });

  it('gives none to a place that is left out', () => {
    const leftOut = numbers.map((_, place) => place).filter((p) => shell.kind[p] === 1);
    expect(taggedPlaces({ ...question, leftOut }).tagAt).not.toContain('c');
  });
});

describe('the list of tags', () => {
  it('goes by course and then round it, without what is left out', () => {
    const out = placeOf('1-02');
    const rows = tagRows(taggedPlaces(question), shell, kinds, numbers, [out]);
    expect(rows.slice(0, 3).map(({ number }) => number)).toEqual(['1-01', '1-03', '1-04']);
    expect(rows).toHaveLength(numbers.length - 1);
  });

  it('is a spreadsheet that says any where no tag is called for', () => {
    const rows = [
      { place: 0, number: '1-01', kind: '1', tag: 'a', weak: true },
      { place: 1, number: '1-02', kind: '2', tag: null, weak: false },
    ];
    expect(tagCsv(rows)).toBe('place,kind,tag,mended\r\n1-01,1,a,yes\r\n1-02,2,any,\r\n');
  });
});
