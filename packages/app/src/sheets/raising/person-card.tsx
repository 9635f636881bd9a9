// One person: what they can do, and on each day of work from when to when they are there.

import type { Person } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { useWords } from '../../words/words.ts';
import { Tick } from '../ground/small.tsx';
import { type SpanTyped, shiftsWith } from './crew-edits.ts';
import { dayName } from './day-words.ts';
import { useCrew } from './use-crew.ts';

/** The card. */
export function PersonCard({ person, dates }: { person: Person; dates: readonly string[] }) {
  const words = useWords().weekend.people;
  const { crew, set, setPerson } = useCrew();
  const { name } = person;
  return (
    <li className="crew-person">
      <div className="crew-person-head">
        <strong>{name}</strong>
        <button
          type="button"
          aria-label={words.remove(name)}
          onClick={() => set({ people: crew.people.filter((one) => one.name !== name) })}
        >
          {words.removeShort}
        </button>
      </div>
      <div className="crew-ticks">
        {(['climbs', 'leads', 'sure'] as const).map((key) => (
          <Tick
            key={key}
            name={words[key]}
            checked={person[key]}
            onTick={(on) => setPerson(name, { [key]: on })}
          />
        ))}
      </div>
      {dates.map((date) => (
        <ShiftRow key={date} person={person} date={date} />
      ))}
    </li>
  );
}

function ShiftRow({ person, date }: { person: Person; date: string }) {
  const words = useWords().weekend.people;
  const { setPerson } = useCrew();
  const shift = person.shifts.find((one) => one.date === date);
  const [from, to] = [shift?.from ?? '', shift?.to ?? ''];
  const [typed, setTyped] = useState<SpanTyped>({ from, to });
  const [faulty, setFaulty] = useState(false);
  useEffect(() => {
    setTyped({ from, to });
    setFaulty(false);
  }, [from, to]);
  const commit = (): void => {
    const shifts = shiftsWith(person.shifts, date, typed);
    // Half of a span is no fault while the other half is typed.
    setFaulty(shifts === null && typed.from !== '' && typed.to !== '');
    if (shifts !== null && (typed.from !== from || typed.to !== to))
      setPerson(person.name, { shifts });
  };
  const day = dayName(date);
  return (
    <div className="crew-shift">
      <span>{day}</span>
      {(['from', 'to'] as const).map((key) => (
        <input
          key={key}
          type="time"
          aria-label={words[key](person.name, `${day} ${date}`)}
          aria-invalid={faulty}
          value={typed[key]}
          onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
          onBlur={commit}
        />
      ))}
      {faulty ? <p className="accent">{words.timeFault}</p> : null}
      {shift === undefined && !faulty ? <span className="quiet">{words.away}</span> : null}
    </div>
  );
}
