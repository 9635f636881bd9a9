import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/measure/fault.ts';
import { readPile } from '../../src/pile/check.ts';

const kind = (row: object = {}): object => ({ id: '1', sides: [0.928, 0.928, 1.082], ...row });
const reading = (row: object = {}): object => ({ sides: [0.928, 0.928, 1.082], ...row });
const faults = (raw: unknown): string[] => {
  const read = readPile(raw);
  return read.ok ? [] : read.faults.map(describeFault);
};

describe('every fault of a pile names its place, what was found and what is allowed', () => {
  test.each<[string, unknown, string]>([
    ['no sides', { kinds: [{ id: '1' }] }, 'pile.kinds[0].sides: found nothing, expected a list'],
    [
      'two sides',
      { kinds: [kind({ sides: [1, 1] })] },
      'pile.kinds[0].sides: found [1,1], expected a list of at least 3',
    ],
    [
      'thirteen sides',
      { kinds: [kind({ sides: Array(13).fill(1) })] },
      'pile.kinds[0].sides: found a list of 13, expected a list of at most 12',
    ],
    [
      'a zero side',
      { kinds: [kind({ sides: [0, 1, 1] })] },
      'pile.kinds[0].sides[0]: found 0, expected a side of 0.05 to 12 m',
    ],
    [
      'a negative side',
      { kinds: [kind({ sides: [-1, 1, 1] })] },
      'pile.kinds[0].sides[0]: found -1, expected a side of 0.05 to 12 m',
    ],
    [
      'a tiny side',
      { kinds: [kind({ sides: [0.001, 1, 1] })] },
      'pile.kinds[0].sides[0]: found 0.001, expected a side of 0.05 to 12 m; lengths here are in metres',
    ],
    [
      'millimetres',
      { kinds: [kind({ sides: [928, 0.9, 0.9] })] },
      'pile.kinds[0].sides[0]: found 928, expected a side of 0.05 to 12 m; lengths here are in metres, was it millimetres?',
    ],
    [
      'inches',
      { kinds: [kind({ sides: [43, 0.9, 0.9] })] },
      'pile.kinds[0].sides[0]: found 43, expected a side of 0.05 to 12 m; lengths here are in metres, was it centimetres or inches?',
    ],
    [
      'an absurd side',
      { kinds: [kind({ sides: [9e9, 1, 1] })] },
      'pile.kinds[0].sides[0]: found 9000000000, expected a side of 0.05 to 12 m; lengths here are in metres',
    ],
    [
      'NaN',
      { kinds: [kind({ sides: [Number.NaN, 1, 1] })] },
      'pile.kinds[0].sides[0]: found NaN, expected a finite number',
    ],
    [
      'infinity',
      { kinds: [kind({ sides: [1, Number.POSITIVE_INFINITY, 1] })] },
      'pile.kinds[0].sides[1]: found Infinity, expected a finite number',
    ],
    [
      'a side in words',
      { kinds: [kind({ sides: ['1 m', 1, 1] })] },
      'pile.kinds[0].sides[0]: found "1 m", expected a finite number',
    ],
    [
      'sides that do not meet',
      { kinds: [kind({ sides: [1, 2, 1] })] },
      'pile.kinds[0].sides: found [1,2,1], expected sides that meet: the longest, 2 m, must be shorter than the others together, 2 m',
    ],
    ['no id', { kinds: [{ sides: [1, 1, 1] }] }, 'pile.kinds[0].id: found nothing, expected text'],
    [
      'an empty id',
      { kinds: [kind({ id: ' ' })] },
      'pile.kinds[0].id: found " ", expected text of at least 1 characters',
    ],
    [
      'two ids alike',
      { kinds: [kind(), kind({ id: ' 1 ' })] },
      'pile.kinds[1].id: found "1", expected an id unlike that of pile.kinds[0]',
    ],
    [
      'half a panel',
      { kinds: [kind({ good: 1.5 })] },
      'pile.kinds[0].good: found 1.5, expected a whole number',
    ],
    [
      'less than no panels',
      { kinds: [kind({ scrap: -1 })] },
      'pile.kinds[0].scrap: found -1, expected a number of at least 0',
    ],
    [
      'no mass',
      { kinds: [kind({ mass: 0 })] },
      'pile.kinds[0].mass: found 0, expected a number of more than 0',
    ],
    ['a row of text', { kinds: ['1'] }, 'pile.kinds[0]: found "1", expected an object { … }'],
    [
      'kinds by name',
      { kinds: { 1: kind() } },
      'pile.kinds: found {"1":{"id":"1","sides":[0.928,0.928,1.082]}}, expected a list',
    ],
    [
      'holes of two sides',
      { kinds: [kind({ holes: [5, 5] })] },
      'pile.kinds[0].holes: found 2 entries, expected one for each of the 3 sides',
    ],
    [
      'laps of four sides',
      { kinds: [kind({ laps: ['over', 'over', 'under', 'flush'] })] },
      'pile.kinds[0].laps: found 4 entries, expected one for each of the 3 sides',
    ],
    [
      'an unknown lap',
      { kinds: [kind({ laps: ['over', 'over', 'up'] })] },
      'pile.kinds[0].laps[2]: found "up", expected one of over, under, flush',
    ],
    [
      'an angle in degrees',
      { kinds: [kind({ dihedrals: [165, null, null] })] },
      'pile.kinds[0].dihedrals[0]: found 165, expected a number of at most 5.28',
    ],
    [
      'a spoke that the group has not',
      { kinds: [kind({})], groups: [{ around: ['1', '1'], rim: [{ from: 0, to: 3, length: 1 }] }] },
      'pile.groups[0].rim[0].to: found 3, expected a spoke of this group, 0 to 2',
    ],
    [
      'a rim from a spoke to itself',
      { kinds: [kind({})], groups: [{ around: ['1', '1'], rim: [{ from: 1, to: 1, length: 1 }] }] },
      'pile.groups[0].rim[0].to: found 1, expected another spoke than `from`',
    ],
    [
      'a hub plate with an arm too few',
      { hubPlates: [{ corners: 5, arms: [1.2, 1.2, 1.2, 1.2] }] },
      'pile.hubPlates[0].arms: found 4 angles, expected one for each of the 5 corners',
    ],
    [
      'arms that do not go round',
      { hubPlates: [{ corners: 3, arms: [2, 2, 2] }] },
      'pile.hubPlates[0].arms: found angles that add up to 6.0000 rad, expected 6.2832 rad, all the way round',
    ],
    [
      'an unknown key',
      { kinds: [kind({ colour: 'red' })] },
      'pile.kinds[0].colour: found an unknown key, expected one of id, marks, sides, good, repair, scrap, mass, laps, holes, dihedrals, seenFrom, leaveOut, note',
    ],
    [
      'an unknown face',
      { readings: [reading({ seenFrom: 'above' })] },
      'pile.readings[0].seenFrom: found "above", expected one of outside, inside, unknown',
    ],
    [
      'a tag for many',
      { readings: [reading({ tag: '7', count: 3 })] },
      'pile.readings[0].count: found 3, expected 1, or no tag: the tag "7" names one single panel',
    ],
    [
      'a tag of two shapes',
      { readings: [reading({ tag: '7' }), reading({ tag: '7', sides: [1, 1, 1, 1] })] },
      'pile.readings[1].sides: found 4 sides, expected 3 sides as in pile.readings[0], which has the same tag "7"',
    ],
    [
      'holes of a reading',
      { readings: [reading({ holes: [1] })] },
      'pile.readings[0].holes: found 1 entry, expected one for each of the 3 sides',
    ],
    [
      'an unknown kind in a group',
      { kinds: [kind()], groups: [{ around: ['1', '9'] }] },
      'pile.groups[0].around[1]: found "9", expected a kind or mark of this pile (1)',
    ],
    [
      'a group in an empty pile',
      { groups: [{ around: ['1', '1'] }] },
      'pile.groups[0].around[0]: found "1", expected a kind or mark of this pile (none: there are no kinds and no marks)',
    ],
    [
      'a group of one',
      { kinds: [kind()], groups: [{ around: ['1'] }] },
      'pile.groups[0].around: found ["1"], expected a list of at least 2',
    ],
    [
      'an unknown item',
      { hardware: [{ item: 'bolts', count: 3 }] },
      'pile.hardware[0].item: found "bolts", expected one of bolt, nut, lock nut, washer, plate, tape, sealant, anchor, other',
    ],
    [
      'uncounted hardware',
      { hardware: [{ item: 'bolt' }] },
      'pile.hardware[0].count: found nothing, expected a finite number',
    ],
    [
      'a wild allowance',
      { hubAllowance: 4 },
      'pile.hubAllowance: found 4, expected a number of at most 0.5',
    ],
    [
      'exact readings',
      { readingSd: 0 },
      'pile.readingSd: found 0, expected a number of at least 0.00005',
    ],
    [
      'an unknown line',
      { measuredAlong: 'rim' },
      'pile.measuredAlong: found "rim", expected one of holes, skin, hubs',
    ],
    ['no pile', null, 'pile: found null, expected an object { … }'],
  ])('%s', (_title, raw, expected) => {
    const found = faults(raw);
    expect(found).toContain(expected);
    expect(found.length).toBeLessThanOrEqual(2);
  });

  test('all at once, those between rows together with those of single rows', () => {
    expect(
      faults({
        readingSd: -1,
        kinds: [kind({ good: -1 }), kind({ sides: [1, 1, 3] })],
        groups: [{ around: ['1', 'x'], count: 0 }],
      }).map((fault) => fault.split(':')[0]),
    ).toEqual([
      'pile.readingSd',
      'pile.kinds[0].good',
      'pile.kinds[1].sides',
      'pile.groups[0].count',
      'pile.kinds[1].id',
      'pile.groups[0].around[1]',
    ]);
  });
});

test('a group may name a mark of a kind or of a reading', () => {
  expect(
    faults({
      kinds: [kind({ marks: ['R'] })],
      readings: [reading({ mark: 'S' })],
      groups: [{ around: ['R', 'S', '1'] }],
    }),
  ).toEqual([]);
});
