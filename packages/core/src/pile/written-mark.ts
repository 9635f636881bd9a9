// How a mark that cannot be read for sure is written: `3|8` is a 3 or an 8, `3?` most likely a 3 but
// anything else may be, `?` (or nothing) a panel on which no mark can be read.

/** A mark as written down. */
export interface WrittenMark {
  /** What it may be, in the order written, each once; one for a plain mark, none for `?`. */
  readonly marks: readonly string[];
  /** Whether it may be something else as well. */
  readonly open: boolean;
}

/** Reads a written mark; white space about the bars does not matter. */
export function readMark(written: string | null | undefined): WrittenMark {
  const marks = new Set<string>();
  let open = false;
  for (const part of (written ?? '?').split('|').map((text) => text.trim())) {
    open ||= part.endsWith('?');
    const mark = part.replace(/\?+$/, '').trim();
    if (mark !== '') marks.add(mark);
  }
  return { marks: [...marks], open: open || marks.size === 0 };
}

/** Whether a mark says one thing and no other. */
export const isPlain = ({ marks, open }: WrittenMark): boolean => marks.length === 1 && !open;
