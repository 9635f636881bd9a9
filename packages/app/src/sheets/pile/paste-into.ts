// A block pasted into the tally: with a header it is read by the engine as a spreadsheet is; without
// one its cells go where they stand. What can't be read is kept in the tally, marked.

import { describeFault, type ReadingRow } from '@shellraise/core';
import { quickEngine } from '../../engine/bridge.ts';
import { type App, docOf } from '../../state/app-state.ts';
import type { Words } from '../../words/words.ts';
import type { Landed } from './edits.ts';
import { columnsOf, hasHeader, putBlock, readBlock } from './paste.ts';
import { lengthsNow, type Tally } from './use-tally.ts';

/** Faults listed in a message, at most. */
const LISTED = 8;

/** Takes a pasted text; false where it is a text for one cell. */
export function pasteInto({
  app,
  words,
  text,
  tally,
}: {
  app: App;
  words: Words;
  text: string;
  tally: Tally;
}): boolean {
  const block = readBlock(text);
  if (block === null) return false;
  const { rows, columns, active, actions } = tally;
  if (hasHeader(block)) {
    void addTable(app, words, text);
    return true;
  }
  const start = columns[active?.column ?? 0] ?? 'tag';
  const unit = lengthsNow(app).bare;
  const refs = rows.slice(active?.row ?? rows.length - 1).filter(({ fresh }) => !fresh);
  const before = docOf(app.state.getState()).drafts.length;
  let landed: Landed | null = null;
  app.change(
    (doc) => {
      const into = refs.map(({ ref }) => ref);
      landed = putBlock(doc, into, block, columnsOf(block, start, unit), unit);
      return undefined;
    },
    { label: words.pile.changes.paste(block.length) },
  );
  const left = Math.max(0, docOf(app.state.getState()).drafts.length - before);
  app.tell('note', words.pile.pasted(block.length, left));
  actions.landed(landed);
  return true;
}

async function addTable(app: App, words: Words, text: string): Promise<void> {
  const read = await quickEngine
    .ask('readFile', 'pasted.csv', text, lengthsNow(app).bare)
    .answer.catch(() => null);
  if (read === null) {
    app.tell('fault', words.frame.engineDied);
    return;
  }
  if (!read.ok) {
    const lines = read.faults.slice(0, LISTED).map(describeFault);
    if (read.faults.length > LISTED)
      lines.push(words.frame.moreFaults(read.faults.length - LISTED));
    app.tell('fault', words.pile.pasteFault(read.faults.length), lines);
    return;
  }
  const { readings } = read.project.pile;
  app.change(
    ({ project }) => {
      project.pile.readings.push(...(readings as ReadingRow[]));
      return undefined;
    },
    { label: words.pile.changes.paste(readings.length) },
  );
  app.tell('note', words.pile.pasted(readings.length, 0));
}
