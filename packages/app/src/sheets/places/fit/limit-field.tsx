// A field that is read when it is left or Enter is pressed; what can't be read stays, with what was
// expected, and changes nothing.

import { useEffect, useState } from 'react';
import { Field } from '../../../ui/field.tsx';
import type { Typed } from './wishes.ts';

/** The field. `shown`: the value as text. */
export function LimitField({
  name,
  shown,
  note,
  fault,
  read,
  onValue,
  onText,
  numeric = false,
}: {
  name: string;
  shown: string;
  note: string;
  fault: string;
  read: (text: string) => Typed;
  onValue: (value: number | undefined) => void;
  /** For a field of words: given the text instead of a value. */
  onText?: (text: string) => void;
  numeric?: boolean;
}) {
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
    if (!typed.ok) return;
    if (onText) onText(text);
    else onValue(typed.value);
  };
  return (
    <Field name={name} fault={faulty ? fault : null} note={note}>
      {(props) => (
        <input
          {...props}
          inputMode={numeric ? 'numeric' : 'text'}
          value={text}
          onChange={({ target }) => setText(target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
          }}
        />
      )}
    </Field>
  );
}
