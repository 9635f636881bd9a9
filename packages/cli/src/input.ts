// Reading the FILE of a command: a regular file of reasonable size that holds text.

import { open } from 'node:fs/promises';
import { badInput } from './ending.ts';

/** The largest file read, bytes. A pile of 700 panels is under half a megabyte. */
const maxBytes = 20_000_000;

/** The text of a file, without its byte-order mark. Ends the command where it can't be read, is
 * no file, is too big, or is not text. */
export async function readText(file: string): Promise<string> {
  const bytes = await readBytes(file);
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : 'utf-8';
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
    if (!text.includes('\u0000')) return text;
  } catch {
    // Told below.
  }
  throw badInput(`${file}: found bytes that are not text, expected project JSON or CSV in UTF-8`);
}

async function readBytes(file: string): Promise<Buffer> {
  try {
    const handle = await open(file, 'r');
    try {
      const { size } = await statOf(file, handle);
      if (size > maxBytes) throw tooBig(file, size);
      const bytes = await handle.readFile();
      if (bytes.length > maxBytes) throw tooBig(file, bytes.length);
      return bytes;
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw readable(file, error);
  }
}

async function statOf(file: string, handle: Awaited<ReturnType<typeof open>>) {
  const stat = await handle.stat();
  if (stat.isDirectory())
    throw badInput(`${file}: found a folder, expected a project file (JSON) or a pile (CSV)`);
  if (!stat.isFile() && !stat.isFIFO())
    throw badInput(`${file}: found a device, expected a project file (JSON) or a pile (CSV)`);
  return stat;
}

const tooBig = (file: string, size: number): Error =>
  badInput(
    `${file}: found ${Math.ceil(size / 1e6)} MB, expected at most ${maxBytes / 1e6} MB; a pile of 700 panels is under 1 MB`,
  );

const meanings: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'may not be read (permission denied)',
  EPERM: 'may not be read (permission denied)',
  EISDIR: 'found a folder, expected a project file (JSON) or a pile (CSV)',
  ENOTDIR: 'part of the path is a file, not a folder',
  EIO: 'could not be read (input/output error)',
};

function readable(file: string, error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : null;
  if (code === null) return error;
  return badInput(`${file}: ${meanings[code] ?? `could not be read (${code})`}`);
}
