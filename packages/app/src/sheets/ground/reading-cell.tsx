// One reading in a table: read when it is left or Enter is pressed; what can't be read stays, marked.

import { useEffect, useState } from 'react';
import type { Typed } from '../places/fit/wishes.ts';

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
    onFault(typed.ok ? null : text);
    if (typed.ok) onValue(typed.value);
  };
  return (
    <input
      className="reading-cell"
      aria-label={label}
      aria-invalid={faulty}
      autoComplete="off"
      value={text}
      onChange={({ target }) => setText(target.value)}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
      }}
    />
  );
}
