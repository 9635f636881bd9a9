import { kindsOfPile, type Mend, pileFaults, shapeQuestion } from '@shellraise/core';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import {
  leaveOut,
  leftOutOf,
  mended,
  takeAllowance,
  takeBack,
  takeMend,
  tellFaces,
} from '../../src/sheets/shape/overrule.ts';
import type { Doc } from '../../src/state/doc.ts';
import { pileOf } from './notation.ts';

const docOf = (pile: object): Doc => ({
  project: { shellraise: 1, title: '', pile: pileOf(pile) },
  drafts: [],
});
const mend = (more: Partial<Mend>): Mend => ({
  kind: 'k',
  slip: 'length',
  sides: [1],
  measured: [0.9, 1.18, 1.1],
  expected: [0.9, 1.1, 1.1],
  ...more,
});
const note = (): string => 'as it was';

describe('a mend of a kind', () => {
  it('writes the length of the net where a side was misread', () => {
    expect(mended([0.9, 1.181, 1.1], [0, 1, 2], mend({}))).toEqual([0.9, 1.1, 1.1]);
  });

  it('leaves a reading of it that was right already', () => {
    expect(mended([0.9, 1.101, 1.1], [0, 1, 2], mend({}))).toEqual([0.9, 1.101, 1.1]);
  });

  it('finds the side whichever way the panel lay', () => {
    expect(mended([1.18, 1.1, 0.9], [1, 2, 0], mend({}))).toEqual([1.1, 1.1, 0.9]);
  });

  it('puts two sides into each other’s place as they were measured', () => {
    const two = mend({
      slip: 'swapped',
      sides: [1, 2],
      measured: [0.9, 1.18, 1.103],
      expected: [0.9, 1.103, 1.18],
    });
    expect(mended([0.901, 1.181, 1.102], [0, 1, 2], two)).toEqual([0.901, 1.102, 1.181]);
  });

  it('takes inches for the centimetres that were written', () => {
    const unit = mend({ slip: 'unit', measured: [0.9, 0.4331, 1.1] });
    expect(mended([0.9, 0.4331, 1.1], [0, 1, 2], unit)[1]).toBeCloseTo(0.4331 * 2.54, 6);
  });

  it('adds what a broken hook took from every side', () => {
    const shift = mend({ slip: 'shift', sides: [], measured: [0.875, 1.075, 1.075] });
    expect(mended([0.876, 1.075, 1.074], [0, 1, 2], shift)).toEqual([0.901, 1.1, 1.099]);
  });

  it('knows that a pile is without the hub allowance', () => {
    const far = mend({ measured: [0.92, 1.2, 1.12], expected: [0.92, 1.12, 1.12] });
    expect(mended([0.9, 1.18, 1.1], [0, 1, 2], far, 0.02)).toEqual([0.9, 1.1, 1.1]);
  });

  it('goes into every row that the kind rests on, with a note, and the pile can be kept', () => {
    const doc = docOf({ kinds: [{ id: 'k', sides: [0.9, 1.18, 1.1], good: 4 }] });
    const worked = kindsOfPile(doc.project.pile);
    const after = produce(doc, (draft) => takeMend(draft, mend({}), worked, note));
    expect(after.project.pile.kinds[0]).toMatchObject({
      sides: [0.9, 1.1, 1.1],
      note: 'as it was',
    });
    expect(pileFaults(after.project.pile)).toEqual([]);
  });

  it('turns the face where the other was read', () => {
    const doc = docOf({ kinds: [{ id: 'k', sides: [0.9, 1.0, 1.1], good: 4 }] });
    const worked = kindsOfPile(doc.project.pile);
    const face = mend({ slip: 'face', sides: [] });
    const after = produce(doc, (draft) => takeMend(draft, face, worked, note));
    expect(after.project.pile.kinds[0]).toMatchObject({ seenFrom: 'inside', sides: [0.9, 1, 1.1] });
  });
});

describe('a kind left out', () => {
  const readings = [
    ...[0, 1].map(() => ({ sides: [0.9, 1.0, 1.1], seenFrom: 'outside' })),
    ...[0, 1].map(() => ({ sides: [1.3, 1.3, 1.3], seenFrom: 'outside' })),
    ...[0, 1].map(() => ({ sides: [1.4, 1.4, 1.4], seenFrom: 'outside' })),
  ];
  const doc = docOf({ readings });
  const worked = kindsOfPile(doc.project.pile);
  const [, second] = worked.kinds;
  const out = produce(doc, (draft) => {
    if (second) leaveOut(draft, second);
  });

  it('is not asked for, and the others keep their names', () => {
    const left = kindsOfPile(out.project.pile);
    expect(new Set(left.kinds.map(({ id }) => id))).toEqual(
      new Set(worked.kinds.map(({ id }) => id)),
    );
    const asked = shapeQuestion(out.project.pile, left).kinds.map(({ id }) => id);
    expect(asked).toEqual(worked.kinds.map(({ id }) => id).filter((id) => id !== second?.id));
    expect(leftOutOf(out.project.pile)).toEqual([second?.id]);
    expect(pileFaults(out.project.pile)).toEqual([]);
  });

  it('comes back with nothing of it left where only readings are of it', () => {
    const back = produce(out, (draft) =>
      takeBack(draft, second?.id ?? '', kindsOfPile(out.project.pile)),
    );
    expect(back).toEqual(doc);
  });

  it('keeps its row where the file has one', () => {
    const own = docOf({ kinds: [{ id: 'k', sides: [0.9, 1, 1.1], good: 4 }] });
    const [kind] = kindsOfPile(own.project.pile).kinds;
    const gone = produce(own, (draft) => {
      if (kind) leaveOut(draft, kind);
    });
    expect(leftOutOf(gone.project.pile)).toEqual(['k']);
    const of = kindsOfPile(gone.project.pile);
    expect(produce(gone, (draft) => takeBack(draft, 'k', of))).toEqual(own);
  });
});

describe('what one look tells', () => {
  const seen = { seenFrom: 'unknown', by: 'Petra' };
  const doc = docOf({
    readings: [
      { sides: [0.9, 1.0, 1.1], ...seen },
      { sides: [1.0, 0.9, 1.1], ...seen },
    ],
  });
  const worked = kindsOfPile(doc.project.pile);
  const [kind] = worked.kinds;
  const facesAfter = (asShown: boolean): string[] => {
    const test = { kind: kind?.id ?? '', order: [0, 1, 2] };
    const after = produce(doc, (draft) => tellFaces(draft, test, asShown, worked));
    return after.project.pile.readings.map(({ seenFrom }) => seenFrom);
  };

  it('settles each reading by the way its own sides run', () => {
    const shown = facesAfter(true);
    expect(new Set(shown)).toEqual(new Set(['outside', 'inside']));
    expect(facesAfter(false)).toEqual(
      shown.map((face) => (face === 'outside' ? 'inside' : 'outside')),
    );
  });

  it('leaves faces alone that somebody noted', () => {
    const noted = docOf({ readings: [{ sides: [0.9, 1.0, 1.1], seenFrom: 'inside' }] });
    const of = kindsOfPile(noted.project.pile);
    const test = { kind: of.kinds[0]?.id ?? '', order: [0, 1, 2] };
    expect(produce(noted, (draft) => tellFaces(draft, test, true, of))).toBe(noted);
  });
});

it('an allowance of the net is added to what the pile has', () => {
  const doc = docOf({ measuredAlong: 'holes', hubAllowance: 0.01 });
  const after = produce(doc, (draft) => takeAllowance(draft, 0.0123));
  expect(after.project.pile.hubAllowance).toBeCloseTo(0.0223, 9);
});
