// Lengths as a person with a tape says them, read to metres and written back to the nearest
// division of the tape. The inch is exactly 25.4 mm (international yard and pound agreement, 1959).

import type { Read } from './fault.ts';
import { type ReadOptions, readQuantity, type Units } from './quantity.ts';

/** A unit that a column of lengths may have. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** How a length is shown. `step` is the division of the tape: parts of an inch, or millimetres. */
export type LengthStyle =
  | { readonly unit: 'mm'; readonly step: 1 | 0.5 }
  | { readonly unit: 'm' }
  | { readonly unit: 'in' | 'ft'; readonly step: 16 | 32 };

/** One inch, metres. */
export const INCH = 0.0254;

const LENGTHS: Units<LengthUnit> = {
  mm: { names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], size: [1, 1000] },
  cm: {
    names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
    size: [1, 100],
    next: ['mm', 10],
  },
  m: { names: ['m', 'metre', 'metres', 'meter', 'meters'], size: [1, 1], next: ['cm', 100] },
  in: {
    names: ['in', '"', '″', '”', '“', "''", '′′', '’’', 'inch', 'inches'],
    size: [127, 5000],
    fractions: true,
  },
  ft: {
    names: ['ft', "'", '′', '’', '‘', 'foot', 'feet'],
    size: [381, 1250],
    next: ['in', 12],
    bareNext: true,
  },
};

/** Metres from `43 7/16"`, `3' 7-7/16`, `3ft 7.4375in`, `1103 mm`, `1.103 m`, `110,3 cm`; a bare
 * number is in `options.unit`. Exact up to the last rounding. Refused, with every reading named:
 * a bare number without a unit, `1,103`, a bare `3.7` in feet, a bare fraction in a metric column,
 * an improper fraction such as `437/16`. Signs are read; a caller that needs a side checks range. */
export function readLength(text: string, options: ReadOptions<LengthUnit> = {}): Read<number> {
  return readQuantity(text, LENGTHS, options);
}

/** The column unit that a word stands for (`mm`, `in`, `"`, `feet` …), or null. */
export function lengthUnit(word: string): LengthUnit | null {
  const plain = word.trim().toLowerCase().replace(/\.$/, '');
  const keys = Object.keys(LENGTHS) as LengthUnit[];
  return keys.find((key) => LENGTHS[key].names.includes(plain)) ?? null;
}

/** A length in metres as text that `readLength` reads back to within half the step: `43 7/16"`,
 * `3' 7 7/16"`, `1103 mm`, `1102.5 mm`, `1.103 m`. Halves round away from zero. Throws on NaN and
 * infinity, which no measured length is. */
export function writeLength(metres: number, style: LengthStyle): string {
  if (!Number.isFinite(metres)) throw new Error(`a length to write must be finite, not ${metres}`);
  const size = Math.abs(metres);
  const text =
    style.unit === 'mm'
      ? `${(Math.round((size * 1000) / style.step) * style.step).toFixed(style.step === 1 ? 0 : 1)} mm`
      : style.unit === 'm'
        ? `${(Math.round(size * 1000) / 1000).toFixed(3)} m`
        : inches(Math.round((size / INCH) * style.step), style.step, style.unit === 'ft');
  return metres < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

/** Whole parts of an inch as inches, or as feet and inches; after feet a nought stands before a bare
 * fraction, `19' 0 3/16"`, which is else easily misread. */
function inches(parts: number, step: number, withFeet: boolean): string {
  const feet = withFeet ? Math.floor(parts / (12 * step)) : 0;
  const left = parts - feet * 12 * step;
  const whole = Math.floor(left / step);
  const fraction = lowestTerms(left - whole * step, step);
  const inch = [whole > 0 || fraction === '' || withFeet ? String(whole) : '', fraction]
    .filter((word) => word !== '')
    .join(' ');
  return withFeet ? `${feet}' ${inch}"` : `${inch}"`;
}

/** n/d, d a power of two, in lowest terms; empty for 0. */
function lowestTerms(n: number, d: number): string {
  if (n === 0) return '';
  return n % 2 === 0 ? lowestTerms(n / 2, d / 2) : `${n}/${d}`;
}
