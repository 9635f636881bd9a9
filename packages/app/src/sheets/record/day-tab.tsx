// The page of a day: done, left, forgotten, in question, who is still here; the odds, tonight's wind and
// who comes tomorrow where they are known. Printed by a press, as is the dossier.

import { type DayCounts, type DayPage, dayPage, defaultCrew } from '@shellraise/core';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { dayOf } from '../../clock.ts';
import { raisingKey } from '../../engine/raising-runs.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { Choice } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import type { Stood } from '../places/stood.ts';
import { oddsText } from '../raising/day-words.ts';
import { weekendRuns } from '../raising/days-panel.tsx';
import { raisingRuns, useRaisingQuestion } from '../raising/raising-run.ts';
import type { Noted } from './use-noted.ts';

/** A day of this device's clock, from midnight to midnight. */
const spanOf = (day: string) => {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  return {
    from: new Date(year, month - 1, date).getTime(),
    to: new Date(year, month - 1, date + 1).getTime(),
  };
};

/** The tab. */
export function DayTab({
  noted,
  stood,
  onPrint,
}: {
  noted: Noted;
  stood: Stood;
  /** Prints the page of a day, `2026-05-01`, or the dossier. */
  onPrint: (what: string) => void;
}) {
  const words = useWords().recording.day;
  const { said } = noted;
  const today = dayOf(Date.now());
  const [picked, setPicked] = useState<string | null>(null);
  const days = useMemo(
    () => [...new Set([...said.log.entries().map(({ at }) => dayOf(at)), today])].sort().reverse(),
    [said, today],
  );
  const day = picked ?? today;
  return (
    <>
      <div className="screen-only">
        <Choice
          name={words.which}
          value={day}
          of={days.map((one) => [one, one] as const)}
          onChoose={setPicked}
        />
      </div>
      <DayPaper {...{ noted, stood, day }} />
      <div className="record-big screen-only">
        <button type="button" onClick={() => onPrint(day)}>
          {words.print}
        </button>
        <button type="button" onClick={() => onPrint('dossier')}>
          {words.printDossier}
        </button>
      </div>
    </>
  );
}

/** The page itself. */
export function DayPaper({ noted, stood, day }: { noted: Noted; stood: Stood; day: string }) {
  const { recording, record } = useWords();
  const words = recording.day;
  const { speed } = useQuantities();
  const page = useDayPage(noted, stood, day);
  const { outlook } = page;
  const rows = ['panels', 'finger', 'snug', 'final', 'sealed', 'plates'] as const;
  const row = (key: keyof DayCounts) => (
    <tr key={key}>
      <th scope="row">{words.count[key]}</th>
      <td>{page.done[key]}</td>
      <td>{page.left[key]}</td>
    </tr>
  );
  return (
    <section className="record-day">
      <h2>{words.heading(day)}</h2>
      {page.stops.length > 0 ? (
        <p className="accent">{page.stops.map((why) => recording.stop.on[why]).join(' ')}</p>
      ) : null}
      <table className="record-tally">
        <thead>
          <tr>
            <th scope="col">{record.tallyHead.what}</th>
            <th scope="col">{words.doneThen}</th>
            <th scope="col">{words.leftNow}</th>
          </tr>
        </thead>
        <tbody>{rows.map(row)}</tbody>
      </table>
      <ul>
        {page.stagesDone.length > 0 ? <li>{words.stages(page.stagesDone)}</li> : null}
        <li>{page.closedDown.length > 0 ? words.closed(page.closedDown) : words.notClosed}</li>
        <li className={page.stillHere.length > 0 ? 'accent' : undefined}>
          {page.stillHere.length > 0 ? words.stillHere(page.stillHere) : words.nobodyHere}
        </li>
        <li>{words.forgotten(page.forgotten.length)}</li>
        <li>{words.questions(page.questions.length)}</li>
        <li>{outlook.odds === null ? words.noOdds : words.odds(oddsText(outlook.odds))}</li>
        <li>
          {outlook.tonightGust === null
            ? words.noTonight
            : words.tonight(speed(outlook.tonightGust))}
        </li>
        <li>
          {outlook.tomorrow === null
            ? words.noTomorrow
            : outlook.tomorrow.length === 0
              ? words.nobodyTomorrow
              : words.tomorrow(outlook.tomorrow)}
        </li>
        {page.notes.map((entry) =>
          entry.what.kind === 'note' ? (
            <li key={`${entry.writer} ${entry.seq}`}>
              {record.saysThat(entry.by, entry.what.text)}
            </li>
          ) : null,
        )}
        {[...page.clocks].map(([writer, off]) => (
          <li key={writer}>{words.clock(Math.round(off / 60_000))}</li>
        ))}
      </ul>
      <p className="facts-caution">{words.caution}</p>
    </section>
  );
}

function useDayPage(noted: Noted, stood: Stood, day: string): DayPage {
  const { said, plan, bolts, leftOut, state } = noted;
  const question = useRaisingQuestion(stood);
  const run = useStore(raisingRuns.store);
  const weekend = useStore(weekendRuns.store);
  const crew = useAppState((one) => projectOf(one).crew) ?? defaultCrew;
  const raising = run.key === raisingKey(question) ? run.value : null;
  const last = Math.max(0, ...state.done, ...state.closed);
  const tonightGust = raising?.stages[last - 1]?.overnight.leave ?? null;
  const odds =
    raising !== null && weekend.input?.plan === raising
      ? (weekend.value?.days.at(-1)?.odds.done ?? null)
      : null;
  const { from, to } = spanOf(day);
  const next = dayOf(to);
  return useMemo(
    () =>
      dayPage(
        said.log,
        plan,
        { from, to },
        bolts,
        {
          odds,
          tonightGust,
          tomorrow:
            crew.dates.length === 0
              ? null
              : crew.people
                  .filter(({ shifts }) => shifts.some(({ date }) => date === next))
                  .map(({ name }) => name),
        },
        leftOut,
      ),
    [said, plan, from, to, bolts, odds, tonightGust, crew, next, leftOut],
  );
}
