// Lift cards and close-down cards on paper, a page each at 18 pt: one lift card for all stages that lift the
// same way, one close-down card for each evening.

import { clockTime, type RaisingPlan, type Weekend } from '@shellraise/core';
import type { RaisingStageDetail } from '../../engine/raising.ts';
import { useWords } from '../../words/words.ts';
import { CloseDownSteps } from './day-card.tsx';
import { type CardOfLifts, cardsOf, LiftCardBody } from './lift-cards.tsx';
import { useCardWords } from './use-raising-words.ts';

/** A lift card with the stages that it is for. */
export interface CardOfStages extends CardOfLifts {
  readonly stages: readonly number[];
}

/** The lift cards of all stages, each for every stage that lifts the same way. */
function cardsOfStages(
  stages: readonly { readonly number: number }[],
  details: ReadonlyMap<number, RaisingStageDetail | string>,
): CardOfStages[] {
  const stageOf = new Map<readonly number[], number>();
  const lifts = stages.flatMap(({ number }) => {
    const detail = details.get(number);
    if (detail === undefined || typeof detail === 'string') return [];
    for (const { places } of detail.lifts) stageOf.set(places, number);
    return detail.lifts;
  });
  return cardsOf(lifts).map((card) => ({
    ...card,
    stages: [...new Set(card.pieces.flatMap((places) => stageOf.get(places) ?? []))],
  }));
}

/** The lift cards. */
export function PrintedLifts({
  title,
  plan,
  details,
  numbers,
}: {
  title: string;
  plan: RaisingPlan;
  details: ReadonlyMap<number, RaisingStageDetail | string>;
  numbers: readonly string[];
}) {
  const words = useWords().yard.lift;
  const write = useCardWords(numbers);
  return cardsOfStages(plan.stages, details).map((own) => (
    <section key={own.stages.join()} className="printed-sheet">
      <p className="printed-head">
        {title} · {words.printed}
      </p>
      <h3>{words.ofStages(own.stages, own.pieces.length)}</h3>
      <p className="printed-pieces">{own.pieces.map((one) => write.piece(one)).join(' · ')}</p>
      <LiftCardBody {...own} write={write} />
    </section>
  ));
}

/** The close-down cards of the days, where they are planned. */
export function PrintedCloseDown({ title, weekend }: { title: string; weekend: Weekend | null }) {
  const words = useWords().weekend.plan;
  return (weekend?.days ?? []).map(({ date, weekday, dark, closeDown, evening }) =>
    closeDown === null ? null : (
      <section key={date} className="printed-sheet">
        <p className="printed-head">
          {title} · {weekday} {date}
        </p>
        <h3>{closeDown.title}</h3>
        <p className="raise-verdict">
          {words.closeDownNote(Math.round(closeDown.seconds / 60), closeDown.hands)}{' '}
          {words.darkAt(clockTime(dark))}
        </p>
        <p>{evening.words}</p>
        <CloseDownSteps card={closeDown} />
      </section>
    ),
  );
}
