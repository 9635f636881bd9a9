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
import { Faults } from '../ground/small.tsx';
import { DayCard } from './day-card.tsx';
import { dayName, gainText, momentName, oddsText } from './day-words.ts';
import { hoursOf } from './hours.ts';

const runs = createWeekendRuns(weekendEngine, () => performance.now());

/** The panel. `question`: null while there is no plan to rest on. */
export function DaysPanel({ question }: { question: WeekendAsked | null }) {
  const words = useWords().weekend.plan;
  const run = useStore(runs.store);
  const crew = question?.crew;
  const known = crew !== undefined && crew.dates.length > 0 && crew.people.length > 0;
  useEffect(() => {
    if (question !== null && known) runs.start(question);
  }, [question, known]);
  const own = run.of === question ? run : null;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      {question === null ? (
        <p className="quiet">{words.waiting}</p>
      ) : !known ? (
        <p>{words.need}</p>
      ) : own === null ? null : (
        <>
          <ProgressLine ask={own} what={words.planning} onCancel={runs.cancel} />
          {own.status === 'failed' || own.status === 'cancelled' ? (
            <p className="buttons">
              {words.failed}{' '}
              <button type="button" onClick={() => runs.start(question, true)}>
                {words.anew}
              </button>
            </p>
          ) : null}
          {own.faults.length > 0 ? <Faults faults={own.faults} /> : null}
          {own.value === null ? null : <WeekendView weekend={own.value} />}
        </>
      )}
    </div>
  );
}

function WeekendView({ weekend }: { weekend: Weekend }) {
  const { weekend: table, raising, ground } = useWords();
  const words = table.plan;
  const { days, finish, troubles, matter, assumed, cautions, flags, tasks } = weekend;
  const { hours, minutes } = hoursOf(Math.round(weekend.work / 3600) * 3600);
  const task = new Map(tasks.map((one) => [one.id, one]));
  return (
    <>
      <p className="raise-verdict">
        {words.finish(momentName(finish.p50, days), momentName(finish.p90, days))}
      </p>
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
      <WhatIfs weekend={weekend} />
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
          {mergeSources(flags).map(({ text, confirmation }) => (
            <li key={`${confirmation} ${text}`}>
              <span className={`flag ${confirmation.replace(' ', '-')}`}>
                {ground.assumed.flags[confirmation]}
              </span>{' '}
              {text}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function WhatIfs({ weekend: { days, whatIfs, finish } }: { weekend: Weekend }) {
  const words = useWords().weekend.plan;
  if (whatIfs.length === 0) return null;
  return (
    <section>
      <h3>{words.whatIfs}</h3>
      <p className="quiet">{words.whatIfNote}</p>
      <div className="what-ifs">
        <table className="raise-lifts">
          <thead>
            <tr>
              <th scope="col">{words.whatIf}</th>
              {days.map(({ date, weekday }) => (
                <th key={date} scope="col">
                  {weekday}
                </th>
              ))}
              <th scope="col">{words.half}</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{words.asIs}</th>
              {days.map(({ date, odds }) => (
                <td key={date}>{oddsText(odds.done)}</td>
              ))}
              <td>{momentName(finish.p50, days) ?? words.notDone}</td>
            </tr>
            {whatIfs.map((one) => (
              <tr key={one.words}>
                <th scope="row">{one.words}</th>
                {days.map(({ date }) => {
                  const gain = one.gain.find((own) => own.date === date);
                  return (
                    <td key={date}>
                      {gain ? (
                        <>
                          {oddsText(gain.odds)}
                          <span className="gain quiet">
                            ({words.gain(gainText(gain.gain), gainText(gain.error).slice(1) || '0')}
                            )
                          </span>
                        </>
                      ) : null}
                    </td>
                  );
                })}
                <td>{momentName(one.p50, withAdded(days, one.gain)) ?? words.notDone}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** The days of a changed plan: those that the change adds too. */
const withAdded = (
  days: Weekend['days'],
  gain: readonly { readonly date: string }[],
): readonly { readonly weekday: string }[] =>
  gain.map(({ date }) => days.find((day) => day.date === date) ?? { weekday: dayName(date) });

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
