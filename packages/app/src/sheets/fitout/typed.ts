// What is typed into the fit-out's fields of many values: frequencies, hours of weather, readings for drips.

import { type FitoutSettings, FREQUENCIES, forecastTime } from '@shellraise/core';
import type { Typed } from '../../ui/use-typed.ts';

const SCALE = { hz: 1, khz: 1e3, mhz: 1e6, ghz: 1e9 } as const;

/** Frequencies with their units, commas between; none where nothing is typed. */
export function readFrequencies(text: string): Typed<number[]> {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const found = parts.map((part) => {
    const match = /^(\d+(?:\.\d+)?)\s*([kmg]?hz)$/i.exec(part);
    if (match === null) return null;
    const unit = String(match[2]).toLowerCase() as keyof typeof SCALE;
    // Through whole hertz: 1420.4 MHz is 1 420 400 000 Hz.
    return Math.round(Number(match[1]) * SCALE[unit]);
  });
  const good = found.filter(
    (hertz) => hertz !== null && hertz >= FREQUENCIES.least && hertz <= FREQUENCIES.most,
  );
  return good.length === parts.length && good.length <= 12
    ? { ok: true, value: good as number[] }
    : { ok: false };
}

/** A frequency as it is typed: `1420.4 MHz`, `10.7 GHz`. */
export const writeFrequency = (hertz: number): string =>
  hertz >= 2e9
    ? `${Number((hertz / 1e9).toFixed(6))} GHz`
    : `${Number((hertz / 1e6).toFixed(6))} MHz`;

/** Elevations of 0 to 89 degrees, commas between; none where nothing is typed. */
export function readDegrees(text: string): Typed<number[]> {
  const parts = text.split(/[,;]/).map((part) => part.replace('°', '').trim());
  if (parts.join('') === '') return { ok: true, value: [] };
  const found = parts.map((part) => (part === '' ? Number.NaN : Number(part)));
  return found.length <= 360 && found.every((one) => one >= 0 && one <= 89)
    ? { ok: true, value: found }
    : { ok: false };
}

/** Lines of numbers read one by one; the number of the first line that can't be. */
export type Lines<T> =
  | { readonly ok: true; readonly value: readonly T[] }
  | { readonly ok: false; readonly line: number };

function linesOf<T>(text: string, read: (cells: readonly string[]) => T | null): Lines<T> {
  const value: T[] = [];
  for (const [i, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const one = read(line.split(/[,;\t]/).map((cell) => cell.trim()));
    if (one === null) return { ok: false, line: i + 1 };
    value.push(one);
  }
  return { ok: true, value };
}

const within = (text: string | undefined, least: number, most: number): number | null => {
  if (text === undefined || text === '') return null;
  const value = Number(text.replace('−', '-').replace(/\s*(°C|%|mm|h)$/, ''));
  return Number.isFinite(value) && value >= least && value <= most ? value : null;
};

/** Hours of weather, a line each: time, °C, humidity in per cent, rain in millimetres. */
export const readWeather = (text: string): Lines<FitoutSettings['weather'][number]> =>
  linesOf(text, ([at = '', t, h, r = '0']) => {
    const [temperatureC, humidity, rainMm] = [
      within(t, -45, 60),
      within(h, 1, 100),
      within(r, 0, 200),
    ];
    return forecastTime(at) === null ||
      temperatureC === null ||
      humidity === null ||
      rainMm === null
      ? null
      : { at, temperatureC, humidity: humidity / 100, rainMm };
  });

/** The same as typed. */
export const writeWeather = (hours: FitoutSettings['weather']): string =>
  hours
    .map(({ at, temperatureC, humidity, rainMm }) =>
      [at, temperatureC, Number((100 * humidity).toFixed(1)), rainMm].join(', '),
    )
    .join('\n');

/** Readings for drips, a line each: outside °C, inside °C, humidity inside in per cent, hours. */
export const readDrips = (text: string): Lines<FitoutSettings['air']['readings'][number]> =>
  linesOf(text, ([o, i, h, n]) => {
    const [outsideC, insideC, humidity, hours] = [
      within(o, -45, 60),
      within(i, -45, 60),
      within(h, 1, 100),
      within(n, 0, 8784),
    ];
    return outsideC === null || insideC === null || humidity === null || hours === null
      ? null
      : { outsideC, insideC, insideHumidity: humidity / 100, hours };
  });

/** The same as typed. */
export const writeDrips = (readings: FitoutSettings['air']['readings']): string =>
  readings
    .map(({ outsideC, insideC, insideHumidity, hours }) =>
      [outsideC, insideC, Number((100 * insideHumidity).toFixed(1)), hours].join(', '),
    )
    .join('\n');
