// The lift cards of a stage: who does what, the words, the steps with the poll before the last metre, when it
// stops. The same on the screen and on paper.

import type { LiftCard } from '@shellraise/core';
import type { LiftFacts, RaisingStageDetail } from '../../engine/raising.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { type CardWords, useCardWords } from './use-raising-words.ts';

/** Lifts with cards that differ in more than their panels: alike in mass, way and people go on one. */
export interface CardOfLifts {
  readonly card: LiftCard;
  readonly index: number | null;
  /** Places of each piece that it is for. */
  readonly pieces: readonly (readonly number[])[];
}

/** The cards of a stage, each for all pieces that are lifted the same way. The lowest gust limit counts. */
export function cardsOf(lifts: readonly LiftFacts[]): CardOfLifts[] {
  const found = new Map<
    string,
    { card: LiftCard; index: number | null; pieces: (readonly number[])[] }
  >();
  for (const { card, index, places } of lifts) {
    if (card === null) continue;
    const { way, mass, roles } = card;
    const key = JSON.stringify([way.by, way.name, way.people, mass?.toFixed(0), roles]);
    const own = found.get(key);
    if (own === undefined) found.set(key, { card, index, pieces: [places] });
    else {
      own.pieces.push(places);
      own.index = Math.max(own.index ?? 0, index ?? 0);
      if (card.gustLimit.value < own.card.gustLimit.value) own.card = card;
    }
  }
  return [...found.values()];
}

/** The cards as a part of the stage's card that unfolds. */
export function LiftCards({
  detail,
  numbers,
}: {
  detail: RaisingStageDetail;
  numbers: readonly string[];
}) {
  const words = useWords().yard.lift;
  const write = useCardWords(numbers);
  const cards = cardsOf(detail.lifts);
  if (cards.length === 0) return null;
  return (
    <section className="lift-cards">
      {cards.map((own) => (
        <details key={own.pieces.join(';')} className="tags">
          <summary>
            {words.summary(own.pieces.length)}:{' '}
            {own.pieces.map((one) => write.piece(one)).join(' · ')}
          </summary>
          <LiftCardBody {...own} write={write} />
        </details>
      ))}
    </section>
  );
}

/** What a lift card says. */
export function LiftCardBody({ card, index, write }: CardOfLifts & { readonly write: CardWords }) {
  const words = useWords().yard.lift;
  const lengths = useLengths();
  const { way } = card;
  return (
    <div className="lift-card">
      <p className="raise-verdict">{words.stops(write.speed(card.gustLimit.value))}</p>
      <p>
        {card.mass === null ? words.unweighed : words.mass(write.mass(card.mass))},{' '}
        {words.size(card.size.filter((one) => one > 1e-3).map((one) => lengths.large(one)))}.{' '}
        {words.by[way.by](way.people, way.name)}{' '}
        {index === null ? '' : words.index(Number.isFinite(index) ? index.toFixed(1) : null)}
      </p>
      <dl className="lift-roles">
        {card.roles.map(({ role, people, does }) => (
          <div key={role}>
            <dt>
              {role} · {people}
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <dl className="lift-words">
        {card.words.map(({ say, means }) => (
          <div key={say}>
            <dt>{say}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
      <ol className="steps">
        {card.steps.map((step) => (
          <li key={step} className={step.startsWith('Poll') ? 'accent' : ''}>
            {step}
          </li>
        ))}
      </ol>
      {card.cautions.map((one) => (
        <p key={one} className="facts-caution">
          {one}
        </p>
      ))}
    </div>
  );
}
