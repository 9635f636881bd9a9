// What people type of now: "6 people, 2 climb, 1 leads, 3 h, 9 m/s", and of a storm: "2 h, 18 m/s".

import { badInput } from './ending.ts';

/** What `--now` said; null where it did not. */
export interface NowTyped {
  readonly people: number;
  readonly climb: number;
  readonly lead: number | null;
  readonly lightHours: number | null;
  readonly gust: number | null;
  readonly time: string | null;
}

const SPEEDS: Readonly<Record<string, number>> = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 0.44704,
  kn: 0.514444,
  kt: 0.514444,
};

/** Reads `--now`: parts with commas between, each a number with its word or unit, in any order. */
export function nowTyped(text: string): NowTyped {
  const found: Record<'people' | 'climb' | 'lead' | 'hours' | 'gust', number | null> = {
    people: null,
    climb: null,
    lead: null,
    hours: null,
    gust: null,
  };
  let time: string | null = null;
  for (const part of text.split(',').map((one) => one.trim())) {
    if (/^\d{1,2}:\d\d$/.test(part)) {
      time = part.padStart(5, '0');
      continue;
    }
    const [, digits = '', word = ''] = /^(\d+(?:\.\d+)?)\s*(\S+)/.exec(part) ?? [];
    const key = keyOf(word.toLowerCase());
    if (key === null)
      throw badInput(
        `--now: found "${part}", expected parts such as "6 people, 2 climb, 1 leads, 3 h, 9 m/s, 13:30"`,
      );
    found[key] = Number(digits) * (key === 'gust' ? (SPEEDS[word.toLowerCase()] as number) : 1);
  }
  if (found.people === null)
    throw badInput(
      '--now: found no number of people, expected one, such as "6 people, 2 climb, 3 h"',
    );
  const { people, climb, lead, hours: lightHours, gust } = found;
  return { people, climb: climb ?? 0, lead, lightHours, gust, time };
}

function keyOf(word: string): 'people' | 'climb' | 'lead' | 'hours' | 'gust' | null {
  if (/^(people|persons?|hands?)$/.test(word)) return 'people';
  if (/^climb(s|ers?)?$/.test(word)) return 'climb';
  if (/^leads?(ers?)?$/.test(word)) return 'lead';
  if (/^(h|hours?)$/.test(word)) return 'hours';
  return word in SPEEDS ? 'gust' : null;
}

/** Reads `--storm`: hours, and the gusts where they are told. */
export function stormTyped(text: string): { hours: number; gust: number | null } {
  let [hours, gust] = [Number.NaN, null as number | null];
  for (const part of text.split(',').map((one) => one.trim())) {
    const [, digits = '', word = ''] = /^(\d+(?:\.\d+)?)\s*(\S*)$/.exec(part) ?? [];
    if (digits !== '' && (word === '' || keyOf(word) === 'hours')) hours = Number(digits);
    else if (digits !== '' && word in SPEEDS) gust = Number(digits) * (SPEEDS[word] as number);
    else
      throw badInput(`--storm: found "${part}", expected a time, such as "2 h" or "2 h, 18 m/s"`);
  }
  if (Number.isNaN(hours))
    throw badInput('--storm: found no hours, expected some, such as "2 h, 18 m/s"');
  return { hours, gust };
}

/** Reads `--done`: stages that are done, and lifts of the next: "8" or "8+3". */
export function doneTyped(text: string): { stage: number; lifts: number } {
  const match = /^(\d+)(?:\+(\d+))?$/.exec(text.trim());
  if (!match)
    throw badInput(`--done: found "${text}", expected stages, and lifts of the next: "8" or "8+3"`);
  return { stage: Number(match[1]), lifts: Number(match[2] ?? 0) };
}
