// Which tagged panel goes into which place, so that long sides meet long ones and mended panels stand
// low; as a list to read out, and as a spreadsheet.

import { useMemo } from 'react';
import { longEngine } from '../../../engine/bridge.ts';
import type { SinglesQuestionOfPile, TaggedPlaces } from '../../../engine/singles.ts';
import { download, fileName } from '../../../files/save-file.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useApp, useAppState, useDerived, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { AnswerFault, AnswerPending } from '../answer-state.tsx';
import { fittedKinds, type Stood } from '../stood.ts';
import { useAnswer } from '../use-answer.ts';
import { tagCsv, tagRows } from './tag-list.ts';

const askTags = (question: SinglesQuestionOfPile) => longEngine.ask('singles', question);

/** The panel. */
export function TagsPanel({ stood }: { stood: Stood }) {
  const { fitting } = useWords();
  const words = fitting.tags;
  const pile = useAppState((state) => projectOf(state).pile);
  const worked = useDerived((derived) => derived.work.value?.worked);
  const question = useMemo((): SinglesQuestionOfPile | null => {
    if (!worked) return null;
    const { shell, courses } = stood.standing.standing;
    return {
      shell,
      kinds: fittedKinds(stood),
      course: courses.course,
      leftOut: stood.standing.leftOut,
      pile: { readings: pile.readings, hubAllowance: pile.hubAllowance },
      worked: { assigned: worked.assigned, people: worked.people },
    };
  }, [stood, pile, worked]);
  const { last, pending, fault, again } = useAnswer(question, askTags);
  return (
    <div className="fit-panel" aria-busy={pending}>
      <AnswerFault {...{ fault, again }} />
      <AnswerPending pending={pending} what={words.looking} />
      {last ? <TagList stood={stood} answer={last.answer} /> : null}
    </div>
  );
}

function TagList({ stood, answer }: { stood: Stood; answer: TaggedPlaces }) {
  const words = useWords().fitting.tags;
  const app = useApp();
  const lengths = useLengths();
  const title = useAppState((state) => projectOf(state).title);
  const { numbers, leftOut, standing } = stood.standing;
  const rows = useMemo(
    () => tagRows(answer, standing.shell, stood.kinds, numbers, leftOut),
    [answer, standing, stood, numbers, leftOut],
  );
  if (answer.panels === 0) return <p>{words.none}</p>;
  return (
    <>
      <p>
        {words.placed(answer.placed, rows.length - answer.placed)}{' '}
        {words.even(
          lengths.small(answer.after),
          lengths.small(answer.before),
          lengths.small(answer.worstCourse),
        )}
      </p>
      <div className="buttons screen-only">
        <button
          type="button"
          onClick={() => download(`${fileName(title)}-${words.file}.csv`, tagCsv(rows), 'text/csv')}
        >
          {words.csv}
        </button>
      </div>
      <table className="sides tag-table">
        <thead>
          <tr>
            <th scope="col">{words.columns.place}</th>
            <th scope="col">{words.columns.kind}</th>
            <th scope="col">{words.columns.tag}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ place, number, kind, tag, weak }) => (
            <tr key={place}>
              <th scope="row">
                <button
                  type="button"
                  className="link"
                  onClick={() => app.select({ type: 'place', number })}
                >
                  {number}
                </button>
              </th>
              <td>{kind}</td>
              <td>
                {tag === null ? <span className="quiet">{words.any}</span> : <strong>{tag}</strong>}
                {weak ? ` ${words.mended}` : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
