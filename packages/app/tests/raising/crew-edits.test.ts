import { expect, it } from 'vitest';
import {
  breaksText,
  breaksTyped,
  datesWith,
  firstShifts,
  shiftsWith,
  spanTyped,
} from '../../src/sheets/raising/crew-edits.ts';

it('reads a span of the day, nothing of nothing, and refuses what runs backwards', () => {
  expect(spanTyped({ from: '08:30', to: ' 17:00 ' })).toEqual({ from: '08:30', to: '17:00' });
  expect(spanTyped({ from: '', to: '' })).toBeUndefined();
  for (const bad of [
    { from: '17:00', to: '08:30' },
    { from: '08:30', to: '08:30' },
    { from: '08:30', to: '' },
    { from: '25:00', to: '26:00' },
  ])
    expect(spanTyped(bad)).toBeNull();
});

it('puts a shift in place of that day’s, and takes it away where both are empty', () => {
  const shifts = [{ date: '2026-06-13', from: '08:00', to: '18:00' }];
  const more = shiftsWith(shifts, '2026-06-12', { from: '16:00', to: '20:00' });
  expect(more?.map(({ date }) => date)).toEqual(['2026-06-12', '2026-06-13']);
  expect(shiftsWith(shifts, '2026-06-13', { from: '', to: '' })).toEqual([]);
  expect(shiftsWith(shifts, '2026-06-13', { from: '9', to: '' })).toBeNull();
});

it('reads breaks back as it writes them, and refuses half of one', () => {
  const text = '10:30-10:45, 12:30-13:15';
  expect(breaksText(breaksTyped(text) ?? [])).toBe(text);
  expect(breaksTyped('')).toEqual([]);
  expect(breaksTyped('10:30')).toBeNull();
  expect(breaksTyped('10:30-10:45-11:00')).toBeNull();
});

it('takes a date once', () => {
  expect(datesWith(['2026-06-13'], '2026-06-12')).toEqual(['2026-06-12', '2026-06-13']);
  expect(datesWith(['2026-06-13'], '2026-06-13')).toBeNull();
  expect(datesWith([], '2026-02-30')).toBeNull();
});

it('gives somebody new the hours of the last one written down', () => {
  const dates = ['2026-06-12', '2026-06-13'];
  expect(firstShifts([], dates).map(({ from }) => from)).toEqual(['08:00', '08:00']);
  const last = {
    name: 'Ada',
    climbs: true,
    leads: false,
    sure: false,
    shifts: [{ date: '2026-06-13', from: '10:00', to: '14:00' }],
  };
  expect(firstShifts([last], dates)).toEqual(last.shifts);
});
