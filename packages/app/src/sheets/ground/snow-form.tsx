// Snow, the height of the base, an open door, people on the shell: what the lead chose, and what the
// snow lays on it.

import { personLoad } from '@shellraise/core';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from './fields.tsx';
import { Caution, Choice, optionsOf, Tick } from './small.tsx';
import { useGround, useQuantities } from './use-ground.ts';

/** Heights, door and people. */
export function UseForm() {
  const { use: words, changes } = useWords().groundForms;
  const { loads, setLoads } = useGround();
  const { force } = useQuantities();
  const lengths = useLengths();
  const person = personLoad(true, loads.overrides);
  return (
    <>
      <div className="ground-form">
        <LengthField
          name={words.baseHeight}
          note={words.baseNote}
          needed
          value={loads.baseHeight}
          least={0}
          most={100}
          onValue={(baseHeight) => setLoads({ baseHeight: baseHeight ?? 0 }, changes.use)}
        />
        <LengthField
          key={lengths.system}
          name={words.altitude}
          needed
          value={loads.altitude}
          least={-450}
          most={6000}
          onValue={(altitude) => setLoads({ altitude: altitude ?? 0 }, changes.use)}
        />
      </div>
      <div className="ground-ticks">
        <Tick
          name={words.door}
          checked={loads.doorOpen}
          onTick={(doorOpen) => setLoads({ doorOpen }, changes.use)}
        />
        <Tick
          name={words.person}
          checked={loads.person}
          onTick={(on) => setLoads({ person: on }, changes.use)}
        />
      </div>
      {loads.person ? (
        <>
          <p>{words.personLoad(force(person.value))}</p>
          <Caution sources={person.sources} />
        </>
      ) : null}
    </>
  );
}

/** Snow. */
export function SnowForm({ answer }: { answer: GroundAnswer | null }) {
  const { snow: words, changes } = useWords().groundForms;
  const { loads, setLoads } = useGround();
  const { force, perArea } = useQuantities();
  return (
    <>
      <div className="ground-form">
        <Choice
          name={words.code}
          value={loads.snowCode}
          of={optionsOf(words.codes)}
          onChoose={(snowCode) => setLoads({ snowCode }, changes.snow)}
        />
        <NumberField
          name={words.ground(perArea.name)}
          note={words.groundNote}
          per={perArea.pascals}
          decimals={2}
          value={loads.groundSnow}
          least={0}
          most={20_000}
          onValue={(groundSnow) => setLoads({ groundSnow }, changes.snow)}
        />
      </div>
      <div className="ground-ticks">
        <Tick
          name={words.slippery}
          checked={loads.slippery}
          onTick={(slippery) => setLoads({ slippery }, changes.snow)}
        />
      </div>
      {answer === null ? null : answer.snow.value.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <>
          <p>{words.bears}</p>
          <dl className="ground-facts">
            {answer.snow.value.map(({ name, force: lies }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{force(lies)}</dd>
              </div>
            ))}
          </dl>
          <p className="quiet">{words.alone}</p>
          <Caution sources={answer.snow.sources} />
        </>
      )}
    </>
  );
}
