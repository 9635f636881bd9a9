// One day of the weekend: its bars by the hour, where its evening ends, the odds, the close-down card.

import { clockTime, type Weekend, type WeekendDay } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { type DayBars, dayBars } from './day-bars.ts';
import { oddsText } from './day-words.ts';

/** The card. */
export function DayCard({ weekend, k }: { weekend: Weekend; k: number }) {
  const words = useWords().weekend.plan;
  const day = weekend.days[k];
  const bars = dayBars(weekend.tasks, weekend.days, k);
  if (!day || !bars) return null;
  const span = (own: readonly [number, number] | null): string =>
    own === null ? words.never : words.span(clockTime(own[0]), clockTime(own[1]));
  return (
    <section className="day-card">
      <h4>
        <strong>{day.weekday}</strong> {day.date}
      </h4>
      <p className="quiet">
        {day.daylight === null && day.sun === null
          ? ''
          : words.light(span(day.daylight), span(day.sun))}
      </p>
      <DayChart day={day} bars={bars} />
      <Evening day={day} />
    </section>
  );
}

/** Size of the bars; texts stand beside and below, at their own size. */
const WIDTH = 600;
const LANE = 18;

function DayChart({ day, bars }: { day: WeekendDay; bars: DayBars }) {
  const words = useWords().weekend.plan;
  const { lanes, light, dark, hours } = bars;
  const height = Math.max(1, lanes.length) * LANE;
  const columns = { gridTemplateColumns: `repeat(${hours.length}, minmax(0, 1fr))` };
  return (
    <div className="day-chart">
      <ul className="day-lanes" aria-hidden="true">
        {lanes.map(({ lane }) => (
          <li key={lane}>{words.lanes[lane]}</li>
        ))}
      </ul>
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        preserveAspectRatio="none"
        style={{ height }}
        role="img"
        aria-label={words.chart(day.weekday, bars.tasks)}
      >
        {light === null ? null : (
          <>
            <rect className="day-night" width={light[0] * WIDTH} height={height} />
            <rect
              className="day-night"
              x={light[1] * WIDTH}
              width={(1 - light[1]) * WIDTH}
              height={height}
            />
          </>
        )}
        {hours.slice(1).map(({ hour }, i) => (
          <path
            key={hour}
            className="day-hour"
            d={`M${((i + 1) * WIDTH) / hours.length} 0V${height}`}
          />
        ))}
        {lanes.map(({ lane, bars: own }, row) =>
          own.map((bar) => (
            <rect
              key={bar.id}
              className={lane === 'lift' ? 'day-bar lift' : 'day-bar'}
              x={bar.x * WIDTH}
              width={bar.width * WIDTH}
              y={row * LANE + 3}
              height={LANE - 6}
            >
              <title>{bar.what}</title>
            </rect>
          )),
        )}
        <path className="day-dark" d={`M${dark * WIDTH} 0V${height}`} />
      </svg>
      <span className="quiet" aria-hidden="true" />
      <ol className="day-hours" style={columns}>
        {hours.map(({ hour }) => (
          <li key={hour}>{hour}</li>
        ))}
      </ol>
      <span>{words.people}</span>
      <ol className="day-hours" style={columns}>
        {hours.map(({ hour, people }) => (
          <li key={hour}>{people > 0 ? people : '·'}</li>
        ))}
      </ol>
      {hours.some(({ gust }) => gust !== null) ? (
        <>
          <span>{words.gusts}</span>
          <ol className="day-hours" style={columns}>
            {hours.map(({ hour, gust }) => (
              <li key={hour}>{gust === null ? '·' : Math.round(gust)}</li>
            ))}
          </ol>
        </>
      ) : null}
    </div>
  );
}

/** Odds below which a stop point has no bar of its own. */
const SELDOM = 0.05;

function Evening({ day }: { day: WeekendDay }) {
  const words = useWords().weekend.plan;
  const { evening, closeDown, odds } = day;
  const bad = evening.verdict === 'gives way' || evening.verdict === 'between';
  // Few bars: stop points that are seldom the last one count together.
  const often = odds.at.filter((one) => one.odds >= SELDOM);
  const others = odds.at.reduce((sum, one) => sum + (one.odds < SELDOM ? one.odds : 0), 0);
  const rows = [
    ...(odds.done > 0 ? [{ odds: odds.done, text: words.done(oddsText(odds.done)) }] : []),
    ...often.map((one) => ({ odds: one.odds, text: words.at(one.stage, oddsText(one.odds)) })),
    ...(others > 0.005
      ? [{ odds: others, text: words.atOthers(odds.at.length - often.length, oddsText(others)) }]
      : []),
    ...(odds.caught >= 0.005
      ? [{ odds: odds.caught, text: words.caught(oddsText(odds.caught)) }]
      : []),
  ];
  return (
    <>
      <p>
        <strong>
          {words.evening}, {clockTime(day.dark)}:
        </strong>{' '}
        <span className={bad ? 'accent' : ''}>{evening.words}</span>
      </p>
      <ul className="day-odds">
        {rows.map(({ odds: own, text }) => (
          <li key={text}>
            <span className="odds-bar" aria-hidden="true">
              <span style={{ width: `${own * 100}%` }} />
            </span>
            {text}
          </li>
        ))}
      </ul>
      {closeDown === null ? null : (
        <details className="tags">
          <summary>{words.closeDown(closeDown.title)}</summary>
          <p>{words.closeDownNote(Math.round(closeDown.seconds / 60), closeDown.hands)}</p>
          <CloseDownSteps card={closeDown} />
        </details>
      )}
    </>
  );
}

/** What to do before the shell is left for the night, and the cautions. */
export function CloseDownSteps({
  card: { steps, cautions },
}: {
  card: Pick<NonNullable<Weekend['days'][number]['closeDown']>, 'steps' | 'cautions'>;
}) {
  return (
    <>
      <ol className="steps">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {cautions.map((one) => (
        <p key={one} className="facts-caution">
          {one}
        </p>
      ))}
    </>
  );
}
