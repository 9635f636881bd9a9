// The record on paper: the sheets to print, and what was ticked on them, typed in.

import '../../styles/twin.css';
import { readTwin, type TwinLine, twinCheck, twinLines } from '@shellraise/core';
import { useMemo, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { usePrintedAlone } from '../../ui/use-printed-alone.ts';
import { useWords } from '../../words/words.ts';
import { PrintedTwin } from './printed-twin.tsx';
import { aboutOf, stepOf } from './step-words.ts';
import type { Noted } from './use-noted.ts';

/** Ticks and faults that are listed before they are noted, at most. */
const LISTED = 6;

/** The panel. */
export function PaperTwin({ noted }: { noted: Noted }) {
  const { twin: words, frame } = useWords();
  const { plan, leftOut } = noted;
  const title = useAppState((app) => projectOf(app).title);
  const lines = useMemo(() => twinLines(plan, leftOut), [plan, leftOut]);
  const check = useMemo(() => twinCheck(lines), [lines]);
  const [printing, print] = usePrintedAlone<true>();
  return (
    <section className="twin">
      <h2>{words.heading}</h2>
      <p>{words.why}</p>
      <p className="buttons">
        <button type="button" onClick={() => print(true)}>
          {words.print}
        </button>
      </p>
      <TickedForm noted={noted} lines={lines} check={check} />
      {printing ? (
        <PrintedTwin title={title || frame.untitled} check={check} lines={lines} />
      ) : null}
    </section>
  );
}

function TickedForm({
  noted,
  lines,
  check,
}: {
  noted: Noted;
  lines: readonly TwinLine[];
  check: string;
}) {
  const { twin: words, record } = useWords();
  const [sheets, setSheets] = useState('');
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState('');
  const read = useMemo(() => readTwin(typed, lines, noted.state), [typed, lines, noted.state]);
  const same = sheets.trim().toUpperCase() === check;
  const { says, known, faults } = read;
  const note = (): void => {
    const count = says.length;
    if (!says.every((what) => noted.say(what))) return;
    setTyped('');
    setTold(words.noted(count));
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (same && says.length > 0) note();
      }}
    >
      <label>
        {words.check}
        <input
          value={sheets}
          maxLength={8}
          autoCapitalize="characters"
          onChange={(event) => setSheets(event.target.value)}
        />
      </label>
      {sheets.trim().length >= 4 && !same ? (
        <p className="accent" role="alert">
          {words.otherPlan(check)}
        </p>
      ) : null}
      <label>
        {words.typed}
        <textarea
          value={typed}
          rows={3}
          spellCheck={false}
          autoCapitalize="off"
          onChange={(event) => {
            setTyped(event.target.value);
            setTold('');
          }}
        />
        <span className="quiet">{words.how}</span>
      </label>
      <p role="status">{told || (typed.trim() === '' ? '' : words.found(says.length, known))}</p>
      <ul className="twin-read">
        {faults.slice(0, LISTED).map(({ path, expected }) => (
          <li key={path} className="accent">
            {words.fault(path, expected)}
          </li>
        ))}
        {says.slice(0, LISTED).map((what) => (
          <li key={JSON.stringify(what)}>
            {record.said(aboutOf(what, record), stepOf(what, record))}
          </li>
        ))}
        {says.length > LISTED ? <li>{words.more(says.length - LISTED)}</li> : null}
      </ul>
      <button type="submit" disabled={!same || says.length === 0 || !noted.open}>
        {words.note(says.length)}
      </button>
    </form>
  );
}
