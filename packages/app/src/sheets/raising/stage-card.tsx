// The card of a stage: what goes up and in which order, bolts before letting go, props, how far seams are
// tightened, whether it may stay overnight, wind, lifting. The same on the screen and on paper.

import type { RaisingPlan, RaisingStage, Shell } from '@shellraise/core';
import type { RaisingStageDetail } from '../../engine/raising.ts';
import { useWords } from '../../words/words.ts';
import { NO_WIND } from '../ground/use-ground.ts';
import { boltRange } from './bolts-of.ts';
import { placesAround, propsAt, propsOfLift } from './props-at.ts';
import { stageName } from './stage-name.ts';
import { type CardWords, useCardWords } from './use-raising-words.ts';

/** What a card is of. */
export interface CardProps {
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly plan: RaisingPlan;
  readonly stage: RaisingStage;
  /** Panels of the whole shell. */
  readonly panels: number;
  /** Its winds and lifts; null while they are reckoned, a text where they can't be. */
  readonly detail: RaisingStageDetail | string | null;
}

/** The card. */
export function StageCard(props: CardProps) {
  const { numbers, plan, stage, panels, detail } = props;
  const words = useWords().raising;
  const write = useCardWords(numbers);
  const up = stage.pieces.flat().length;
  return (
    <article className="raise-card">
      <header>
        <p className="raise-number">
          <strong>{stage.number}</strong>{' '}
          <span className="quiet">{words.card.of(plan.stages.length)}</span>
        </p>
        <div>
          <h3>{stageName(plan.stages, stage, words)}</h3>
          <p>
            {up === 0 ? words.card.nothing : words.card.goesUp(stage.lifts.length, up)}.{' '}
            {words.card.standing(stage.placed.length, panels)}.
          </p>
        </div>
      </header>
      {stage.lifts.length > 0 ? <Lifts plan={plan} stage={stage} write={write} /> : null}
      <div className="raise-facts">
        <Props {...props} write={write} />
        <Passes stage={stage} />
        <Night stage={stage} detail={detail} write={write} />
        <Winds detail={detail} write={write} stopPoint={stage.stopPoint} />
        {detail !== null && typeof detail !== 'string' && detail.lifts.length > 0 ? (
          <Lifting detail={detail} write={write} />
        ) : null}
        <section className="raise-time">
          <h4>{words.card.time}</h4>
          <p>
            {words.card.timeOf(
              write.time(stage.time.up),
              stage.time.ground > 0 ? write.time(stage.time.ground) : null,
              stage.time.tighten > 0 ? write.time(stage.time.tighten) : null,
            )}{' '}
            <span className="quiet">{words.card.timeNote}</span>
          </p>
        </section>
      </div>
      <p className="facts-caution">{words.caution}</p>
    </article>
  );
}

function Lifts({
  plan,
  stage,
  write,
}: {
  plan: RaisingPlan;
  stage: RaisingStage;
  write: CardWords;
}) {
  const words = useWords().raising.card;
  const rows = stage.lifts.map((lift, i) => ({ lift, ...propsOfLift(plan, stage.number, i) }));
  const moves = rows.some(({ goIn, goOut }) => goIn.length + goOut.length > 0);
  return (
    <table className="raise-lifts">
      <caption className="read-out">{words.lifts}</caption>
      <thead>
        <tr>
          <th scope="col">{words.heads.lift}</th>
          <th scope="col">{words.heads.piece}</th>
          <th scope="col">{words.heads.bolts}</th>
          {moves ? (
            <>
              <th scope="col">{words.heads.in}</th>
              <th scope="col">{words.heads.out}</th>
            </>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ lift, goIn, goOut }, i) => (
          <tr key={lift.places.join()}>
            <td>{i + 1}</td>
            <th scope="row">
              {write.piece(lift.places)}
              {lift.made === 'panel' ? null : (
                <span className="quiet"> {words.made[lift.made]}</span>
              )}
              {lift.closes ? <span className="quiet"> {words.closes}</span> : null}
            </th>
            <td>{boltWords(lift.boltsBeforeLettingGo, words)}</td>
            {moves ? (
              <>
                <td className="accent">{goIn.join(', ')}</td>
                <td>{goOut.join(', ')}</td>
              </>
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function boltWords(
  bolts: readonly (number | null)[],
  words: ReturnType<typeof useWords>['raising']['card'],
): string {
  if (bolts.length === 0) return words.boltsNone;
  const range = boltRange(bolts);
  if (range === null) return words.boltsUnknown(bolts.length);
  const { least, most } = range;
  return least === most
    ? words.bolts(least, bolts.length)
    : words.boltsBetween(least, most, bolts.length);
}

function Props({ shell, numbers, plan, stage, write }: CardProps & { readonly write: CardWords }) {
  const words = useWords().raising.card;
  const all = propsAt(plan, stage.number);
  const left = all.filter(({ state }) => state !== 'out').map(({ prop }) => prop.name);
  const fewest = plan.fewest[stage.number - 1] ?? false;
  return (
    <section className="raise-propped">
      <h4>{words.props}</h4>
      <p>{left.length === 0 ? words.propsNone : words.propsStanding(left, fewest)}</p>
      {plan.rigging !== null && all.some(({ prop }) => prop.lines.length > 0) ? (
        <p className="accent">{words.rigged(write.speed(plan.rigging.gust))}</p>
      ) : null}
      {all.length > 0 ? (
        <ul className="raise-props">
          {all.map(({ prop, state }) => (
            <li key={prop.name} className={state === 'stands' ? '' : state}>
              {words.propAt(
                prop.name,
                placesAround(shell, numbers, stage.placed, prop.hub),
                write.height(prop.height),
                prop.lines.map(({ kind, anchor, length }) => ({
                  kind,
                  anchor,
                  length: write.height(length),
                })),
              )}{' '}
              {prop.until === null
                ? words.propStays
                : words.propUntil(prop.until.stage, prop.until.lift + 1)}
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

function Passes({ stage: { pass } }: { stage: RaisingStage }) {
  const words = useWords().raising.card;
  const lines = (['finger', 'snug', 'final'] as const)
    .filter((one) => pass[one].length > 0)
    .map((one) => words[one](pass[one].length));
  return (
    <section className="raise-bolts">
      <h4>{words.pass}</h4>
      <p>{lines.length === 0 ? words.passNone : lines.join(' ')}</p>
    </section>
  );
}

/** Whether it may be left, with the wind that it must not meet: that it stands is no answer to wind. */
function Night({
  stage: { stopPoint, overnight },
  detail,
  write,
}: Pick<CardProps, 'stage' | 'detail'> & { readonly write: CardWords }) {
  const words = useWords().raising.card;
  const bears = detail === null || typeof detail === 'string' ? null : detail.answer.bears;
  const asked = overnight.verdict === 'stands' ? bears : null;
  const untied = asked?.untied.gust ?? null;
  const leave = overnight.leave ?? asked?.stopWork.leave ?? null;
  return (
    <section className={stopPoint ? 'raise-stop yes' : 'raise-stop'}>
      <h4>{words.overnight}</h4>
      <p className="raise-verdict">{words.night[overnight.verdict]}</p>
      {asked === null ? <p>{overnight.why}</p> : null}
      {untied === null ? null : (
        <p className="accent">
          {untied < 0.05 ? words.untiedNever : words.nightUntied(write.speed(untied))}
        </p>
      )}
      {stopPoint && leave !== null ? <p>{words.nightWind(write.speed(leave))}</p> : null}
    </section>
  );
}

function Winds({
  detail,
  write,
  stopPoint,
}: {
  detail: CardProps['detail'];
  write: CardWords;
  stopPoint: boolean;
}) {
  const { raising, ground } = useWords();
  const words = raising.card;
  const bears = detail === null || typeof detail === 'string' ? null : detail.answer.bears;
  return (
    <section className="raise-wind">
      <h4>{words.wind}</h4>
      {detail === null ? (
        <p className="quiet">{words.windWorking}</p>
      ) : bears === null ? (
        <p>{words.windNone(typeof detail === 'string' ? detail : '')}</p>
      ) : (
        <>
          <p className="raise-verdict">
            {bears.stopWork.gust.value < NO_WIND
              ? ground.stages.stopAny
              : words.stopWork(write.speed(bears.stopWork.gust.value))}
          </p>
          <p>
            {words.stopBy(bears.stopWork.setBy)}{' '}
            {bears.stopWork.leave === null || bears.stopWork.gust.value < NO_WIND
              ? ''
              : words.leave(write.speed(bears.stopWork.leave))}{' '}
            {stopPoint || bears.untied.gust === null
              ? ''
              : bears.untied.gust < 0.05
                ? words.untiedNever
                : words.untied(write.speed(bears.untied.gust))}
          </p>
          {bears.stopWork.unknown.length > 0 ? (
            <p className="accent">{words.unknown(bears.stopWork.unknown.join(', '))}</p>
          ) : null}
        </>
      )}
    </section>
  );
}

function Lifting({
  detail: { lifts, heights },
  write,
}: {
  detail: RaisingStageDetail;
  write: CardWords;
}) {
  const words = useWords().raising.card;
  const weighed = lifts.filter(({ mass }) => mass !== null);
  const heaviest = weighed.reduce<(typeof lifts)[number] | null>(
    (most, one) => (most === null || (one.mass ?? 0) > (most.mass ?? 0) ? one : most),
    null,
  );
  const unknown = lifts
    .filter(({ mass }) => mass === null)
    .map(({ places }) => write.piece(places));
  const cannot = weighed.filter(({ way }) => way === null);
  return (
    <section className="raise-lifting">
      <h4>{words.liftHead}</h4>
      {heaviest && heaviest.mass !== null ? (
        <p>
          {words.heaviest(write.piece(heaviest.places), write.mass(heaviest.mass))}{' '}
          {heaviest.way ? words.by[heaviest.way.by](heaviest.way.people, heaviest.way.name) : ''}{' '}
          {heaviest.way ? words.liftGust(write.speed(heaviest.way.gust)) : ''}
        </p>
      ) : null}
      {unknown.length > 0 ? <p className="accent">{words.unweighed(unknown)}</p> : null}
      {heights.short.length > 0 ? (
        <p className="accent">{heights.short.map(sentence).join(' ')}</p>
      ) : (
        <>
          <p>{words.hands(write.reach(heights.hands))}</p>
          {cannot.slice(0, 1).map(({ places, leastChange }) => (
            <p key={places.join()} className="accent">
              {write.piece(places)}: {leastChange}
            </p>
          ))}
        </>
      )}
    </section>
  );
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
