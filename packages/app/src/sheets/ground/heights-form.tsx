// Heights of hubs above the base as they are read, each added with its ring and number.

import { readLength } from '@shellraise/core';
import { useState } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { heightFrom, withHeight, withoutHeight } from './edits.ts';
import { useGround } from './use-ground.ts';

/** The heights with the form for another. */
export function HeightsForm() {
  const { groundForms, ground: groundWords } = useWords();
  const words = groundForms.heights;
  const { changes, anchors } = groundWords;
  const { ground, setGround } = useGround();
  const lengths = useLengths();
  const [typed, setTyped] = useState({ ring: '1', number: '1', height: '' });
  const [faulty, setFaulty] = useState(false);
  const read = (text: string) =>
    readLength(text, { unit: lengths.system === 'metric' ? 'm' : 'ft' });
  const add = (): void => {
    const found = heightFrom(typed, read);
    setFaulty(found === null);
    if (found === null) return;
    setGround({ survey: withHeight(ground.survey, found) }, changes.survey);
    setTyped({ ring: typed.ring, number: String(found.number + 1), height: '' });
  };
  return (
    <details className="tags">
      <summary>{words.heading}</summary>
      <p className="quiet">{words.note}</p>
      <ul className="pull-tests">
        {ground.survey.map((one) =>
          one.what === 'height' ? (
            <li key={`${one.ring} ${one.number}`}>
              <span>{words.row(one.ring, one.number, lengths.large(one.height))}</span>
              <button
                type="button"
                aria-label={words.remove(one.ring, one.number)}
                onClick={() =>
                  setGround({ survey: withoutHeight(ground.survey, one) }, changes.survey)
                }
              >
                {anchors.removeShort}
              </button>
            </li>
          ) : null,
        )}
      </ul>
      <form
        className="ground-form"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        {(['ring', 'number', 'height'] as const).map((key) => (
          <Field
            key={key}
            name={words[key]}
            fault={faulty && key === 'height' ? words.fault : null}
          >
            {(props) => (
              <input
                {...props}
                inputMode={key === 'height' ? 'text' : 'numeric'}
                value={typed[key]}
                onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
              />
            )}
          </Field>
        ))}
        <button type="submit">{words.add}</button>
      </form>
    </details>
  );
}
