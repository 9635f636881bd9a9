// The Fit-out sheet: what the shell is for once it stands. A drawing on the left, its fields and answers
// beside it: the door, what must pass, the dish, the sky, seal, air, upkeep, room.

import '../../styles/ground.css';
import '../../styles/raising.css';
import '../../styles/yard.css';
import '../../styles/fitout.css';
import { type Drawing, defaultFitout, mergeSources, openPlaces } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { CarryWhen, FitoutDoorQuestion, FitoutQuestion } from '../../engine/fitout.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import { SheetDrawing } from '../ground/sheet-drawing.tsx';
import { Failed, Faults } from '../ground/small.tsx';
import { PrintedSheets } from '../places/printed-plans.tsx';
import { StandingSheet } from '../places/standing-sheet.tsx';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { useAnswer } from '../places/use-answer.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { useOnPaper } from '../places/use-on-paper.ts';
import { AirPanel } from './air-panel.tsx';
import { AssumedPanel } from './assumed-panel.tsx';
import { DoorPanel } from './door-panel.tsx';
import { askDoor, askFitout, carryRuns, doorRuns, signalRuns } from './fitout-runs.ts';
import { PassPanel } from './pass-panel.tsx';
import { RoomPanel } from './room-panel.tsx';
import { SealPanel } from './seal-panel.tsx';
import { sharesSeam } from './seam-pairs.ts';
import { SignalPanel } from './signal-panel.tsx';
import { SwingPanel } from './swing-panel.tsx';
import { UpkeepPanel } from './upkeep-panel.tsx';

const tabs = [
  'door',
  'pass',
  'swing',
  'signal',
  'seal',
  'air',
  'upkeep',
  'room',
  'assumed',
] as const;
type FitoutTab = (typeof tabs)[number];

/** The Fit-out sheet. */
export function FitoutSheet() {
  const words = useWords().fitout;
  return (
    <StandingSheet className="ground-sheet fitout-sheet" title={words.title}>
      {(stood) => <Fitted stood={stood} />}
    </StandingSheet>
  );
}

function Fitted({ stood }: { stood: Stood }) {
  const { fitout: words, frame } = useWords();
  const [tab, setTab] = useState<FitoutTab>('door');
  const question = useFitoutQuestion(stood);
  const { last, fault, again, pending } = useAnswer(question, askFitout);
  const read = last?.answer ?? null;
  const told = read?.ok ? read.value : null;
  const { shell, numbers, leftOut } = question;
  const door = useDoor(stood, question, tab === 'door');
  const [placed, setPlaced] = useState<CarryWhen>(null);
  const carry = useStore(carryRuns.store);
  const sky = useSky(question, tab === 'signal');
  const [shown, setShown] = useState(0);
  const map = sky.value?.find(({ frequency }) => frequency === shown) ?? sky.value?.[0] ?? null;
  const shareSeam = useMemo(() => sharesSeam(shell, numbers), [shell, numbers]);
  const hasCarried = carry.input?.shell === shell;
  const drawings: readonly Drawing[] | null =
    tab === 'door'
      ? (door.told?.drawings ?? null)
      : tab === 'pass'
        ? hasCarried && carry.value !== null && carry.value.drawings.length > 0
          ? carry.value.drawings
          : (door.told?.drawings ?? null)
        : tab === 'signal'
          ? (map?.drawings ?? null)
          : tab === 'seal'
            ? (told?.seal ?? null)
            : tab === 'air'
              ? (told?.air ?? null)
              : tab === 'upkeep'
                ? (told?.upkeep ?? null)
                : tab === 'room' || tab === 'assumed'
                  ? (told?.room ?? null)
                  : (told?.swing ?? null);
  return (
    <div className="shell-sheet" aria-busy={pending}>
      <div className="drawings ground-left">
        {read && !read.ok ? (
          <div className="no-shell">
            <h2>{words.noFit}</h2>
            <Faults faults={read.faults} />
          </div>
        ) : drawings !== null && drawings.length > 0 ? (
          <SheetDrawing key={drawings[0]?.title} drawings={drawings} />
        ) : (
          <p className="plan-waiting quiet">{waiting(tab, words, leftOut.length > 0)}</p>
        )}
      </div>
      <div className="beside">
        <Failed failed={words.failed} fault={fault} onAgain={again} />
        <Tabs
          className="beside-tabs fitout-tabs"
          label={words.tabs}
          tabs={tabs.map((key) => ({ key, label: words.tab[key] }))}
          chosen={tab}
          onChoose={setTab}
        >
          {tab === 'door' ? (
            <DoorPanel
              {...{ numbers, leftOut }}
              hasWind={question.windFrom !== null}
              told={door.told}
              run={door.run}
              onCancel={doorRuns.cancel}
            />
          ) : tab === 'pass' ? (
            <PassPanel
              run={carry}
              panels={numbers.length - leftOut.length}
              placed={placed}
              hasOpening={leftOut.length > 0}
              numbers={numbers}
              onPlaced={setPlaced}
              onGo={(index) => carryRuns.start({ ...question, index, placed })}
              onCancel={carryRuns.cancel}
            />
          ) : tab === 'swing' ? (
            <SwingPanel told={told} numbers={numbers} />
          ) : tab === 'signal' ? (
            <>
              <ProgressLine ask={sky} what={words.signal.working} onCancel={signalRuns.cancel} />
              {sky.faults.length > 0 ? <Faults faults={sky.faults} /> : null}
              <SignalPanel told={sky.value} shown={shown} onShow={setShown} />
            </>
          ) : tab === 'seal' ? (
            <SealPanel told={told} numbers={numbers} shareSeam={shareSeam} />
          ) : tab === 'air' ? (
            <AirPanel told={told} />
          ) : tab === 'upkeep' ? (
            <UpkeepPanel told={told} numbers={numbers} leftOut={leftOut} />
          ) : tab === 'room' ? (
            <RoomPanel told={told} />
          ) : (
            <AssumedPanel sources={mergeSources(told?.answer.sources ?? [])} />
          )}
        </Tabs>
        <TitleBlock more={[{ name: frame.block.assumes, value: question.facts.assumes }]} />
      </div>
      <Printed
        drawings={[
          ...(door.told?.drawings ?? []),
          ...(told?.swing ?? []),
          ...(map?.drawings ?? []),
          ...(told?.seal ?? []),
          ...(told?.upkeep ?? []),
        ]}
      />
    </div>
  );
}

function waiting(
  tab: FitoutTab,
  words: ReturnType<typeof useWords>['fitout'],
  hasOpening: boolean,
): string {
  if (tab === 'door' && !hasOpening) return words.door.none;
  if (tab === 'pass') return words.pass.draw;
  if (tab === 'swing') return words.swing.none;
  return tab === 'signal' ? words.signal.none : words.working;
}

/** The shell with all that was said of its use. */
function useFitoutQuestion({ standing }: Stood): FitoutQuestion {
  const { fitout: words, frame } = useWords();
  const settings = useAppState((state) => projectOf(state).fitout);
  const windFrom = useAppState((state) => projectOf(state).wishes?.windFrom) ?? null;
  const snow = useAppState((state) => projectOf(state).loads?.groundSnow) ?? null;
  const forecast = useAppState((state) => projectOf(state).crew?.forecast);
  const assumes = useAssumes();
  const { shell } = standing.standing;
  const { numbers } = standing;
  const open = useMemo(
    () => openPlaces(numbers, standing.leftOut, settings ?? defaultFitout),
    [numbers, standing.leftOut, settings],
  );
  const leftOut = open.ok ? open.value : standing.leftOut;
  const onPaper = useOnPaper(`7 ${frame.sheets.fitout}`, assumes, words.caution);
  return useMemo(
    () => ({
      ...{ shell, numbers, leftOut, settings, windFrom, snow },
      forecast: forecast ?? [],
      ...onPaper,
    }),
    [shell, numbers, leftOut, settings, windFrom, snow, forecast, onPaper],
  );
}

/** The door's advice at once, and what it costs the frame when that is reckoned. */
function useDoor(stood: Stood, question: FitoutQuestion, wanted: boolean) {
  const { kinds } = stood;
  const parts = useAppState((state) => projectOf(state).parts);
  const loads = useAppState((state) => projectOf(state).loads);
  const { leftOut } = question;
  const asked = useMemo(
    (): FitoutDoorQuestion | null =>
      leftOut.length === 0
        ? null
        : { ...question, kinds, parts, loads, places: leftOut, withFrame: false },
    [question, kinds, parts, loads, leftOut],
  );
  const framed = useMemo(() => asked && { ...asked, withFrame: true }, [asked]);
  const { last } = useAnswer(asked, askDoor);
  const run = useStore(doorRuns.store);
  useEffect(() => {
    if (wanted && framed !== null) doorRuns.follow(framed);
  }, [wanted, framed]);
  const quick = last?.answer.ok ? last.answer.value : null;
  const whole = framed !== null && run.input === framed ? run.value : null;
  return { told: asked === null ? null : (whole ?? quick), run };
}

/** The sky, reckoned while its tab is looked at. */
function useSky(question: FitoutQuestion, wanted: boolean) {
  const run = useStore(signalRuns.store);
  useEffect(() => {
    if (wanted) signalRuns.follow(question);
  }, [wanted, question]);
  return run;
}

/** All sheets of the fit-out, for the printer. */
function Printed({ drawings }: { drawings: readonly Drawing[] }) {
  const printing = usePrinting();
  return printing ? <PrintedSheets drawings={drawings} /> : null;
}
