import { type CrewChange, defaultCrew } from '@shellraise/core';
import { expect, it } from 'vitest';
import { askable, withChange } from '../../src/sheets/raising/own-changes.ts';

const without = (name: string): CrewChange => ({ what: 'without', name });
const friday: CrewChange = { what: 'more hours', date: '2026-05-01', hours: 4 };

it('takes each change once', () => {
  const one = withChange(withChange([], friday), without('Ada'));
  expect(withChange(one, { ...friday })).toBe(one);
  expect(withChange(one, { ...friday, hours: 2 })).toHaveLength(3);
});

it('asks nothing of people who do not come any more', () => {
  const person = { climbs: true, leads: true, sure: true, shifts: [] };
  const people = [{ name: 'Ada', ...person }];
  const changes = [without('Ada'), without('Bram'), friday];
  expect(askable(changes, { ...defaultCrew, people })).toEqual([without('Ada'), friday]);
});
