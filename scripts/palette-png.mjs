// Makes a screenshot small: the same picture with a palette of at most 256 colours, chosen by
// cutting the box of its colours again and again where they differ most (X. Wu, Efficient
// Statistical Computations for Optimal Color Quantization, 1991, is the thought). Drawings have few
// colours, so little is lost: a third of the bytes is left.

import { deflateSync, inflateSync } from 'node:zlib';

/** A PNG of 8 bits a channel, colour with or without alpha → an opaque PNG with a palette. */
export function palettePng(png) {
  const { width, height, colours } = pixelsOf(png);
  const counts = new Map();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const boxes = cutBoxes(
    [...counts].map(([colour, count]) => ({
      rgb: split(colour),
      colour,
      count,
      // Small things count for more than their pixels.
      weight: Math.sqrt(count),
    })),
    256,
  );
  const place = new Map(boxes.flatMap((box, i) => box.map(({ colour }) => [colour, i])));
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      rows[y * (width + 1) + x + 1] = place.get(colours[y * width + x]);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('89504e470d0a1a0a', 'hex'),
    chunk('IHDR', head),
    chunk('PLTE', Buffer.from(boxes.flatMap(meanOf))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const split = (colour) => [colour >> 16, (colour >> 8) & 255, colour & 255];

/** Pixels as numbers 0xrrggbb, row by row. */
function pixelsOf(png) {
  const data = [];
  let head = null;
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    const body = png.subarray(at + 8, at + 8 + png.readUInt32BE(at));
    const type = png.toString('latin1', at + 4, at + 8);
    if (type === 'IHDR') head = body;
    if (type === 'IDAT') data.push(body);
  }
  const [width, height] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  const step = { 2: 3, 6: 4 }[head[9]];
  if (head[8] !== 8 || step === undefined) throw new Error('not a PNG of 8 bits a channel');
  const raw = unfiltered(inflateSync(Buffer.concat(data)), width * step, height, step);
  const colours = new Uint32Array(width * height);
  for (let i = 0; i < colours.length; i++)
    colours[i] = (raw[i * step] << 16) | (raw[i * step + 1] << 8) | raw[i * step + 2];
  return { width, height, colours };
}

/** Takes the five filters of PNG off (ISO/IEC 15948, clause 9). */
function unfiltered(filtered, length, height, step) {
  const out = new Uint8Array(length * height);
  for (let y = 0; y < height; y++) {
    const filter = filtered[y * (length + 1)];
    for (let x = 0; x < length; x++) {
      const left = x >= step ? out[y * length + x - step] : 0;
      const up = y > 0 ? out[(y - 1) * length + x] : 0;
      const corner = x >= step && y > 0 ? out[(y - 1) * length + x - step] : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter];
      out[y * length + x] = filtered[y * (length + 1) + 1 + x] + guess;
    }
  }
  return out;
}

function paeth(left, up, corner) {
  const [a, b, c] = [
    Math.abs(up - corner),
    Math.abs(left - corner),
    Math.abs(left + up - 2 * corner),
  ];
  return a <= b && a <= c ? left : b <= c ? up : corner;
}

/** Cuts the colours into boxes: each time the one whose colours are furthest from their mean in sum,
 * at its mean, across the way in which they differ most. */
function cutBoxes(all, most) {
  const boxes = [boxOf(all)];
  while (boxes.length < most) {
    const widest = boxes.reduce((best, box) => (box.error > best.error ? box : best));
    if (widest.error === 0) break;
    const { colours, axis, mean } = widest;
    const [below, above] = [[], []];
    for (const one of colours) (one.rgb[axis] <= mean[axis] ? below : above).push(one);
    boxes.splice(boxes.indexOf(widest), 1, boxOf(below), boxOf(above));
  }
  return boxes.map(({ colours }) => colours);
}

function boxOf(colours) {
  let total = 0;
  const [sums, squares] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const { rgb, weight } of colours) {
    total += weight;
    for (const axis of [0, 1, 2]) {
      sums[axis] += weight * rgb[axis];
      squares[axis] += weight * rgb[axis] * rgb[axis];
    }
  }
  const mean = sums.map((sum) => sum / total);
  const spread = squares.map((square, axis) => Math.max(0, square - sums[axis] * mean[axis]));
  const axis = spread.indexOf(Math.max(...spread));
  const error = colours.length > 1 ? spread[0] + spread[1] + spread[2] : 0;
  return { colours, axis, mean, error };
}

function meanOf(box) {
  const total = box.reduce((sum, { count }) => sum + count, 0);
  return [0, 1, 2].map((axis) =>
    Math.round(box.reduce((sum, { rgb, count }) => sum + rgb[axis] * count, 0) / total),
  );
}

function chunk(type, body) {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  const out = Buffer.alloc(named.length + 8);
  out.writeUInt32BE(body.length, 0);
  out.set(named, 4);
  out.writeUInt32BE(crc(named), named.length + 4);
  return out;
}

/** The checksum of PNG (ISO/IEC 15948, annex D). */
function crc(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}
