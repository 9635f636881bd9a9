// The lead's own order: the stage on show one earlier or later, a panel before another; what that breaks
// in words, at once. The drawing beside shows how it would fall.

import type { OrderBreak, OrderedLift, RaisingPlan, Shell } from '@shellraise/core';
import { type FormEvent, useState } from 'react';
import { useWords } from '../../words/words.ts';
import { breakWords, canBeTaken } from './break-words.ts';
import { movedStage, useLead } from './lead.ts';
import { stageName } from './stage-name.ts';

/** What is being tried, with what it breaks. */
export interface Trial {
  /** Stages of the plan in the order that is tried; null: none is. */
  readonly order: readonly number[] | null;
  readonly lifts: readonly OrderedLift[];
  /** Null while it is asked. */
  readonly breaks: readonly OrderBreak[] | null;
  readonly fault: string | null;
}

/** The panel. */
export function ChangesPanel({
  shell,
  numbers,
  leftOut,
  plan,
  number,
  trial,
  onTry,
}: {
  shell: Shell;
  numbers: readonly string[];
  leftOut: readonly number[];
  plan: RaisingPlan;
  number: number;
  trial: Trial;
  onTry: (order: readonly number[] | null) => void;
}) {
  const words = useWords().raising;
  const own = words.changes;
  const { lead, fix } = useLead();
  const stage = plan.stages[number - 1];
  const order = trial.order ?? plan.stages.map((one) => one.number);
  const last = plan.stages.filter(({ pieces }) => pieces.length > 0).length;
  const at = order.indexOf(number);
  if (!stage) return null;
  const move = (by: -1 | 1) => (): void => {
    const next = movedStage(order, number, by);
    onTry(next.every((one, i) => one === i + 1) ? null : next);
  };
  const movable = stage.pieces.length > 0;
  return (
    <div className="fit-panel">
      <h3>{own.heading}</h3>
      <p>{own.intro}</p>
      <p className="raise-moving">{own.shown(number, stageName(plan.stages, stage, words))}</p>
      <div className="buttons">
        <button type="button" disabled={!movable || at <= 0} onClick={move(-1)}>
          {own.earlier}
        </button>
        <button type="button" disabled={!movable || at >= last - 1} onClick={move(1)}>
          {own.later}
        </button>
      </div>
      {trial.order === null ? null : (
        <Outcome {...{ shell, numbers, plan, trial, onTry }} says={own.movedTo(number, at + 1)} />
      )}
      <Pins numbers={numbers} leftOut={leftOut} />
      {lead.order === null ? null : (
        <p className="buttons">
          {own.own}{' '}
          <button type="button" onClick={() => fix({ order: null })}>
            {own.free}
          </button>
        </p>
      )}
      <p className="facts-caution">{words.caution}</p>
    </div>
  );
}

function Outcome({
  shell,
  numbers,
  trial,
  says,
  onTry,
}: {
  shell: Shell;
  numbers: readonly string[];
  trial: Trial;
  says: string;
  onTry: (order: readonly number[] | null) => void;
}) {
  const words = useWords().raising.changes;
  const { fix } = useLead();
  const { breaks, lifts, fault } = trial;
  const take = (): void => {
    fix({ order: lifts.map(({ places }) => places.map((p) => numbers[p] ?? '')) });
    onTry(null);
  };
  const drop = (
    <button type="button" onClick={() => onTry(null)}>
      {words.drop}
    </button>
  );
  if (fault !== null)
    return (
      <p role="alert">
        {fault} {drop}
      </p>
    );
  return (
    <div className="raise-outcome" aria-live="polite">
      <p>{says}</p>
      {breaks === null ? (
        <p className="quiet">{words.checking}</p>
      ) : breaks.length === 0 ? (
        <p>{words.fine}</p>
      ) : (
        <>
          <p className="raise-verdict accent">{words.broken}</p>
          <ul className="ground-faults">
            {breaks.map((one) => {
              const text = breakWords(one, lifts, shell, numbers, words);
              return <li key={text}>{text}</li>;
            })}
          </ul>
        </>
      )}
      <div className="buttons">
        {breaks !== null && canBeTaken(breaks) ? (
          <button type="button" className={breaks.length === 0 ? 'go' : ''} onClick={take}>
            {breaks.length === 0 ? words.take : words.takeProps}
          </button>
        ) : null}
        {drop}
      </div>
    </div>
  );
}

function Pins({ numbers, leftOut }: { numbers: readonly string[]; leftOut: readonly number[] }) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  const [pair, setPair] = useState<readonly [string, string]>(['', '']);
  const [faulty, setFaulty] = useState(false);
  const stands = (text: string): boolean => {
    const place = numbers.indexOf(text);
    return place >= 0 && !leftOut.includes(place);
  };
  const add = (event: FormEvent): void => {
    event.preventDefault();
    const [a, b] = [pair[0].trim(), pair[1].trim()];
    const fits = stands(a) && stands(b) && a !== b;
    setFaulty(!fits);
    if (!fits) return;
    fix({
      before: [
        ...lead.before.filter((one) => one.place !== a || one.than !== b),
        { place: a, than: b },
      ],
    });
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
      <ul>
        {lead.before.map(({ place: a, than: b }) => (
          <li key={`${a} ${b}`} className="buttons">
            {words.pin(a, b)}{' '}
            <button
              type="button"
              aria-label={words.pinRemove(a, b)}
              onClick={() =>
                fix({ before: lead.before.filter((one) => one.place !== a || one.than !== b) })
              }
            >
              {words.pinRemoveShort}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
