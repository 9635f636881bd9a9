// A panel breaks in mid-build: what now. How far the work is, the answers with the least undoing first,
// what one could be cut from, and the card of one to make.

import { useEffect, useMemo, useState } from 'react';
import { longEngine } from '../../../engine/bridge.ts';
import type { BrokenQuestion } from '../../../engine/broken.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useDerived } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { AnswerFault } from '../answer-state.tsx';
import { fittedKinds, type Stood, usePicked } from '../stood.ts';
import { useAnswer } from '../use-answer.ts';
import { builtUpTo } from './answer-words.ts';
import { Answers } from './answers.tsx';
import { BrokenSoFar } from './broken-so-far.tsx';
import { CutDownCards } from './cut-down.tsx';
import { MakeOne } from './make-one.tsx';

const askWays = (question: BrokenQuestion) => longEngine.ask('waysOut', question);

/** The panel. `upTo`: the topmost course that is up. */
export function BrokenPanel({
  stood,
  upTo,
  onUpTo,
}: {
  stood: Stood;
  upTo: number;
  onUpTo: (course: number) => void;
}) {
  const { fitting } = useWords();
  const words = fitting.broken;
  const { standing, kinds } = stood;
  const place = useLastPlace(stood);
  const allowance = useAppState((state) => projectOf(state).pile.hubAllowance);
  const settings = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const question = useMemo(
    () =>
      place === null
        ? null
        : questionOf(stood, place, upTo, { allowance, holes: holes ?? [], settings }),
    [stood, place, upTo, allowance, holes, settings],
  );
  const { last, pending, fault, again } = useAnswer(question, askWays);
  const answer = last?.question === question ? last.answer : null;
  const kind = place === null ? undefined : kinds[standing.standing.shell.kind[place] as number];
  return (
    <div className="fit-panel">
      {place === null || !kind ? (
        <p>{words.hint}</p>
      ) : (
        <p className="details-kind">{words.heading(standing.numbers[place] ?? '', kind.id)}</p>
      )}
      <UpTo
        count={standing.standing.courses.counts.length}
        panels={question ? question.built.reduce((sum, one) => sum + one, 0) : null}
        {...{ upTo, onUpTo }}
      />
      <AnswerFault {...{ fault, again }} />
      <p className="read-out" role="status">
        {pending ? words.looking : answer ? words.found(answer.ways.length) : ''}
      </p>
      {answer && place !== null && kind ? (
        <>
          <p className="facts-caution">{words.caution}</p>
          <Answers stood={stood} place={place} ways={answer.ways} />
          <CutDownCards cuts={answer.cuts} kind={kind.id} />
          <MakeOne card={answer.card} />
        </>
      ) : null}
      <BrokenSoFar stood={stood} />
    </div>
  );
}

function questionOf(
  stood: Stood,
  place: number,
  upTo: number,
  making: Pick<BrokenQuestion, 'allowance' | 'holes' | 'settings'>,
): BrokenQuestion {
  const { standing, shape } = stood;
  const { shell, courses } = standing.standing;
  return {
    shell,
    kinds: fittedKinds(stood),
    interchangeable: shape.interchangeable,
    plain: standing.plain,
    besides: standing.decision,
    place,
    built: builtUpTo(courses.course, upTo, standing.leftOut),
    ...making,
  };
}

/** The place picked last; it stays while several are shown up. */
function useLastPlace(stood: Stood): number | null {
  const { picked } = usePicked(stood);
  const now = picked?.type === 'place' ? picked.place : null;
  const [last, setLast] = useState<string | null>(null);
  const { numbers } = stood.standing;
  useEffect(() => {
    if (now !== null) setLast(numbers[now] ?? null);
  }, [now, numbers]);
  if (now !== null) return now;
  const place = last === null ? -1 : numbers.indexOf(last);
  return place < 0 ? null : place;
}

function UpTo({
  count,
  upTo,
  panels,
  onUpTo,
}: {
  count: number;
  upTo: number;
  panels: number | null;
  onUpTo: (course: number) => void;
}) {
  const words = useWords().fitting.broken;
  return (
    <label className="up-to">
      <span>{words.upTo}</span>
      <select value={Math.min(upTo, count)} onChange={({ target }) => onUpTo(Number(target.value))}>
        {Array.from({ length: count + 1 }, (_, course) => course).map((course) => (
          <option key={course} value={course}>
            {words.courses(course, count)}
          </option>
        ))}
      </select>
      <span className="quiet">{panels === null ? '' : words.panelsUp(panels)}</span>
    </label>
  );
}
