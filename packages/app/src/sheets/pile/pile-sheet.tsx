// The Pile sheet: the tally, the panel under the tape, and what the pile shows as it grows. On a
// phone one of three at a time: measuring with one hand, the tally, the findings.

import { useCallback, useEffect, useState } from 'react';
import { openChosen } from '../../files/open-file.ts';
import { DEMO, docOf, projectOf } from '../../state/app-state.ts';
import { emptyProject } from '../../state/empty-project.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useMedia } from '../../ui/use-media.ts';
import { usePrinting } from '../../ui/use-printing.ts';
import { useWords } from '../../words/words.ts';
import { OtherFindings } from './findings.tsx';
import { type FindingOf, useFindings } from './findings-of.ts';
import { Hardware } from './hardware.tsx';
import { KeypadEntry } from './keypad-entry.tsx';
import { KindsForming } from './kinds-forming.tsx';
import { type GoTo, MeasureNext } from './next-things.tsx';
import { HandTest, PanelUnderTape, type UnderTape } from './panel-band.tsx';
import { Photos } from './photos.tsx';
import { PrintedTally } from './printed-pile.tsx';
import { ReadingSettings } from './reading-settings.tsx';
import { SharedTags } from './shared-tags.tsx';
import { SlipList } from './slip-list.tsx';
import { TallyGrid } from './tally-grid.tsx';
import { useBoxSize } from './use-box-size.ts';
import { type Tally, useTally } from './use-tally.ts';
import { useWorked, type Worked } from './worked.ts';

const views = ['measure', 'tally', 'findings'] as const;
type View = (typeof views)[number];

/** Until its box is measured. */
const DRAWING = { width: 300, height: 222 };

/** The Pile sheet. */
export function PileSheet() {
  const tally = useTally();
  const worked = useWorked();
  const findingOf = useFindings(worked);
  const narrow = useMedia('(max-width: 700px)');
  const printing = usePrinting();
  useSelectedReading(tally, !narrow);
  const printed = printing ? (
    <PrintedTally rows={tally.rows} columns={tally.columns} findingOf={findingOf} />
  ) : null;
  const parts = { tally, worked, findingOf };
  return (
    <div className="pile-sheet">
      {narrow && !printing ? <Narrow {...parts} /> : <Wide {...parts} />}
      {printed}
    </div>
  );
}

interface Parts {
  readonly tally: Tally;
  readonly worked: Worked | null;
  readonly findingOf: FindingOf;
}

function Wide({ tally, worked, findingOf }: Parts) {
  const words = useWords().pile;
  const { actions } = tally;
  const none = useAppState((state) => projectOf(state).pile.readings.length === 0);
  const goTo = useCallback<GoTo>(
    (index, cell) => actions.goToRow({ type: 'reading', index }, cell),
    [actions],
  );
  const under = underTape(tally);
  const [box, size] = useBoxSize(DRAWING);
  const last = useAppState((state) => projectOf(state).pile.readings.at(-1));
  return (
    <>
      <div className="pile-main">
        <div className="pile-head">
          <PileHeading worked={worked} />
          <div className="pile-tools screen-only">
            <button type="button" className="main" onClick={() => actions.goToRow('fresh', 'tag')}>
              {words.tally.newRow}
            </button>
            <button type="button" disabled={last === undefined} onClick={actions.same}>
              {words.tally.same}
            </button>
            <button
              type="button"
              disabled={tally.active === null || tally.rows[tally.active.row]?.fresh}
              onClick={actions.remove}
            >
              {words.tally.remove}
            </button>
            <button type="button" onClick={actions.moreSides}>
              {words.tally.moreSides}
            </button>
          </div>
        </div>
        <DemoLine />
        {none && tally.rows.length === 1 && tally.active === null ? (
          <EmptyPile start={() => actions.goToRow('fresh', 'tag')} />
        ) : null}
        <TallyGrid tally={tally} findingOf={findingOf} />
      </div>
      <div className="pile-side">
        <div className="pile-band screen-only">
          <div ref={box} className="band-drawing">
            <PanelUnderTape under={under} findingOf={findingOf} size={size} />
          </div>
          <p className="quiet face-words">{words.drawing.seenFrom[faceNow(under)]}</p>
          <HandTest under={under} kinds={worked?.kinds.kinds ?? []} />
        </div>
        <Findings worked={worked} goTo={goTo} tag={tagUnder(tally)} />
        <PileBlock worked={worked} />
      </div>
    </>
  );
}

const faceNow = ({ row }: UnderTape): 'outside' | 'inside' | 'unknown' =>
  row.reading?.seenFrom ?? row.draft?.seenFrom ?? 'unknown';

/** Next first, then the kinds, then the rest. */
function Findings({
  worked,
  goTo,
  tag,
}: {
  worked: Worked | null;
  goTo: GoTo;
  tag: string | undefined;
}) {
  return (
    <div className="pile-findings">
      <MeasureNext worked={worked} goTo={goTo} />
      <SharedTags worked={worked} goTo={goTo} />
      <SlipList worked={worked} goTo={goTo} />
      <KindsForming worked={worked} />
      <OtherFindings worked={worked} goTo={goTo} />
      <Photos tag={tag} />
      <Hardware />
      <ReadingSettings />
    </div>
  );
}

function Narrow({ tally, worked, findingOf }: Parts) {
  const words = useWords().pile;
  const { actions } = tally;
  const demo = useAppState((state) => state.projectId === DEMO);
  const [view, setView] = useState<View>(demo ? 'findings' : 'measure');
  const goTo = useCallback<GoTo>(
    (index, cell) => {
      actions.goToRow({ type: 'reading', index }, cell);
      setView('measure');
    },
    [actions],
  );
  const pick = useCallback(
    (row: number, column: number) => {
      actions.go({ row, column });
      setView('measure');
    },
    [actions],
  );
  return (
    <>
      <fieldset className="pile-views screen-only" aria-label={words.viewsName}>
        {views.map((one) => (
          <button key={one} type="button" aria-pressed={one === view} onClick={() => setView(one)}>
            {words.views[one]}
          </button>
        ))}
      </fieldset>
      {view === 'measure' ? (
        <KeypadEntry tally={tally} worked={worked} findingOf={findingOf} />
      ) : null}
      {view === 'tally' ? (
        <div className="pile-main">
          <PileHeading worked={worked} />
          <TallyGrid tally={tally} findingOf={findingOf} onPick={pick} />
        </div>
      ) : null}
      {view === 'findings' ? (
        <div className="pile-side">
          <PileHeading worked={worked} />
          <DemoLine />
          <Findings worked={worked} goTo={goTo} tag={tagUnder(tally)} />
          <HandTest under={underTape(tally)} kinds={worked?.kinds.kinds ?? []} />
          <PileBlock worked={worked} />
        </div>
      ) : null}
    </>
  );
}

function PileHeading({ worked }: { worked: Worked | null }) {
  const words = useWords().pile;
  const readings = useAppState((state) => projectOf(state).pile.readings);
  const drafts = useAppState((state) => docOf(state).drafts.length);
  const tags = new Set(readings.flatMap(({ tag }) => tag ?? []));
  const untagged = readings.reduce((sum, { tag, count }) => sum + (tag ? 0 : (count ?? 1)), 0);
  return (
    <h1 className="pile-heading">
      {words.heading}
      {drafts === 0 ? null : <span className="accent"> {words.tally.drafts(drafts)}</span>}
      <span className="quiet">
        {readings.length === 0
          ? words.emptySummary
          : words.summary(
              readings.length,
              tags.size + untagged,
              worked?.kinds.kinds.length ?? null,
            )}
      </span>
    </h1>
  );
}

/** What the demo is, as long as it is one. */
function DemoLine() {
  const words = useWords().frame;
  const app = useApp();
  const demo = useAppState((state) => state.projectId === DEMO);
  return demo ? (
    <div className="demo-line screen-only">
      <p>{words.demoIntro}</p>
      <button type="button" className="go" onClick={() => void app.openNew(emptyProject(''))}>
        {words.startOwn}
      </button>
    </div>
  ) : null;
}

function EmptyPile({ start }: { start: () => void }) {
  const { pile, frame } = useWords();
  const words = pile.empty;
  const app = useApp();
  return (
    <div className="empty-pile screen-only">
      <h2>{words.title}</h2>
      <ol>
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <div className="presses">
        <button type="button" className="go" onClick={start}>
          {words.start}
        </button>
        <button type="button" onClick={() => void openChosen(app, frame)}>
          {words.open}
        </button>
      </div>
    </div>
  );
}

function PileBlock({ worked }: { worked: Worked | null }) {
  const words = useWords().pile.block;
  const lengths = useLengths();
  const readings = useAppState((state) => projectOf(state).pile.readings.length);
  const stated = useAppState((state) => projectOf(state).pile.readingSd);
  const noise = worked?.kinds.noise.used ?? stated;
  return (
    <TitleBlock
      more={[
        { name: words.readings, value: `${readings}` },
        { name: words.noise, value: `± ${lengths.small(noise)}` },
      ]}
    />
  );
}

/** The row under the tape: the one typed in, else the new one. */
function underTape({ rows, columns, active }: Tally): UnderTape {
  const index = active?.row ?? rows.length - 1;
  const row = rows[index] ?? rows[rows.length - 1];
  if (!row) throw new Error('a tally always has its empty row');
  const cell = active ? columns[active.column] : undefined;
  return { row, index, asked: typeof cell === 'number' ? cell : null };
}

/** The tag of the panel under the tape. */
function tagUnder(tally: Tally): string | undefined {
  const { reading, draft } = underTape(tally).row;
  return reading?.tag ?? (draft?.tag || undefined);
}

/** The selected reading is gone to when this sheet opens; not on the keypad, where the next figures
 * would be typed over it. */
function useSelectedReading({ actions }: Tally, wanted: boolean): void {
  const app = useApp();
  useEffect(() => {
    const { selection } = app.state.getState();
    if (wanted && selection?.type === 'reading')
      actions.goToRow({ type: 'reading', index: selection.row }, 0);
  }, [app, actions, wanted]);
}
