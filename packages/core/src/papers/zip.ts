// Several files as one.

import { strToU8, zipSync } from 'fflate';

/** A file with its name. */
export interface NamedFile {
  readonly name: string;
  readonly text: string | Uint8Array;
}

/** The files as one zip, always the same bytes. */
export const zipOf = (files: readonly NamedFile[]): Uint8Array =>
  zipSync(
    Object.fromEntries(
      files.map(({ name, text }) => [name, typeof text === 'string' ? strToU8(text) : text]),
    ),
    // A zip must bear a day; a fixed one keeps the bytes the same.
    { mtime: '2000-01-01T00:00:00', level: 6 },
  );
