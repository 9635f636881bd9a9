// A WOFF typeface unpacked to the plain one inside it (WOFF File Format 1.0, W3C 2012, sections 3 to 5):
// what reads glyph by glyph would else unpack the whole table for each.

import { unzlibSync } from 'fflate';

const WOFF = 0x774f4646;
const HEADER = 44;
const ENTRY = 20;

/** The plain typeface (sfnt) in a WOFF; any other bytes as they are. Throws where a table does not
 * unpack to its length. */
export function plainFace(bytes: Uint8Array): Uint8Array {
  const from = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER || from.getUint32(0) !== WOFF) return bytes;
  const count = from.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY;
    const [offset, packed, length] = [4, 8, 12].map((by) => from.getUint32(at + by)) as [
      number,
      number,
      number,
    ];
    const own = bytes.subarray(offset, offset + packed);
    const data = packed < length ? unzlibSync(own) : own;
    if (data.length !== length)
      throw new Error(
        `table ${i + 1} of a typeface unpacks to ${data.length} bytes, not ${length}`,
      );
    return { tag: from.getUint32(at), sum: from.getUint32(at + 16), data };
  });
  const padded = (length: number): number => 4 * Math.ceil(length / 4);
  const head = 12 + 16 * count;
  const whole = new Uint8Array(
    head + tables.reduce((sum, { data }) => sum + padded(data.length), 0),
  );
  const to = new DataView(whole.buffer);
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, count);
  // What a binary search of the tables goes by.
  const power = 2 ** Math.floor(Math.log2(count));
  to.setUint16(6, 16 * power);
  to.setUint16(8, Math.log2(power));
  to.setUint16(10, 16 * (count - power));
  let at = head;
  tables.forEach(({ tag, sum, data }, i) => {
    const entry = 12 + 16 * i;
    to.setUint32(entry, tag);
    to.setUint32(entry + 4, sum);
    to.setUint32(entry + 8, at);
    to.setUint32(entry + 12, data.length);
    whole.set(data, at);
    at += padded(data.length);
  });
  return whole;
}
