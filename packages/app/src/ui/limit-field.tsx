// A field that is read when it is left or Enter is pressed; what can't be read stays, with what was
// expected, and changes nothing.

import { Field } from './field.tsx';
import { type Typed, useTyped } from './use-typed.ts';

/** The field. `shown`: the value as text. */
export function LimitField<T>({
  name,
  shown,
  note = '',
  fault = '',
  read,
  onValue,
  numeric = false,
}: {
  name: string;
  shown: string;
  note?: string;
  /** What was expected; none where everything can be read. */
  fault?: string;
  read: (text: string) => Typed<T>;
  onValue: (value: T) => void;
  numeric?: boolean;
}) {
  const { faulty, input } = useTyped(shown, read, (typed) => {
    if (typed.ok) onValue(typed.value);
  });
  return (
    <Field name={name} fault={faulty ? fault : null} note={note}>
      {(props) => <input {...props} inputMode={numeric ? 'numeric' : 'text'} {...input} />}
    </Field>
  );
}
