// Ladders and towers. OSHA 29 CFR 1926.1053(b)(5)(i): foot out a quarter of the working length, 75.5224878°
// (reckoned); lengths and feet for supports at 2, 3, 4 and 6 m reckoned from it. Mobile towers: height no
// more than three times the smaller base outdoors, 3.5 indoors (precautions.active-safety.co.uk, mobile
// towers). Reach above the feet and rung spacing: common practice.

import { expect, test } from 'vitest';
import { noGear } from '../../src/raise/gear.ts';
import { footholds, ladderSet, towerHeight } from '../../src/raise/lifts/reach.ts';
import { misfits, type Pair } from './data/pairs.ts';

const rows = [
  [2, 0.5164, 2.0656],
  [3, 0.7746, 3.0984],
  [4, 1.0328, 4.1312],
  [6, 1.5492, 6.1968],
] as const;

test('foot and length of a leaning ladder to 0.1 mm; ten times that is refused', () => {
  const pairs = rows.flatMap(([support, foot, length]): Pair[] => {
    const set = ladderSet(support);
    return [
      { what: `foot at ${support} m`, actual: set.foot, expected: foot },
      { what: `length at ${support} m`, actual: set.length, expected: length },
    ];
  });
  expect(misfits(pairs, 1e-4)).toEqual([]);
  expect(misfits(pairs, 1e-4, 1e-3)).toHaveLength(8);
});

test('its angle is 75.5225° to a thousandth of a degree; ten times that is refused', () => {
  const pairs = [
    { what: 'angle', actual: (ladderSet(3).angle * 180) / Math.PI, expected: 75.52248781 },
  ];
  expect(misfits(pairs, 1e-3)).toEqual([]);
  expect(misfits(pairs, 1e-3, 1e-2)).toHaveLength(1);
});

test('a tower goes up to three times its smaller base outdoors, 3.5 times indoors', () => {
  const tower = { height: 6, base: [1.35, 2.5] as [number, number] };
  const pairs = [
    { what: 'outdoors', actual: towerHeight(tower).value, expected: 4.05 },
    { what: 'indoors', actual: towerHeight(tower, 'indoors').value, expected: 4.725 },
    {
      what: 'with outriggers its own height',
      actual: towerHeight({ ...tower, base: [2.4, 2.5] }).value,
      expected: 6,
    },
  ];
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-8)).toHaveLength(3);
});

test('a tower that is cut short says so and what outriggers would do', () => {
  const gear = {
    ...noGear,
    towers: [
      { name: 'grey', height: 6, base: [1.35, 2.5] as [number, number], bears: null, count: 1 },
    ],
  };
  const note = footholds(gear).at(-1)?.note ?? '';
  expect(note).toContain('4.05 m');
  expect(note).toContain('outriggers to 2.00 m');
});
