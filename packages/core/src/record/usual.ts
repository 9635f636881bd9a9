// The entries that make up most of a record, told by hand: a hundred thousand of them take a second by the
// schema, and a tenth of that here. What is not told as one of them goes by the schema, which alone says
// what an entry is; `usual.test.ts` holds the two against each other.

import { LONGEST_RECORD_NAME, MOST_FOLLOWED, MOST_ORDER, RECORD_TIMES } from './tolerances.ts';

/** Whether this is plain data, of a seam's pass or seal, that the schema would give
 * back as it is. False says nothing. */
export function isUsualEntry(raw: unknown): boolean {
  if (!isPlain(raw)) return false;
  for (const key in raw) if (!ENTRY_KEYS.has(key)) return false;
  const { writer, seq, order, at, by, follows, what } = raw;
  return (
    typeof writer === 'string' &&
    WRITER.test(writer) &&
    isWithin(seq, 0, 999_999_999) &&
    isWithin(order, 1, MOST_ORDER) &&
    isWithin(at, RECORD_TIMES.min, RECORD_TIMES.max) &&
    isName(by) &&
    (follows === undefined || areIds(follows)) &&
    isUsualWhat(what)
  );
}

type Fields = Readonly<Record<string, unknown>>;

const ENTRY_KEYS = new Set(['writer', 'seq', 'order', 'at', 'by', 'follows', 'what']);
const WRITER = /^[0-9a-z]{8,32}$/;
const ID = /^[0-9a-z]{8,32}-\d{1,9}$/;
const SEAM = /^\d{1,3}-\d{1,5}\/\d{1,3}-\d{1,5}$/;

function isUsualWhat(what: unknown): boolean {
  if (!isPlain(what)) return false;
  switch (what.kind) {
    case 'seam pass':
      return (
        isSeam(what.seam) && isPass(what.pass) && areHands(what.hands) && only(what, PASS_KEYS)
      );
    case 'seam sealed':
      return isSeam(what.seam) && typeof what.sealed === 'boolean' && only(what, SEAL_KEYS);
    default:
      return false;
  }
}

const PASS_KEYS = new Set(['kind', 'seam', 'pass', 'hands']);
const SEAL_KEYS = new Set(['kind', 'seam', 'sealed']);

function only(what: Fields, keys: ReadonlySet<string>): boolean {
  for (const key in what) if (!keys.has(key)) return false;
  return true;
}

const isPlain = (raw: unknown): raw is Fields =>
  typeof raw === 'object' && raw !== null && Object.getPrototypeOf(raw) === Object.prototype;

const isWithin = (value: unknown, min: number, max: number): boolean =>
  Number.isInteger(value) && (value as number) >= min && (value as number) <= max;

const isName = (by: unknown): boolean =>
  typeof by === 'string' && by.length >= 1 && by.length <= LONGEST_RECORD_NAME && by.trim() === by;

const areIds = (ids: unknown): boolean =>
  Array.isArray(ids) &&
  ids.length <= MOST_FOLLOWED &&
  ids.every((id) => typeof id === 'string' && ID.test(id));

const isSeam = (seam: unknown): boolean => typeof seam === 'string' && SEAM.test(seam);

const isPass = (pass: unknown): boolean =>
  pass === 'finger' || pass === 'snug' || pass === 'final' || pass === 'none';

const areHands = (hands: unknown): boolean => hands === undefined || isWithin(hands, 1, 50);
