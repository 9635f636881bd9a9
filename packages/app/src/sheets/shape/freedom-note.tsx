// What is settled among the answers that fit, what is free, and whether the choice matters.

import type { Freedom } from '@shellraise/core';
import { useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { useWords } from '../../words/words.ts';

/** The note; nothing where nothing is free. */
export function FreedomNote({ freedom }: { freedom: Freedom | null }) {
  const { hard, shape } = useWords();
  const lengths = useLengths();
  if (!freedom || freedom.free.length === 0) return null;
  const { freedom: words } = hard;
  const say = (text: string): string => `${shape.capital(inOwnLengths(text, lengths))}.`;
  return (
    <section>
      <h2>{words.heading}</h2>
      <ul className="dashed-list">
        {freedom.settled.map((text) => (
          <li key={text}>{say(text)}</li>
        ))}
        {freedom.free.map((one) => (
          <li key={one.words}>
            {words.free}
            {inOwnLengths(one.words, lengths)}.
          </li>
        ))}
      </ul>
      <p className={freedom.matters ? 'accent' : undefined}>
        {freedom.matters ? words.matters : words.equal}
      </p>
    </section>
  );
}
