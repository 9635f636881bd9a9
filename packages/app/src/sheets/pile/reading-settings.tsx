// The name of the project, and how its panels were measured.

import { type Pile, readLength } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';

const along = ['holes', 'skin', 'hubs'] as const satisfies readonly Pile['measuredAlong'][];

/** Ranges that the project file allows, metres; the longest title. */
const ALLOWANCE = { min: -0.2, max: 0.5 } as const;
/** Range of the noise of one reading, metres. */
const READING_SD = { min: 0.00005, max: 0.05 } as const;
const TITLE_LENGTH = 200;

/** The settings of the pile. */
export function ReadingSettings() {
  const words = useWords().pile;
  const app = useApp();
  const lengths = useLengths();
  const title = useAppState((state) => projectOf(state).title);
  const measuredAlong = useAppState((state) => projectOf(state).pile.measuredAlong);
  const allowance = useAppState((state) => projectOf(state).pile.hubAllowance);
  const readingSd = useAppState((state) => projectOf(state).pile.readingSd);
  const { settings, changes } = words;
  return (
    <section className="reading-settings" aria-labelledby="pile-settings">
      <h2 id="pile-settings">{settings.title}</h2>
      <TypedField
        name={settings.project}
        value={title}
        longest={TITLE_LENGTH}
        write={(text) => {
          app.change(
            ({ project }) => {
              project.title = text.trim();
              return undefined;
            },
            { label: changes.title },
          );
          return null;
        }}
      />
      <Field name={settings.along} fault={null}>
        {(props) => (
          <select
            {...props}
            value={measuredAlong}
            onChange={(event) => {
              const one = along.find((way) => way === event.target.value) ?? 'holes';
              app.change(
                ({ project }) => {
                  project.pile.measuredAlong = one;
                  return undefined;
                },
                { label: changes.along },
              );
            }}
          >
            {along.map((one) => (
              <option key={one} value={one}>
                {settings.alongs[one]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <TypedField
        name={settings.allowance}
        note={settings.allowanceNote}
        value={allowance === null ? '' : lengths.side(allowance)}
        longest={60}
        write={(text) => {
          const read = text.trim() === '' ? null : readLength(text, { unit: lengths.bare });
          if (read && !read.ok) return settings.unread(text, read.faults[0]?.expected ?? '');
          const metres = read ? read.value : null;
          if (metres !== null && (metres < ALLOWANCE.min || metres > ALLOWANCE.max))
            return settings.allowanceFault;
          app.change(
            ({ project }) => {
              project.pile.hubAllowance = metres;
              return undefined;
            },
            { label: changes.allowance },
          );
          return null;
        }}
      />
      <TypedField
        name={settings.readingSd}
        value={lengths.small(readingSd)}
        longest={60}
        write={(text) => {
          const read = readLength(text, { unit: lengths.bare });
          if (!read.ok) return settings.unread(text, read.faults[0]?.expected ?? '');
          if (read.value < READING_SD.min || read.value > READING_SD.max)
            return settings.readingSdFault;
          app.change(
            ({ project }) => {
              project.pile.readingSd = read.value;
              return undefined;
            },
            { label: changes.readingSd },
          );
          return null;
        }}
      />
    </section>
  );
}

/** A text that is written when its field is left; `write` says what is wrong with it. */
function TypedField({
  name,
  note,
  value,
  longest,
  write,
}: {
  name: string;
  note?: string;
  value: string;
  longest: number;
  write: (text: string) => string | null;
}) {
  const [text, setText] = useState(value);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    setText(value);
    setFault(null);
  }, [value]);
  const leave = (): void => {
    if (text !== value) setFault(write(text));
    else setFault(null);
  };
  return (
    <Field name={name} fault={fault} {...(note === undefined ? {} : { note })}>
      {(props) => (
        <input
          {...props}
          value={text}
          maxLength={longest}
          onChange={(event) => setText(event.target.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Enter') leave();
            if (event.key === 'Escape') {
              setText(value);
              setFault(null);
            }
          }}
        />
      )}
    </Field>
  );
}
