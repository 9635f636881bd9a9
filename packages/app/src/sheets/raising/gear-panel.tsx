// Gear: how high hands and hooks must come at the stage on show and where it falls short, what becomes of
// the things inside, and what there is.

import type { HeightsOfStage } from '@shellraise/core';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { stagesEngine } from '../../engine/bridge.ts';
import type { RaisedQuestion, ThingTold, WayTold } from '../../engine/raised.ts';
import { createAskRuns } from '../../engine/runs.ts';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { Faults } from '../ground/small.tsx';
import { GearForm } from './gear-form.tsx';
import { useCardWords } from './use-raising-words.ts';

const runs = createAskRuns<RaisedQuestion, WayTold>(
  (question, onProgress) => stagesEngine.ask('ways', question, onProgress),
  () => performance.now(),
);

/** Ways in and out of a plan, asked as long as `wanted`; null until they are there. */
export function useWays(question: RaisedQuestion, wanted: boolean) {
  const run = useStore(runs.store);
  useEffect(() => {
    if (wanted) runs.follow(question);
  }, [question, wanted]);
  return run.input === question ? run : null;
}

/** The panel. `chosen`: the name of the thing whose way is drawn. */
export function GearPanel({
  run,
  heights,
  number,
  numbers,
  chosen,
  onChoose,
  onAgain,
}: {
  run: ReturnType<typeof useWays>;
  heights: readonly HeightsOfStage[];
  number: number;
  numbers: readonly string[];
  chosen: string | null;
  onChoose: (name: string | null) => void;
  onAgain: () => void;
}) {
  const words = useWords().yard.gear;
  return (
    <div className="fit-panel gear-panel">
      <h3>{words.heading}</h3>
      <Reach heights={heights} number={number} numbers={numbers} />
      <h3>{words.inside}</h3>
      {run === null ? null : <ProgressLine ask={run} what={words.looking} onCancel={runs.cancel} />}
      {run !== null && (run.status === 'failed' || run.status === 'cancelled') ? (
        <p className="buttons">
          {words.notLooked}{' '}
          <button type="button" onClick={onAgain}>
            {words.again}
          </button>
        </p>
      ) : null}
      {run !== null && run.faults.length > 0 ? <Faults faults={run.faults} /> : null}
      {run?.value ? <Things told={run.value} chosen={chosen} onChoose={onChoose} /> : null}
      <h3>{words.owned}</h3>
      <GearForm />
    </div>
  );
}

/** Asks anew. */
export const lookAgain = (question: RaisedQuestion): void => runs.start(question);

function Reach({
  heights,
  number,
  numbers,
}: {
  heights: readonly HeightsOfStage[];
  number: number;
  numbers: readonly string[];
}) {
  const words = useWords().yard.gear;
  const write = useCardWords(numbers);
  const own = heights.find(({ stage }) => stage === number);
  const short = heights.filter((one) => one.short.length > 0);
  return (
    <>
      {own === undefined ? (
        <p className="quiet">{words.nothingUp(number)}</p>
      ) : (
        <p>
          {words.hands(number, write.reach(own.hands), own.standing?.name ?? null)}{' '}
          {own.hook === null
            ? ''
            : words.hook(
                write.reach(own.hook),
                own.hookOwned === null ? null : write.reach(own.hookOwned),
              )}
        </p>
      )}
      {short.length === 0 ? (
        <p>{words.reachesAll}</p>
      ) : (
        <ul className="ground-faults">
          {short.map((one) => (
            <li key={one.stage}>
              {words.short(one.stage)} {one.short.join('; ')}.
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Things({
  told: { inside, standing },
  chosen,
  onChoose,
}: {
  told: WayTold;
  chosen: string | null;
  onChoose: (name: string | null) => void;
}) {
  const words = useWords().yard.gear;
  return (
    <>
      {inside.things.length === 0 ? (
        <p className="quiet">{words.nothingInside}</p>
      ) : (
        <ul className="gear-things">
          {inside.things.map((thing) => (
            <Thing
              key={thing.name}
              thing={thing}
              isChosen={thing.name === chosen}
              onChoose={() => onChoose(thing.name === chosen ? null : thing.name)}
            />
          ))}
        </ul>
      )}
      {standing.length > 0 ? (
        <p className="quiet">
          {words.until(standing.map(({ name, until }) => words.neededTo(name, until)))}
        </p>
      ) : null}
      {inside.things.length > 0 ? (
        <p className="facts-caution">{inside.assumed.join(' ')}</p>
      ) : null}
    </>
  );
}

function Thing({
  thing: { name, status, words: told, seen },
  isChosen,
  onChoose,
}: {
  thing: ThingTold;
  isChosen: boolean;
  onChoose: () => void;
}) {
  const words = useWords().yard.gear;
  return (
    <li>
      <p className={status === 'trapped' ? 'raise-verdict accent' : 'raise-verdict'}>
        {name}: {words.status[status]}
      </p>
      <p>{told}</p>
      {seen.length > 0 ? (
        <button type="button" aria-pressed={isChosen} onClick={onChoose}>
          {isChosen ? words.hide : words.show}
        </button>
      ) : null}
    </li>
  );
}
