// Text that is read as a whole when its field is left or Enter is pressed; what can't be read stays, marked
// as faulty, and changes nothing.

import { type ChangeEvent, type KeyboardEvent, useEffect, useState } from 'react';

/** What was typed as a value, or a fault; of a number undefined is nothing typed. */
export type Typed<T = number | undefined> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false };

/** The text of a field with what its input needs. `shown`: the value as text; when that changes, it is
 * shown instead of what was typed. `onRead` is given what is read, also where it is a fault. */
export function useTyped<T>(
  shown: string,
  read: (text: string) => Typed<T>,
  onRead: (typed: Typed<T>, text: string) => void,
) {
  const [text, setText] = useState(shown);
  const [faulty, setFaulty] = useState(false);
  useEffect(() => {
    setText(shown);
    setFaulty(false);
  }, [shown]);
  const commit = (): void => {
    if (text.trim() === shown) return;
    const typed = read(text);
    setFaulty(!typed.ok);
    onRead(typed, text);
  };
  return {
    faulty,
    input: {
      value: text,
      onChange: ({ target }: ChangeEvent<HTMLInputElement>): void => setText(target.value),
      onBlur: commit,
      onKeyDown: ({ key }: KeyboardEvent): void => {
        if (key === 'Enter') commit();
      },
    },
  };
}
