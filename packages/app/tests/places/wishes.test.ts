import { defaultWishes, fullOrder, objectives } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  eased,
  isOptional,
  moved,
  notCounted,
  orderOf,
  readLimit,
  readWhole,
  sameWishes,
  shownLimit,
  withCounted,
  withDoor,
  withLength,
  withoutCounted,
  withoutDemand,
  withWhole,
} from '../../src/sheets/places/fit/wishes.ts';

describe('the order of what counts', () => {
  it('shows all there is, those not named last, as the engine ranks them', () => {
    expect(orderOf(defaultWishes).slice(0, 3)).toEqual(defaultWishes.order);
    const all = [...orderOf(defaultWishes), ...notCounted(defaultWishes)];
    expect([...all].sort()).toEqual([...objectives].sort());
  });

  it('takes in more that counts, last of all, and leaves it out again', () => {
    const [more] = notCounted(defaultWishes);
    if (!more) throw new Error('everything counts always');
    const wishes = withCounted(defaultWishes, more);
    expect(orderOf(wishes).at(-1)).toBe(more);
    expect(notCounted(wishes)).not.toContain(more);
    expect(sameWishes(withoutCounted(wishes, more), defaultWishes)).toBe(true);
    expect(isOptional(more)).toBe(true);
    expect(isOptional('tallest')).toBe(false);
  });

  it('moves one thing up or down, and back again to wishes that ask for the same', () => {
    const up = moved(defaultWishes, 'tallest', -1);
    expect(orderOf(up).slice(0, 2)).toEqual(['tallest', 'fewest bought']);
    expect(sameWishes(up, defaultWishes)).toBe(false);
    expect(sameWishes(moved(up, 'tallest', 1), defaultWishes)).toBe(true);
  });

  it('leaves the first where it is when it is to go further up, and the last further down', () => {
    const order = orderOf(defaultWishes);
    const last = order.at(-1);
    expect(moved(defaultWishes, 'fewest bought', -1)).toBe(defaultWishes);
    expect(last && moved(defaultWishes, last, 1)).toBe(defaultWishes);
  });

  it('is the same whether what counts last is written out or not', () => {
    const { order } = defaultWishes;
    expect(sameWishes(defaultWishes, { ...defaultWishes, order: fullOrder(order) })).toBe(true);
  });
});

describe('limits', () => {
  it('take floors across and keep radii', () => {
    const wishes = withLength(defaultWishes, 'leastFloor', 6);
    expect(wishes.leastFloor).toBe(3);
    expect(shownLimit(wishes, 'leastFloor')).toBe(6);
    expect(withLength(defaultWishes, 'leastHeight', 3.5).leastHeight).toBe(3.5);
  });

  it('are gone, not nought, where nothing is typed', () => {
    const wishes = withLength(defaultWishes, 'mostFloor', 7);
    expect(withLength(wishes, 'mostFloor', undefined)).toEqual(defaultWishes);
    expect(withWhole(withWhole(defaultWishes, 'mostBought', 3), 'mostBought', undefined)).toEqual(
      defaultWishes,
    );
    expect(withWhole(defaultWishes, 'spares', undefined).spares).toBe(0);
  });

  it('are whole numbers up to the most, or faults', () => {
    expect(readWhole(' 12 ', 50)).toEqual({ ok: true, value: 12 });
    expect(readWhole('', 50)).toEqual({ ok: true, value: undefined });
    for (const text of ['51', '-1', '1.5', 'two'])
      expect(readWhole(text, 50)).toEqual({ ok: false });
  });

  it('are lengths of more than nothing in any unit, or faults', () => {
    expect(readLimit('3.5', 'm')).toEqual({ ok: true, value: 3.5 });
    const feet = readLimit(`11' 6"`, 'ft');
    expect(feet.ok && feet.value).toBeCloseTo(3.5052, 9);
    for (const text of ['0', '-2', '51 m', 'tall'])
      expect(readLimit(text, 'm')).toEqual({ ok: false });
  });
});

describe('a demand given up', () => {
  it('is no longer asked for, and nothing else changes', () => {
    const asked = withWhole(withLength(defaultWishes, 'leastHeight', 5), 'mostBought', 0);
    expect(withoutDemand(asked, 'leastHeight')).toEqual(withWhole(defaultWishes, 'mostBought', 0));
    expect(withoutDemand({ ...defaultWishes, flatBase: true }, 'flatBase')).toEqual(defaultWishes);
    expect(withoutDemand(asked, 'order')).toBe(asked);
  });
});

describe('a demand eased', () => {
  const asked = withLength({ ...defaultWishes, flatBase: true }, 'leastHeight', 5);

  it('is set to what works, rounded so that it still does', () => {
    expect(eased(asked, { demand: 'leastHeight', value: 4.24351 }).leastHeight).toBe(4.243);
    expect(eased(asked, { demand: 'mostFloor', value: 3.60021 }).mostFloor).toBe(3.601);
    expect(eased(asked, { demand: 'mostBought', value: 7 }).mostBought).toBe(7);
    expect(eased(asked, { demand: 'flatBase', value: 0.3 }).flatBase).toBe(false);
  });

  it('is the first of the doors that work', () => {
    const doors = [
      { width: 0.9, height: 1.8 },
      { width: 0.6, height: 2 },
    ];
    expect(eased(asked, { demand: 'door', doors }).door).toEqual(doors[0]);
  });
});

describe('the door', () => {
  it('has the usual other size when one is typed first', () => {
    expect(withDoor(defaultWishes, 'width', 1.2).door).toEqual({ width: 1.2, height: 2 });
    expect(withDoor(withDoor(defaultWishes, 'width', 1.2), 'height', 1.9).door).toEqual({
      width: 1.2,
      height: 1.9,
    });
  });
});
