// What the fit-out takes for granted, and every source with how far it is confirmed.

import type { Provenance } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { isShaky, SourceItems } from '../ground/small.tsx';

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
      <ul className="sources">
        <SourceItems of={sources.filter(isShaky)} />
      </ul>
      <h3>{words.all}</h3>
      <ul className="sources">
        <SourceItems of={sources.filter((one) => !isShaky(one))} />
      </ul>
    </div>
  );
}
