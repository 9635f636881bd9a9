import { expect, test } from 'vitest';
import { hubPlaces, leadFixed } from '../../../src/raise/order/lead.ts';
import { orderSite } from '../../../src/raise/order/site.ts';
import { defaultRaising, raisingSection } from '../../../src/raise/schema.ts';
import { cutBall } from '../../stages/fixtures.ts';

const shell = cutBall(2, 40);
const { numbers, around, base } = orderSite(shell);
const free = [...around.keys()].find(
  (hub) => !base[hub] && (around[hub]?.length ?? 0) === 6,
) as number;

test('a project that fixes nothing leaves everything to the search', () => {
  expect(leadFixed(defaultRaising, shell, numbers)).toEqual({
    ok: true,
    value: { pins: { before: [], props: [] }, order: null, wayOut: null, groups: [] },
  });
});

test('what is kept by number comes back by index, a hub by the places round it', () => {
  const kept = raisingSection.parse({
    before: [{ place: numbers[3], than: numbers[5] }],
    order: numbers.map((number) => [number]),
    wayOut: [numbers[1]],
    groups: [hubPlaces(shell, numbers, free)],
    props: [hubPlaces(shell, numbers, free).reverse()],
  });
  const read = leadFixed(kept, shell, numbers);
  expect(read.ok && read.value).toEqual({
    pins: { before: [{ place: 3, than: 5 }], props: [free] },
    order: numbers.map((_, i) => [i]),
    wayOut: [1],
    groups: [{ places: around[free], made: 'made up' }],
  });
});

test('a number that no place bears and places that share no hub are told by where they stand', () => {
  const kept = raisingSection.parse({
    before: [{ place: '9-99', than: numbers[0] }],
    props: [[numbers[0]], hubPlaces(shell, numbers, free).slice(1)],
  });
  const read = leadFixed(kept, shell, numbers);
  expect(read.ok ? [] : read.faults.map(({ path }) => path)).toEqual([
    'raising.before[0].place',
    'raising.props[0]',
    'raising.props[1]',
  ]);
});
