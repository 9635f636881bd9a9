// Changes to what the project says about ground and loads, as plain data. Metres.

import {
  type AnchorChoice,
  type GroundSettings,
  type LevelMethod,
  type LevelSetUp,
  readLength,
  type SurveyReading,
} from '@shellraise/core';
import type { Typed } from '../../ui/use-typed.ts';

/** A typed number within limits; nothing typed is no value. */
export function within(text: string, least: number, most: number): Typed {
  if (text.trim() === '') return { ok: true, value: undefined };
  const value = Number(text.trim().replace(',', '.'));
  return Number.isFinite(value) && value >= least && value <= most
    ? { ok: true, value }
    : { ok: false };
}

/** A typed length within limits, metres; a bare number is in `unit`. */
export function lengthWithin(
  text: string,
  unit: 'mm' | 'm' | 'in' | 'ft',
  least: number,
  most: number,
): Typed {
  if (text.trim() === '') return { ok: true, value: undefined };
  const sign = /^[-−]/.test(text.trim()) ? -1 : 1;
  const read = readLength(text.trim().replace(/^[-−+]/, ''), { unit });
  if (!read.ok) return { ok: false };
  const value = sign * read.value;
  return value >= least && value <= most ? { ok: true, value } : { ok: false };
}

/** Lengths with commas between, each within limits; none where nothing is typed. A bare number is in
 * `unit`; a unit after the last counts for those before it that have none. */
export function lengthsWithin(
  text: string,
  unit: 'mm' | 'in',
  least: number,
  most: number,
  count: number,
): Typed<number[]> {
  const parts = text
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const last = /[a-z"″]+$/i.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const found = parts.map((part) =>
    lengthWithin(/^[\d./\s]+$/.test(part) ? `${part} ${last || unit}` : part, unit, least, most),
  );
  const good = found.flatMap((one) => (one.ok && one.value !== undefined ? [one.value] : []));
  return good.length === parts.length && good.length <= count
    ? { ok: true, value: good }
    : { ok: false };
}

/** What was typed where nothing is no answer. */
export const required = (typed: Typed): Typed =>
  typed.ok && typed.value === undefined ? { ok: false } : typed;

/** The first set-up of the levels; where there is none, one without a reading by `method`. */
export const firstSetUp = (levels: readonly LevelSetUp[], method: LevelMethod): LevelSetUp =>
  levels[0] ?? { method, readings: [] };

/** The levels with one reading of the first set-up put in its place; undefined takes it out, and a
 * set-up without a reading goes. `method`: of a set-up that begins with this reading. */
export function withLevel(
  levels: GroundSettings['levels'],
  hub: number,
  reading: number | undefined,
  method: LevelMethod,
): GroundSettings['levels'] {
  const first = firstSetUp(levels, method);
  const others = first.readings.filter(({ at }) => at !== hub);
  const readings = reading === undefined ? others : [...others, { at: hub, reading }];
  const rest = levels.slice(1);
  return readings.length === 0
    ? rest
    : [{ method: first.method, readings: [...readings] }, ...rest];
}

/** The levels with another method for the first set-up; none stay none. */
export const withMethod = (
  levels: GroundSettings['levels'],
  method: LevelMethod,
): GroundSettings['levels'] => levels.map((setUp, i) => (i === 0 ? { ...setUp, method } : setUp));

/** What the form reads of each hub. */
export const surveyed = ['radius', 'chord', 'level'] as const;
/** One of them. */
export type Surveyed = (typeof surveyed)[number];

const isOf = (reading: SurveyReading, what: Surveyed, hub: number, next: number): boolean =>
  what === 'chord'
    ? reading.what === 'chord' &&
      ((reading.from === hub && reading.to === next) ||
        (reading.from === next && reading.to === hub))
    : reading.what === what && 'hub' in reading && reading.hub === hub;

/** The last reading of a hub, metres; a chord goes to `next`. */
export function surveyValue(
  survey: readonly SurveyReading[],
  what: Surveyed,
  hub: number,
  next: number,
): number | undefined {
  const found = survey.filter((reading) => isOf(reading, what, hub, next)).at(-1);
  if (found === undefined) return undefined;
  return 'length' in found ? found.length : found.height;
}

/** Readings of the survey that the screen does not show: diagonals, and those that were read again since. */
export function furtherReadings(survey: readonly SurveyReading[], hubs: number): number {
  const shown = Array.from({ length: hubs }, (_, i) => i + 1).flatMap((hub) =>
    surveyed.filter((what) => surveyValue(survey, what, hub, (hub % hubs) + 1) !== undefined),
  );
  const heights = survey.filter(({ what }) => what === 'height');
  return survey.length - heights.length - shown.length;
}

/** The survey with one reading of a hub put in its place; undefined takes it out. */
export function withReading(
  survey: GroundSettings['survey'],
  what: Surveyed,
  hub: number,
  next: number,
  value: number | undefined,
): GroundSettings['survey'] {
  const others = survey.filter((reading) => !isOf(reading, what, hub, next));
  if (value === undefined) return others;
  if (what === 'chord') return [...others, { what, from: hub, to: next, length: value }];
  if (what === 'radius') return [...others, { what, hub, length: value }];
  return [...others, { what, hub, height: value }];
}

/** A height of an upper hub. */
export type HeightReading = Extract<SurveyReading, { what: 'height' }>;

/** A height as it was typed; null where ring or hub is no whole number from 1, or the height no length
 * within 20 m. `read`: a length to metres. */
export function heightFrom(
  { ring, number, height }: Readonly<Record<'ring' | 'number' | 'height', string>>,
  read: (text: string) => { readonly ok: true; readonly value: number } | { readonly ok: false },
): HeightReading | null {
  const whole = (text: string, most: number): number | null =>
    /^\s*\d+\s*$/.test(text) && Number(text) >= 1 && Number(text) <= most ? Number(text) : null;
  const [r, n, h] = [whole(ring, 100), whole(number, 1000), read(height.trim())];
  return r !== null && n !== null && h.ok && Math.abs(h.value) <= 20
    ? { what: 'height', ring: r, number: n, height: h.value }
    : null;
}

/** The survey without the height of a hub. */
export const withoutHeight = (
  survey: GroundSettings['survey'],
  { ring, number }: Pick<HeightReading, 'ring' | 'number'>,
): GroundSettings['survey'] =>
  survey.filter((one) => one.what !== 'height' || one.ring !== ring || one.number !== number);

/** The survey with a height put in the place of another of that hub. */
export const withHeight = (
  survey: GroundSettings['survey'],
  height: HeightReading,
): GroundSettings['survey'] => [...withoutHeight(survey, height), height];

/** The sorts of anchors, each as it comes: sizes are a start, to be changed. */
export const anchorStarts: Readonly<Record<AnchorChoice['type'], AnchorChoice>> = {
  'wood pickets': { type: 'wood pickets', combination: '1-1' },
  'steel pickets': { type: 'steel pickets', count: 2 },
  'lawn stake': { type: 'lawn stake' },
  'gravel bar': { type: 'gravel bar' },
  bar: { type: 'bar', diameter: 0.025, depth: 1 },
  deadman: { type: 'deadman', length: 1.2, face: 0.2, depth: 0.9, body: 'timber' },
  helical: { type: 'helical', torque: 500, plate: 0.15 },
  other: { type: 'other', name: 'own anchor', spacing: 1 },
  ballast: { type: 'ballast', underlay: 'wood', mass: 500 },
};

/** A field of a sort of anchor: what it is typed in, and its limits as the project file has them. */
export type AnchorField =
  | {
      readonly key: string;
      readonly as: 'length' | 'number';
      readonly least: number;
      readonly most: number;
    }
  | { readonly key: string; readonly as: 'choice'; readonly of: readonly string[] }
  | { readonly key: string; readonly as: 'text' };

/** The fields of each sort of anchor. */
export const anchorFields: Readonly<Record<AnchorChoice['type'], readonly AnchorField[]>> = {
  'wood pickets': [{ key: 'combination', as: 'choice', of: ['1', '1-1', '1-1-1', '2-1', '3-2-1'] }],
  'steel pickets': [{ key: 'count', as: 'number', least: 1, most: 12 }],
  'lawn stake': [],
  'gravel bar': [],
  bar: [
    { key: 'diameter', as: 'length', least: 0.01, most: 0.06 },
    { key: 'depth', as: 'length', least: 0.3, most: 2 },
  ],
  deadman: [
    { key: 'length', as: 'length', least: 0.4, most: 6 },
    { key: 'face', as: 'length', least: 0.05, most: 1 },
    { key: 'depth', as: 'length', least: 0.3, most: 5 },
    { key: 'body', as: 'choice', of: ['timber', 'log'] },
  ],
  helical: [
    { key: 'torque', as: 'number', least: 20, most: 20_000 },
    { key: 'plate', as: 'length', least: 0.05, most: 0.6 },
  ],
  other: [
    { key: 'name', as: 'text' },
    { key: 'spacing', as: 'length', least: 0.01, most: 100 },
  ],
  ballast: [
    { key: 'underlay', as: 'choice', of: ['steel', 'wood', 'concrete'] },
    { key: 'mass', as: 'number', least: 1, most: 20_000 },
  ],
};
