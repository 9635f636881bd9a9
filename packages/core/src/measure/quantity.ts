// Reading a quantity: terms of number and unit, largest unit first (3' 7 7/16", 1 m 103 mm,
// 12 lb 4 oz). A bare number takes the default unit; a text with two meanings is refused and both
// are named. Exact rational arithmetic up to the last step, a double.

import Fraction from 'fraction.js';
import { type Read, refuse } from './fault.ts';
import { type DecimalMark, type NumberReadings, readNumber, VULGAR_CHARACTERS } from './number.ts';

/** One unit of a quantity. */
export interface Unit {
  /** As people write it, in lower case save for the first, which is the one shown. */
  readonly names: readonly string[];
  /** Exact size in the base unit, as numerator and denominator. */
  readonly size: readonly [number, number];
  /** The unit that may follow in the same text, and how many of it make one of this. */
  readonly next?: readonly [string, number];
  /** True where a bare number after this unit is in the unit that follows, as in 3' 7. */
  readonly bareNext?: boolean;
  /** True where people use fractions of this unit, so that a bare fraction may mean it. */
  readonly fractions?: boolean;
}

/** The units of one quantity, keyed by the name used in code. */
export type Units<U extends string> = Readonly<Record<U, Unit>>;

/** How a bare number is to be understood. */
export interface ReadOptions<U extends string> {
  /** Unit of a bare number; without it a bare number other than 0 is refused. */
  readonly unit?: U;
  readonly decimal?: DecimalMark;
}

/** Longest text that is looked at; no quantity needs more. */
const MAX_QUANTITY_CHARACTERS = 64;

interface Term {
  readonly number: string;
  readonly unit: string;
}

interface Meaning {
  readonly value: Fraction;
  readonly words: string;
}

/** The value of a text in the base unit of `units`, or one fault with an empty path. */
export function readQuantity<U extends string>(
  text: string,
  units: Units<U>,
  options: ReadOptions<U> = {},
): Read<number> {
  if (text.length > MAX_QUANTITY_CHARACTERS)
    return refuseText(`${text.slice(0, 20)}…`, `at most ${MAX_QUANTITY_CHARACTERS} characters`);
  const trimmed = text.trim();
  if (trimmed === '') return refuseText(text, `a number with a unit (${unitList(units)})`);
  const minus = /^[-−–]/.test(trimmed);
  const terms = splitTerms(trimmed.replace(/^[-−–+]\s*/, ''));
  if (!terms) return refuseText(text, `a number with a unit (${unitList(units)})`);
  const meanings = meaningsOf(terms, units, options, minus ? '-' : '');
  if (typeof meanings === 'string') return refuseText(text, meanings);
  const distinct = meanings.filter(
    (m, i) => meanings.findIndex((other) => other.value.equals(m.value)) === i,
  );
  if (distinct.length > 1)
    return refuseText(
      text,
      `a value with one meaning: it could be ${distinct.map((m) => `${minus ? '-' : ''}${m.words}`).join(' or ')}`,
    );
  const only = distinct[0] as Meaning;
  return { ok: true, value: only.value.mul(minus ? -1 : 1).valueOf() || 0 };
}

/** The fault of a text; its path is for the caller to say. */
const refuseText = (found: string, expected: string): Read<never> =>
  refuse('', JSON.stringify(found), expected);

function unitList<U extends string>(units: Units<U>): string {
  return (Object.values(units) as Unit[]).map((unit) => unit.names[0]).join(', ');
}

const NUMBER = `[\\d.,/⁄∕${VULGAR_CHARACTERS}\\s\\-–]*[\\d${VULGAR_CHARACTERS}][.,]?`;
const TERM = new RegExp(`\\s*(${NUMBER})\\s*([^\\d\\s\\-–${VULGAR_CHARACTERS}]*)\\s*`, 'y');

/** The terms of a text, or null where it is no run of numbers and units. */
function splitTerms(text: string): Term[] | null {
  const terms: Term[] = [];
  TERM.lastIndex = 0;
  while (TERM.lastIndex < text.length) {
    const match = TERM.exec(text);
    if (!match) return null;
    const number = terms.length > 0 ? String(match[1]).replace(/^[\s\-–]+/, '') : String(match[1]);
    terms.push({ number, unit: String(match[2]).toLowerCase() });
  }
  return terms.length > 0 ? terms : null;
}

/** Every meaning of the terms, their sign apart, or what was expected instead. */
function meaningsOf<U extends string>(
  terms: readonly Term[],
  units: Units<U>,
  options: ReadOptions<U>,
  sign: string,
): Meaning[] | string {
  const [first, ...rest] = terms as [Term, ...Term[]];
  const numbers = readNumber(first.number, options.decimal);
  if (numbers.values.length === 0) return `a number, not ${JSON.stringify(first.number.trim())}`;
  if (first.unit === '')
    return rest.length > 0
      ? `a unit after ${first.number}`
      : bareMeanings(first, numbers, units, options, sign);
  const key = unitNamed(first.unit, units);
  if (key === null) return `a unit that is one of ${unitList(units)}`;
  const head = numbers.values.map((value) => meaning(value, units[key]));
  if (rest.length === 0) return head;
  if (head.length > 1 || (head[0] as Meaning).value.div(size(units[key])).d !== 1n)
    return `a whole number of ${units[key].names[0]} before the smaller unit`;
  return withRest(head[0] as Meaning, rest, units, key, options);
}

/** Adds the smaller units: each must be the next one down, and less than one of the unit above. */
function withRest<U extends string>(
  head: Meaning,
  terms: readonly Term[],
  units: Units<U>,
  above: U,
  options: ReadOptions<U>,
): Meaning[] | string {
  let [total, words, upper]: [Fraction, string, Unit] = [head.value, head.words, units[above]];
  for (const [i, term] of terms.entries()) {
    const bare = term.unit === '' && upper.bareNext === true && upper.next !== undefined;
    const key = bare ? (upper.next?.[0] as U) : unitNamed(term.unit, units);
    if (key === null || !isBelow(units, upper, key))
      return `after ${upper.names[0]} ${upper.next ? `a smaller unit such as ${upper.next[0]}` : 'nothing more'}`;
    const numbers = readNumber(term.number, options.decimal);
    const value = numbers.values[0];
    if (value === undefined || numbers.values.length > 1)
      return `a number before ${units[key].names[0]}`;
    const part = meaning(value, units[key]);
    if (part.value.gte(size(upper))) return `less than one ${upper.names[0]} in the smaller unit`;
    if (i < terms.length - 1 && value.d !== 1n) return 'a fraction only in the last unit';
    total = total.add(part.value);
    words = `${words} ${part.words}`;
    upper = units[key];
  }
  return [{ value: total, words }];
}

/** Whether `key` stands somewhere below `upper` in its chain of smaller units. */
function isBelow<U extends string>(units: Units<U>, upper: Unit, key: U): boolean {
  for (let next = upper.next; next; next = units[next[0] as U].next)
    if (next[0] === key) return true;
  return false;
}

/** Meanings of a number without a unit. */
function bareMeanings<U extends string>(
  term: Term,
  numbers: NumberReadings,
  units: Units<U>,
  options: ReadOptions<U>,
  sign: string,
): Meaning[] | string {
  const keys = Object.keys(units) as U[];
  const value = numbers.values[0] as Fraction;
  if (options.unit === undefined) {
    if (value.equals(0)) return [meaning(value, units[keys[0] as U])];
    return `a unit: it could be ${keys.map((k) => `${sign}${term.number.trim()} ${units[k].names[0]}`).join(' or ')}`;
  }
  const unit = units[options.unit];
  const meanings = numbers.values.map((v) => meaning(v, unit));
  if (numbers.fraction && !unit.fractions)
    for (const k of keys) if (units[k].fractions) meanings.push(meaning(value, units[k]));
  return [...meanings, ...pointAsNext(term.number.trim(), unit, units)];
}

/** `3.7` in a column of feet may be 3.7 ft, or 3 ft 7 in as some people write it. */
function pointAsNext<U extends string>(number: string, unit: Unit, units: Units<U>): Meaning[] {
  const match = /^(\d+)[.,](\d{1,2})$/.exec(number);
  if (!match || !unit.bareNext || !unit.next || Number(match[2]) >= unit.next[1]) return [];
  const small = units[unit.next[0] as U];
  const value = new Fraction(Number(match[1]))
    .mul(size(unit))
    .add(new Fraction(Number(match[2])).mul(size(small)));
  return [{ value, words: `${match[1]} ${unit.names[0]} ${Number(match[2])} ${small.names[0]}` }];
}

const size = (unit: Unit): Fraction => new Fraction(unit.size[0], unit.size[1]);

const meaning = (value: Fraction, unit: Unit): Meaning => ({
  value: value.mul(size(unit)),
  words: `${value.d === 1n || isDecimal(value.d) ? value.valueOf() : value.toFraction(true)} ${unit.names[0]}`,
});

/** Whether a denominator has only the factors of ten, so that the decimal is short. */
const isDecimal = (d: bigint): boolean => 10n ** 6n % d === 0n;

function unitNamed<U extends string>(name: string, units: Units<U>): U | null {
  const plain = name.replace(/\.$/, '');
  for (const key of Object.keys(units) as U[])
    if (units[key].names.includes(plain) || units[key].names.includes(name)) return key;
  return null;
}
