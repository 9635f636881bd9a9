// What to do where the holes of the stage's tightest lift will not meet, step by step.

import type { RaisingStageDetail } from '../../engine/raising.ts';
import { useWords } from '../../words/words.ts';
import { SourceItems } from '../ground/small.tsx';

/** The section, folded; nothing where nothing is lifted. */
export function HolesOffSection({ detail }: { detail: RaisingStageDetail }) {
  const { raising } = useWords();
  const { holesOff, number } = detail;
  if (holesOff === null) return null;
  return (
    <details className="tags screen-only">
      <summary>{raising.holesOff(`${number}.${holesOff.lift + 1}`)}</summary>
      <ol className="notes">
        {holesOff.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <ul className="notes">
        <SourceItems of={holesOff.flags} />
      </ul>
    </details>
  );
}
