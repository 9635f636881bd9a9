// A real keyboard beside the keys on the screen.

import { useEffect, useRef } from 'react';
import { signOf } from './keypad.ts';

/** A real keyboard works too, wherever the focus is, save in a field or on a button's own keys. */
export function useRealKeys(
  sign: (sign: string) => void,
  back: () => void,
  next: () => void,
): void {
  const acts = useRef({ sign, back, next });
  acts.current = { sign, back, next };
  useEffect(() => {
    const hear = (event: KeyboardEvent): void => {
      const target = event.target;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) return;
      const onButton = target instanceof HTMLButtonElement;
      const put = signOf(event.key);
      if (event.key === 'Backspace') acts.current.back();
      else if (event.key === 'Enter' && !onButton) acts.current.next();
      else if (put !== null && !(put === ' ' && onButton)) acts.current.sign(put);
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', hear);
    return () => removeEventListener('keydown', hear);
  }, []);
}
