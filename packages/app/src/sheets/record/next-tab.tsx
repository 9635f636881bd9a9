// The next card: the stage at work by the raising plan, who is here, how far it is, and the presses that
// say that it is done or closed down for the night; the stops.

import { type RaisingPlan, stageAtWork, stageProgress } from '@shellraise/core';
import { useState } from 'react';
import { useStore } from 'zustand';
import type { RaisingQuestion } from '../../engine/raising.ts';
import { raisingKey } from '../../engine/raising-runs.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { Faults } from '../ground/small.tsx';
import type { Stood } from '../places/stood.ts';
import { useLead } from '../raising/lead.ts';
import { raisingRuns, useRaisingQuestion, useStageDetail } from '../raising/raising-run.ts';
import { StageCard } from '../raising/stage-card.tsx';
import { StopCalls } from './stop-banner.tsx';
import type { Noted } from './use-noted.ts';

/** The tab. */
export function NextTab({ noted, stood }: { noted: Noted; stood: Stood }) {
  const { recording, raising } = useWords();
  const words = recording.next;
  const question = useRaisingQuestion(stood);
  const run = useStore(raisingRuns.store);
  const own = run.key === raisingKey(question) ? run : null;
  const { people } = noted.state;
  return (
    <>
      <p>{people.length === 0 ? words.nobody : words.here(people)}</p>
      {own === null ? (
        <button type="button" onClick={() => raisingRuns.start(question)}>
          {words.workOut}
        </button>
      ) : null}
      {own ? (
        <ProgressLine
          ask={own}
          what={own.value === null ? raising.planning : raising.better}
          onCancel={raisingRuns.cancel}
        />
      ) : null}
      {own && own.faults.length > 0 ? <Faults faults={own.faults} /> : null}
      {own && (own.status === 'failed' || own.status === 'cancelled') && own.value === null ? (
        <button type="button" onClick={() => raisingRuns.start(question)}>
          {raising.anew}
        </button>
      ) : null}
      {own?.value ? <Card {...{ noted, stood, question }} plan={own.value} /> : null}
      <StopCalls noted={noted} />
    </>
  );
}

function Card({
  noted: { state, say, open },
  stood,
  question,
  plan,
}: {
  noted: Noted;
  stood: Stood;
  question: RaisingQuestion;
  plan: RaisingPlan;
}) {
  const words = useWords().recording.next;
  const { lead } = useLead();
  const atWork = stageAtWork(plan, state)?.number ?? null;
  const [looked, setLooked] = useState<number | null>(null);
  const number = Math.min(looked ?? atWork ?? plan.stages.length, plan.stages.length);
  const stage = plan.stages[number - 1];
  const detail = useStageDetail(question, plan, number);
  const far = stageProgress(plan, state)[number - 1];
  if (!stage || !far) return null;
  const { standing } = stood;
  const { numbers, leftOut } = standing;
  return (
    <section className="record-card">
      <p role="status">
        {atWork === null
          ? words.allDone
          : number === atWork
            ? words.atWork(number)
            : words.looked(number, atWork)}
      </p>
      <div className="record-big screen-only">
        <button type="button" disabled={number <= 1} onClick={() => setLooked(number - 1)}>
          {words.before}
        </button>
        <button
          type="button"
          disabled={number >= plan.stages.length}
          onClick={() => setLooked(number + 1)}
        >
          {words.after}
        </button>
      </div>
      <StageCard
        shell={standing.standing.shell}
        {...{ numbers, plan, stage, detail }}
        panels={numbers.length - leftOut.length}
      />
      <p className={far.up < far.of || far.loose.length > 0 ? 'accent' : undefined}>
        {words.far(far.up, far.of, far.loose.length)}
      </p>
      {lead.order === null ? <p className="quiet">{words.notFixed}</p> : null}
      <div className="record-big screen-only">
        <button
          type="button"
          disabled={!open}
          aria-pressed={far.done}
          onClick={() => {
            say({ kind: 'stage done', stage: number, done: !far.done });
            setLooked(null);
          }}
        >
          {far.done ? words.notDone : words.done}
        </button>
        <button
          type="button"
          disabled={!open}
          aria-pressed={far.closed}
          onClick={() => say({ kind: 'closed down', stage: number, closed: !far.closed })}
        >
          {far.closed ? words.reopen : words.close}
        </button>
      </div>
      {stage.stopPoint ? null : <p className="accent">{words.noStop}</p>}
    </section>
  );
}
