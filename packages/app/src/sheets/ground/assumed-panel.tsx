// What is taken for granted, in words, and every source with how far it is confirmed.

import { mergeSources, type StageAnswer, type StageStability } from '@shellraise/core';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useWords } from '../../words/words.ts';
import { OwnNumbers } from './own-numbers.tsx';
import { isShaky, SourceItems } from './small.tsx';

/** The panel. */
export function AssumedPanel({
  answer,
  stage,
  stability,
}: {
  answer: GroundAnswer | null;
  /** The stage that was looked at last. */
  stage: StageAnswer | null;
  /** Buckling and swing of it, where somebody asked. */
  stability: StageStability | null;
}) {
  const { assumed: words, caution, stages } = useWords().ground;
  if (answer === null) return null;
  const sources = mergeSources(
    answer.wind.sources,
    answer.anchors.ok ? answer.anchors.value.plan.sources : [],
    answer.survey.ok ? answer.survey.value.sources : [],
    answer.snow.sources,
    stage?.flags ?? [],
    stability?.flags ?? [],
  );
  const assumed = new Set([
    ...answer.wind.assumed,
    stages.order,
    ...(stage?.assumed ?? []),
    ...(stability?.assumed ?? []),
  ]);
  return (
    <div className="fit-panel">
      <p className="facts-caution">{caution}</p>
      <OwnNumbers />
      <h3>{words.heading}</h3>
      <ul className="notes">
        {[...assumed].map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <h3>{words.sources}</h3>
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
