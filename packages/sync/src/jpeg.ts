// A JPEG without what it tells besides its picture. Segments are walked, not decoded; the only thing taken
// out of Exif is how the picture is to be turned, which goes into a segment of its own.

import { joined } from './bytes.ts';

const [SOI, EOI, SOS, COM] = [0xd8, 0xd9, 0xda, 0xfe];
const [APP0, APP1, APP2, APP14, APP15] = [0xe0, 0xe1, 0xe2, 0xee, 0xef];

/** The JPEG with nothing but what shows it; null where it is no whole one. What lies after its end, as a
 * film of the moment, goes. */
export function strippedJpeg(bytes: Uint8Array): Uint8Array | null {
  const parts: Uint8Array[] = [];
  let turned = 1;
  let scans = 0;
  for (let at = 2; at + 1 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const mark = bytes[at + 1] as number;
    // Any number of fill bytes may stand before a marker.
    if (mark === 0xff) {
      at++;
      continue;
    }
    if (mark === EOI)
      return scans > 0
        ? joined([Uint8Array.of(0xff, SOI), ...turning(turned), ...parts, Uint8Array.of(0xff, EOI)])
        : null;
    if (at + 4 > bytes.length) return null;
    const length = ((bytes[at + 2] as number) << 8) | (bytes[at + 3] as number);
    let end = at + 2 + length;
    if (length < 2 || end > bytes.length || mark < 0xc0 || mark === SOI) return null;
    const segment = bytes.subarray(at, end);
    if (mark === APP1) turned = turned === 1 ? orientationIn(segment) : turned;
    if (mark === SOS) {
      scans++;
      end = endOfScan(bytes, end);
      parts.push(bytes.subarray(at, end));
    } else if (showsIt(mark, segment)) parts.push(segment);
    at = end;
  }
  return null;
}

/** Where the picture's data end: at the next marker that is no restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    const next = bytes[at + 1] as number;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7))
      return at;
  }
  return bytes.length;
}

/** Whether a segment is needed to show the picture: all but comments and applications' own, save density,
 * colour profile and colour transform. */
function showsIt(mark: number, segment: Uint8Array): boolean {
  if (mark === COM) return false;
  if (mark < APP0 || mark > APP15) return true;
  if (mark === APP0) return begins(segment, 'JFIF\0') && segment.length === 18;
  if (mark === APP2) return begins(segment, 'ICC_PROFILE\0');
  return mark === APP14 && begins(segment, 'Adobe') && segment.length === 16;
}

const begins = (segment: Uint8Array, text: string): boolean =>
  [...text].every((sign, i) => segment[4 + i] === sign.charCodeAt(0));

const ORIENTATION = 0x0112;

/** How an Exif segment says that the picture is to be turned, 1 to 8; 1 where it says nothing. */
function orientationIn(segment: Uint8Array): number {
  if (!begins(segment, 'Exif\0\0') || segment.length < 18) return 1;
  const tiff = new DataView(segment.buffer, segment.byteOffset + 10, segment.byteLength - 10);
  const order = tiff.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return 1;
  const little = order === 0x4949;
  const at = tiff.getUint32(4, little);
  if (at + 2 > tiff.byteLength) return 1;
  const count = tiff.getUint16(at, little);
  for (let i = 0; i < count; i++) {
    const row = at + 2 + 12 * i;
    if (row + 12 > tiff.byteLength) return 1;
    if (tiff.getUint16(row, little) !== ORIENTATION) continue;
    const value = tiff.getUint16(row + 8, little);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** An Exif segment that says nothing but how to turn; none where the picture stands upright. */
const turning = (turned: number): readonly Uint8Array[] =>
  turned === 1
    ? []
    : [
        Uint8Array.of(
          ...[0xff, APP1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0],
          ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1],
          ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, turned, 0, 0, 0, 0, 0, 0],
        ),
      ];
