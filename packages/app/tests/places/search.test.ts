import { describe, expect, it } from 'vitest';
import { search } from '../../src/sheets/places/search.ts';
import { tagsOf } from '../../src/sheets/places/tags.ts';
import { kinds, numbers, shell } from './notation.ts';

const findable = {
  numbers,
  kindAt: shell.kind,
  kinds,
  tags: [
    { tag: '017', kind: '2' },
    { tag: 'B4', kind: null },
  ],
};
const find = (query: string) => search(query, findable);

describe('finding things', () => {
  it('finds a place however its number is written', () => {
    for (const query of ['2-03', '2-3', '2 03', '203', ' 2-03 '])
      expect(find(query)[0], query).toMatchObject({ type: 'place', number: '2-03' });
  });

  it('finds a whole course by its beginning, in order', () => {
    const found = find('1-0');
    expect(found.map((one) => one.type === 'place' && one.number).slice(0, 3)).toEqual([
      '1-01',
      '1-02',
      '1-03',
    ]);
  });

  it('finds a kind by its mark, whatever the capitals', () => {
    expect(find('HER')).toEqual([{ type: 'kind', kind: '1', mark: 'heron' }]);
  });

  it('finds a panel by its tag, with or without its noughts', () => {
    for (const query of ['017', '17'])
      expect(find(query)).toContainEqual({ type: 'tag', tag: '017', kind: '2' });
    expect(find('b4')).toEqual([{ type: 'tag', tag: 'B4', kind: null }]);
  });

  it('puts what is named exactly before what only begins so', () => {
    expect(find('1')[0]).toEqual({ type: 'kind', kind: '1', mark: null });
  });

  it('finds nothing for nothing', () => {
    for (const query of ['', '  ', '-', 'xyzzy']) expect(find(query)).toEqual([]);
  });

  it('never finds more than a person would read', () => {
    expect(find('1').length).toBeLessThanOrEqual(12);
  });
});

describe('tagged panels', () => {
  it('are one each, in the worst condition that anybody noted', () => {
    const sides = [1, 1, 1];
    const seen = { seenFrom: 'outside', sides } as const;
    const readings = [
      { ...seen, tag: '001', condition: 'good' as const },
      { ...seen, tag: '002' },
      { ...seen, tag: '001', condition: 'repair' as const },
      { ...seen },
    ].map((one) => ({ ...one, sides: [...sides] }));
    const assigned = [0, 1, 2, 3].map((reading) => ({
      reading,
      tag: null,
      kind: reading === 1 ? null : '1',
      probability: 1,
      candidates: [],
      turn: 0,
      mirrored: false,
      misfit: 0,
      liesOn: [0, 1, 2],
    }));
    expect(tagsOf(readings, assigned)).toEqual([
      { tag: '001', kind: '1', condition: 'repair' },
      { tag: '002', kind: null, condition: 'good' },
    ]);
  });
});
