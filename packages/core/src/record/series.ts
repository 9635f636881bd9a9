// A record as a series of QR codes, from a phone that can hand out no file: the record's file, packed
// (zlib, RFC 1950), in Base45 (RFC 9285), cut into parts of one code each. Parts may be read in any
// order and more than once; what they give when all are there is checked by zlib's own sum.

import { strFromU8, strToU8, Unzlib, zlibSync } from 'fflate';
import { fromBase45, toBase45 } from './base45.ts';
import type { Entry } from './entry.ts';
import { type RecordFile, readRecordFile, writeRecordFile } from './file.ts';

/** Characters of the record in one code: with what tells its part it fits version 14 at level M, 73
 * modules a side (ISO/IEC 18004: 528 characters), which a webcam reads off a phone's screen. */
export const SERIES_CHARACTERS = 500;

/** Most codes of a series: some 10,000 entries. */
export const MOST_SERIES = 999;

/** Largest record that is unpacked, bytes: a code can promise more than it holds. */
const MOST_UNPACKED = 8 * 1024 * 1024;

/** One code's part. */
export interface SeriesPart {
  /** Tells series apart: parts of one have the same. */
  readonly series: string;
  /** From 1. */
  readonly part: number;
  readonly of: number;
  readonly text: string;
}

/** The texts of the codes, for these entries. Same entries, same texts. Fails where they are too many
 * for a series: a file takes them. */
export function recordSeries(entries: Iterable<Entry>): readonly string[] {
  const packed = zlibSync(strToU8(writeRecordFile(entries)), { level: 9 });
  const text = toBase45(packed);
  const count = Math.ceil(text.length / SERIES_CHARACTERS);
  if (count > MOST_SERIES)
    throw new RangeError(`${count} codes, expected at most ${MOST_SERIES}: save a file instead`);
  const series = sumOf(packed);
  return Array.from({ length: count }, (_, i) => {
    const part = text.slice(i * SERIES_CHARACTERS, (i + 1) * SERIES_CHARACTERS);
    return `SR1:${series}:${i + 1}:${count}:${part}`;
  });
}

/** What a code holds; null where it is no part of a record. */
export function readSeriesPart(code: string): SeriesPart | null {
  const match = /^SR1:([0-9A-F]{8}):(\d{1,3}):(\d{1,3}):([0-9A-Z $%*+\-./:]+)$/.exec(code);
  if (!match) return null;
  const [, series, part, of, text] = match as unknown as [string, string, string, string, string];
  const [n, count] = [Number(part), Number(of)];
  if (n < 1 || n > count || text.length > SERIES_CHARACTERS) return null;
  return { series, part: n, of: count, text };
}

/** The record of a series' parts, in any order; null where one is missing, or they do not fit
 * together. */
export function readSeries(parts: Iterable<SeriesPart>): RecordFile | null {
  const byPart = new Map<number, SeriesPart>();
  let first: SeriesPart | null = null;
  for (const part of parts) {
    first ??= part;
    if (part.series !== first.series || part.of !== first.of) return null;
    byPart.set(part.part, part);
  }
  if (!first || byPart.size !== first.of) return null;
  const text = Array.from({ length: first.of }, (_, i) => byPart.get(i + 1)?.text ?? '').join('');
  const packed = fromBase45(text);
  if (!packed || sumOf(packed) !== first.series) return null;
  const file = unpacked(packed);
  return file && adler32(file) === first.series ? readRecordFile(strFromU8(file)) : null;
}

/** What ends packed data: zlib's sum over what it holds. */
const sumOf = (packed: Uint8Array): string => hex(packed.slice(-4));

const hex = (bytes: Uint8Array): string =>
  [...bytes].map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join('');

/** Adler-32 (RFC 1950) as eight hexadecimal digits: the library leaves it unchecked. */
function adler32(bytes: Uint8Array): string {
  let [a, b] = [1, 0];
  for (const byte of bytes) {
    a = (a + byte) % 65521;
    b = (b + a) % 65521;
  }
  return hex(Uint8Array.of(b >> 8, b & 255, a >> 8, a & 255));
}

/** Null where it is broken, or larger than a record may be. */
function unpacked(packed: Uint8Array): Uint8Array | null {
  const chunks: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const reader = new Unzlib((chunk, last) => {
    size += chunk.length;
    if (size > MOST_UNPACKED) throw new RangeError('too large');
    chunks.push(chunk);
    ended = last;
  });
  try {
    // In slices, so that what is too large is found before it is all unpacked.
    for (let i = 0; i < packed.length; i += 4096)
      reader.push(packed.subarray(i, i + 4096), i + 4096 >= packed.length);
  } catch {
    return null;
  }
  if (!ended) return null;
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
