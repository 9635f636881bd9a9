// Screw threads: reads what people write (`5/16-18`, `5/16-18 UNC`, `#10-32`, `M8`, `M8x1.25`) and
// writes it back in one form. Sizes and pitches: ASME B1.1 (UNC, UNF, UNEF) and ISO 261/262 for
// metric, from memory save those in the project's tables. Diameters and pitches in metres. A size
// with a pitch that stands in neither table is refused: it is more likely a slip than a thread.

import { type Read, refuse } from '../measure/fault.ts';
import { INCH } from '../measure/length.ts';
import { LENGTH_ROUNDING } from './tolerances.ts';

/** One thread size. */
export interface Thread {
  /** The short form, the same for every way of writing it: `5/16-18`, `#10-32`, `M8`, `M8x1`. */
  readonly designation: string;
  readonly system: 'inch' | 'metric';
  readonly series: 'UNC' | 'UNF' | 'UNEF' | 'coarse' | 'fine';
  /** Nominal major diameter, metres. */
  readonly diameter: number;
  /** Metres for one turn. */
  readonly pitch: number;
}

/** Size → threads per inch of UNC, UNF and UNEF, null where the series has none. */
const inchSizes: Readonly<Record<string, readonly [number | null, number | null, number | null]>> =
  {
    '#4': [40, 48, null],
    '#5': [40, 44, null],
    '#6': [32, 40, null],
    '#8': [32, 36, null],
    '#10': [24, 32, null],
    '#12': [24, 28, 32],
    '1/4': [20, 28, 32],
    '5/16': [18, 24, 32],
    '3/8': [16, 24, 32],
    '7/16': [14, 20, 28],
    '1/2': [13, 20, 28],
    '9/16': [12, 18, 24],
    '5/8': [11, 18, 24],
    '3/4': [10, 16, 20],
    '7/8': [9, 14, 20],
    '1': [8, 12, 20],
    '1 1/8': [7, 12, 18],
    '1 1/4': [7, 12, 18],
    '1 1/2': [6, 12, 18],
  };

/** Millimetres of diameter → coarse pitch, then fine pitches, millimetres. */
const metricSizes: Readonly<Record<string, readonly number[]>> = {
  '3': [0.5, 0.35],
  '4': [0.7, 0.5],
  '5': [0.8, 0.5],
  '6': [1, 0.75],
  '7': [1, 0.75],
  '8': [1.25, 1, 0.75],
  '10': [1.5, 1.25, 1, 0.75],
  '12': [1.75, 1.5, 1.25, 1],
  '14': [2, 1.5, 1.25, 1],
  '16': [2, 1.5, 1],
  '18': [2.5, 2, 1.5, 1],
  '20': [2.5, 2, 1.5, 1],
  '22': [2.5, 2, 1.5, 1],
  '24': [3, 2, 1.5, 1],
  '27': [3, 2, 1.5, 1],
  '30': [3.5, 3, 2, 1.5],
  '33': [3.5, 3, 2, 1.5],
  '36': [4, 3, 2, 1.5],
};

/** The thread that a text names. Capitals, spaces, an inch mark, `No.` for `#`, `×` for `x`, a
 * class (`-2A`, `-6g`) and a series name are allowed; a series name that contradicts the pitch, an
 * INCH size without its threads per inch, and a pitch in no table are faults at `path`. */
export function readThread(text: string, path = 'thread'): Read<Thread> {
  const plain = text.trim().replace(/\s+/g, ' ');
  return /^m/i.test(plain) ? readMetric(plain, path) : readInch(plain, path);
}

/** A thread with its series or pitch spelt out: `5/16-18 UNC`, `M8 × 1.25`. */
export function writeThread(thread: Thread): string {
  if (thread.system === 'inch') return `${thread.designation} ${thread.series}`;
  return `${thread.designation.replace(/x.*/, '')} × ${millimetres(thread.pitch)}`;
}

/** The size without its pitch, as washers and holes are named: `5/16`, `#10`, `M8`. */
export const nominalSize = (thread: Pick<Thread, 'designation'>): string =>
  thread.designation.replace(/[-x].*/, '');

/** Nominal major diameter of a size as `nominalSize` names it, metres; NaN for any other text. */
export const nominalDiameter = (size: string): number =>
  size.startsWith('M') ? Number(size.slice(1)) / 1000 : inchDiameter(size);

/** A nominal size from a full thread or from the size alone (`5/16`, `5/16 in`, `M8`). */
export function readNominalSize(text: string, path = 'thread'): Read<string> {
  const thread = readThread(text, path);
  if (thread.ok) return { ok: true, value: nominalSize(thread.value) };
  const bare = text
    .trim()
    .replace(/\s*(?:"|″|in\.?|inch)$/i, '')
    .replace(/^no\.? ?/i, '#')
    .replace(/^m ?/i, 'M');
  const metric = bare.startsWith('M') && Object.hasOwn(metricSizes, bare.slice(1));
  if (metric || Object.hasOwn(inchSizes, bare)) return { ok: true, value: bare };
  return refuse(path, `"${text}"`, 'a size such as 5/16, #10 or M8');
}

/** Standard bolt lengths for the thread's system, metres, shortest first: inch lengths from memory,
 * metric lengths as in ISO 4014/4017. */
export function standardLengths(thread: Thread): readonly number[] {
  return thread.system === 'inch' ? inchLengths : metricLengths;
}

/** The shortest standard length not under `needed` metres, or null past the longest. */
export function nextStandardLength(thread: Thread, needed: number): number | null {
  return standardLengths(thread).find((length) => length >= needed - LENGTH_ROUNDING) ?? null;
}

/** Pieces in one pack where no lot or setting says: common practice, no source. */
export const commonPacks = { bolt: 50, nut: 100, washer: 100, plate: 1 } as const;

const inchLengths = [
  0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.5, 5, 5.5, 6,
].map((length) => length * INCH);
const metricLengths = [12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80].map(
  (length) => length / 1000,
);
const inchSeries = ['UNC', 'UNF', 'UNEF'] as const;

function readMetric(text: string, path: string): Read<Thread> {
  const found = /^m ?(\d+(?:\.\d+)?)(?: ?[x×*-] ?(\d+(?:[.,]\d+)?))?(?: ?-? ?\d[a-z])?$/i.exec(
    text,
  );
  const size = found?.[1];
  const pitches = size === undefined ? undefined : metricSizes[size];
  if (found === null || size === undefined || pitches === undefined)
    return refuse(path, `"${text}"`, 'a metric thread such as M8 or M8x1, size 3 to 36');
  const coarse = pitches[0] as number;
  const pitch = found[2] === undefined ? coarse : Number(found[2].replace(',', '.'));
  if (!pitches.includes(pitch))
    return refuse(path, `"${text}"`, `pitch ${pitches.join(', ')} mm for M${size}`);
  return {
    ok: true,
    value: {
      designation: pitch === coarse ? `M${size}` : `M${size}x${pitch}`,
      system: 'metric',
      series: pitch === coarse ? 'coarse' : 'fine',
      diameter: Number(size) / 1000,
      pitch: pitch / 1000,
    },
  };
}

function readInch(text: string, path: string): Read<Thread> {
  const found =
    /^(#|no\.? ?)?(\d+(?:\/\d+)?(?:[ -]\d+\/\d+)?) ?(?:"|″|in)?(?: ?- ?(\d+))?(?: ?-?(un[a-z]*))?(?: ?-? ?[123][ab])?$/i.exec(
      text,
    );
  if (found === null) return refuse(path, `"${text}"`, 'a thread such as 5/16-18, #10-32 or M8');
  const [, hash, bare, count, label] = found;
  const size = sizeName((bare as string).replace('-', ' '), hash !== undefined, Number(count));
  const counts = inchSizes[size];
  if (counts === undefined) return refuse(path, `"${text}"`, 'an inch size from #4 to 1 1/2');
  const series = inchSeries.filter((_, i) => counts[i] === Number(count))[0];
  const allowed = inchSeries.flatMap((name, i) =>
    counts[i] === null ? [] : [`${size}-${counts[i]} (${name})`],
  );
  if (series === undefined || (label !== undefined && label.toUpperCase() !== series))
    return refuse(path, `"${text}"`, allowed.join(' or '));
  return {
    ok: true,
    value: {
      designation: `${size}-${count}`,
      system: 'inch',
      series,
      diameter: inchDiameter(size),
      pitch: INCH / Number(count),
    },
  };
}

/** `10-32` is the numbered size #10, `1-8` is one inch: told by the threads per inch. */
function sizeName(bare: string, hashed: boolean, count: number): string {
  if (hashed) return `#${bare}`;
  return inchSizes[`#${bare}`]?.includes(count) ? `#${bare}` : bare;
}

function inchDiameter(size: string): number {
  if (size.startsWith('#')) return (0.06 + 0.013 * Number(size.slice(1))) * INCH;
  const sum = size
    .split(' ')
    .map((part) => part.split('/').map(Number) as [number, number?])
    .reduce((total, [top, bottom]) => total + top / (bottom ?? 1), 0);
  return sum * INCH;
}

const millimetres = (metres: number): string => String(Math.round(metres * 1e5) / 100);
