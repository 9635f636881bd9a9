// Small parts that the fit-out's panels share: a list of facts, a field of lines, a caution.

import { type ReactNode, useEffect, useId, useState } from 'react';
import type { Lines } from './typed.ts';

/** Facts, each a name and what is known; null is passed over. */
export function Facts({ of }: { of: readonly (readonly [string, ReactNode] | null)[] }) {
  return (
    <dl className="ground-facts">
      {of
        .filter((one) => one !== null)
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  );
}

/** A field of several lines, read when it is left; what can't be read stays, with its line told. */
export function LinesField<T>({
  name,
  note,
  shown,
  read,
  fault,
  onValue,
}: {
  name: string;
  note: string;
  shown: string;
  read: (text: string) => Lines<T>;
  fault: (line: number) => string;
  onValue: (value: readonly T[]) => void;
}) {
  const id = useId();
  const [text, setText] = useState(shown);
  const [wrong, setWrong] = useState<number | null>(null);
  useEffect(() => {
    setText(shown);
    setWrong(null);
  }, [shown]);
  return (
    <div className="field fitout-lines">
      <label htmlFor={id}>{name}</label>
      <textarea
        id={id}
        rows={4}
        value={text}
        aria-invalid={wrong !== null}
        aria-describedby={`${id}-note`}
        onChange={({ target }) => setText(target.value)}
        onBlur={() => {
          if (text === shown) return;
          const lines = read(text);
          if (lines.ok) onValue(lines.value);
          setWrong(lines.ok ? null : lines.line);
        }}
      />
      <p id={`${id}-note`} className={wrong === null ? 'quiet' : 'accent'}>
        {wrong === null ? note : fault(wrong)}
      </p>
    </div>
  );
}
