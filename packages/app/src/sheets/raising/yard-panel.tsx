// What lies ready: the stacks of the stage on show with what keeps them down, bags to be filled, what is to
// be bought before which stage, charge.

import { readSectors, sectorsText, type YardAnswer, type YardWishes } from '@shellraise/core';
import type { YardAndKit } from '../../engine/raised.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Faults, SourceItems } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { KitSections } from './kit-sections.tsx';
import { pieceName } from './piece-name.ts';

/** The panel. `answer`: null while it is worked out. */
export function YardPanel({
  answer,
  fault,
  number,
  wishes,
  onWishes,
}: {
  answer: YardAndKit | null;
  fault: string | null;
  number: number;
  wishes: YardWishes;
  onWishes: (wishes: YardWishes) => void;
}) {
  const words = useWords().yard;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      {fault !== null ? (
        <p role="alert">{fault}</p>
      ) : answer === null ? (
        <p className="quiet">{words.working}</p>
      ) : (
        <>
          {answer.yard.ok ? (
            <Stacks yard={answer.yard.value} number={number} />
          ) : (
            <Faults faults={answer.yard.faults} />
          )}
          <Wishes wishes={wishes} onWishes={onWishes} />
          <KitSections kit={answer.kit} number={number} />
        </>
      )}
    </div>
  );
}

function Stacks({ yard, number }: { yard: YardAnswer; number: number }) {
  const words = useWords().yard;
  const lengths = useLengths();
  const { speed } = useQuantities();
  const own = yard.stacks.filter(({ stage }) => stage === number);
  const heaviest = yard.stacks.reduce((most, { wind }) => Math.max(most, wind.loose), 0);
  return (
    <>
      <p>
        {words.facts(yard.stacks.length, lengths.far(yard.longest), lengths.far(yard.reach))}{' '}
        {words.weight(speed(yard.gust), Math.ceil(heaviest / 5) * 5)}
      </p>
      <p className="facts-caution">{yard.assumed.at(-1)}</p>
      {own.length === 0 ? (
        <p className="quiet">{words.none(number)}</p>
      ) : (
        own.map((stack) => (
          <section key={stack.number} className="yard-stack-told">
            <h4>
              <strong>{stack.number}</strong> {words.stack(stack.panels, stack.wind.loose)}
            </h4>
            <p>
              {words.top} {stack.pieces.map(({ numbers }) => pieceName(numbers)).join(' · ')}
            </p>
            <p className="quiet">
              {stack.words}{' '}
              {words.walk(lengths.far(Math.max(...stack.pieces.map((one) => one.walk))))}
            </p>
          </section>
        ))
      )}
      <details className="tags">
        <summary>{words.assumed}</summary>
        <ul className="notes">
          {yard.assumed.slice(0, -1).map((one) => (
            <li key={one}>{one}</li>
          ))}
          <SourceItems of={yard.flags} />
        </ul>
      </details>
    </>
  );
}

function Wishes({
  wishes,
  onWishes,
}: {
  wishes: YardWishes;
  onWishes: (wishes: YardWishes) => void;
}) {
  const words = useWords().yard;
  const { metric } = useQuantities();
  const set = (part: YardWishes): void => onWishes({ ...wishes, ...part });
  return (
    <details className="tags screen-only">
      <summary>{words.wishes}</summary>
      <div className="ground-form">
        <LengthField
          name={words.clear}
          note={words.clearNote}
          value={wishes.clear ?? 3}
          least={0}
          most={30}
          needed
          onValue={(clear) => clear !== null && set({ clear })}
        />
        <NumberField
          name={words.most}
          value={wishes.most ?? 10}
          least={1}
          most={40}
          decimals={0}
          needed
          onValue={(most) => most !== null && set({ most: Math.round(most) })}
        />
        <NumberField
          name={words.gust(metric ? 'm/s' : 'mph')}
          note={words.gustNote}
          value={wishes.gust ?? null}
          per={metric ? 1 : 0.447_04}
          decimals={1}
          least={0}
          most={80}
          onValue={(gust) => set({ gust })}
        />
        <LimitField
          name={words.keepClear}
          note={words.keepClearNote}
          shown={sectorsText(wishes.avoid ?? [])}
          fault={words.keepClearNote}
          read={readSectors}
          onValue={(avoid) => set({ avoid: avoid ?? [] })}
        />
      </div>
    </details>
  );
}
