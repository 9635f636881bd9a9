import { kindsOfPile, pileFaults, type ReadingSlip } from '@shellraise/core';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import {
  facesUnknown,
  isOf,
  mendReading,
  rightSides,
  standAsRead,
  stateTape,
} from '../../src/sheets/pile/slip-mends.ts';
import { docOfReadings, reading } from './notation.ts';

const right = [0.92, 0.98, 1.073];
const slip = (measured: number[], more: Partial<ReadingSlip> = {}): ReadingSlip => ({
  reading: 0,
  tag: null,
  by: null,
  kind: '1',
  slip: 'length',
  orElse: null,
  sides: [1],
  measured,
  expected: right,
  ...more,
});

describe('what a reading should have said', () => {
  it('is the length of its kind where a side was misread, the other sides as read', () => {
    expect(rightSides(slip([0.921, 1.02, 1.072]), 'length')).toEqual([0.921, 0.98, 1.072]);
  });

  it('is the same sides in each other’s place where two were swapped', () => {
    const two = slip([0.921, 1.074, 0.979], { slip: 'swapped', sides: [1, 2] });
    expect(rightSides(two, 'swapped')).toEqual([0.921, 0.979, 1.074]);
  });

  it('is the same figure in the other unit, not the length of its kind', () => {
    const inches = slip([0.92, 0.386, 1.073], { slip: 'unit' });
    expect(rightSides(inches, 'unit')[1]).toBe(0.9804);
    const feet = slip([0.92, 0.3048 * 3.26, 1.073], { slip: 'unit' });
    expect(rightSides(feet, 'unit')[1]).toBe(0.9804);
  });
});

describe('a slip put right', () => {
  const doc = docOfReadings(reading([0.92, 1.02, 1.073]), reading(right));
  const one = { slip: slip([0.92, 1.02, 1.073]), as: 'length' as const };

  it('says what was read before, and leaves a pile that can be kept', () => {
    const after = produce(doc, (draft) => mendReading(draft, 0, one, 'Read 1020 mm.'));
    const { pile } = after.project;
    expect(pile.readings[0]).toMatchObject({ sides: right, note: 'Read 1020 mm.' });
    expect(pileFaults(pile)).toEqual([]);
  });

  it('turns the face that was noted where the other face was read', () => {
    const face = { slip: one.slip, as: 'face' as const };
    const after = produce(doc, (draft) => mendReading(draft, 0, face, ''));
    expect(after.project.pile.readings[0]?.seenFrom).toBe('inside');
    expect(after.project.pile.readings[0]?.sides).toEqual([0.92, 1.02, 1.073]);
  });

  it('leaves a reading alone that was measured again meanwhile', () => {
    const now = docOfReadings(reading(right));
    expect(isOf(reading(right), one.slip)).toBe(false);
    expect(produce(now, (draft) => mendReading(draft, 0, one, ''))).toBe(now);
  });
});

describe('a person’s word', () => {
  it('lets a reading stand, and can be taken back', () => {
    const doc = docOfReadings(reading(right));
    const stands = produce(doc, (draft) => standAsRead(draft, 0, true));
    expect(stands.project.pile.readings[0]?.asRead).toBe(true);
    expect(pileFaults(stands.project.pile)).toEqual([]);
    expect(produce(stands, (draft) => standAsRead(draft, 0, false))).toEqual(doc);
  });

  it('states what a tape adds instead of what is reckoned, and can be taken back', () => {
    const sides = Array.from({ length: 4 }, () => reading(right, { by: 'Petra' }));
    const doc = docOfReadings(...sides);
    const stated = produce(doc, (draft) => stateTape(draft, 'Petra', 0.025));
    const [petra] = kindsOfPile(stated.project.pile).people;
    expect(petra).toMatchObject({ by: 'Petra', bias: 0.025, applied: true, stated: true });
    const none = produce(stated, (draft) => stateTape(draft, 'Petra', 0));
    expect(none.project.pile.people).toEqual([{ by: 'Petra', shift: 0 }]);
    expect(produce(none, (draft) => stateTape(draft, 'Petra', null))).toEqual(doc);
  });
});

describe('kinds of unknown face', () => {
  it('lead to a reading whose face nobody noted', () => {
    const readings = [
      reading(right, { seenFrom: 'unknown' }),
      reading(right, { seenFrom: 'unknown' }),
    ];
    const doc = docOfReadings(...readings);
    const worked = kindsOfPile(doc.project.pile);
    expect(facesUnknown(worked, readings)).toMatchObject([{ all: true, row: 0 }]);
    const known = docOfReadings(reading(right), reading(right));
    const all = known.project.pile.readings;
    expect(facesUnknown(kindsOfPile(known.project.pile), all)).toEqual([]);
  });

  it('are not told of where a panel is the same from either face', () => {
    const readings = [1, 2, 3].map(() => reading([0.92, 0.92, 1.073], { seenFrom: 'unknown' }));
    const worked = kindsOfPile(docOfReadings(...readings).project.pile);
    expect(worked.kinds).toMatchObject([{ faceUnknown: true, hand: null }]);
    expect(facesUnknown(worked, readings)).toEqual([]);
  });
});
