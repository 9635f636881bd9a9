// What a photo is, by its bytes, and the photo without what it tells besides its picture: place, time,
// device, name. Kept are what is needed to show it (colours, turning, transparency, movement). Nothing is
// decoded: what does not hang together as a file of its kind is no photo.
//
// JPEG: ITU-T T.81, annex B; orientation by CIPA DC-008 (Exif 2.32), 4.6.4. PNG: W3C PNG, third edition,
// 5.2-5.3 and 11. WebP: RFC 9649, 2.

import { digest } from 'lib0/hash/sha256';
import { joined } from './bytes.ts';
import { strippedJpeg } from './jpeg.ts';

/** Kinds of photo that browsers show, by their media types. */
export type PhotoKind = 'image/jpeg' | 'image/png' | 'image/webp';

/** The kind that a file begins as; null where it is none of them. */
export function photoKind(bytes: Uint8Array): PhotoKind | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (PNG.every((byte, i) => bytes[i] === byte)) return 'image/png';
  if (textAt(bytes, 0) === 'RIFF' && textAt(bytes, 8) === 'WEBP') return 'image/webp';
  return null;
}

/** The name of a photo: the SHA-256 of its bytes, hexadecimal (FIPS 180-4). Reckoned here, for browsers
 * reckon it over https alone. */
export const photoHash = (bytes: Uint8Array): string =>
  Array.from(digest(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');

/** The photo with nothing but what shows it, unchanged where it has nothing else; a JPEG keeps how it is to
 * be turned. Null where the bytes are no whole JPEG, PNG or WebP. */
export function strippedPhoto(bytes: Uint8Array): Uint8Array | null {
  switch (photoKind(bytes)) {
    case 'image/jpeg':
      return strippedJpeg(bytes);
    case 'image/png':
      return strippedPng(bytes);
    case 'image/webp':
      return strippedWebp(bytes);
    default:
      return null;
  }
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] as const;

/** Chunks of a PNG that show it: those every reader must know, transparency, colour, size and movement. */
const PNG_KEPT = new Set(
  'IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI bKGD pHYs acTL fcTL fdAT'.split(
    ' ',
  ),
);

function strippedPng(bytes: Uint8Array): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [bytes.subarray(0, 8)];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const [end, name] = [at + 12 + view.getUint32(at), textAt(bytes, at + 4)];
    if (end > bytes.length || (at === 8 && name !== 'IHDR')) return null;
    if (PNG_KEPT.has(name)) parts.push(bytes.subarray(at, end));
    // What comes after the end belongs to no picture.
    if (name === 'IEND') return joined(parts);
    at = end;
  }
  return null;
}

/** Chunks of a WebP that show it. */
const WEBP_KEPT = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);
/** Bits of the VP8X chunk that say that Exif and XMP follow. */
const WEBP_TELLS = 0x08 | 0x04;

function strippedWebp(bytes: Uint8Array): Uint8Array | null {
  if (bytes.length < 20) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) return null;
  const parts: Uint8Array[] = [bytes.slice(0, 12)];
  let pictures = 0;
  for (let at = 12; at < end; ) {
    if (at + 8 > end) return null;
    const length = view.getUint32(at + 4, true);
    const next = at + 8 + length + (length % 2);
    if (next > end) return null;
    const name = textAt(bytes, at);
    const chunk = bytes.slice(at, next);
    if (name === 'VP8X' && chunk.length >= 9) chunk[8] = (chunk[8] as number) & ~WEBP_TELLS;
    if (name === 'VP8 ' || name === 'VP8L' || name === 'ANMF') pictures++;
    if (WEBP_KEPT.has(name)) parts.push(chunk);
    at = next;
  }
  if (pictures === 0) return null;
  const whole = joined(parts);
  new DataView(whole.buffer).setUint32(4, whole.length - 8, true);
  return whole;
}

/** Four letters. */
const textAt = (bytes: Uint8Array, at: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + 4));
