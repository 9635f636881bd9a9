// The cards to begin now, those that follow, those that wait and why, jobs for spare hands, new odds.

import { clockTime, type NowAnswer, type NowCard } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { useQuantities } from '../ground/use-ground.ts';
import { oddsText } from './day-words.ts';
import { roundedHours } from './hours.ts';

/** The answer. */
export function NowCards({ answer }: { answer: NowAnswer }) {
  const words = useWords().weekend.now;
  const { cards, soon, waiting, spare, jobs, weekend, at } = answer;
  const last = weekend.days.at(-1);
  // What comes next by itself needs no reason, but where nothing can be begun.
  const told = new Set(cards.length === 0 ? [] : soon.map(({ id }) => id));
  const held = waiting.filter(({ id }) => !told.has(id));
  return (
    <section>
      <h3>
        {words.next}, {clockTime(at)}
      </h3>
      {cards.length === 0 ? <p>{words.nothing}</p> : <Cards cards={cards} />}
      {soon.length > 0 ? (
        <>
          <h3>{words.soon}</h3>
          <Cards cards={soon} />
        </>
      ) : null}
      {held.length > 0 ? (
        <>
          <h3>{words.waiting}</h3>
          <ul className="ground-faults">
            {held.map(({ id, what, why }) => (
              <li key={id}>
                {what}: {why}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <h3>{words.spare(spare)}</h3>
      {spare > 0 ? (
        <ul className="now-steps">
          {jobs.map(({ what, cureHours, cautions }) => (
            <li key={what}>
              <strong>{what}</strong>{' '}
              <span className="quiet">
                {[...(cureHours === null ? [] : [words.cure(cureHours)]), ...cautions].join('. ')}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {last ? <p>{words.odds(last.weekday, oddsText(last.odds.done))}</p> : null}
      {weekend.troubles.slice(0, 3).map(({ found, change }) => (
        <p key={found} className="quiet">
          {found}; {change}
        </p>
      ))}
    </section>
  );
}

function Cards({ cards }: { cards: readonly NowCard[] }) {
  const { weekend, raising } = useWords();
  const words = weekend.now;
  const { speed } = useQuantities();
  const time = (seconds: number): string => {
    const { hours, minutes } = roundedHours(seconds);
    return raising.card.hours(hours, minutes);
  };
  return (
    <ol className="now-steps">
      {cards.map(({ id, what, people, climbers, seconds, gustLimit, gear }) => (
        <li key={id}>
          <strong>{what}</strong>{' '}
          <span className="quiet">
            {[
              words.card(people, climbers, time(seconds)),
              ...Object.keys(gear),
              ...(gustLimit === null ? [] : [words.gustOver(speed(gustLimit))]),
            ].join('; ')}
          </span>
        </li>
      ))}
    </ol>
  );
}
