// Who comes, on which days, from when to when; where the site is for its light; breaks; the forecast.

import { lightOn } from '@shellraise/core';
import { type FormEvent, useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { within } from '../ground/edits.ts';
import { NumberField } from '../ground/fields.tsx';
import { breaksText, breaksTyped, datesWith, firstShifts } from './crew-edits.ts';
import { dayName } from './day-words.ts';
import { ForecastForm } from './forecast-form.tsx';
import { PersonCard } from './person-card.tsx';
import { useCrew } from './use-crew.ts';

/** The panel. */
export function PeoplePanel() {
  const words = useWords().weekend;
  return (
    <div className="fit-panel crew-panel">
      <h3>{words.days.heading}</h3>
      <Dates />
      <SiteForm />
      <h3>{words.people.heading}</h3>
      <People />
      <CrewNumbers />
      <h3>{words.forecast.heading}</h3>
      <ForecastForm />
    </div>
  );
}

function Dates() {
  const words = useWords().weekend.days;
  const { removeShort } = useWords().weekend.people;
  const { crew, set } = useCrew();
  const [date, setDate] = useState('');
  const [faulty, setFaulty] = useState(false);
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const dates = datesWith(crew.dates, date.trim());
    setFaulty(dates === null);
    if (dates === null) return;
    set({ dates });
    setDate('');
  };
  const light = (day: string): string => (crew.site === null ? '' : lightOn(crew.site, day).words);
  return (
    <>
      {crew.dates.length === 0 ? <p className="quiet">{words.none}</p> : null}
      <ul className="crew-days">
        {[...crew.dates].sort().map((day) => (
          <li key={day}>
            <span>
              <strong>{dayName(day)}</strong> {day} <span className="quiet">{light(day)}</span>
            </span>
            <button
              type="button"
              aria-label={words.remove(day)}
              onClick={() => set({ dates: crew.dates.filter((one) => one !== day) })}
            >
              {removeShort}
            </button>
          </li>
        ))}
      </ul>
      <form className="crew-add" onSubmit={add}>
        <Field name={words.date} fault={faulty ? words.dateFault : null}>
          {(props) => (
            <input
              {...props}
              type="date"
              value={date}
              onChange={({ target }) => setDate(target.value)}
            />
          )}
        </Field>
        <button type="submit">{words.add}</button>
      </form>
    </>
  );
}

const SITE = { latitude: 90, longitude: 180, offset: 15 } as const;
type SiteKey = keyof typeof SITE;

function SiteForm() {
  const words = useWords().weekend.days;
  const { crew, set } = useCrew();
  const { site } = crew;
  const [typed, setTyped] = useState<Readonly<Record<SiteKey, string>>>({
    latitude: site ? String(site.latitudeDeg) : '',
    longitude: site ? String(site.longitudeDeg) : '',
    offset: site ? String(site.utcOffsetHours) : '',
  });
  const [faulty, setFaulty] = useState(false);
  const put = (event: FormEvent): void => {
    event.preventDefault();
    const read = (key: SiteKey): number | null => {
      const found = within(typed[key].replace('−', '-'), -SITE[key], SITE[key]);
      return found.ok ? (found.value ?? null) : null;
    };
    const [latitudeDeg, longitudeDeg, utcOffsetHours] = [
      read('latitude'),
      read('longitude'),
      read('offset'),
    ];
    const known = latitudeDeg !== null && longitudeDeg !== null && utcOffsetHours !== null;
    setFaulty(!known);
    if (known) set({ site: { latitudeDeg, longitudeDeg, utcOffsetHours } });
  };
  return (
    <details className="tags" open={site !== null}>
      <summary>{words.site}</summary>
      <form className="crew-site" onSubmit={put}>
        {(['latitude', 'longitude', 'offset'] as const).map((key) => (
          <Field key={key} name={words[key]} fault={null}>
            {(props) => (
              <input
                {...props}
                aria-invalid={faulty}
                inputMode="text"
                value={typed[key]}
                onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
              />
            )}
          </Field>
        ))}
        <div className="buttons">
          <button type="submit">{words.siteSet}</button>
          {site === null ? null : (
            <button type="button" onClick={() => set({ site: null })}>
              {words.siteDrop}
            </button>
          )}
        </div>
      </form>
      <p className={faulty ? 'accent' : 'quiet'} role={faulty ? 'alert' : undefined}>
        {faulty ? words.siteFault : site === null ? words.siteNote : ''}
      </p>
    </details>
  );
}

function People() {
  const words = useWords().weekend.people;
  const { crew, set } = useCrew();
  const { people, dates } = crew;
  const [name, setName] = useState('');
  const [faulty, setFaulty] = useState(false);
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const own = name.trim();
    const fits = own !== '' && own.length <= 60 && people.every((one) => one.name !== own);
    setFaulty(!fits);
    if (!fits) return;
    const shifts = firstShifts(people, dates);
    set({ people: [...people, { name: own, climbs: false, leads: false, sure: false, shifts }] });
    setName('');
  };
  return (
    <>
      {people.length === 0 ? <p className="quiet">{words.none}</p> : null}
      <ul className="crew-people">
        {people.map((person) => (
          <PersonCard key={person.name} person={person} dates={[...dates].sort()} />
        ))}
      </ul>
      <form className="crew-add" onSubmit={add}>
        <Field name={words.name} fault={faulty ? words.nameFault : null}>
          {(props) => (
            <input {...props} value={name} onChange={({ target }) => setName(target.value)} />
          )}
        </Field>
        <button type="submit">{words.add}</button>
      </form>
    </>
  );
}

function CrewNumbers() {
  const words = useWords().weekend.people;
  const { crew, set } = useCrew();
  return (
    <div className="ground-form crew-numbers">
      <NumberField
        name={words.noShow}
        value={crew.noShow}
        least={0}
        most={0.95}
        per={0.01}
        decimals={0}
        needed
        note={words.noShowNote}
        onValue={(noShow) => noShow !== null && set({ noShow })}
      />
      <LimitField
        name={words.breaks}
        shown={breaksText(crew.breaks)}
        note={words.breaksNote}
        fault={words.breaksFault}
        read={(text) => {
          const value = breaksTyped(text);
          return value === null ? { ok: false } : { ok: true, value };
        }}
        onValue={(breaks) => set({ breaks })}
      />
    </div>
  );
}
