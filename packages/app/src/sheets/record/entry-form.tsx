// One form of the Note tab, by its table.

import { type FormEvent, type ReactNode, useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { Choice } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { type EntryFormKey, entryFormOf, readEntryForm } from './entry-forms.ts';
import type { Noted } from './use-noted.ts';

/** The form. `more`: what it adds to the entry; `first`: what stands in its fields at first. */
export function EntryForm({
  noted,
  form,
  more,
  first = {},
  onNoted,
  children,
}: {
  noted: Noted;
  form: EntryFormKey;
  more?: object;
  first?: Readonly<Record<string, string>>;
  onNoted?: () => void;
  children?: ReactNode;
}) {
  const words = useWords().recording.forms;
  const { metric } = useQuantities();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(first);
  const [faulty, setFaulty] = useState<readonly string[] | null>(null);
  const names: Readonly<Record<string, string>> = words.field;
  const choices: Readonly<Record<string, string>> = words.choice;
  const units = {
    length: form === 'bolts' ? ('mm' as const) : metric ? ('m' as const) : ('ft' as const),
    speed: metric ? ('m/s' as const) : ('mph' as const),
    force: metric ? ('N' as const) : ('lbf' as const),
  };
  const note = (event: FormEvent): void => {
    event.preventDefault();
    const read = readEntryForm(form, typed, units, more);
    setFaulty(read.ok ? null : read.at);
    if (!read.ok || !noted.say(read.what)) return;
    setTyped(first);
    onNoted?.();
  };
  const put = (key: string, value: string): void => setTyped({ ...typed, [key]: value });
  const unitOf = (sort: string): string =>
    sort === 'length' || sort === 'speed' || sort === 'force' ? `, ${units[sort]}` : '';
  return (
    <form className="record-form" onSubmit={note}>
      <div className="record-fields">
        {entryFormOf[form].fields.map(({ key, sort, optional }) => {
          const name = names[`${form} ${key}`] ?? names[key] ?? key;
          if (typeof sort !== 'string')
            return (
              <Choice
                key={key}
                name={name}
                value={typed[key] ?? sort[0] ?? ''}
                of={sort.map((one) => [one, choices[one] ?? one] as const)}
                onChoose={(one) => put(key, one)}
              />
            );
          const label = `${name}${unitOf(sort)}${optional ? ` ${words.may}` : ''}`;
          return (
            <Field key={key} name={label} fault={faulty?.includes(key) ? words.unread : null}>
              {(props) =>
                sort === 'long' ? (
                  <textarea
                    {...props}
                    rows={3}
                    maxLength={2000}
                    value={typed[key] ?? ''}
                    onChange={({ target }) => put(key, target.value)}
                  />
                ) : (
                  <input
                    {...props}
                    inputMode={sort === 'text' ? 'text' : sort === 'whole' ? 'numeric' : 'decimal'}
                    value={typed[key] ?? ''}
                    onChange={({ target }) => put(key, target.value)}
                  />
                )
              }
            </Field>
          );
        })}
      </div>
      {children}
      <p role="alert" className="accent">
        {faulty?.length === 0 ? words.refused[form] : ''}
      </p>
      <button type="submit" disabled={!noted.open}>
        {words.note}
      </button>
    </form>
  );
}
