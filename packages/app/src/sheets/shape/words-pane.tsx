// The words beside the drawing, for every state of the sheet.

import type { Identification, Kind, Pile, PileKinds } from '@shellraise/core';
import type { ReactNode } from 'react';
import type { PileWork } from '../../engine/api.ts';
import type { Ask } from '../../engine/ask.ts';
import type { Relation } from '../../engine/relate.ts';
import { useApp, useEngine, useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { AllowanceNote } from './allowance-note.tsx';
import { BesidesNote } from './besides-note.tsx';
import { ConflictList } from './conflict-list.tsx';
import { Facts, Headline, Notes } from './facts.tsx';
import { FreedomNote } from './freedom-note.tsx';
import { HandsNote } from './hands-note.tsx';
import { LeaveOut, LeftOut } from './left-out.tsx';
import { MarkList } from './mark-list.tsx';
import { MendList } from './mend-list.tsx';
import { MisfitTable } from './misfit-table.tsx';
import { NextList } from './next-list.tsx';
import { Others } from './others.tsx';
import { isLookAtHand } from './outcomes.ts';
import { SectionNote } from './section-drawing.tsx';
import type { Stage } from './stage.ts';
import { StrangerList, WantedList } from './stranger-list.tsx';
import { SuspectList } from './suspect-list.tsx';
import { Trial } from './trial-drawing.tsx';

/** What the words are about. */
export interface WordsPaneProps {
  readonly stage: Stage;
  readonly stale: boolean;
  readonly work: Ask<PileWork>;
  readonly shapes: Ask<Identification>;
  readonly chosen: number;
  /** Kinds of the question that the shapes answer. */
  readonly kinds: readonly Kind[];
  readonly pile: Pile;
  readonly relation: Relation | null;
  /** Whether the second shell of the heap is drawn. */
  readonly second: boolean;
  readonly onSecond: (second: boolean) => void;
}

/** The words. */
export function WordsPane(props: WordsPaneProps) {
  const { stage, stale, work, shapes, pile } = props;
  const words = useWords().shape;
  const engine = useEngine();
  const app = useApp();
  const worked = work.value?.worked;
  const found = shapes.value;
  const shape = found?.shapes[props.chosen] ?? null;
  const press = (label: string): ReactNode => (
    <button type="button" className="go press" onClick={() => engine.askShapes()}>
      {label}
    </button>
  );
  // What is written into the pile must be of the pile as it is.
  const current = work.fresh && worked ? worked : null;
  const suspects = (
    <>
      <LeftOut pile={pile} worked={current} />
      {worked ? <SuspectList shape={stale ? null : shape} worked={worked} pile={pile} /> : null}
    </>
  );
  switch (stage) {
    case 'reading':
      return <p className="quiet">{words.readingPile} …</p>;
    case 'unreadable':
      return (
        <Fault text={words.failed.pile} detail={work.fault} again={() => engine.again('work')} />
      );
    case 'empty':
      return (
        <>
          <p className="headline">{words.empty.heading}</p>
          <p>{words.empty.text}</p>
          <p>
            <button type="button" className="main" onClick={() => app.goTo('pile')}>
              {words.empty.toPile}
            </button>
          </p>
        </>
      );
    case 'ready':
      return (
        <>
          <p className="headline">{words.start.pile(goodOf(work.value), kindsOf(work.value))}</p>
          {press(words.close)}
          <p>{words.start.why}</p>
          {suspects}
        </>
      );
    case 'running':
      return (
        <>
          <p className="headline">{words.closing} …</p>
          <ProgressLine
            ask={shapes}
            what={words.closing}
            onCancel={() => engine.cancel('shapes')}
          />
        </>
      );
    case 'cancelled':
      return (
        <>
          <p className="headline">{words.cancelled}</p>
          {press(words.close)}
          {suspects}
        </>
      );
    case 'failed':
      return (
        <>
          <Fault
            text={shapes.died ? words.failed.died : words.failed.failed}
            detail={shapes.fault}
            again={() => engine.askShapes()}
          />
          {suspects}
        </>
      );
    case 'nothing':
      return (
        <>
          {stale ? <Stale>{press(words.closeAgain)}</Stale> : null}
          {found ? <Nothing found={found} /> : null}
          {found ? <ConflictList conflicts={found.conflicts} /> : null}
          {found ? <NextList found={found} worked={current} /> : null}
          {worked ? <TooFew worked={worked} /> : null}
          {suspects}
          <LeaveOut kinds={current && !stale ? props.kinds : none} />
        </>
      );
    case 'found':
      return (
        <>
          {stale ? <Stale>{press(words.closeAgain)}</Stale> : null}
          {found && shape ? (
            <Found {...props} found={found} current={current} suspects={suspects} />
          ) : null}
        </>
      );
  }
}

function Found({
  found,
  stale,
  chosen,
  kinds,
  pile,
  relation,
  second,
  onSecond,
  current,
  suspects,
}: WordsPaneProps & {
  found: Identification;
  current: PileKinds | null;
  suspects: ReactNode;
}) {
  const words = useWords().shape;
  const shape = found.shapes[chosen];
  if (!shape) return null;
  const mine = stale ? null : current;
  // What to do next says it better; of an open part only this says what its rim asks for.
  const told = shape.closed && found.next.some((one) => !isLookAtHand(one));
  const settle = told ? [] : found.settle;
  return (
    <>
      <div className={stale ? 'shape-result stale' : 'shape-result'}>
        <Headline found={found} shape={shape} relation={relation} />
        <HandsNote shape={shape} kinds={kinds} worked={mine} />
        <Facts found={found} shape={shape} />
        <SectionNote shape={shape} />
        {shape.allowance ? (
          <AllowanceNote allowance={shape.allowance} canChange={mine !== null} />
        ) : null}
        <Notes shape={shape} kinds={kinds} />
        <MendList mends={shape.mends} worked={mine} kinds={kinds} />
        <StrangerList shape={shape} kinds={kinds} canChange={mine !== null} />
        <BesidesNote besides={found.besides} shown={second} onShow={onSecond} />
        <WantedList shape={shape} kinds={kinds} />
        <ConflictList conflicts={found.conflicts} />
        {mine ? <MarkList shape={shape} kinds={kinds} pile={pile} worked={mine} /> : null}
      </div>
      {suspects}
      <div className={stale ? 'shape-result stale' : 'shape-result'}>
        <NextList found={found} handTold={shape.hands === 'mirrored'} worked={mine} />
        <FreedomNote freedom={found.freedom ?? null} />
        <List heading={words.settle} items={settle} />
        {found.trial && chosen === 0 ? (
          <Trial trial={found.trial} shape={shape} kinds={kinds} />
        ) : null}
        {found.shapes.length > 1 ? <Others found={found} kinds={kinds} chosen={chosen} /> : null}
        <LeaveOut kinds={mine ? kinds : none} />
        <MisfitTable shape={shape} kinds={kinds} />
      </div>
    </>
  );
}

const none: readonly Kind[] = [];

/** How core begins to say what the line above says already. */
const CUT_SHORT = 'the search was cut short';

function Nothing({ found }: { found: Identification }) {
  const words = useWords().shape;
  return (
    <>
      <p className="headline">{words.nothing.heading}</p>
      <p>{found.complete ? words.nothing.proof : words.nothing.cut}</p>
      <List heading={words.why} items={found.reasons.filter((one) => !one.startsWith(CUT_SHORT))} />
    </>
  );
}

function Stale({ children }: { children: ReactNode }) {
  const words = useWords().shape;
  return (
    <div className="stale-note" role="status">
      <p>{words.stale}</p>
      {children}
    </div>
  );
}

function Fault({
  text,
  detail,
  again,
}: {
  text: string;
  detail: string | null;
  again: () => void;
}) {
  const words = useWords().shape.failed;
  return (
    <div role="alert" className="shape-fault">
      <p className="headline">{text}</p>
      {detail ? <p className="quiet">{detail}</p> : null}
      <button type="button" className="main" onClick={again}>
        {words.again}
      </button>
    </div>
  );
}

function List({ heading, items }: { heading: string; items: readonly string[] }) {
  const { capital } = useWords().shape;
  const lengths = useLengths();
  if (items.length === 0) return null;
  return (
    <section>
      <h2>{heading}</h2>
      <ul className="dashed-list">
        {items.map((item) => (
          <li key={item}>{capital(inOwnLengths(item, lengths))}.</li>
        ))}
      </ul>
    </section>
  );
}

/** Lines of what is measured too little, at most. */
const MOST_LINES = 6;

function TooFew({ worked }: { worked: PileKinds }) {
  const words = useWords().shape;
  const lines = [
    ...new Set(
      worked.tooFew.map(({ why, kinds }) => words.tooFew[why](kinds.join(words.tooFew.or))),
    ),
  ];
  const rest = lines.length - MOST_LINES;
  return (
    <section>
      <h2>{words.measure}</h2>
      <ul className="dashed-list">
        {lines.slice(0, MOST_LINES).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {rest > 0 ? <li>{words.tooFew.more(rest)}</li> : null}
        {lines.length === 0 ? <li>{words.tooFew.second}</li> : null}
        <li>{words.tooFew.missing}</li>
      </ul>
    </section>
  );
}

const goodOf = (work: PileWork | null): number =>
  work?.question.kinds.reduce((sum, { good }) => sum + good, 0) ?? 0;

const kindsOf = (work: PileWork | null): number => work?.question.kinds.length ?? 0;
