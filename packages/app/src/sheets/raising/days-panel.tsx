// The days of the plan: when it is done, each day with its odds, what a change would buy, what keeps it
// from being done, and what is taken for granted.

import { mergeSources, type Weekend } from '@shellraise/core';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { weekendEngine } from '../../engine/bridge.ts';
import type { WeekendAsked } from '../../engine/weekend.ts';
import { createWeekendRuns } from '../../engine/weekend-runs.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { Faults, SourceItems } from '../ground/small.tsx';
import { DayCard } from './day-card.tsx';
import { momentName, oddsText } from './day-words.ts';
import { hoursOf } from './hours.ts';
import { WhatIfs } from './what-ifs.tsx';

/** The days' runs: their close-down cards are printed with the stages' cards. */
export const weekendRuns = createWeekendRuns(weekendEngine, () => performance.now());

/** The panel. A `question` that says how is of an order that is still improved. */
export function DaysPanel({ question }: { question: WeekendAsked }) {
  const words = useWords().weekend.plan;
  const run = useStore(weekendRuns.store);
  const { crew } = question;
  const known = crew !== undefined && crew.dates.length > 0 && crew.people.length > 0;
  useEffect(() => {
    if (known) weekendRuns.follow(question);
  }, [question, known]);
  const own = run.input === question ? run : null;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      {!known ? (
        <p>{words.need}</p>
      ) : own === null ? null : (
        <>
          <ProgressLine ask={own} what={words.planning} onCancel={weekendRuns.cancel} />
          {own.status === 'failed' || own.status === 'cancelled' ? (
            <p className="buttons">
              {own.status === 'failed' ? words.failed : words.stopped}{' '}
              <button type="button" onClick={() => weekendRuns.start(question)}>
                {words.anew}
              </button>
            </p>
          ) : null}
          {own.faults.length > 0 ? <Faults faults={own.faults} /> : null}
          {own.value === null ? null : (
            <WeekendView
              weekend={own.value}
              question={question}
              whole={own.status !== 'running' && question.how === undefined}
            />
          )}
        </>
      )}
    </div>
  );
}

function WeekendView({
  weekend,
  question,
  whole,
}: {
  weekend: Weekend;
  question: WeekendAsked;
  /** Whether all runs are done: until then these are first odds. */
  whole: boolean;
}) {
  const { weekend: table, raising } = useWords();
  const words = table.plan;
  const { days, finish, troubles, matter, assumed, cautions, flags, tasks } = weekend;
  const { hours, minutes } = hoursOf(Math.round(weekend.work / 3600) * 3600);
  const task = new Map(tasks.map((one) => [one.id, one]));
  return (
    <>
      <p className="raise-verdict">
        {words.finish(momentName(finish.p50, days), momentName(finish.p90, days))}
      </p>
      {whole ? null : <p className="accent">{words.first(weekend.runs)}</p>}
      <p className="quiet">{words.work(raising.card.hours(hours, minutes), weekend.runs)}</p>
      {cautions.map((one) => (
        <p key={one} className="facts-caution">
          {one}
        </p>
      ))}
      {troubles.length > 0 ? (
        <section>
          <h3>{words.troubles}</h3>
          <ul className="ground-faults">
            {troubles.map(({ sort, found, change }) => (
              <li key={`${sort} ${found}`}>
                {sentence(found)} <strong>{words.change(change)}</strong>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {days.map(({ date }, k) => (
        <DayCard key={date} weekend={weekend} k={k} />
      ))}
      <WhatIfs {...{ weekend, question, whole }} />
      {matter.length > 0 ? (
        <section>
          <h3>{words.matter}</h3>
          <ol className="steps">
            {matter.slice(0, 5).map((id) => (
              <li key={id}>
                {task.get(id)?.what ?? id}{' '}
                <span className="quiet">
                  {words.critical(oddsText(task.get(id)?.critical ?? 0))}
                </span>
              </li>
            ))}
          </ol>
        </section>
      ) : null}
      <details className="tags">
        <summary>{words.assumed}</summary>
        <ul className="notes">
          {[...new Set(assumed)].map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        <ul className="sources">
          <SourceItems of={mergeSources(flags)} />
        </ul>
      </details>
    </>
  );
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
