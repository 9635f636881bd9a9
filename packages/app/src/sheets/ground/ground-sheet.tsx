// The Ground sheet: the base as it is set out, anchored, levelled and surveyed, and the stages of the
// build, each drawn on the left with its numbers and fields beside it.

import '../../styles/ground.css';
import type { Drawing, HubId } from '@shellraise/core';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { longEngine, quickEngine, stagesEngine } from '../../engine/bridge.ts';
import type { GroundAnswer, GroundPapersQuestion, GroundQuestion } from '../../engine/ground.ts';
import { createStageRuns } from '../../engine/stage-runs.ts';
import type { StageQuestion } from '../../engine/stages.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import { PrintedSheets } from '../places/printed-plans.tsx';
import { StandingSheet } from '../places/standing-sheet.tsx';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { useAnswer } from '../places/use-answer.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { useOnPaper } from '../places/use-on-paper.ts';
import { AnchorsPanel } from './anchors-panel.tsx';
import { AssumedPanel } from './assumed-panel.tsx';
import { BeamPanel } from './beam-panel.tsx';
import { LevelsPanel } from './levels-panel.tsx';
import { PartsPanel } from './parts-panel.tsx';
import { SheetDrawing } from './sheet-drawing.tsx';
import { SitePanel } from './site-panel.tsx';
import { Failed, Faults } from './small.tsx';
import { StabilityBlock, useStability } from './stability-block.tsx';
import { StageView } from './stage-view.tsx';
import { StagesPanel } from './stages-panel.tsx';
import { SurveyDrawing } from './survey-drawing.tsx';
import { SurveyPanel } from './survey-panel.tsx';
import { useQuantities } from './use-ground.ts';

const tabs = ['site', 'parts', 'anchors', 'levels', 'beam', 'survey', 'stages', 'assumed'] as const;
type GroundTab = (typeof tabs)[number];

const runs = createStageRuns(stagesEngine, () => performance.now());
const askGround = (question: GroundPapersQuestion) => quickEngine.ask('ground', question);
const askStage = (question: StageQuestion) => longEngine.ask('stage', question);

/** The Ground sheet. */
export function GroundSheet() {
  const words = useWords().ground;
  return (
    <StandingSheet className="ground-sheet" title={words.title}>
      {(stood) => <OnGround stood={stood} />}
    </StandingSheet>
  );
}

function OnGround({ stood }: { stood: Stood }) {
  const { ground: words, groundForms, frame } = useWords();
  const loads = useAppState((state) => projectOf(state).loads);
  const ground = useAppState((state) => projectOf(state).ground);
  const parts = useAppState((state) => projectOf(state).parts);
  const stages = useAppState((state) => projectOf(state).stages);
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const [tab, setTab] = useState<GroundTab>('site');
  const { standing, kinds } = stood;
  const { shell } = standing.standing;
  const { numbers, leftOut } = standing;
  const question = useMemo(
    (): GroundQuestion => ({
      ...{ shell, numbers, leftOut, kinds, loads, ground, parts, stages, takeoff },
      ...(holes && { holes }),
    }),
    [shell, numbers, leftOut, kinds, loads, ground, parts, stages, takeoff, holes],
  );
  const sides = useAssumes();
  const { speed } = useQuantities();
  const assumes = words.assumes(
    sides,
    loads?.wind ? speed(loads.wind.speed) : null,
    loads?.wind?.as ?? 'gust',
  );
  const onPaper = useOnPaper(`4 ${frame.sheets.ground}`, assumes, words.caution);
  const papers = useMemo(
    (): GroundPapersQuestion => ({ ...question, ...onPaper }),
    [question, onPaper],
  );
  const { last, fault, again, pending } = useAnswer(papers, askGround);
  const read = last?.answer ?? null;
  const answer = read?.ok ? read.value : null;
  const stage = useStages(question, tab === 'stages');
  const stability = useStability(question, stage.at).value;
  const seen = useMemo(
    () =>
      stage.detail && {
        ...stage.detail,
        stability: stage.detail.n === stability?.n ? stability : null,
      },
    [stage.detail, stability],
  );
  const names = { ...words.tab, ...groundForms.tab };
  return (
    <div className="shell-sheet" aria-busy={pending}>
      <div className="drawings ground-left">
        {read && !read.ok ? (
          <div className="no-shell">
            <h2>{words.noBase}</h2>
            <Faults faults={read.faults} />
          </div>
        ) : tab === 'stages' ? (
          seen ? (
            <StageView shell={shell} numbers={numbers} detail={seen} />
          ) : (
            <p className="plan-waiting quiet">{words.working}</p>
          )
        ) : answer ? (
          <Shown tab={tab} answer={answer} />
        ) : (
          <p className="plan-waiting quiet">{words.working}</p>
        )}
      </div>
      <div className="beside">
        <Failed failed={words.failed} fault={fault} onAgain={again} />
        <Tabs
          className="beside-tabs"
          label={words.tabs}
          tabs={tabs.map((key) => ({ key, label: names[key] }))}
          chosen={tab}
          onChoose={setTab}
        >
          {tab === 'site' ? (
            <SitePanel answer={answer}>
              <StabilityBlock
                question={question}
                n={stage.stages}
                stages={stage.stages}
                drawn={false}
              />
            </SitePanel>
          ) : tab === 'parts' ? (
            <PartsPanel />
          ) : tab === 'anchors' ? (
            <AnchorsPanel answer={answer} />
          ) : tab === 'levels' ? (
            <LevelsPanel answer={answer} />
          ) : tab === 'beam' ? (
            <BeamPanel answer={answer} />
          ) : tab === 'survey' ? (
            <SurveyPanel answer={answer} />
          ) : tab === 'stages' ? (
            <StagesPanel {...stage} pressure={answer?.wind.design?.value ?? null}>
              <StabilityBlock question={question} n={stage.at} stages={stage.stages} />
            </StagesPanel>
          ) : (
            <AssumedPanel
              answer={answer}
              stage={stage.detail?.answer ?? null}
              stability={stability?.found ?? null}
            />
          )}
        </Tabs>
        <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
      </div>
      {answer ? <Printed answer={answer} /> : null}
    </div>
  );
}

/** The drawing that goes with a tab. */
function Shown({ tab, answer }: { tab: GroundTab; answer: GroundAnswer }) {
  const { base, stakeOut, anchors, shims, beam, survey } = answer;
  if (tab === 'survey')
    return (
      <SurveyDrawing
        base={base}
        survey={survey.ok ? survey.value : null}
        sheets={answer.surveySheets}
      />
    );
  const drawings: readonly Drawing[] =
    tab === 'anchors' && anchors.ok
      ? anchors.value.drawings
      : tab === 'levels' && shims.ok
        ? shims.value.drawings
        : tab === 'beam' && beam?.ok
          ? beam.value.drawings
          : stakeOut;
  return <SheetDrawing key={drawings[0]?.title} drawings={drawings} />;
}

/** All sheets of the ground, for the printer. */
function Printed({ answer }: { answer: GroundAnswer }) {
  const printing = usePrinting();
  if (!printing) return null;
  const { stakeOut, anchors, shims, beam, surveySheets } = answer;
  const drawings = [
    ...stakeOut,
    ...(anchors.ok ? anchors.value.drawings : []),
    ...(shims.ok ? shims.value.drawings : []),
    ...(beam?.ok ? beam.value.drawings : []),
    ...surveySheets,
  ];
  return <PrintedSheets drawings={drawings} />;
}

/** The stages of the build, reckoned while their tab is looked at, and the one on show. */
function useStages(question: GroundQuestion, shown: boolean) {
  const run = useStore(runs.store);
  const [at, setAt] = useState<number | null>(null);
  const { shell, numbers, leftOut } = question;
  const stages = shell.kind.length - leftOut.length;
  const stage = Math.max(1, Math.min(stages, at ?? Math.ceil(stages / 2)));
  useEffect(() => {
    if (shown) runs.follow(question);
  }, [shown, question]);
  const asked = useMemo(
    (): StageQuestion | null => (shown ? { ...question, n: stage } : null),
    [shown, question, stage],
  );
  const { last } = useAnswer(useSettled(asked), askStage);
  const detail = last?.answer.ok ? last.answer.value : null;
  const around = useCallback(
    (hub: number): string[] =>
      (detail?.placed ?? [])
        .filter((place) =>
          shell.sideHub
            .subarray(shell.placeStart[place], shell.placeStart[place + 1])
            .includes(hub as HubId),
        )
        .sort((a, b) => a - b)
        .map((place) => numbers[place] ?? ''),
    [shell, numbers, detail],
  );
  return {
    run,
    stages,
    at: stage,
    onStage: setAt,
    onCancel: runs.cancel,
    onAgain: () => runs.start(question),
    detail,
    around,
  };
}

/** The value once it has stayed the same for a moment: a slider drawn along asks for one stage. */
function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), 90);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
