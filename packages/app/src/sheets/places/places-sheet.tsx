// The Places sheet: what can stand, and which panel goes where.

import type { HoleCounts, Kind, Pile, Shell, TakeoffSettings } from '@shellraise/core';
import { useCallback, useMemo, useState } from 'react';
import { quickEngine } from '../../engine/bridge.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useMedia } from '../../ui/use-media.ts';
import { useWords } from '../../words/words.ts';
import { BrokenPanel } from './broken/broken-panel.tsx';
import { Chooser } from './chooser.tsx';
import { coloured } from './colouring.ts';
import { DoorPanel } from './door/door-panel.tsx';
import { Facts, StandButtons } from './facts.tsx';
import { FitPanel } from './fit/fit-panel.tsx';
import { LeftOverPanel } from './left-over/left-over-panel.tsx';
import { NumbersPanel, type papers } from './numbers-panel.tsx';
import { PickedBar } from './picked-bar.tsx';
import { Details } from './place-details.tsx';
import { PlanPane } from './plan-pane.tsx';
import { PrintedPlans } from './printed-plans.tsx';
import { SearchBox } from './search-box.tsx';
import { NoShell, Steps } from './sheet-states.tsx';
import { SolidPane } from './solid-pane.tsx';
import { StockTable } from './stock-table.tsx';
import { type Stood, usePicked } from './stood.ts';
import { Tabs } from './tabs.tsx';
import { TagsPanel } from './tags/tags-panel.tsx';
import { TakeOffPanel } from './take-off-panel.tsx';
import { useAnswer } from './use-answer.ts';
import { useAssumes } from './use-assumes.ts';
import { useStood } from './use-stood.ts';

type SheetTab = 'place' | 'fit' | 'door' | 'broken' | 'leftOver' | 'tags' | 'takeOff' | 'numbers';
type PaperChoice = (typeof papers)[number];

/** The Places sheet. */
export function PlacesSheet() {
  const words = useWords().places;
  const stand = useDerived((derived) => derived.stand.value);
  const list = useDerived((derived) => derived.list.value);
  const shape = useDerived(({ shapes, shape: index }) => shapes.value?.shapes[index]);
  const [choosing, setChoosing] = useState(false);
  const standing = stand?.found ? stand.shell : null;
  const stood = useStood();
  const done = useCallback(() => {
    setChoosing(false);
    document.getElementById('sheet')?.focus();
    scrollTo(0, 0);
  }, []);
  return (
    <div className="places-sheet">
      <h1 className="read-out">{words.title}</h1>
      <Steps />
      {choosing && list && shape ? (
        <div className="choosing">
          <Chooser answer={list} shape={shape} current={standing?.decision ?? null} onDone={done} />
        </div>
      ) : stood ? (
        <ShellOnSheet stood={stood} onChoose={() => setChoosing(true)} />
      ) : (
        <div className="choosing">
          <NoShell onChoose={() => setChoosing(true)} />
          <div className="choosing-foot">
            <TitleBlock />
          </div>
        </div>
      )}
    </div>
  );
}

/** The chosen shell: plan and 3D side by side, or one of them on a phone; beside them what is
 * selected. */
function ShellOnSheet({ stood, onChoose }: { stood: Stood; onChoose: () => void }) {
  const { places: words, frame, fitting } = useWords();
  const lengths = useLengths();
  const colouring = useAppState((state) => state.settings.colouring);
  const wide = useMedia('(min-width: 1180px)');
  const [tab, setTab] = useState<SheetTab>('place');
  const [drawing, setDrawing] = useState<'plan' | 'solid'>('plan');
  const [upTo, setUpTo] = useState(Number.POSITIVE_INFINITY);
  const [scale, setScale] = useState<number | null>(null);
  const [paper, setPaper] = useState<PaperChoice>(lengths.system === 'inch' ? 'Letter' : 'A4');
  const { standing, kinds } = stood;
  const { shell, courses } = standing.standing;
  const fills = useMemo(
    () =>
      coloured(colouring, {
        kind: shell.kind,
        kinds,
        course: courses.course,
        stock: standing.stock,
        leftOut: standing.leftOut,
      }),
    [colouring, shell, kinds, courses, standing],
  );
  const counting = useQuantities(stood);
  const placed = usePicked(stood).picked?.type === 'place';
  const assumes = useAssumes();
  const onScale = useCallback((now: number) => setScale(roundScale(now)), []);
  const plan = (
    <PlanPane stood={stood} coloured={fills} onScale={onScale}>
      <SearchBox stood={stood} />
    </PlanPane>
  );
  const solid = <SolidPane stood={stood} coloured={fills} />;
  return (
    <div className="shell-sheet">
      {wide ? (
        <div className="drawings">{plan}</div>
      ) : (
        <Tabs
          className="drawings"
          label={words.view.tabs}
          tabs={[
            { key: 'plan', label: words.view.plan },
            { key: 'solid', label: words.view.solid },
          ]}
          chosen={drawing}
          onChoose={setDrawing}
          swiped
        >
          {drawing === 'plan' ? plan : solid}
        </Tabs>
      )}
      {wide ? null : <PickedBar stood={stood} />}
      <div className="beside">
        <div className="shell-head">
          {wide ? solid : null}
          <Facts stood={stood} />
          <StandButtons stood={stood} onChoose={onChoose} />
        </div>
        <Tabs
          className="beside-tabs"
          label={words.details.tabs}
          tabs={[
            { key: 'place', label: words.details.tab },
            { key: 'fit', label: fitting.tab },
            { key: 'door', label: fitting.door.tab },
            { key: 'broken', label: fitting.broken.tab },
            { key: 'leftOver', label: fitting.leftOver.tab },
            { key: 'tags', label: fitting.tags.tab },
            { key: 'takeOff', label: words.takeOff.tab },
            { key: 'numbers', label: words.numbers.tab },
          ]}
          chosen={tab}
          onChoose={setTab}
        >
          {tab === 'place' ? (
            <div className={placed ? 'place-and-stock one' : 'place-and-stock'}>
              <Details stood={stood} quantities={counting.last?.answer ?? null} />
              <StockTable stood={stood} />
            </div>
          ) : tab === 'fit' ? (
            <FitPanel stood={stood} />
          ) : tab === 'door' ? (
            <DoorPanel stood={stood} />
          ) : tab === 'broken' ? (
            <BrokenPanel stood={stood} upTo={upTo} onUpTo={setUpTo} />
          ) : tab === 'leftOver' ? (
            <LeftOverPanel stood={stood} />
          ) : tab === 'tags' ? (
            <TagsPanel stood={stood} />
          ) : tab === 'takeOff' ? (
            <TakeOffPanel counting={counting} />
          ) : (
            <NumbersPanel stood={stood} paper={paper} onPaper={setPaper} />
          )}
        </Tabs>
        <TitleBlock
          more={[
            ...(scale === null
              ? []
              : [{ name: frame.block.scale, value: words.block.onScreen(scale) }]),
            { name: frame.block.radius, value: lengths.large(shell.radius) },
            { name: frame.block.assumes, value: assumes },
          ]}
        />
      </div>
      <PrintedPlans {...{ stood, paper, assumes }} proof={counting.last?.answer.proof} />
    </div>
  );
}

/** What the shell needs of everything, counted in the engine. */
function useQuantities({ standing, kinds }: Stood) {
  const hardware = useAppState((state) => projectOf(state).pile.hardware);
  const settings = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const { shell } = standing.standing;
  const question = useMemo(
    (): QuantityQuestion => ({
      shell,
      kinds,
      hardware,
      settings,
      holes: holes ?? [],
      leftOut: standing.leftOut,
    }),
    [shell, kinds, hardware, settings, holes, standing],
  );
  return useAnswer(question, askQuantities);
}

interface QuantityQuestion {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly hardware: Pile['hardware'];
  readonly settings: TakeoffSettings | undefined;
  readonly holes: HoleCounts;
  readonly leftOut: readonly number[];
}

const askQuantities = ({ shell, kinds, hardware, settings, holes, leftOut }: QuantityQuestion) =>
  quickEngine.ask('quantities', shell, kinds, hardware, settings, holes, leftOut);

/** A scale that changes with the window, to two figures. */
const roundScale = (scale: number): number => Number(scale.toPrecision(2));
