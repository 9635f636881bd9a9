// What a change to the crew would buy, side by side: the usual ones with the whole plan, and those that the
// lead chooses, reckoned as soon as they are.

import {
  type CrewChange,
  type CrewSettings,
  changeWords,
  type Weekend,
  type WhatIf,
} from '@shellraise/core';
import { type FormEvent, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { whatIfEngine } from '../../engine/bridge.ts';
import { createAskRuns } from '../../engine/runs.ts';
import { OWN_CHANGES, type WeekendAsked } from '../../engine/weekend.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { NumberField } from '../ground/fields.tsx';
import { Choice, optionsOf } from '../ground/small.tsx';
import { dayName, gainText, momentName, oddsText } from './day-words.ts';
import { askable, withChange } from './own-changes.ts';

const chosen = createStore<readonly CrewChange[]>(() => []);
const runs = createAskRuns<WeekendAsked, Weekend>(
  (question, onProgress) => whatIfEngine.ask('weekend', question, onProgress),
  () => performance.now(),
);

/** The section. `question`: of the weekend, with the crew; `whole`: once all runs are done. */
export function WhatIfs({
  weekend,
  question,
  whole,
}: {
  weekend: Weekend;
  question: WeekendAsked;
  whole: boolean;
}) {
  const words = useWords().weekend.plan;
  const { days, whatIfs, finish } = weekend;
  const { crew } = question;
  const [own, answers, run] = useOwn(question, whole);
  if (crew === undefined) return null;
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
              <Row key={one.words} days={days} one={one} />
            ))}
            {own.map((change) => {
              const text = changeWords(change);
              const found = answers.find((one) => one.words === text);
              return found ? (
                <Row key={text} days={days} one={found} own={change} />
              ) : (
                <tr key={text}>
                  <th scope="row">{text}</th>
                  <td colSpan={days.length + 1} className="quiet">
                    {words.ownWorking}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <ProgressLine ask={run} what={words.ownWorking} onCancel={runs.cancel} />
      <ChangeForm crew={crew} />
    </section>
  );
}

/** The lead's own changes, those of them that are answered, and the run. */
function useOwn(question: WeekendAsked, whole: boolean) {
  const all = useStore(chosen);
  const run = useStore(runs.store);
  const { crew } = question;
  const own = useMemo(() => (crew === undefined ? [] : askable(all, crew)), [all, crew]);
  const asked = useMemo(
    (): WeekendAsked => ({ ...question, how: { ...OWN_CHANGES, changes: own } }),
    [question, own],
  );
  useEffect(() => {
    if (whole && own.length > 0) runs.start(asked);
  }, [asked, own, whole]);
  const known = run.input?.plan === question.plan && run.input.crew === crew ? run.value : null;
  return [own, known?.whatIfs ?? [], run] as const;
}

function Row({ days, one, own }: { days: Weekend['days']; one: WhatIf; own?: CrewChange }) {
  const { plan: words, people } = useWords().weekend;
  return (
    <tr>
      <th scope="row">
        {one.words}
        {own ? (
          <button
            type="button"
            className="what-if-drop screen-only"
            aria-label={words.ownDrop(one.words)}
            onClick={() =>
              chosen.setState(
                chosen.getState().filter((change) => changeWords(change) !== one.words),
                true,
              )
            }
          >
            {people.removeShort}
          </button>
        ) : null}
      </th>
      {days.map(({ date }) => {
        const gain = one.gain.find((each) => each.date === date);
        return (
          <td key={date}>
            {gain ? (
              <>
                {oddsText(gain.odds)}
                <span className="gain quiet">
                  ({words.gain(gainText(gain.gain), gainText(gain.error).slice(1) || '0')})
                </span>
              </>
            ) : null}
          </td>
        );
      })}
      <td>{momentName(one.p50, withAdded(days, one.gain)) ?? words.notDone}</td>
    </tr>
  );
}

/** The days of a changed plan: those that the change adds too. */
const withAdded = (
  days: Weekend['days'],
  gain: readonly { readonly date: string }[],
): readonly { readonly weekday: string }[] =>
  gain.map(({ date }) => days.find((day) => day.date === date) ?? { weekday: dayName(date) });

type What = 'hands' | 'climber' | 'without' | 'hours';

function ChangeForm({ crew }: { crew: CrewSettings }) {
  const words = useWords().weekend.plan;
  const { people, dates } = crew;
  const [what, setWhat] = useState<What>('without');
  const [name, setName] = useState(people[0]?.name ?? '');
  const [date, setDate] = useState(dates[0] ?? '');
  const [hours, setHours] = useState(4);
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const change: CrewChange =
      what === 'without'
        ? { what, name }
        : what === 'hours'
          ? { what: 'more hours', date, hours }
          : { what: 'one more', climbs: what === 'climber', leads: what === 'climber' };
    chosen.setState(withChange(chosen.getState(), change), true);
  };
  return (
    <form className="crew-add screen-only" onSubmit={add}>
      <Choice
        name={words.ownWhat}
        value={what}
        of={optionsOf(words.ownChanges)}
        onChoose={setWhat}
      />
      {what === 'without' ? (
        <Choice
          name={words.ownWho}
          value={name}
          of={people.map((one) => [one.name, one.name] as const)}
          onChoose={setName}
        />
      ) : what === 'hours' ? (
        <>
          <Choice
            name={words.ownDay}
            value={date}
            of={[...dates].sort().map((day) => [day, `${dayName(day)} ${day}`] as const)}
            onChoose={setDate}
          />
          <NumberField
            name={words.ownHours}
            value={hours}
            least={0.5}
            most={16}
            decimals={1}
            needed
            onValue={(value) => value !== null && setHours(value)}
          />
        </>
      ) : null}
      <button type="submit">{words.ownAdd}</button>
    </form>
  );
}
