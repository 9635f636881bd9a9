// What can be noted by a form, one table: each form's fields and how they make an entry. A text is read
// in the units of the person; what can't be read is told, and nothing is noted.

import {
  type ForceUnit,
  type LengthUnit,
  readForce,
  readLength,
  readSpeed,
  type SpeedUnit,
  type What,
  whatSchema,
} from '@shellraise/core';

/** The forms, in the order of the tab. */
export const entryForms = [
  'person',
  'weather',
  'condition',
  'seen',
  'note',
  'survey',
  'anchor',
  'pull',
  'bolts',
] as const;
/** A form. */
export type EntryFormKey = (typeof entryForms)[number];

/** A field: what is typed in it, or what may be chosen. */
export interface EntryField {
  readonly key: string;
  readonly sort:
    | 'text'
    | 'long'
    | 'whole'
    | 'number'
    | 'speed'
    | 'force'
    | 'length'
    | readonly string[];
  readonly optional?: boolean;
}

/** Units of what is typed without one. */
export interface EntryUnits {
  readonly length: LengthUnit;
  readonly speed: SpeedUnit;
  readonly force: ForceUnit;
}

type Values = Readonly<Record<string, string | number | undefined>>;

interface EntryFormOf {
  readonly fields: readonly EntryField[];
  /** The entry out of the values; it still has to pass the record's own check. */
  readonly make: (values: Values) => object;
}

const optional = true;

/** Each form. */
export const entryFormOf: Readonly<Record<EntryFormKey, EntryFormOf>> = {
  person: {
    fields: [
      { key: 'person', sort: 'text' },
      { key: 'here', sort: ['in', 'out'] },
    ],
    make: ({ person, here }) => ({ kind: 'person', person, here: here === 'in' }),
  },
  weather: {
    fields: [
      { key: 'gust', sort: 'speed', optional },
      { key: 'mean', sort: 'speed', optional },
      { key: 'temperatureC', sort: 'number', optional },
      { key: 'sky', sort: ['dry', 'rain', 'snow', 'fog', 'thunder'] },
    ],
    make: (values) => ({ kind: 'weather', ...values }),
  },
  condition: {
    fields: [
      { key: 'tag', sort: 'text' },
      { key: 'condition', sort: ['scrap', 'repair', 'good'] },
    ],
    make: (values) => ({ kind: 'panel condition', ...values }),
  },
  seen: {
    fields: [
      { key: 'tag', sort: 'text' },
      { key: 'seen', sort: ['panel found', 'panel cleaned'] },
    ],
    make: ({ tag, seen }) => ({ kind: seen, tag }),
  },
  note: {
    fields: [{ key: 'text', sort: 'long' }],
    make: (values) => ({ kind: 'note', ...values }),
  },
  survey: {
    fields: [
      { key: 'what', sort: ['level', 'radius', 'chord'] },
      { key: 'hub', sort: 'whole' },
      { key: 'to', sort: 'whole', optional },
      { key: 'length', sort: 'length' },
    ],
    make: ({ what, hub, to, length }) => ({
      kind: 'surveyed',
      reading:
        what === 'level'
          ? { what, hub, height: length }
          : what === 'radius'
            ? { what, hub, length }
            : { what, from: hub, to, length },
    }),
  },
  anchor: {
    fields: [
      { key: 'anchor', sort: 'whole' },
      { key: 'driven', sort: ['driven', 'not driven'] },
    ],
    make: ({ anchor, driven }) => ({
      kind: 'anchor driven',
      anchor,
      driven: driven === 'driven',
    }),
  },
  pull: {
    fields: [
      { key: 'anchor', sort: 'whole' },
      { key: 'pull', sort: 'force' },
      { key: 'held', sort: ['held', 'did not hold'] },
    ],
    make: ({ anchor, pull, held }) => ({
      kind: 'anchor pulled',
      anchor,
      pull,
      held: held === 'held',
    }),
  },
  bolts: {
    fields: [
      { key: 'thread', sort: 'text' },
      { key: 'length', sort: 'length' },
      { key: 'count', sort: 'whole' },
    ],
    make: (values) => ({ kind: 'bolts counted', ...values }),
  },
};

/** What was typed into a form as an entry, or the keys of the fields that can't be read; empty where the
 * whole of it is no entry. `more`: what the form adds besides its fields. */
export function readEntryForm(
  form: EntryFormKey,
  typed: Readonly<Record<string, string>>,
  units: EntryUnits,
  more: object = {},
): { readonly ok: true; readonly what: What } | { readonly ok: false; readonly at: string[] } {
  const { fields, make } = entryFormOf[form];
  const read = fields.map((field) => ({ field, value: readField(field, typed, units) }));
  const at = read.filter(({ value }) => value === null).map(({ field }) => field.key);
  if (at.length > 0) return { ok: false, at };
  const values = Object.fromEntries(
    read.flatMap(({ field, value }) => (value === undefined ? [] : [[field.key, value]])),
  );
  const parsed = whatSchema.safeParse({ ...make(values as Values), ...more });
  return parsed.success ? { ok: true, what: parsed.data } : { ok: false, at: [] };
}

/** A field's value; undefined: nothing typed where nothing is needed; null: it can't be read. */
function readField(
  { key, sort, optional: may = false }: EntryField,
  typed: Readonly<Record<string, string>>,
  units: EntryUnits,
): string | number | undefined | null {
  if (typeof sort !== 'string') return typed[key] ?? sort[0] ?? null;
  const text = (typed[key] ?? '').trim();
  if (text === '') return may ? undefined : null;
  if (sort === 'text' || sort === 'long') return text;
  if (sort === 'whole') return /^\d{1,6}$/.test(text) ? Number(text) : null;
  if (sort === 'number') {
    const value = Number(text.replace(',', '.').replace('−', '-'));
    return Number.isFinite(value) ? value : null;
  }
  const sign = /^[-−]/.test(text) ? -1 : 1;
  const bare = text.replace(/^[-−+]/, '');
  const read =
    sort === 'speed'
      ? readSpeed(bare, { unit: units.speed })
      : sort === 'force'
        ? readForce(bare, { unit: units.force })
        : readLength(bare, { unit: units.length });
  return read.ok ? sign * read.value : null;
}
