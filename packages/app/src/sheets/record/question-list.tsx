// What people must settle: nothing here is decided by who came last.

import type { RecordQuestion } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { stepOf } from './step-words.ts';

/** The questions; nothing where there are none. */
export function QuestionList({ questions }: { questions: readonly RecordQuestion[] }) {
  const words = useWords().record;
  if (questions.length === 0) return null;
  return (
    <section className="record-questions" aria-live="polite">
      <h2>{words.questions}</h2>
      <ul>
        {questions.map((one) => (
          <li key={`${one.what} ${one.about}`}>
            <p>
              {one.what === 'claims'
                ? words.question(one.about)
                : one.what === 'two places'
                  ? words.twoPlaces(one.about)
                  : words.notInPlan(one.about)}
            </p>
            <p className="quiet">
              {one.entries
                .map((entry) => words.saysThat(entry.by, stepOf(entry.what, words)))
                .join(' · ')}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
