// What the stock can stand by the lead's wishes: the wishes, the press that looks for the best, and the
// fits as they come, with the proof at the end.

import type { JoinedGroup } from '@shellraise/core';
import { useMemo } from 'react';
import type { FitQuestion } from '../../../engine/best-fits.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useDerived, useFitting } from '../../../ui/app-context.tsx';
import { ProgressLine } from '../../../ui/progress-line.tsx';
import { useWords } from '../../../words/words.ts';
import type { Stood } from '../stood.ts';
import { Conflict } from './conflict.tsx';
import { FitList } from './fit-list.tsx';
import { sameWishes, wishesOf } from './wishes.ts';
import { WishesForm } from './wishes-form.tsx';

const none: readonly JoinedGroup[] = [];

/** Seconds that the search may take. */
const SECONDS = 20;

/** The panel. */
export function FitPanel({ stood }: { stood: Stood }) {
  const words = useWords().fitting;
  const project = useAppState(projectOf);
  const wishes = wishesOf(project);
  const [fitting, search] = useFitting();
  const { shape, kinds } = stood;
  const groups = useDerived((derived) => derived.work.value?.question.groups) ?? none;
  const question = useMemo(
    (): FitQuestion => ({
      shell: shape.shell,
      kinds,
      interchangeable: shape.interchangeable,
      groups,
      wishes,
      seconds: SECONDS,
    }),
    [shape, kinds, groups, wishes],
  );
  const asked = fitting.input;
  const stale = asked !== null && !sameQuestion(asked, question);
  const running = fitting.status === 'running';
  return (
    <div className="fit-panel">
      <WishesForm wishes={wishes} saved={project.wishes !== undefined} />
      <div className="buttons screen-only">
        <button
          type="button"
          className="go"
          disabled={running && !stale}
          onClick={() => search.start(question)}
        >
          {asked === null || (running && !stale) ? words.find : words.findAgain}
        </button>
      </div>
      <ProgressLine ask={fitting} what={words.finding} onCancel={search.cancel} />
      <p className={stale ? 'accent' : 'read-out'} role="status">
        {stale ? words.stale : ''}
      </p>
      {asked === null ? null : (
        <>
          <Proof />
          <Conflict wishes={wishes} />
          <FitList stood={stood} shape={asked.shell} />
          {fitting.found.length > 0 ? <p className="facts-caution">{words.caution}</p> : null}
        </>
      )}
    </div>
  );
}

/** How far it is, or what was proved. */
function Proof() {
  const words = useWords().fitting;
  const [{ status, value, found, took, died, fault }] = useFitting();
  const seconds = (took ?? 0).toFixed(1);
  const text = (): string => {
    if (status === 'cancelled') return `${words.stopped} ${words.soFar(found.length)}`;
    if (status === 'failed') return died ? words.died : words.failed;
    if (status === 'running') return words.soFar(found.length);
    if (!value) return '';
    const { proved, tried, outlines, reason } = value.answer;
    if (value.answer.status === 'none') return words.none(reason);
    if (found.length === 0) return '';
    return proved ? words.proved(outlines, seconds) : words.notProved(tried, outlines, seconds);
  };
  return (
    <>
      <p role="status" className="fit-proof">
        {text()}
      </p>
      {status === 'failed' && !died ? <p className="quiet">{fault}</p> : null}
    </>
  );
}

/** Whether an answer to the one is one to the other. */
const sameQuestion = (a: FitQuestion, b: FitQuestion): boolean =>
  a.shell === b.shell &&
  sameWishes(a.wishes, b.wishes) &&
  JSON.stringify(a.kinds) === JSON.stringify(b.kinds);
