// Writing results: all files of a command or none. They are written under temporary names beside
// their place and renamed when the last of them is on the disk; in one go, so that an interrupt
// comes before or after.

import {
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { NamedFile } from '@shellraise/core';
import { badInput } from './ending.ts';

/** Writes the files into the folder, which is made where it is missing. Ends the command, with
 * nothing written, where that can't be done. */
export function writeAll(folder: string, files: readonly NamedFile[]): void {
  const made = makeFolder(folder);
  let staging: string | null = null;
  try {
    staging = mkdtempSync(join(folder, '.shellraise-'));
    for (const file of files) writeFileSync(join(staging, file.name), file.text);
    for (const file of files) refuseFolder(join(folder, file.name));
    for (const file of files) renameSync(join(staging, file.name), join(folder, file.name));
    rmSync(staging, { recursive: true });
  } catch (error) {
    const ours = made ?? staging;
    if (ours !== null) rmSync(ours, { recursive: true, force: true });
    throw unwritable(folder, error);
  }
}

/** Ends the command where nothing could be written into the folder, before any work is done for it. */
export function refuseUnwritable(folder: string): void {
  try {
    let at = resolve(folder);
    while (!statSync(at, { throwIfNoEntry: false })) at = dirname(at);
    rmdirSync(mkdtempSync(join(at, '.shellraise-')));
  } catch (error) {
    throw unwritable(folder, error);
  }
}

/** Makes the folder and what is missing above it; the topmost that was made. Not Node's own
 * recursive way, which never ends where the system says that a parent is missing, as in /proc. */
function makeFolder(folder: string): string | undefined {
  try {
    const missing: string[] = [];
    for (let at = resolve(folder); !statSync(at, { throwIfNoEntry: false }); at = dirname(at))
      missing.unshift(at);
    for (const path of missing) mkdirSync(path);
    return missing[0];
  } catch (error) {
    throw unwritable(folder, error);
  }
}

/** A rename on to a folder fails; found before the first rename, nothing is half done. */
function refuseFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory())
    throw badInput(`${path}: found a folder, expected to write a file there`);
}

const meanings: Readonly<Record<string, string>> = {
  EEXIST: 'is a file; expected a folder to write to',
  ENOTDIR: 'is a file or lies under one; expected a folder to write to',
  EACCES: 'may not be written to (permission denied)',
  EPERM: 'may not be written to (permission denied)',
  EROFS: 'is read-only',
  ENOENT: 'could not be made there',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'is a name too long for this disk',
};

function unwritable(folder: string, error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : null;
  if (code === null) return error;
  return badInput(
    `${folder}: ${meanings[code] ?? `could not be written (${code})`}; nothing was written`,
  );
}
