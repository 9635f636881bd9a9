import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { deleteRow, dropUnread, sameAgain } from '../../src/sheets/pile/edits.ts';
import { cellText, checkRow, rowsOf } from '../../src/sheets/pile/rows.ts';
import type { Doc } from '../../src/state/doc.ts';
import {
  docOfReadings,
  faultsOf,
  freshRef,
  millimetres,
  reading,
  row,
  sides,
  typed,
} from './notation.ts';

const three = [0.92, 0.92, 1.073];
const rows = ({ project, drafts }: Doc) => rowsOf(project.pile.readings, drafts);

describe('a row that is begun', () => {
  test('becomes a reading with its third side, and never before', () => {
    const empty = docOfReadings();
    const two = typed(empty, freshRef(empty), [['tag', '001'], ...sides('920', '920')]);
    expect(two.doc.project.pile.readings).toHaveLength(0);
    expect(two.doc.drafts).toHaveLength(1);
    const { doc, ref } = typed(two.doc, two.ref, [[2, `42 1/4"`]]);
    expect(ref).toEqual(row(0));
    expect(doc.drafts).toEqual([]);
    expect(doc.project.pile.readings[0]).toEqual({
      tag: '001',
      sides: [0.92, 0.92, 1.07315],
      seenFrom: 'outside',
    });
  });

  test('keeps what cannot be read, as typed', () => {
    const empty = docOfReadings();
    const { doc, ref } = typed(empty, freshRef(empty), sides('920', '1,103', '1073'));
    expect(doc.project.pile.readings).toHaveLength(0);
    expect(doc.drafts[0]?.sides).toEqual(['920 mm', '1,103', '1073 mm']);
    const mended = typed(doc, ref, [[1, '920']]);
    expect(millimetres(mended.doc, 0)).toEqual([920, 920, 1073]);
    expect(mended.doc.drafts).toEqual([]);
  });

  test('keeps sides that do not meet and names the longest', () => {
    const empty = docOfReadings();
    const { doc } = typed(empty, freshRef(empty), sides('920', '920', '1900'));
    const draft = doc.drafts[0];
    expect(draft && checkRow(null, draft, 'mm').faults.get(2)?.why).toBe('open');
    expect(doc.project.pile.readings).toHaveLength(0);
  });

  test('is gone once everything typed into it is taken back', () => {
    const empty = docOfReadings();
    const one = typed(empty, freshRef(empty), [['tag', '7']]);
    expect(one.doc.drafts).toHaveLength(1);
    expect(typed(one.doc, one.ref, [['tag', '']]).doc.drafts).toEqual([]);
  });

  test('goes on with who measured and from which face', () => {
    const doc = docOfReadings(reading(three, { by: 'Wim', seenFrom: 'inside', mark: 'owl' }));
    expect(rows(doc).at(-1)?.draft).toMatchObject({ by: 'Wim', seenFrom: 'inside', mark: '' });
  });

  test('takes a fourth side as a panel of four', () => {
    const empty = docOfReadings();
    const { doc } = typed(empty, freshRef(empty), sides('900', '900', '900', '900'));
    expect(millimetres(doc, 0)).toEqual([900, 900, 900, 900]);
  });
});

describe('a reading that is retyped', () => {
  test('changes side by side and leaves the others exactly as they were', () => {
    const odd = 1.1382375;
    const doc = docOfReadings(reading([odd, 1.0715625, 1.0874375], { tag: '001' }));
    const after = typed(doc, row(0), [[1, '1072']]).doc;
    expect(after.project.pile.readings[0]?.sides).toEqual([odd, 1.072, 1.0874375]);
  });

  test('stands until its new text can be read, and the text stays', () => {
    const doc = docOfReadings(reading(three), reading([1, 1, 1]));
    const after = typed(doc, row(0), [[2, 'ten sevn three']]).doc;
    expect(after.project.pile.readings[0]?.sides).toEqual(three);
    const shown = rows(after)[0];
    expect(shown && cellText(shown, 2, String)).toBe('ten sevn three');
    expect(rows(after)).toHaveLength(3);
    const other = typed(after, row(0), [[0, '921']]).doc;
    expect(millimetres(other, 0)).toEqual([921, 920, 1073]);
    expect(other.drafts[0]?.sides).toEqual(['', '', 'ten sevn three']);
    const mended = typed(other, row(0), [[2, '1074']]).doc;
    expect(millimetres(mended, 0)).toEqual([921, 920, 1074]);
    expect(mended.drafts).toEqual([]);
  });

  test('can be put back where its text is no good', () => {
    const doc = typed(docOfReadings(reading(three)), row(0), [[2, '99 m']]).doc;
    expect(produce(doc, (draft) => dropUnread(draft, 0)).drafts).toEqual([]);
  });

  test('keeps a tag that names another panel with other sides as text', () => {
    const doc = docOfReadings(reading([1, 1, 1, 1], { tag: 'A' }), reading(three, { tag: 'B' }));
    const after = typed(doc, row(1), [['tag', 'A']]).doc;
    expect(after.project.pile.readings[1]?.tag).toBe('B');
    expect(after.drafts[0]).toMatchObject({ of: 1, tag: 'A' });
    expect(faultsOf(after)).toEqual([]);
  });

  test('keeps a count beside a tag as text, for a tag names one panel', () => {
    const doc = docOfReadings(reading(three, { tag: 'A' }));
    const after = typed(doc, row(0), [['count', '3']]).doc;
    expect(after.project.pile.readings[0]?.count).toBeUndefined();
    expect(after.drafts[0]?.count).toBe('3');
    const untagged = typed(after, row(0), [['tag', '']]).doc;
    expect(untagged.project.pile.readings[0]).toMatchObject({ count: 3 });
    expect(untagged.drafts).toEqual([]);
    expect(faultsOf(untagged)).toEqual([]);
  });

  test('loses its fourth side when that is emptied, never its third', () => {
    const doc = docOfReadings(reading([1, 1, 1, 1], { holes: [9, 9, 9, 9] }));
    const after = typed(doc, row(0), [[3, '']]).doc;
    expect(after.project.pile.readings[0]).toEqual({ sides: [1, 1, 1], seenFrom: 'outside' });
    expect(typed(after, row(0), [[2, '']]).doc.project.pile.readings[0]?.sides).toHaveLength(3);
  });
});

describe('one more like the last', () => {
  test('counts an untagged row up', () => {
    const doc = produce(docOfReadings(reading(three)), (draft) => void sameAgain(draft, 0));
    expect(doc.project.pile.readings).toEqual([reading(three, { count: 2 })]);
  });

  test('begins an untagged row after a tagged one, which then counts up', () => {
    const doc = produce(docOfReadings(reading(three, { tag: '7', mark: 'owl' })), (draft) => {
      sameAgain(draft, 0);
      sameAgain(draft, 1);
    });
    expect(doc.project.pile.readings[1]).toEqual(reading(three, { mark: 'owl', count: 2 }));
    expect(faultsOf(doc)).toEqual([]);
  });
});

describe('a row that is deleted', () => {
  test('takes its unread text along; that of later rows stays with them', () => {
    const begun = docOfReadings(reading(three), reading([1, 1, 1]), reading([0.9, 0.9, 0.9]));
    const first = typed(begun, row(0), [[0, 'x']]).doc;
    const doc = typed(first, row(2), [[1, 'y']]).doc;
    const after = produce(doc, (draft) => void deleteRow(draft, row(0)));
    expect(after.drafts.map(({ of, sides: own }) => [of, own])).toEqual([[1, ['', 'y']]]);
    expect(millimetres(after, 1)).toEqual([900, 900, 900]);
  });

  test('sets a joined group aside whose mark no panel carries any more', () => {
    const plain = docOfReadings(reading(three, { mark: 'owl' }), reading(three, { mark: 'wren' }));
    const doc = produce(plain, (draft) => {
      draft.project.pile.groups.push(
        { around: ['owl', 'wren'], count: 1 },
        { around: ['wren', 'wren'], count: 1 },
      );
    });
    const after = produce(doc, (draft) => void deleteRow(draft, row(0)));
    expect(after.project.pile.groups).toHaveLength(1);
    expect(faultsOf(after)).toEqual([]);
    const remarked = typed(doc, row(0), [['mark', 'hawk']]);
    expect(remarked.aside).toBe(1);
    expect(faultsOf(remarked.doc)).toEqual([]);
  });
});
