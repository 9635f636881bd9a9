// Numbers as people write them: 43, 43.5, 43,5, 1 103, 43 7/16, 43-7/16, 2½, 7⁄16. Exact
// (rational). The point is a decimal mark. A comma before exactly three digits may be decimal or
// may group thousands: both readings are returned and the caller refuses or chooses.
// Never Unicode-normalised: NFKC turns 2½ into 21⁄2.

import Fraction from 'fraction.js';

/** Decimal mark of the text, where that is known: settles `1,103` and, the other way, `1.103`. */
export type DecimalMark = 'point' | 'comma';

/** Every number that a text can stand for: none, one, or two where it is ambiguous. */
export interface NumberReadings {
  readonly values: readonly Fraction[];
  /** True where it was written as a fraction or mixed number. */
  readonly fraction: boolean;
}

const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '¼': [1, 4],
  '½': [1, 2],
  '¾': [3, 4],
  '⅒': [1, 10],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

/** The characters that stand for a whole fraction, as in `2½`. */
export const VULGAR_CHARACTERS: string = Object.keys(VULGAR).join('');

const MIXED = new RegExp(
  `^(?:(\\d{1,9})(?:\\s*[-–]\\s*|\\s+|(?=[${VULGAR_CHARACTERS}])))?(?:(\\d{1,4})\\s*[/⁄∕]\\s*(\\d{1,4})|([${VULGAR_CHARACTERS}]))$`,
);

/** Into what tapes, squares and scales divide an inch or a foot; `7/11` is a slip. */
const PARTS: ReadonlySet<number> = new Set([
  ...[2, 4, 8, 16, 32, 64, 128],
  ...[3, 6, 12],
  ...[5, 10, 20, 50, 100],
]);

const NOTHING: NumberReadings = { values: [], fraction: false };

/** All numbers that an unsigned text can stand for. Digits before the decimal mark are limited to 15,
 * so that none is lost on the way to a double; those after it may run on, as programs write them
 * (`0.92820000000000003`), and are rounded with the rest. An improper fraction (`437/16`) has two readings: itself, and a mixed
 * number whose space was lost. */
export function readNumber(text: string, decimal?: DecimalMark): NumberReadings {
  const plain = text.trim();
  const mixed = MIXED.exec(plain);
  if (mixed) return { values: mixedValues(mixed), fraction: true };
  const values = decimalReadings(plain.replace(/[\u00a0\u2009\u202f]/g, ' '), decimal);
  if (values.some((digits) => /^\d{16}/.test(digits))) return NOTHING;
  return { values: values.map((digits) => new Fraction(digits)), fraction: false };
}

function mixedValues(match: RegExpExecArray): Fraction[] {
  const vulgar = match[4] === undefined ? undefined : VULGAR[match[4]];
  const [n, d] = vulgar ?? [Number(match[2]), Number(match[3])];
  if (!PARTS.has(d)) return [];
  const part = new Fraction(n, d);
  if (match[1] !== undefined) return n < d ? [part.add(Number(match[1]))] : [];
  return n < d ? [part] : [part, ...splitMixed(String(match[2]), d)];
}

/** The mixed numbers that `437` over 16 may have been before the space was lost: 43 7/16. */
function splitMixed(numerator: string, denominator: number): Fraction[] {
  const out: Fraction[] = [];
  for (let at = 1; at < numerator.length; at++) {
    const rest = numerator.slice(at);
    if (rest.startsWith('0') || Number(rest) >= denominator) continue;
    out.push(new Fraction(Number(rest), denominator).add(Number(numerator.slice(0, at))));
  }
  return out;
}

/** The digit strings (point as decimal mark) that a decimal number can stand for. */
function decimalReadings(text: string, decimal: DecimalMark | undefined): string[] {
  if (/^\d+$/.test(text)) return [text];
  if (/^\d{1,3}( \d{3})+([.,]\d+)?$/.test(text))
    return decimalReadings(text.replace(/ /g, ''), decimal ?? markOf(text));
  if (/^\d{1,3}(,\d{3})+\.\d+$|^\d{1,3}(,\d{3}){2,}$/.test(text)) return [text.replace(/,/g, '')];
  if (/^\d{1,3}(\.\d{3})+,\d+$|^\d{1,3}(\.\d{3}){2,}$/.test(text))
    return [text.replace(/\./g, '').replace(',', '.')];
  if (/^\d*[.,]\d+$|^\d+[.,]$/.test(text)) return oneMark(text, decimal);
  return [];
}

/** With thousands already grouped by spaces, a comma can only be decimal. */
const markOf = (text: string): DecimalMark => (text.includes(',') ? 'comma' : 'point');

function oneMark(text: string, decimal: DecimalMark | undefined): string[] {
  const mark: DecimalMark = text.includes(',') ? 'comma' : 'point';
  const value = padded(text.replace(',', '.'));
  const couldGroup = /^[1-9]\d{0,2}[.,]\d{3}$/.test(text);
  if (!couldGroup || mark === decimal) return [value];
  if (mark === 'point' && decimal === undefined) return [value];
  return [text.replace(/[.,]/, ''), value];
}

const padded = (digits: string): string => digits.replace(/^\./, '0.').replace(/\.$/, '');
