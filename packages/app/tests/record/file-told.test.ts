import { describe, expect, it } from 'vitest';
import { dayOf } from '../../src/clock.ts';
import { isFileDue } from '../../src/record/file-told.ts';

const at = (text: string) => ({ at: new Date(text).getTime() });
const friday = [at('2026-06-12T10:00:00'), at('2026-06-12T17:00:00')];

describe('a daily file', () => {
  it('is offered on a new day while something of an earlier one is in no file', () => {
    const none = { size: 0, day: '' };
    expect(dayOf(friday[0]!.at)).toBe('2026-06-12');
    expect(isFileDue(none, friday, '2026-06-12')).toBe(false);
    expect(isFileDue(none, friday, '2026-06-13')).toBe(true);
    expect(isFileDue({ size: 1, day: '2026-06-12' }, friday, '2026-06-13')).toBe(true);
  });

  it('is not offered twice a day, nor where all is in a file', () => {
    expect(isFileDue({ size: 0, day: '2026-06-13' }, friday, '2026-06-13')).toBe(false);
    expect(isFileDue({ size: 2, day: '2026-06-12' }, friday, '2026-06-13')).toBe(false);
    expect(isFileDue({ size: 0, day: '' }, [], '2026-06-13')).toBe(false);
  });
});
