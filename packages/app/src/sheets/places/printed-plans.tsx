// The sheets for the printer: the flat plan from above, then from the floor looking up, then the proof of
// count, each on its own page, to scale. Asked for once the sheet has come to rest, drawn when the browser prints.

import type { Drawing, Paper, ProofRow } from '@shellraise/core';
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
  proof,
}: {
  stood: Stood;
  paper: Paper;
  assumes: string;
  proof: readonly ProofRow[] | undefined;
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
      proof,
    }),
    [standing, kinds, project, frame, assumes, paper, system, proof],
  );
  const { last } = useAnswer(useRested(question), askPrint);
  const printing = usePrinting();
  if (!printing || !last) return null;
  return <PrintedSheets drawings={last.answer} />;
}

/** Sheets for the printer, all on paper of the first one's size; a sheet that stands the other way is
 * turned to lie on it, for a printer that is given two sizes draws one of them smaller. */
export function PrintedSheets({ drawings }: { drawings: readonly Drawing[] }) {
  const [first] = drawings;
  if (!first) return null;
  const across = first.width > first.height;
  return (
    <div className="print-only printed-plans">
      <style>{`@page { size: ${first.width}mm ${first.height}mm; margin: 0; }`}</style>
      {drawings.map((drawing, i) => (
        <PrintedSheet
          // biome-ignore lint/suspicious/noArrayIndexKey: several sheets of one title
          key={`${drawing.title} ${i}`}
          drawing={drawing}
          turned={drawing.width > drawing.height !== across}
        />
      ))}
    </div>
  );
}

function PrintedSheet({
  drawing: { width, height, title, items },
  turned,
}: {
  drawing: Drawing;
  /** Its top to the left. */
  turned: boolean;
}) {
  const [wide, high] = turned ? [height, width] : [width, height];
  return (
    <svg
      className="printed-sheet"
      viewBox={`0 0 ${wide} ${high}`}
      style={{ width: `${wide}mm`, height: `${high}mm` }}
      role="img"
      aria-label={title}
    >
      <g transform={turned ? `translate(0 ${width}) rotate(-90)` : undefined}>
        <SvgItems items={items} onPaper />
      </g>
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
