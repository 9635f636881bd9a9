// The sheets for the printer: the flat plan from above, then from the floor looking up, each on its
// own page, to scale. Asked for once the sheet has come to rest, drawn when the browser prints.

import type { Drawing, Paper } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { quickEngine } from '../../engine/bridge.ts';
import type { PrintQuestion } from '../../engine/drawings.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useLengths } from '../../ui/app-context.tsx';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import type { Stood } from './stood.ts';
import { useAnswer } from './use-answer.ts';

const askPrint = (question: PrintQuestion) => quickEngine.ask('printedPlans', question);

/** The printed sheets. */
export function PrintedPlans({
  stood,
  paper,
  assumes,
}: {
  stood: Stood;
  paper: Paper;
  assumes: string;
}) {
  const { frame } = useWords();
  const { system } = useLengths();
  const project = useAppState((state) => projectOf(state).title);
  const { standing, kinds } = stood;
  const question = useMemo(
    (): PrintQuestion => ({
      shell: standing.standing.shell,
      numbers: standing.numbers,
      kinds,
      leftOut: standing.leftOut,
      project: project || frame.untitled,
      sheet: `3 ${frame.sheets.places}`,
      date: new Date().toLocaleDateString('en-GB', { dateStyle: 'medium' }),
      assumes,
      caution: frame.caution,
      paper,
      lengths: system,
      painted: standing.decision.frozen !== undefined && standing.frozenFault === null,
    }),
    [standing, kinds, project, frame, assumes, paper, system],
  );
  const { last } = useAnswer(useRested(question), askPrint);
  const printing = usePrinting();
  if (!printing || !last) return null;
  const drawings = last.answer;
  const [first] = drawings;
  return (
    <div className="print-only printed-plans">
      {first ? (
        <style>{`@page { size: ${first.width}mm ${first.height}mm; margin: 0; }`}</style>
      ) : null}
      {drawings.map((drawing) => (
        <PrintedSheet key={drawing.title} drawing={drawing} />
      ))}
    </div>
  );
}

/** One sheet for the printer. */
export function PrintedSheet({ drawing: { width, height, title, items } }: { drawing: Drawing }) {
  return (
    <svg
      className="printed-sheet"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm` }}
      role="img"
      aria-label={title}
    >
      <SvgItems items={items} onPaper />
    </svg>
  );
}

/** The value once it has stayed the same for a moment; before that, nothing. */
function useRested<T extends object>(value: T): T | null {
  const [rested, setRested] = useState<T | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), 800);
    return () => clearTimeout(timer);
  }, [value]);
  return rested;
}
