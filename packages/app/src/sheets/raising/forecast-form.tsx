// The wind forecast, typed or pasted: read as a whole, or refused line by line.

import { type Fault, readForecast } from '@shellraise/core';
import { type FormEvent, useId, useState } from 'react';
import { useWords } from '../../words/words.ts';
import { Faults } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { useCrew } from './use-crew.ts';

/** The form. */
export function ForecastForm() {
  const words = useWords().weekend.forecast;
  const { crew, set } = useCrew();
  const { speed } = useQuantities();
  const id = useId();
  const [text, setText] = useState('');
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [told, setTold] = useState<readonly string[]>([]);
  const read = (event: FormEvent): void => {
    event.preventDefault();
    const found = readForecast(text, [...crew.dates].sort()[0]);
    setFaults(found.ok ? [] : found.faults);
    setTold(found.ok ? found.value.told : []);
    if (!found.ok) return;
    set({ forecast: [...found.value.hours] });
    setText('');
  };
  const { forecast } = crew;
  const [first, last] = [forecast[0], forecast.at(-1)];
  const gust = forecast.reduce((most, hour) => Math.max(most, hour.gust), 0);
  const moment = (at: string | undefined): string => (at ?? '').replace('T', ' ');
  return (
    <form className="own-form" onSubmit={read}>
      <p>
        {first
          ? words.kept(forecast.length, moment(first.at), moment(last?.at), speed(gust))
          : words.none}
      </p>
      <label htmlFor={id}>{words.label}</label>
      <textarea
        id={id}
        rows={5}
        value={text}
        aria-invalid={faults.length > 0}
        aria-describedby={`${id}-note`}
        onChange={({ target }) => setText(target.value)}
      />
      <p id={`${id}-note`} className="quiet">
        {words.note}
      </p>
      {faults.length > 0 ? <Faults faults={faults} /> : null}
      {told.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <div className="buttons">
        <button type="submit" disabled={text.trim() === ''}>
          {words.read}
        </button>
        {first ? (
          <button type="button" onClick={() => set({ forecast: [] })}>
            {words.drop}
          </button>
        ) : null}
      </div>
    </form>
  );
}
