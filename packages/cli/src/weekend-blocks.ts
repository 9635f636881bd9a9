// A weekend, now and a storm as tables and sentences.

import {
  clockTime,
  dayNumber,
  type NowAnswer,
  type StormAnswer,
  type Weekend,
  weekday,
} from '@shellraise/core';
import { flagBlock } from './ground-loads.ts';
import { speed } from './raise-blocks.ts';
import { bullets, caution, count, heading, paint, right, table, wrap } from './terminal.ts';

const percent = (x: number): string => `${Math.round(100 * x)} %`;
const hours = (seconds: number): string => `${(seconds / 3600).toFixed(1)} h`;

/** The weekend. */
export function weekendBlocks(weekend: Weekend): string[] {
  const { days, tasks, whatIfs, troubles, finish } = weekend;
  const names = new Map(tasks.map(({ id, what }) => [id, what]));
  return [
    heading('Weekend'),
    wrap(
      `${hours(weekend.work)} of work. Planned to be done ${momentOf(weekend, weekend.end)}; half of ${weekend.runs.toLocaleString('en')} runs are done ${momentOf(weekend, finish.p50)}, nine of ten ${momentOf(weekend, finish.p90)}.`,
      '',
    ),
    table(
      [
        { head: 'day' },
        right('light'),
        right('people'),
        right('gust'),
        { head: 'evening' },
        right('stands in'),
        right('night'),
        right('done by dark'),
        right('caught'),
      ],
      days.map((day) => [
        `${day.weekday.slice(0, 3)} ${day.date}`,
        day.daylight ? day.daylight.map(clockTime).join('–') : 'supposed',
        String(Math.max(...day.hours.map(({ people }) => people))),
        speed(mostGust(day)),
        day.evening.stage === null
          ? day.evening.verdict
          : `stage ${day.evening.stage}, ${day.evening.verdict}`,
        day.evening.stage === null ? '' : speed(day.evening.allowedGust),
        speed(day.evening.nightGust),
        percent(day.odds.done),
        percent(day.odds.caught),
      ]),
    ),
    table(
      [{ head: 'each evening, the likeliest stop points' }, { head: '' }],
      days.map((day) => [
        `${day.weekday} ${day.date}`,
        [...day.odds.at]
          .sort((a, b) => b.odds - a.odds)
          .slice(0, 4)
          .map(
            ({ stage, odds }) => `${stage === null ? 'none' : `stage ${stage}`} ${percent(odds)}`,
          )
          .join(', '),
      ]),
    ),
    troubles.length === 0
      ? ''
      : bullets(
          paint.red('What keeps it from being done, and the least that helps:'),
          troubles.map(({ found, change }) => `${found}. Least change: ${change}.`),
        ),
    bullets(
      'What a change would buy, in odds of being done:',
      whatIfs.map(
        ({ words, gain }) =>
          `${words}: ${gain.map((one) => `${weekdayOf(one.date)} ${signed(one.gain)}`).join(', ')} points`,
      ),
    ),
    bullets(
      'What matters most for the finish:',
      weekend.matter.slice(0, 5).map((id) => `${id}: ${names.get(id)}`),
    ),
    bullets('Assumed:', weekend.assumed),
    flagBlock('Not confirmed:', weekend.flags),
    ...weekend.cautions.map((one) => caution(one)),
  ];
}

const mostGust = ({ hours: own }: Weekend['days'][number]): number | null => {
  const known = own.flatMap(({ gust, people }) => (gust === null || people === 0 ? [] : [gust]));
  return known.length === 0 ? null : Math.max(...known);
};

const weekdayOf = (date: string): string => weekday(dayNumber(date) ?? 0).slice(0, 3);

const signed = (x: number): string => {
  const points = Math.round(100 * x);
  return points > 0 ? `+${points}` : String(points).replace('-', '−');
};

/** A time of the plan as weekday and clock. */
function momentOf({ days }: Weekend, at: number | null): string {
  if (at === null) return 'not in these days';
  const day = days[Math.min(days.length - 1, Math.floor(at / 86_400))];
  return `${day?.weekday ?? ''} ${clockTime(at - Math.floor(at / 86_400) * 86_400)}`;
}

/** What to do now. */
export function nowBlocks(now: NowAnswer): string[] {
  const rows = (cards: NowAnswer['cards']): string[][] =>
    cards.map((card) => [
      card.id,
      wrap(card.what, '', 44),
      `${card.people}${card.climbers > 0 ? `, ${card.climbers} climb` : ''}${card.leads > 0 ? `, ${card.leads} leads` : ''}`,
      `${Math.round(card.seconds / 60)} min`,
      card.gustLimit === null ? '' : speed(card.gustLimit),
    ]);
  const head = [
    { head: 'card' },
    { head: 'what' },
    { head: 'people' },
    right('takes'),
    right('stops at'),
  ];
  const today = now.weekend.days[0];
  return [
    heading(`Now, ${clockTime(now.at)}`),
    now.cards.length === 0 ? paint.bold('No card can be begun now.') : table(head, rows(now.cards)),
    now.soon.length === 0 ? '' : `As hands come free:\n${table(head, rows(now.soon))}`,
    bullets(
      'These wait:',
      now.waiting.map(({ id, why }) => `${id}: ${why}`),
    ),
    bullets(
      now.spare > 0 ? `Jobs for ${count(now.spare, 'spare hand')}:` : 'Jobs for spare hands:',
      now.jobs.map(
        ({ what, cureHours, cautions }) =>
          `${what}${cureHours === null ? '' : ` (cures ${cureHours} h)`}.${cautions.length > 0 ? ` ${cautions.join(' ')}` : ''}`,
      ),
    ),
    today ? wrap(today.evening.words, '') : '',
    wrap(
      `Odds now of being done: ${now.weekend.days.map(({ date, odds }) => `by dark on ${weekdayOf(date)} ${percent(odds.done)}`).join(', ')}.`,
      '',
    ),
    bullets('Assumed:', now.assumed),
    ...now.weekend.cautions.map((one) => caution(one)),
  ];
}

/** What to do before a storm. */
export function stormBlocks(storm: StormAnswer): string[] {
  return [
    heading('Storm'),
    paint.bold(wrap(storm.words, '')),
    table(
      [
        { head: 'do' },
        { head: 'what' },
        right('hands'),
        right('climb'),
        right('takes'),
        right('by'),
      ],
      storm.steps.map((step) => [
        step.what,
        wrap(step.words, '', 52),
        String(step.hands),
        String(step.climbers),
        `${Math.round(step.seconds / 60)} min`,
        `+${clockTime(step.by)}`,
      ]),
    ),
    bullets(
      'Ways weighed:',
      storm.choices.map(
        ({ way, stage, stands, odds, seconds }) =>
          `${way}${stage === 0 ? ' to the ground' : ` ${way === 'stay' ? 'at' : 'to'} stage ${stage}`}: ${hours(seconds)}, in time ${percent(odds)}${stage === 0 ? '' : `, stands in ${speed(stands)}`}`,
      ),
    ),
    bullets('Assumed:', storm.assumed),
    ...storm.cautions.map((one) => caution(one)),
  ];
}
