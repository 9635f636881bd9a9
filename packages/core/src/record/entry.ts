// An entry of the record: who, when by the phone's clock, in what order, and what. Entries are only
// ever added. The order does not come from clocks, which differ from phone to phone: each entry's
// `order` is one more than the highest that its writer had seen (Lamport, Communications of the ACM
// 21, 1978, 558-565), and `follows` names the entries about the same thing that its writer had seen
// standing, so that what was said unseen by each other is told from what was said in reply.

import { z } from 'zod';
import type { Read } from '../measure/fault.ts';
import { schemaFaults } from '../measure/schemaFaults.ts';
import { LONGEST_RECORD_NAME, MOST_FOLLOWED, MOST_ORDER, RECORD_TIMES } from './tolerances.ts';
import { isUsualEntry } from './usual.ts';
import { whatSchema } from './what.ts';

const entryId = z.string().regex(/^[0-9a-z]{8,32}-\d{1,9}$/, 'the id of an entry');

/** One entry as kept and sent. */
export const entrySchema = z.strictObject({
  writer: z
    .string()
    .regex(/^[0-9a-z]{8,32}$/, '8 to 32 small letters and digits')
    .describe('Drawn anew whenever a record is opened, so that two never share one.'),
  seq: z.int().min(0).max(999_999_999).describe('How many entries the writer made before.'),
  order: z.int().min(1).max(MOST_ORDER),
  at: z
    .int()
    .min(RECORD_TIMES.min)
    .max(RECORD_TIMES.max)
    .describe('Milliseconds since 1970 by the phone’s clock.'),
  by: z.string().trim().min(1).max(LONGEST_RECORD_NAME).describe('Who: first name or initials.'),
  follows: z
    .array(entryId)
    .max(MOST_FOLLOWED)
    .optional()
    .describe('Entries about the same thing that stood when it was written.'),
  what: whatSchema,
});

/** An entry of the record. */
export type Entry = z.infer<typeof entrySchema>;

/** The name of an entry: no two have the same. */
export type EntryId = string;

/** The id of an entry, `writer-seq`. */
export const idOf = ({ writer, seq }: Pick<Entry, 'writer' | 'seq'>): EntryId => `${writer}-${seq}`;

/** The order in which entries are read: by `order`, then by writer, then by `seq`. The same on every
 * phone, whatever their clocks say; an entry comes after all that its writer had seen. */
export function compareEntries(a: Entry, b: Entry): number {
  if (a.order !== b.order) return a.order - b.order;
  if (a.writer !== b.writer) return a.writer < b.writer ? -1 : 1;
  return a.seq - b.seq;
}

/** The entry from plain data, which is not to be changed after, or every fault of it. */
export function readEntry(raw: unknown): Read<Entry> {
  if (isUsualEntry(raw)) return { ok: true, value: raw as Entry };
  const parsed = entrySchema.safeParse(raw);
  return parsed.success
    ? { ok: true, value: parsed.data }
    : { ok: false, faults: schemaFaults(parsed.error, raw, entrySchema) };
}

/** One text for one entry, whatever order its keys came in: to tell whether two are the same. */
export const entryText = (entry: Entry): string => JSON.stringify(sorted(entry));

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, item]) => [key, sorted(item)]),
  );
}
