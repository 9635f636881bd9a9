// A field for a tag or a mark with letters: here the phone's own keyboard is wanted.

import { useEffect, useRef } from 'react';

/** The field; it has the focus at once. */
export function LettersField({
  text,
  label,
  put,
  done,
}: {
  text: string;
  label: string;
  put: (text: string) => void;
  done: () => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  return (
    <input
      ref={input}
      value={text}
      aria-label={label}
      maxLength={60}
      autoComplete="off"
      autoCapitalize="off"
      onChange={(event) => put(event.target.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') done();
      }}
      onBlur={done}
    />
  );
}
