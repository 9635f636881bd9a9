import { describe, expect, it } from 'vitest';
import { isPressed } from '../../src/ui/keys.ts';

const press = (key: string, more: Partial<KeyboardEvent> = {}): KeyboardEvent =>
  ({
    key,
    code: '',
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    shiftKey: false,
    ...more,
  }) as KeyboardEvent;

describe('keys', () => {
  it('need all that is written, and no more', () => {
    expect(isPressed('Ctrl+S', press('s', { ctrlKey: true }))).toBe(true);
    expect(isPressed('Ctrl+S', press('s', { metaKey: true }))).toBe(true);
    expect(isPressed('Ctrl+S', press('S', { ctrlKey: true, shiftKey: true }))).toBe(false);
    expect(isPressed('Ctrl+S', press('s'))).toBe(false);
  });

  it('are found where Alt makes another letter of the key', () => {
    expect(isPressed('Alt+1', press('¡', { altKey: true, code: 'Digit1' }))).toBe(true);
    expect(isPressed('Alt+V', press('√', { altKey: true, code: 'KeyV' }))).toBe(true);
  });

  it('are none where a command has none', () => {
    expect(isPressed('', press('a'))).toBe(false);
  });
});
