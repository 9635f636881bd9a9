// What may wait for the next trip after the stage on show, asked by a press: each item with why, and the
// card of the state to leave the shell in.

import type { RaisingPlan } from '@shellraise/core';
import { useState } from 'react';
import { useStore } from 'zustand';
import { stagesEngine } from '../../engine/bridge.ts';
import type { RaisedQuestion, WaitAskedOf, WaitTold } from '../../engine/raised.ts';
import { createAskRuns } from '../../engine/runs.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { NumberField } from '../ground/fields.tsx';
import { Faults } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';

const runs = createAskRuns<WaitAskedOf, WaitTold>(
  (question, onProgress) => stagesEngine.ask('mayWait', question, onProgress),
  () => performance.now(),
);

/** The section. */
export function WaitSection({
  question,
  plan,
  number,
}: {
  question: RaisedQuestion;
  plan: RaisingPlan;
  number: number;
}) {
  const words = useWords().yard.wait;
  const [days, setDays] = useState(14);
  const run = useStore(runs.store);
  const isOurs = run.input?.plan === plan && run.input.asked.stage === number;
  return (
    <details className="tags wait screen-only">
      <summary>{words.summary(number)}</summary>
      <div className="ground-form">
        <NumberField
          name={words.days}
          value={days}
          least={1}
          most={3650}
          decimals={0}
          needed
          onValue={(value) => value !== null && setDays(Math.round(value))}
        />
      </div>
      <button
        type="button"
        className="go"
        onClick={() => runs.start({ ...question, asked: { stage: number, days } })}
      >
        {words.ask}
      </button>
      {isOurs ? (
        <>
          <ProgressLine ask={run} what={words.working} onCancel={runs.cancel} />
          {run.faults.length > 0 ? <Faults faults={run.faults} /> : null}
          {run.status === 'failed' ? <p role="alert">{run.fault}</p> : null}
          {run.value === null ? null : <Waiting told={run.value} />}
        </>
      ) : null}
    </details>
  );
}

function Waiting({ told }: { told: WaitTold }) {
  const words = useWords().yard.wait;
  const { speed } = useQuantities();
  const { leave } = told;
  return (
    <div aria-live="polite">
      <p className={leave === null ? 'raise-verdict accent' : 'raise-verdict'}>{told.words}</p>
      <p className="quiet">{words.gust(speed(told.gust), told.days)}</p>
      <table className="raise-lifts">
        <thead>
          <tr>
            <th scope="col">{words.heads.what}</th>
            <th scope="col">{words.heads.may}</th>
            <th scope="col">{words.heads.why}</th>
          </tr>
        </thead>
        <tbody>
          {told.items.map(({ words: what, mayWait, why }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td className={mayWait === 'no' ? 'accent' : ''}>{words.may[mayWait]}</td>
              <td>{why}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {leave === null ? null : (
        <section className="leave-card">
          <h3>{leave.card.title}</h3>
          <ul className="notes">
            {leave.card.before.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <h4>{words.waits}</h4>
          <ul className="notes">
            {leave.card.waits.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <h4>{words.back}</h4>
          <ul className="notes">
            {leave.card.back.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <p className="facts-caution">{leave.card.caution}</p>
        </section>
      )}
    </div>
  );
}
