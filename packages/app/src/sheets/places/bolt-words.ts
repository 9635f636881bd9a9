// The bolts of one seam, in words.

import { type Shell, writeLength } from '@shellraise/core';
import type { Quantities } from '../../engine/drawings.ts';
import type { Words } from '../../words/words.ts';

/** `21 bolts 5/16-18 × 1″`; that nobody knows, where nobody does; empty while it is counted. */
export function boltWords(
  shell: Shell,
  side: number,
  quantities: Quantities | null,
  words: Words['places']['details'],
): string {
  if (!quantities) return '';
  const seam = quantities.bolts[seamOf(shell, side)];
  if (!seam) return words.boltsUnknown;
  const { holes, thread, length } = seam;
  const written = thread.startsWith('M')
    ? writeLength(length, { unit: 'mm', step: 1 })
    : writeLength(length, { unit: 'in', step: 16 });
  return words.bolts(holes, `${thread} × ${written.replace('"', '″')}`);
}

/** Index of the seam that a side is one of. */
export function seamOf(shell: Shell, side: number): number {
  const lower = Math.min(side, shell.mate[side] as number);
  for (let i = 0; i < shell.seams.length; i += 2) if (shell.seams[i] === lower) return i / 2;
  return -1;
}
