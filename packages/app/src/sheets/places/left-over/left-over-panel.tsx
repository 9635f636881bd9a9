// What the shell leaves over, and what that stands: lesser shells, each with its drawing, and the press
// that names one and keeps its panels for it.

import { useMemo } from 'react';
import { longEngine } from '../../../engine/bridge.ts';
import type { LeftoverAnswer, LeftoverQuestion } from '../../../engine/leftovers.ts';
import { useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { AnswerFault, AnswerPending } from '../answer-state.tsx';
import type { Stood } from '../stood.ts';
import { useAnswer } from '../use-answer.ts';
import { Named } from './named.tsx';
import { SecondRow } from './second-row.tsx';

const askLeftovers = (question: LeftoverQuestion) => longEngine.ask('leftovers', question);

/** The panel. */
export function LeftOverPanel({ stood }: { stood: Stood }) {
  const { fitting } = useWords();
  const words = fitting.leftOver;
  const { standing, kinds, shape } = stood;
  const question = useMemo(
    (): LeftoverQuestion => ({
      net: shape.shell,
      shell: standing.standing.shell,
      kinds,
      interchangeable: shape.interchangeable,
      plain: standing.plain,
      besides: standing.decision,
    }),
    [shape, standing, kinds],
  );
  const { last, pending, fault, again } = useAnswer(question, askLeftovers);
  return (
    <div className="fit-panel" aria-busy={pending}>
      <Named stood={stood} />
      <AnswerFault {...{ fault, again }} />
      <AnswerPending pending={pending} what={words.looking} />
      {last ? <Answer answer={last.answer} stood={stood} radius={shape.shell.radius} /> : null}
    </div>
  );
}

function Answer({
  answer,
  stood,
  radius,
}: {
  answer: LeftoverAnswer;
  stood: Stood;
  radius: number;
}) {
  const { fitting } = useWords();
  const words = fitting.leftOver;
  const { left, second } = answer;
  const panels = left.reduce((sum, count) => sum + count, 0);
  const list = stood.kinds.flatMap(({ id }, k) =>
    (left[k] as number) > 0 ? [`${left[k]} × ${id}`] : [],
  );
  const tallest = Math.max(0.1, ...second.map(({ height, unevenness }) => height + unevenness));
  const across = Math.min(
    1,
    (1.2 * Math.max(0.1, ...second.map(({ floor }) => floor))) / (2 * radius),
  );
  const now = second.filter(({ lacks }) => lacks === 0);
  const more = second.filter(({ lacks }) => lacks > 0);
  const rows = (some: typeof second) => (
    <ol className="fits">
      {some.map((one) => (
        <SecondRow
          key={JSON.stringify(one.decided)}
          {...{ second: one, stood }}
          across={across}
          tallness={tallest / (2 * radius * across) + 0.04}
        />
      ))}
    </ol>
  );
  return (
    <>
      <p>{words.left(panels, list)}</p>
      {now.length > 0 ? (
        <>
          <h3>{words.now}</h3>
          {rows(now)}
        </>
      ) : (
        <p>{words.nothing}</p>
      )}
      {more.length > 0 ? (
        <>
          <h3>{words.more}</h3>
          {rows(more)}
        </>
      ) : null}
      <SplitLine split={answer.split} />
      {second.length > 0 ? <p className="facts-caution">{fitting.caution}</p> : null}
    </>
  );
}

function SplitLine({ split }: Pick<LeftoverAnswer, 'split'>) {
  const words = useWords().fitting.leftOver;
  const lengths = useLengths();
  const [a, b] = split;
  if (!a || !b) return null;
  return (
    <p>
      {words.split(
        words.half(lengths.large(a.height), lengths.large(a.floor), a.panels),
        words.half(lengths.large(b.height), lengths.large(b.floor), b.panels),
      )}
    </p>
  );
}
