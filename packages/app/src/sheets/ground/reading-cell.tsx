// One reading in a table: read when it is left or Enter is pressed; what can't be read stays, marked.

import { type Typed, useTyped } from '../../ui/use-typed.ts';

/** The cell. */
export function ReadingCell({
  label,
  shown,
  read,
  onValue,
  onFault,
}: {
  label: string;
  shown: string;
  read: (text: string) => Typed;
  onValue: (value: number | undefined) => void;
  /** Told what can't be read; null where it can. */
  onFault: (text: string | null) => void;
}) {
  const { faulty, input } = useTyped(shown, read, (typed, text) => {
    onFault(typed.ok ? null : text);
    if (typed.ok) onValue(typed.value);
  });
  return (
    <input
      className="reading-cell"
      aria-label={label}
      aria-invalid={faulty}
      autoComplete="off"
      {...input}
    />
  );
}
