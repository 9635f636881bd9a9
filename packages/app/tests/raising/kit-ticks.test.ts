import { type Bag, kitCheck, type Need } from '@shellraise/core';
import { expect, it } from 'vitest';
import { readTicked, tickedWith, ticksOf } from '../../src/sheets/raising/kit-ticks.ts';

const need = (item: Need['item'], quantity: number, length: number | null = null): Need => ({
  ...{ item, quantity, length, unit: 'piece' as const },
  ...{ thread: '5/16-18', corners: null, rim: false },
});
const bag = (stage: number | null, ...needs: Need[]): Bag => ({
  ...{ stage, needs },
  label: { title: `Stage ${stage}`, lines: [] },
});
const bags = [
  bag(1, need('bolt', 40, 0.03175), need('nut', 40)),
  bag(null, need('bolt', 6, 0.03175)),
];

it('counts down line by line, and up again where one is taken out', () => {
  const bolts = bags[0]?.needs[0] as Need;
  const one = tickedWith({}, 1, bolts, true);
  expect(kitCheck(bags, ticksOf(bags, one)).left).toBe(2);
  // The same bolts as spares are another line.
  const both = tickedWith(one, null, bags[1]?.needs[0] as Need, true);
  expect(kitCheck(bags, ticksOf(bags, both)).left).toBe(1);
  expect(kitCheck(bags, ticksOf(bags, tickedWith(both, 1, bolts, false))).left).toBe(2);
});

it('asks for the rest where a bag needs more than was ticked off', () => {
  const ticked = tickedWith({}, 1, need('bolt', 30, 0.03175), true);
  expect(kitCheck(bags, ticksOf(bags, ticked)).bags[0]?.left[0]?.quantity).toBe(10);
});

it('drops what storage should not hold', () => {
  expect(readTicked('{"a":3,"b":-1,"c":"4","d":null}')).toEqual({ a: 3 });
  for (const text of [null, 'x', '[1]', 'null', '7']) expect(readTicked(text)).toEqual({});
});
