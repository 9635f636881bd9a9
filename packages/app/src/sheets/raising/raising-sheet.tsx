// The Raising sheet: the shell at any stage of the order of work, drawn on the left over a slider, and
// beside it the stage's card, the order with the lead's own changes, people and days.

import '../../styles/ground.css';
import '../../styles/raising.css';
import '../../styles/weekend.css';
import '../../styles/yard.css';
import { defaultRaising, noGear, type RaisingPlan, type YardWishes } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { longEngine } from '../../engine/bridge.ts';
import type { RaisedQuestion, YardAsked } from '../../engine/raised.ts';
import type { RaisingQuestion } from '../../engine/raising.ts';
import { raisingKey } from '../../engine/raising-runs.ts';
import { FIRST_ODDS, type WeekendAsked } from '../../engine/weekend.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { Faults } from '../ground/small.tsx';
import { StageView } from '../ground/stage-view.tsx';
import { StandingSheet } from '../places/standing-sheet.tsx';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { useAnswer } from '../places/use-answer.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { AssumedPanel } from './assumed-panel.tsx';
import { DaysPanel } from './days-panel.tsx';
import { faultsInWords } from './fault-words.ts';
import { GearPanel, lookAgain, useWays } from './gear-panel.tsx';
import { HolesOffSection } from './holes-off-section.tsx';
import { StageBag } from './kit-sections.tsx';
import { useLead } from './lead.ts';
import { LiftCards } from './lift-cards.tsx';
import { NowPanel } from './now-panel.tsx';
import { OpeningDrawing } from './opening-drawing.tsx';
import { OrderPanel } from './order-panel.tsx';
import { PeoplePanel } from './people-panel.tsx';
import { PrintedCards } from './printed-cards.tsx';
import { raisingRuns, useRaisingQuestion, useStageDetail } from './raising-run.ts';
import { ReachDrawing } from './reach-drawing.tsx';
import { StageCard } from './stage-card.tsx';
import { StageDrawing, usePlanPicture } from './stage-drawing.tsx';
import { StageSlider } from './stage-slider.tsx';
import { useTrial } from './trial.ts';
import { useRecordedWork } from './use-recorded-work.ts';
import { WaitSection } from './wait-section.tsx';
import { YardDrawing } from './yard-drawing.tsx';
import { YardPanel } from './yard-panel.tsx';

const tabs = ['stage', 'order', 'yard', 'gear', 'now', 'days', 'people', 'assumed'] as const;
type RaisingTab = (typeof tabs)[number];

const askYard = (question: YardAsked) => longEngine.ask('yardAndKit', question);

/** The Raising sheet. */
export function RaisingSheet() {
  const words = useWords().raising;
  return (
    <StandingSheet className="raising-sheet" title={words.title}>
      {(stood) => <Raised stood={stood} />}
    </StandingSheet>
  );
}

function Raised({ stood }: { stood: Stood }) {
  const { raising: words, frame } = useWords();
  const question = useRaisingQuestion(stood);
  const run = useStore(raisingRuns.store);
  useEffect(() => raisingRuns.follow(question), [question]);
  // A plan of another question has other places.
  const plan = run.key === raisingKey(question) ? run.value : null;
  const assumes = useAssumes();
  // Kept while another order is sought.
  const [tab, setTab] = useState<RaisingTab>('stage');
  const [at, setAt] = useState(1);
  return (
    <>
      <ProgressLine
        ask={run}
        what={plan === null ? words.planning : words.better}
        onCancel={raisingRuns.cancel}
      />
      {run.status === 'cancelled' || run.status === 'failed' ? (
        <div className="step-ended screen-only" role="status">
          <p>
            {run.status === 'failed'
              ? `${words.failed} ${run.fault ?? ''}`
              : plan === null
                ? words.stoppedEarly
                : words.stopped}
          </p>
          <button type="button" onClick={() => raisingRuns.start(question)}>
            {words.anew}
          </button>
        </div>
      ) : null}
      {plan === null ? (
        <div className="choosing">
          <div className="no-shell">
            {run.faults.length > 0 ? (
              <>
                <h2>{words.noPlan}</h2>
                <Faults faults={run.faults} />
                <Freed />
              </>
            ) : (
              <p className="quiet">{words.working}</p>
            )}
          </div>
          <div className="choosing-foot">
            <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
          </div>
        </div>
      ) : (
        <OnPlan
          {...{ stood, question, plan, assumes, tab, setTab, at, setAt }}
          resting={run.status !== 'running'}
        />
      )}
    </>
  );
}

/** Where what the lead fixed can't be kept: the way back. */
function Freed() {
  const words = useWords().raising.changes;
  const { lead, free } = useLead();
  if (lead === defaultRaising) return null;
  return (
    <button type="button" className="go" onClick={free}>
      {words.free}
    </button>
  );
}

function OnPlan({
  stood,
  question,
  plan,
  resting,
  assumes,
  tab,
  setTab,
  at,
  setAt,
}: {
  stood: Stood;
  question: RaisingQuestion;
  plan: RaisingPlan;
  /** Whether no better plan is sought any more. */
  resting: boolean;
  assumes: string;
  tab: RaisingTab;
  setTab: (tab: RaisingTab) => void;
  at: number;
  setAt: (number: number) => void;
}) {
  const { raising: words, frame, weekend: days } = useWords();
  // How often "now" was pressed: each press asks anew.
  const [pressed, setPressed] = useState(0);
  const number = Math.min(at, plan.stages.length);
  const stage = plan.stages[number - 1];
  const { standing } = stood;
  const { shell } = standing.standing;
  const { numbers, leftOut } = standing;
  const picture = usePlanPicture(stood);
  const detail = useStageDetail(question, plan, number);
  const [trial, onTry] = useTrial(question, plan);
  const [wishes, setWishes] = useState<YardWishes>({});
  const raised = useRaised(question, plan);
  const ready = useYard(raised, wishes);
  const ways = useWays(raised, tab === 'gear' && resting);
  const [thing, setThing] = useState<string | null>(null);
  const drawn = ways?.value?.inside.things.find(({ name }) => name === thing) ?? null;
  const fall = tab === 'order' ? trial.breaks?.find((one) => one.what === 'falls') : undefined;
  const falling = useMemo(
    () =>
      fall && {
        placed: fall.way.places,
        movement: fall.way.corners,
        answer: {
          moving: fall.moving.map((place) => numbers[place] ?? ''),
          props: trial.lifts[fall.lift]?.props ?? [],
        },
      },
    [fall, numbers, trial],
  );
  const panels = numbers.length - leftOut.length;
  const crew = useAppState((state) => projectOf(state).crew);
  const recorded = useRecordedWork(stood, plan);
  // The days rest on the order that is found in the end; until then they have first odds.
  const weekend = useMemo(
    (): WeekendAsked => ({
      ...{ ...question, crew, plan },
      ...(recorded.observed && { observed: recorded.observed }),
      ...(resting ? {} : { how: FIRST_ODDS }),
    }),
    [question, crew, plan, resting, recorded.observed],
  );
  if (!stage) return null;
  return (
    <div className="shell-sheet" data-order={resting ? 'found' : 'sought'}>
      <button
        type="button"
        className="now-press go screen-only"
        onClick={() => {
          setPressed(pressed + 1);
          setTab('now');
        }}
      >
        {days.now.go}
      </button>
      <div className="drawings raising-left">
        {falling ? (
          <StageView shell={shell} numbers={numbers} detail={falling} />
        ) : tab === 'yard' && ready.answer?.yard.ok ? (
          <YardDrawing
            shell={shell}
            yard={ready.answer.yard.value}
            number={number}
            of={plan.stages.length}
          />
        ) : tab === 'gear' && drawn !== null && drawn.seen.length > 0 ? (
          <OpeningDrawing
            {...{ shell, numbers, leftOut }}
            placed={plan.stages[drawn.last - 1]?.placed ?? []}
            thing={drawn}
          />
        ) : tab === 'gear' ? (
          <ReachDrawing
            {...{ shell, number, numbers }}
            gear={question.gear ?? noGear}
            heights={ready.answer?.heights ?? []}
          />
        ) : (
          <StageDrawing stood={stood} plan={plan} number={number} picture={picture} />
        )}
        <StageSlider plan={plan} number={number} onStage={setAt} />
      </div>
      <div className="beside">
        <Tabs
          className="beside-tabs"
          label={words.tabs}
          tabs={tabs.map((key) => ({ key, label: words.tab[key] }))}
          chosen={tab}
          onChoose={setTab}
        >
          {tab === 'stage' ? (
            <div className="fit-panel" aria-live="polite">
              <StageCard {...{ shell, numbers, plan, stage, panels, detail }} />
              {detail !== null && typeof detail !== 'string' ? (
                <>
                  <LiftCards detail={detail} numbers={numbers} />
                  <HolesOffSection detail={detail} />
                </>
              ) : null}
              {ready.answer === null ? null : <StageBag kit={ready.answer.kit} number={number} />}
              <WaitSection question={raised} plan={plan} number={number} />
            </div>
          ) : tab === 'order' ? (
            <OrderPanel
              {...{ shell, numbers, leftOut, plan, number, trial, onTry }}
              onStage={setAt}
            />
          ) : tab === 'yard' ? (
            <YardPanel {...ready} {...{ number, wishes }} onWishes={setWishes} />
          ) : tab === 'gear' ? (
            <GearPanel
              {...{ number, numbers }}
              run={ways}
              heights={ready.answer?.heights ?? []}
              chosen={thing}
              onChoose={setThing}
              onAgain={() => lookAgain(raised)}
            />
          ) : tab === 'now' ? (
            <NowPanel
              key={pressed}
              question={resting ? weekend : null}
              done={recorded.done ?? number - 1}
              atOnce={pressed > 0}
            />
          ) : tab === 'days' ? (
            <DaysPanel question={weekend} />
          ) : tab === 'people' ? (
            <PeoplePanel />
          ) : (
            <AssumedPanel plan={plan} detail={typeof detail === 'string' ? null : detail} />
          )}
        </Tabs>
        <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
      </div>
      <PrintedCards {...{ stood, question, plan, picture, panels }} />
    </div>
  );
}

/** The plan with all that is known of its shell. */
function useRaised(question: RaisingQuestion, plan: RaisingPlan): RaisedQuestion {
  const hardware = useAppState((state) => projectOf(state).pile.hardware);
  return useMemo(() => ({ ...question, plan, hardware }), [question, plan, hardware]);
}

/** Yard and kit; null while they are worked out, words where they can't be. */
function useYard(raised: RaisedQuestion, wishes: YardWishes) {
  const words = useWords().raising;
  const asked = useMemo((): YardAsked => ({ ...raised, wishes }), [raised, wishes]);
  const { last, fault } = useAnswer(asked, askYard);
  const read = last?.question.plan === raised.plan ? last.answer : null;
  return {
    answer: read?.ok ? read.value : null,
    fault: fault ?? (read && !read.ok ? faultsInWords(read.faults, words) : null),
  };
}
