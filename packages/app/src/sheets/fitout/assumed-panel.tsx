// What the fit-out takes for granted, and every source with how far it is confirmed.

import type { Provenance } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { isShaky } from '../ground/small.tsx';

/** The panel. */
export function AssumedPanel({ sources }: { sources: readonly Provenance[] }) {
  const { fitout } = useWords();
  const words = fitout.assumed;
  return (
    <div className="fit-panel">
      <p className="facts-caution">{fitout.caution}</p>
      <h3>{words.heading}</h3>
      <ul className="notes">
        {words.list.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <h3>{words.shaky}</h3>
      <Sources of={sources.filter(isShaky)} />
      <h3>{words.all}</h3>
      <Sources of={sources.filter((one) => !isShaky(one))} />
    </div>
  );
}

function Sources({ of }: { of: readonly Provenance[] }) {
  const { flags } = useWords().ground.assumed;
  return (
    <ul className="sources">
      {of.map(({ text, confirmation }) => (
        <li key={`${confirmation} ${text}`}>
          <span className={`flag ${confirmation.replace(' ', '-')}`}>{flags[confirmation]}</span>{' '}
          {text}
        </li>
      ))}
    </ul>
  );
}
