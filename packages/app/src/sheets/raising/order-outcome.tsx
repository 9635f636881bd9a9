// What an order that is tried breaks, in words, and whether it can be taken.

import type { RaisingPlan, Shell } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { breakWords, canBeTaken } from './break-words.ts';
import { useLead } from './lead.ts';
import type { Trial, Try } from './trial.ts';

/** The outcome. */
export function Outcome({
  shell,
  numbers,
  plan,
  trial,
  onTry,
}: {
  shell: Shell;
  numbers: readonly string[];
  plan: RaisingPlan;
  trial: Trial;
  onTry: Try;
}) {
  const words = useWords().raising.changes;
  const { fix } = useLead();
  const { breaks, lifts, fault, moved } = trial;
  const order = trial.order ?? plan.stages.map(({ number }) => number);
  const take = (): void => {
    fix({ order: lifts.map(({ places }) => places.map((p) => numbers[p] ?? '')) });
    onTry(null);
  };
  return (
    <div className="raise-outcome" aria-live="polite">
      <p>{words.movedTo(moved, order.indexOf(moved) + 1)}</p>
      {fault !== null ? (
        <p role="alert">{fault}</p>
      ) : breaks === null ? (
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
        <button type="button" onClick={() => onTry(null)}>
          {words.drop}
        </button>
      </div>
    </div>
  );
}
