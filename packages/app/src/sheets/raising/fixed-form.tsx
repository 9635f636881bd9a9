// What the lead has fixed besides the order itself: panels before others, groups that go up in one piece,
// the way out, hubs that stay propped. Each by the numbers of the places, each a step of the project.

import { leadFixed, type RaisingSettings, type Shell } from '@shellraise/core';
import { type FormEvent, useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { useLead } from './lead.ts';
import { numbersTyped } from './numbers-typed.ts';
import { pieceName } from './piece-name.ts';

interface Of {
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly leftOut: readonly number[];
}

/** The form. */
export function Fixed(of: Of) {
  const words = useWords().raising.changes;
  const { lead, fix, free } = useLead();
  const isFixed = Object.values(lead).some((one) => one !== null && one.length > 0);
  return (
    <details className="tags raise-fixed screen-only" open={isFixed}>
      <summary>{words.fixed}</summary>
      {lead.order === null ? null : (
        <p className="buttons">
          {words.own}{' '}
          <button type="button" onClick={() => fix({ order: null })}>
            {words.free}
          </button>
        </p>
      )}
      <Pins {...of} />
      <Groups {...of} />
      <WayOut {...of} />
      <KeptProps {...of} />
      {isFixed ? (
        <button type="button" onClick={free}>
          {words.freeAll}
        </button>
      ) : null}
    </details>
  );
}

const standing =
  ({ numbers, leftOut }: Of) =>
  (number: string): boolean => {
    const place = numbers.indexOf(number);
    return place >= 0 && !leftOut.includes(place);
  };

function Pins(of: Of) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  const [pair, setPair] = useState<readonly [string, string]>(['', '']);
  const [faulty, setFaulty] = useState(false);
  const stands = standing(of);
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const [a, b] = [pair[0].trim(), pair[1].trim()];
    const fits = stands(a) && stands(b) && a !== b;
    setFaulty(!fits);
    if (!fits) return;
    fix({ before: [...without(lead.before, a, b), { place: a, than: b }] });
    setPair(['', '']);
  };
  return (
    <section className="raise-pins">
      <h4>{words.pins}</h4>
      <form onSubmit={add}>
        <label>
          {words.pinFirst}{' '}
          <input
            value={pair[0]}
            size={6}
            autoComplete="off"
            aria-invalid={faulty}
            onChange={({ target }) => setPair([target.value, pair[1]])}
          />
        </label>
        <label>
          {words.pinThan}{' '}
          <input
            value={pair[1]}
            size={6}
            autoComplete="off"
            aria-invalid={faulty}
            onChange={({ target }) => setPair([pair[0], target.value])}
          />
        </label>
        <button type="submit">{words.pinAdd}</button>
      </form>
      <p className={faulty ? 'accent' : 'quiet'} role={faulty ? 'alert' : undefined}>
        {faulty ? words.pinFault : lead.before.length === 0 ? words.pinNone : words.pinNote}
      </p>
      <List
        rows={lead.before.map(({ place, than }) => ({
          text: words.pin(place, than),
          remove: words.pinRemove(place, than),
          onRemove: () => fix({ before: without(lead.before, place, than) }),
        }))}
      />
    </section>
  );
}

const without = (before: RaisingSettings['before'], place: string, than: string) =>
  before.filter((one) => one.place !== place || one.than !== than);

function Groups(of: Of) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  return (
    <section className="raise-pins">
      <h4>{words.groups}</h4>
      <NumbersForm
        {...of}
        name={words.group}
        add={words.groupAdd}
        note={words.groupNote}
        least={2}
        onNumbers={(group) => fix({ groups: [...lead.groups, [...group]] })}
        check={(group) => ({ ...lead, groups: [...lead.groups, [...group]] })}
      />
      <List
        rows={lead.groups.map((group, i) => ({
          text: pieceName(group),
          remove: words.groupRemove(pieceName(group)),
          onRemove: () => fix({ groups: lead.groups.filter((_, k) => k !== i) }),
        }))}
      />
    </section>
  );
}

function WayOut(of: Of) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  return (
    <section className="raise-pins">
      <h4>{words.wayOut}</h4>
      {lead.wayOut === null ? (
        <NumbersForm
          {...of}
          name={words.wayOutLast}
          add={words.wayOutAdd}
          note={words.wayOutNote}
          least={1}
          onNumbers={(wayOut) => fix({ wayOut: [...wayOut] })}
          check={(wayOut) => ({ ...lead, wayOut: [...wayOut] })}
        />
      ) : (
        <List
          rows={[
            {
              text: pieceName(lead.wayOut),
              remove: words.wayOutRemove,
              onRemove: () => fix({ wayOut: null }),
            },
          ]}
        />
      )}
    </section>
  );
}

function KeptProps(of: Of) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  return (
    <section className="raise-pins">
      <h4>{words.keptProps}</h4>
      <NumbersForm
        {...of}
        name={words.keptHub}
        add={words.keptAdd}
        note={words.keptNote}
        least={1}
        onNumbers={(hub) => fix({ props: [...lead.props, [...hub]] })}
        check={(hub) => ({ ...lead, props: [...lead.props, [...hub]] })}
      />
      <List
        rows={lead.props.map((hub, i) => ({
          text: words.keptAt(hub),
          remove: words.keptRemove(hub),
          onRemove: () => fix({ props: lead.props.filter((_, k) => k !== i) }),
        }))}
      />
    </section>
  );
}

/** Numbers of places, typed and added; refused in words where the shell can't have it so. */
function NumbersForm({
  name,
  note,
  add,
  least,
  onNumbers,
  check,
  ...of
}: Of & {
  name: string;
  note: string;
  /** What the press is called. */
  add: string;
  least: number;
  onNumbers: (numbers: readonly string[]) => void;
  check: (numbers: readonly string[]) => RaisingSettings;
}) {
  const words = useWords().raising;
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const found = numbersTyped(text, standing(of));
    if (found === null || found.length < least) {
      setFault(words.changes.numbersFault(least));
      return;
    }
    const read = leadFixed(check(found), of.shell, of.numbers);
    const first = read.ok ? undefined : read.faults[0];
    setFault(first ? words.changes.notSo(first.found, first.expected) : null);
    if (first) return;
    onNumbers(found);
    setText('');
  };
  return (
    <form className="crew-add" onSubmit={submit}>
      <Field name={name} fault={fault} note={note}>
        {(props) => (
          <input {...props} value={text} onChange={({ target }) => setText(target.value)} />
        )}
      </Field>
      <button type="submit">{add}</button>
    </form>
  );
}

function List({
  rows,
}: {
  rows: readonly {
    readonly text: string;
    readonly remove: string;
    readonly onRemove: () => void;
  }[];
}) {
  const words = useWords().raising.changes;
  if (rows.length === 0) return null;
  return (
    <ul>
      {rows.map(({ text, remove, onRemove }) => (
        <li key={text} className="raise-fixed-row">
          <span>{text}</span>
          <button type="button" aria-label={remove} onClick={onRemove}>
            {words.pinRemoveShort}
          </button>
        </li>
      ))}
    </ul>
  );
}
