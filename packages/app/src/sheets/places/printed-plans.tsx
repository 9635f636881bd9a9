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
  const drawings = last.answer;
  return (
    <div className="print-only printed-plans">
      <PageSizes drawings={drawings} />
      {drawings.map((drawing) => (
        <PrintedSheet key={drawing.title} drawing={drawing} />
      ))}
    </div>
  );
}

/** The size of paper of each sheet: a page of its own name for each that there is. */
export function PageSizes({ drawings }: { drawings: readonly Drawing[] }) {
  const sizes = new Map(drawings.map((drawing) => [pageName(drawing), drawing]));
  const [first] = drawings;
  const rule = (name: string, { width, height }: Drawing): string =>
    `@page ${name} { size: ${width}mm ${height}mm; margin: 0; }`;
  return (
    <style>
      {[
        ...(first ? [rule('', first)] : []),
        ...[...sizes].map(([name, one]) => rule(name, one)),
      ].join('\n')}
    </style>
  );
}

const pageName = ({ width, height }: Pick<Drawing, 'width' | 'height'>): string =>
  `sheet-${Math.round(width)}-${Math.round(height)}`;

/** One sheet for the printer. */
export function PrintedSheet({ drawing: { width, height, title, items } }: { drawing: Drawing }) {
  return (
    <svg
      className="printed-sheet"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm`, page: pageName({ width, height }) }}
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
