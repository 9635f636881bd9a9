// Small photos put together by hand, with what cameras write into them.

import { crc32 } from 'node:zlib';

const bytes = (text: string): number[] => [...text].map((sign) => sign.charCodeAt(0));
const two = (n: number): number[] => [n >> 8, n & 255];
const four = (n: number): number[] => [(n >>> 24) & 255, (n >> 16) & 255, (n >> 8) & 255, n & 255];

const segment = (mark: number, body: readonly number[]): number[] => [
  ...[0xff, mark],
  ...two(body.length + 2),
  ...body,
];

/** Exif with an orientation and a place (a GPS directory), in either byte order. */
export function exif(orientation: number, little = false): number[] {
  const n2 = (n: number): number[] => (little ? two(n).reverse() : two(n));
  const n4 = (n: number): number[] => (little ? four(n).reverse() : four(n));
  const row = (tag: number, kind: number, value: readonly number[]): number[] => [
    ...n2(tag),
    ...n2(kind),
    ...n4(1),
    ...value,
  ];
  const tiff = [
    ...bytes(little ? 'II' : 'MM'),
    ...n2(42),
    ...n4(8),
    ...n2(2),
    ...row(0x0112, 3, [...n2(orientation), 0, 0]),
    ...row(0x8825, 4, n4(38)),
    ...n4(0),
    ...n2(1),
    ...row(0x0001, 2, bytes('N\0\0\0')),
    ...n4(0),
    ...bytes('52.2297N 21.0122E'),
  ];
  return segment(0xe1, [...bytes('Exif\0\0'), ...tiff]);
}

const jfif = segment(0xe0, [...bytes('JFIF\0'), 1, 2, 0, 0, 1, 0, 1, 0, 0]);
const adobe = segment(0xee, [...bytes('Adobe'), 0, 100, 0, 0, 0, 0, 1]);
const profile = segment(0xe2, [...bytes('ICC_PROFILE\0'), 1, 1, 7, 7]);
const tables = segment(0xdb, [0, ...Array.from({ length: 64 }, () => 1)]);
const frame = segment(0xc0, [8, 0, 8, 0, 8, 1, 1, 0x11, 0]);
/** Two scans, with a restart marker and a stuffed 0xff in the data. */
const scan = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 1, 2, 0xff, 0, 3, 0xff, 0xd0, 4];
const end = [0xff, 0xd9];
const start = [0xff, 0xd8];

/** The segments that show the picture. */
export const shownJpeg = [...jfif, ...adobe, ...profile, ...tables, ...frame, ...scan, ...scan];

/** A JPEG with these segments before its picture. */
export const jpeg = (before: readonly number[] = [], after: readonly number[] = []): Uint8Array =>
  Uint8Array.of(...start, ...before, ...shownJpeg, ...end, ...after);

/** A JPEG as a phone takes it: place, maker's notes, a preview, a comment, and a film after its end. */
export const phoneJpeg = (orientation = 6, little = false): Uint8Array =>
  jpeg(
    [
      ...exif(orientation, little),
      ...segment(0xe1, bytes('http://ns.adobe.com/xap/1.0/\0<x>52.2297N</x>')),
      ...segment(0xe2, bytes('MPF\0place 52.2297N')),
      ...segment(0xed, bytes('Photoshop 3.0\0Warsaw')),
      ...segment(0xfe, bytes('by Ada, 52.2297N')),
    ],
    bytes('ftypmp42 film with 52.2297N'),
  );

const chunk = (name: string, body: readonly number[]): number[] => [
  ...four(body.length),
  ...bytes(name),
  ...body,
  ...four(crc32(Buffer.from([...bytes(name), ...body]))),
];

/** A PNG with these chunks before its picture. */
export const png = (before: readonly number[] = [], after: readonly number[] = []): Uint8Array =>
  Uint8Array.of(
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk('IHDR', [...four(1), ...four(1), 8, 0, 0, 0, 0]),
    ...before,
    ...chunk('IDAT', [0x78, 0x9c, 0x63, 0x60, 0, 0, 0, 2, 0, 1]),
    ...chunk('IEND', []),
    ...after,
  );

/** A PNG that says where it was made. */
export const tellingPng = png(
  [
    ...chunk('tEXt', bytes('Place\x0052.2297N')),
    ...chunk('eXIf', bytes('MM 52.2297N')),
    ...chunk('tIME', [7, 234, 6, 12, 9, 0, 0]),
  ],
  bytes('52.2297N'),
);

const piece = (name: string, body: readonly number[]): number[] => [
  ...bytes(name),
  ...four(body.length).reverse(),
  ...body,
  ...(body.length % 2 ? [0] : []),
];

const riff = (pieces: readonly number[]): Uint8Array =>
  Uint8Array.of(
    ...bytes('RIFF'),
    ...four(pieces.length + 4).reverse(),
    ...bytes('WEBP'),
    ...pieces,
  );

const flags = (flag: number): number[] => piece('VP8X', [flag, 0, 0, 0, 0, 0, 0, 0, 0, 0]);

/** A WebP, and the same with what it should not tell. */
export const webp = riff([...flags(0x10), ...piece('VP8L', [0x2f, 1, 2])]);
export const tellingWebp = riff([
  ...flags(0x1c),
  ...piece('VP8L', [0x2f, 1, 2]),
  ...piece('EXIF', bytes('MM 52.2297N')),
  ...piece('XMP ', bytes('<x>52.2297N</x>')),
  ...piece('tell', bytes('52.2297N')),
]);
