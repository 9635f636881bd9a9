import { describe, expect, it } from 'vitest';
import { defaultSettings, readSettings } from '../../src/state/settings.ts';

describe('settings from storage', () => {
  it('are those of a newcomer where there are none, or what is there is broken', () => {
    for (const text of [null, '', 'x', '7', 'null', '[]'])
      expect(readSettings(text)).toEqual(defaultSettings);
  });

  it('come back as they were kept', () => {
    const own = {
      ...defaultSettings,
      scheme: 'outdoor',
      lengths: 'inch',
      fromBelow: true,
    } as const;
    expect(readSettings(JSON.stringify(own))).toEqual(own);
  });

  it('fall back key by key', () => {
    expect(readSettings('{"scheme":"neon","lengths":"inch"}')).toEqual({
      ...defaultSettings,
      lengths: 'inch',
    });
  });
});
