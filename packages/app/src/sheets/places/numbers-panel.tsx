// What the numbers hang on: whether they are painted, and where the datum is; and the printer.

import type { Paper, PlacesDecision } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { frozen, turnedTo, turnOf, unfrozen } from './decide.ts';
import type { Stood } from './stood.ts';

/** Papers offered. */
export const papers = ['A4', 'A3', 'Letter'] as const satisfies readonly Paper[];

/** Numbers, datum and print. */
export function NumbersPanel({
  stood: { standing },
  paper,
  onPaper,
}: {
  stood: Stood;
  paper: Paper;
  onPaper: (paper: Paper) => void;
}) {
  const { places } = useWords();
  const words = places.numbers;
  const decide = useDecide();
  const own = useAppState((state) => projectOf(state).places);
  // The engine may still be at work on the last change.
  const decision = own ?? standing.decision;
  const kept = decision.frozen !== undefined;
  return (
    <div className="numbers">
      <h3>{words.heading}</h3>
      <p>{kept ? words.frozen : words.plain}</p>
      <div className="buttons screen-only">
        <button
          type="button"
          onClick={() =>
            decide(
              kept ? unfrozen(decision) : frozen(decision),
              kept ? places.changes.unfreeze : places.changes.freeze,
            )
          }
        >
          {kept ? words.unfreeze : words.freeze}
        </button>
        {kept ? null : <span className="quiet">{words.freezeNote}</span>}
      </div>
      <h3>{words.datum}</h3>
      <DatumTurn decision={decision} />
      <h3>{words.print}</h3>
      <p className="quiet">{words.printNote}</p>
      <div className="buttons screen-only">
        <label className="inline">
          {words.paper}
          <select
            value={paper}
            onChange={({ target }) => {
              const one = papers.find((name) => name === target.value);
              if (one) onPaper(one);
            }}
          >
            {papers.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <button type="button" onClick={() => print()}>
          {words.printIt}
        </button>
      </div>
    </div>
  );
}

/** Degrees by a step, or typed. */
function DatumTurn({ decision }: { decision: PlacesDecision }) {
  const { places } = useWords();
  const words = places.numbers;
  const decide = useDecide();
  const now = turnOf(decision);
  const [typed, setTyped] = useState(String(now));
  useEffect(() => setTyped(String(now)), [now]);
  const turn = (degrees: number): void => {
    if (Number.isFinite(degrees) && degrees !== now)
      decide(turnedTo(decision, degrees), places.changes.datum, 'datum');
  };
  return (
    <>
      <p className="quiet">{words.datumNote}</p>
      <div className="buttons stepper screen-only">
        <button type="button" aria-label={words.turnBack} onClick={() => turn(now - 5)}>
          −5°
        </button>
        <label className="inline">
          <input
            inputMode="decimal"
            aria-label={`${words.datum}, ${words.degrees}`}
            value={typed}
            onChange={({ target }) => setTyped(target.value)}
            onBlur={() => turn(degreesIn(typed, now))}
            onKeyDown={({ key }) => {
              if (key === 'Enter') turn(degreesIn(typed, now));
              if (key === 'Escape') setTyped(String(now));
            }}
          />
          {words.degrees}
        </label>
        <button type="button" aria-label={words.turnOn} onClick={() => turn(now + 5)}>
          +5°
        </button>
        <button type="button" disabled={now === 0} onClick={() => turn(0)}>
          {words.datumAtNought}
        </button>
      </div>
    </>
  );
}

/** What was typed, with a point or a comma; `fallback` where it is no number. */
function degreesIn(typed: string, fallback: number): number {
  const value = Number(typed.replace(',', '.').replace('−', '-'));
  return typed.trim() === '' || !Number.isFinite(value) ? fallback : value;
}

/** Makes a decision the project's. */
function useDecide(): (decision: PlacesDecision, label: string, of?: string) => void {
  const app = useApp();
  return (decision, label, of) =>
    app.change(
      ({ project }) => {
        project.places = decision;
        return undefined;
      },
      of === undefined ? { label } : { label, of },
    );
}
