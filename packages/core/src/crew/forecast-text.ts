// A wind forecast typed or pasted in as text: one line an hour, as `09:00 5 9 m/s` (time, mean, gust), a
// date on a line of its own or before the time, and the temperature if it is told (`18 °C`). Or a table
// with a header (`time; mean km/h; gust km/h; temperature °C`, columns by tab, semicolon or comma). A
// number without a unit is refused: nobody may take knots for metres per second.

import type { Fault, Read } from '../measure/fault.ts';
import { readSpeed, readTemperatureC } from '../measure/units.ts';
import { FORECAST_GAP } from './common.ts';
import { clockTime, DAY, dateOf, dayNumber, secondsOfDay } from './date.ts';
import type { ForecastHour } from './schema.ts';

/** A forecast as read. */
export interface ForecastRead {
  /** In order of time. */
  readonly hours: readonly ForecastHour[];
  /** What is odd but may be so: gaps, jumps. A sentence each. */
  readonly told: readonly string[];
}

/** Longest text that is read, characters. */
export const MAX_FORECAST_CHARACTERS = 200_000;

/** Mean winds from here on are a hurricane, m/s (Beaufort 12): a slip of unit. */
const HURRICANE = 32.7;

/** Gusts are seldom over three times the mean, nor do they treble from one hour to the next. */
const TREBLE = 3;

/** The forecast of a text, or every fault with its line. `date` is that of times before any date in the
 * text. */
export function readForecast(text: string, date?: string): Read<ForecastRead> {
  if (text.length > MAX_FORECAST_CHARACTERS)
    return {
      ok: false,
      faults: [
        {
          path: 'forecast',
          found: `${text.length} characters`,
          expected: `at most ${MAX_FORECAST_CHARACTERS}`,
        },
      ],
    };
  const faults: Fault[] = [];
  const rows = linesOf(text, date, faults);
  const sorted = [...rows].sort((a, b) => a.time - b.time);
  sorted.forEach((row, i) => {
    const before = sorted[i - 1];
    if (
      before &&
      before.time === row.time &&
      (before.gust !== row.gust || before.mean !== row.mean)
    )
      faults.push(
        fault(
          row.line,
          `another forecast for ${timeText(row.time)}`,
          `one, as in line ${before.line}`,
        ),
      );
  });
  if (rows.length === 0 && faults.length === 0)
    faults.push({
      path: 'forecast',
      found: 'no line with a time',
      expected: 'lines such as 09:00 5 9 m/s',
    });
  if (faults.length > 0) return { ok: false, faults };
  const once = sorted.filter((row, i) => sorted[i - 1]?.time !== row.time);
  return { ok: true, value: { hours: once.map(hourOf), told: oddities(once) } };
}

interface Row {
  readonly line: number;
  /** Seconds from 1970 by the site's clock. */
  readonly time: number;
  readonly mean: number;
  readonly gust: number;
  readonly temperatureC: number | null;
}

const fault = (line: number, found: string, expected: string): Fault => ({
  path: `forecast line ${line}`,
  found,
  expected,
});

const timeText = (time: number): string =>
  `${dateOf(Math.floor(time / DAY))} ${clockTime(time - DAY * Math.floor(time / DAY))}`;

const hourOf = ({ time, mean, gust, temperatureC }: Row): ForecastHour => ({
  at: timeText(time).replace(' ', 'T'),
  mean,
  gust,
  temperatureC,
});

/** What the header of a table says of its columns. */
interface Columns {
  readonly separator: string;
  readonly time: number;
  readonly date: number;
  readonly mean: number;
  readonly gust: number;
  readonly temperature: number;
  readonly units: readonly string[];
}

function linesOf(text: string, given: string | undefined, faults: Fault[]): Row[] {
  const rows: Row[] = [];
  let date = given ?? null;
  let columns: Columns | null = null;
  text.split(/\r\n|\n|\r/).forEach((raw, i) => {
    const [line, plain] = [i + 1, raw.trim()];
    if (plain === '' || plain.startsWith('#')) return;
    const alone = /^(?:[A-Za-z]+,?\s+)?(\d{4}-\d{2}-\d{2})$/.exec(plain);
    if (alone) {
      date = dayNumber(String(alone[1])) === null ? null : String(alone[1]);
      if (date === null) faults.push(fault(line, plain, 'a date that there is'));
      return;
    }
    const header = headerOf(plain);
    if (header) {
      columns = header;
      return;
    }
    const row = columns ? tableRow(plain, line, columns, date) : freeRow(plain, line, date);
    if ('path' in row) faults.push(row);
    else {
      date = dateOf(Math.floor(row.time / DAY));
      faults.push(...sizeFaults(row));
      rows.push(row);
    }
  });
  return rows;
}

/** The columns of a header line, null where it is none. */
function headerOf(line: string): Columns | null {
  if (!/gust/i.test(line) || !/\b(time|hour|when|date)\b/i.test(line)) return null;
  const separator = ['\t', ';', ','].find((one) => line.includes(one)) ?? '\t';
  const cells = line.split(separator).map((cell) => cell.trim());
  const at = (words: RegExp): number => cells.findIndex((cell) => words.test(cell));
  return {
    separator,
    time: at(/\b(time|hour|when)\b/i) >= 0 ? at(/\b(time|hour|when)\b/i) : at(/\bdate\b/i),
    date: at(/\bdate\b/i),
    gust: at(/gust/i),
    mean: cells.findIndex(
      (cell) => /mean|wind|speed|average/i.test(cell) && !/gust|direction/i.test(cell),
    ),
    temperature: at(/temp/i),
    units: cells.map(
      (cell) => /(m\/s|km\/h|kmh|kph|mph|kn|kts?|knots|°?[CF])\)?$/i.exec(cell)?.[1] ?? '',
    ),
  };
}

function tableRow(text: string, line: number, columns: Columns, date: string | null): Row | Fault {
  const cells = text.split(columns.separator).map((cell) => cell.trim());
  const cell = (at: number): string => cells[at] ?? '';
  const withUnit = (at: number): string =>
    /[a-z°]/i.test(cell(at)) ? cell(at) : `${cell(at)} ${columns.units[at] ?? ''}`.trim();
  if (columns.mean < 0)
    return fault(
      line,
      'a table without a column of mean wind',
      'columns named time, mean and gust',
    );
  const day = columns.date >= 0 && columns.date !== columns.time ? cell(columns.date) : date;
  const temperature = columns.temperature < 0 ? '' : withUnit(columns.temperature);
  return rowOf(
    line,
    cell(columns.time),
    day,
    withUnit(columns.mean),
    withUnit(columns.gust),
    temperature,
  );
}

const SPEED = 'm\\/s|mps|km\\/h|kmh|kph|mph|mi\\/h|knots?|kts?|kn';
const NUMBER = '\\d+(?:[.,]\\d+)?';
const FREE = new RegExp(
  `^(?:(\\d{4}-\\d{2}-\\d{2})[ T]\\s*)?(\\d{1,2}[:.h]\\d{2}|\\d{1,2}\\s*[ap]m)[\\s,;]+(${NUMBER})\\s*(${SPEED})?[\\s,;]+(?:gusts?\\s+)?(${NUMBER})\\s*(${SPEED})?(?:[\\s,;]+(-?${NUMBER}\\s*°?[CF]))?$`,
  'i',
);

function freeRow(text: string, line: number, date: string | null): Row | Fault {
  const match = FREE.exec(text);
  if (!match)
    return fault(
      line,
      JSON.stringify(text.slice(0, 60)),
      'a time, the mean and the gust with their unit, such as 09:00 5 9 m/s',
    );
  const [, day, time, mean, meanUnit, gust, gustUnit, temperature] = match;
  const unit = gustUnit ?? meanUnit ?? '';
  return rowOf(
    line,
    String(time),
    day ?? date,
    `${mean} ${meanUnit ?? unit}`,
    `${gust} ${unit}`,
    temperature ?? '',
  );
}

function rowOf(
  line: number,
  timeCell: string,
  date: string | null,
  meanText: string,
  gustText: string,
  temperatureText: string,
): Row | Fault {
  const stamp = /^(\d{4}-\d{2}-\d{2})[ T]\s*(.+)$/.exec(timeCell);
  const [day, clock] = stamp ? [String(stamp[1]), String(stamp[2])] : [date, timeCell];
  const seconds = secondsOfDay(
    clock.replace(/:00$/, (end) => (/:\d\d:00$/.test(clock) ? '' : end)),
  );
  if (seconds === null) return fault(line, JSON.stringify(timeCell), 'a time of day such as 09:00');
  const days = day === null ? null : dayNumber(day);
  if (days === null)
    return fault(
      line,
      day ?? 'a time without a date',
      'a date such as 2026-06-12, here or on a line before',
    );
  const [mean, gust] = [readSpeed(meanText), readSpeed(gustText)];
  for (const [name, read] of [
    ['mean', mean],
    ['gust', gust],
  ] as const)
    if (!read.ok)
      return fault(line, `${name} ${read.faults[0]?.found}`, String(read.faults[0]?.expected));
  const temperature = temperatureText === '' ? null : readTemperatureC(temperatureText);
  if (temperature && !temperature.ok)
    return fault(
      line,
      `temperature ${temperature.faults[0]?.found}`,
      String(temperature.faults[0]?.expected),
    );
  return {
    line,
    time: days * DAY + seconds,
    mean: mean.ok ? mean.value : Number.NaN,
    gust: gust.ok ? gust.value : Number.NaN,
    temperatureC: temperature?.ok ? temperature.value : null,
  };
}

/** Winds that no forecast says: a slip of unit or of column. */
function sizeFaults({ line, mean, gust, temperatureC }: Row): Fault[] {
  const faults: Fault[] = [];
  const speed = (x: number): string => `${x.toFixed(1)} m/s`;
  if (mean < 0 || gust < mean)
    faults.push(
      fault(
        line,
        `a gust of ${speed(gust)} with a mean of ${speed(mean)}`,
        'the mean first, then a gust that is no less',
      ),
    );
  if (mean >= HURRICANE || gust > 100)
    faults.push(
      fault(
        line,
        `a mean of ${speed(mean)}, gust ${speed(gust)}`,
        'less than a hurricane: were km/h, mph or knots meant?',
      ),
    );
  if (temperatureC !== null && !(temperatureC > -40 && temperatureC < 55))
    faults.push(fault(line, `${temperatureC.toFixed(0)} °C`, '−40 to 55 °C: was °F meant?'));
  return faults;
}

function oddities(rows: readonly Row[]): string[] {
  const out: string[] = [];
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    if (before === undefined) return;
    const gap = row.time - before.time;
    if (gap > FORECAST_GAP)
      out.push(
        `Nothing is forecast from ${timeText(before.time)} to ${timeText(row.time)}, ${(gap / 3600).toFixed(0)} hours.`,
      );
    const [low, high] = [Math.min(row.gust, before.gust), Math.max(row.gust, before.gust)];
    if (gap <= FORECAST_GAP && high > TREBLE * low && high - low > 8)
      out.push(
        `The gust goes from ${before.gust.toFixed(1)} to ${row.gust.toFixed(1)} m/s by ${timeText(row.time)} (line ${row.line}): is its unit the same?`,
      );
  });
  const wild = rows.filter(({ mean, gust }) => mean > 2 && gust > TREBLE * mean);
  if (wild.length > 0)
    out.push(
      `${wild.length} gusts are over three times their mean, the first in line ${wild[0]?.line}: are both in one unit?`,
    );
  return out;
}
