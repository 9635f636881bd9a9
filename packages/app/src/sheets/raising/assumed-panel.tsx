// What the plan and the stage on show take for granted, and every source that is not confirmed.

import { mergeSources, type RaisingPlan } from '@shellraise/core';
import type { RaisingStageDetail } from '../../engine/raising.ts';
import { useWords } from '../../words/words.ts';
import { SourceItems } from '../ground/small.tsx';

/** The panel. */
export function AssumedPanel({
  plan,
  detail,
}: {
  plan: RaisingPlan;
  detail: RaisingStageDetail | null;
}) {
  const { raising: words } = useWords();
  const assumed = new Set([...plan.assumed, ...(detail?.answer.assumed ?? [])]);
  const flags = mergeSources(plan.flags, detail?.answer.flags ?? []);
  return (
    <div className="fit-panel">
      <p className="facts-caution">{words.caution}</p>
      <h3>{words.assumed.heading}</h3>
      <ul className="notes">
        {[...assumed].map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <h3>{words.assumed.sources}</h3>
      <ul className="sources">
        <SourceItems of={flags} />
      </ul>
    </div>
  );
}
