// Numbers of the lead's own in the place of a code's, each with its reason: those that count now, and the
// form for another.

import {
  LOAD_NUMBER_KEYS,
  LOAD_NUMBERS,
  type LoadNumber,
  type LoadNumberKey,
} from '@shellraise/core';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { overridesNow, readOwn, withOverride, withoutOverride, withUnit } from './overrides.ts';
import { Choice } from './small.tsx';
import { useGround } from './use-ground.ts';

/** The numbers. */
export function OwnNumbers() {
  const { own: words, changes } = useWords().groundForms;
  const { loads, setLoads } = useGround();
  const { overrides } = loads;
  return (
    <>
      <h3>{words.heading}</h3>
      <p className="quiet">{words.note}</p>
      <ul className="pull-tests own-numbers">
        {overridesNow(overrides).map(({ number, value, reason }) => {
          const { what, unit, value: table }: LoadNumber = LOAD_NUMBERS[number];
          return (
            <li key={number}>
              <span>
                <strong>{words.inPlace(what, withUnit(value, unit), withUnit(table, unit))}</strong>{' '}
                {reason}
              </span>
              <button
                type="button"
                aria-label={words.remove(what)}
                onClick={() =>
                  setLoads({ overrides: withoutOverride(overrides, number) }, changes.own)
                }
              >
                {words.removeShort}
              </button>
            </li>
          );
        })}
      </ul>
      <OwnForm />
    </>
  );
}

function OwnForm() {
  const { groundForms, ground } = useWords();
  const { own: words, changes, range } = groundForms;
  const { loads, setLoads } = useGround();
  const [number, setNumber] = useState<LoadNumberKey>('airDensity');
  const [text, setText] = useState('');
  const [reason, setReason] = useState('');
  const [faulty, setFaulty] = useState({ value: false, reason: false });
  const { unit, value, least, most, source }: LoadNumber = LOAD_NUMBERS[number];
  const add = (): void => {
    const typed = readOwn(number, text);
    const why = reason.trim();
    const noReason = why === '' || why.length > 500;
    setFaulty({ value: !typed.ok, reason: noReason });
    if (!typed.ok || noReason) return;
    const overrides = withOverride(loads.overrides, { number, value: typed.value, reason: why });
    setLoads({ overrides }, changes.own);
    setText('');
    setReason('');
  };
  return (
    <form
      className="own-form screen-only"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <Choice
        name={words.number}
        value={number}
        of={LOAD_NUMBER_KEYS.map((key) => [key, LOAD_NUMBERS[key].what] as const)}
        onChoose={(key) => {
          setNumber(key);
          setFaulty({ value: false, reason: false });
        }}
      />
      <p className="quiet">
        {words.inTable(withUnit(value, unit), ground.assumed.flags[source.confirmation])}{' '}
        {source.text}.
      </p>
      <div className="ground-form">
        <Field
          name={words.value(unit)}
          fault={faulty.value ? range(withUnit(least, unit), withUnit(most, unit)) : null}
        >
          {(props) => (
            <input
              {...props}
              inputMode="decimal"
              value={text}
              onChange={({ target }) => setText(target.value)}
            />
          )}
        </Field>
        <Field name={words.reason} fault={faulty.reason ? words.reasonFault : null}>
          {(props) => (
            <input {...props} value={reason} onChange={({ target }) => setReason(target.value)} />
          )}
        </Field>
      </div>
      <button type="submit">{words.add}</button>
    </form>
  );
}
