// The cards for the printer, one a page in large type, each with its plan. Winds and lifts are asked for
// one stage after another once the plan has come to rest, so that they are there when it is printed.

import type { RaisingPlan } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { recoloured } from '../../drawing/plan-view/recolour.ts';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { printEngine } from '../../engine/bridge.ts';
import type { PlanPicture } from '../../engine/drawings.ts';
import type { RaisingQuestion, RaisingStageDetail } from '../../engine/raising.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { weekendRuns } from './days-panel.tsx';
import { PrintedCloseDown, PrintedLifts } from './printed-lifts.tsx';
import { StageCard } from './stage-card.tsx';
import { Legend } from './stage-drawing.tsx';
import { placeStates, stageFills, stageItems } from './stage-items.ts';

/** Left free round the plan, millimetres. */
const ROUND = 5;

/** The cards; nothing but while the page is printed. */
export function PrintedCards({
  stood,
  question,
  plan,
  picture,
  panels,
}: {
  stood: Stood;
  question: RaisingQuestion;
  plan: RaisingPlan;
  picture: PlanPicture | null;
  panels: number;
}) {
  const { raising: words, frame } = useWords();
  const title = useAppState((state) => projectOf(state).title);
  const printing = usePrinting();
  const days = useStore(weekendRuns.store);
  const details = useAllDetails(question, plan);
  if (!printing || picture === null) return null;
  const { standing } = stood;
  const { shell } = standing.standing;
  const [x, y, width, height] = picture.box;
  const box = [x - ROUND, y - ROUND, width + 2 * ROUND, height + 2 * ROUND].join(' ');
  return (
    <div className="print-only printed-cards">
      {plan.stages.map((stage) => {
        const fills = placeStates(plan, stage.number, shell.kind.length).map(
          (state) => stageFills[state],
        );
        const scene = { shell, plan, number: stage.number, leftOut: standing.leftOut, picture };
        return (
          <section key={stage.number} className="printed-card">
            <p className="printed-head">
              {title || frame.untitled} · {words.print.card(stage.number, plan.stages.length)}
            </p>
            <div className="printed-plan">
              <svg viewBox={box} aria-hidden="true">
                <SvgItems items={recoloured(stageItems(scene), fills)} onPaper />
              </svg>
              <Legend />
            </div>
            <StageCard
              shell={shell}
              numbers={standing.numbers}
              plan={plan}
              stage={stage}
              panels={panels}
              detail={details.get(stage.number) ?? null}
            />
          </section>
        );
      })}
      <PrintedLifts
        title={title || frame.untitled}
        plan={plan}
        details={details}
        numbers={standing.numbers}
      />
      <PrintedCloseDown
        title={title || frame.untitled}
        weekend={days.input?.plan === plan ? days.value : null}
      />
    </div>
  );
}

type Detail = RaisingStageDetail | string;

/** Stage → its winds and lifts, as they come. */
function useAllDetails(question: RaisingQuestion, plan: RaisingPlan): ReadonlyMap<number, Detail> {
  const { fault } = useWords().raising;
  const [known, setKnown] = useState<{ plan: RaisingPlan; details: ReadonlyMap<number, Detail> }>({
    plan,
    details: new Map(),
  });
  useEffect(() => {
    let gone = false;
    const details = new Map<number, Detail>();
    const next = async (): Promise<void> => {
      for (const { number } of plan.stages) {
        if (gone) return;
        const asked = printEngine.ask('raisingStage', { ...question, plan: plan.stages, number });
        const read = await asked.answer.catch(() => null);
        if (read === null || gone) return;
        details.set(
          number,
          read.ok
            ? read.value
            : read.faults
                .map(({ path, found, expected }) => fault(path, found, expected))
                .join(' '),
        );
      }
      if (!gone) setKnown({ plan, details });
    };
    const timer = setTimeout(() => void next(), 1200);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [question, plan, fault]);
  return known.plan === plan ? known.details : none;
}

const none: ReadonlyMap<number, Detail> = new Map();
