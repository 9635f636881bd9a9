// A tally in a few words, and the changes that a person makes to it.

import { type Fault, pileFaults, type ReadingRow, readPile } from '@shellraise/core';
import { produce } from 'immer';
import type { Cell } from '../../src/sheets/pile/cells.ts';
import { type CellTexts, type Landed, putCells } from '../../src/sheets/pile/edits.ts';
import { blankRow, type RowRef } from '../../src/sheets/pile/rows.ts';
import type { Doc } from '../../src/state/doc.ts';
import { emptyProject } from '../../src/state/empty-project.ts';

/** A reading of three sides or more, metres. */
export const reading = (sides: number[], more: Partial<ReadingRow> = {}): ReadingRow => ({
  sides,
  seenFrom: 'outside',
  ...more,
});

/** A document with these readings and no drafts. */
export function docOfReadings(...readings: readonly ReadingRow[]): Doc {
  const project = emptyProject('test');
  return {
    project: { ...project, pile: { ...project.pile, readings: [...readings] } },
    drafts: [],
  };
}

/** The name of the empty row. */
export const freshRef = ({ project, drafts }: Doc): RowRef => ({
  type: 'draft',
  key: blankRow(project.pile.readings, drafts).key,
});

/** The name of a reading. */
export const row = (index: number): RowRef => ({ type: 'reading', index });

/** The document after texts were typed into cells of a row, one after the other. */
export function typed(
  doc: Doc,
  ref: RowRef,
  texts: CellTexts,
  unit: 'mm' | 'in' = 'mm',
): { doc: Doc; ref: RowRef; aside: number } {
  let now = { doc, ref, aside: 0 };
  for (const [cell, text] of texts) {
    let landed: Landed | null = null;
    const next = produce(now.doc, (draft) => {
      landed = putCells(draft, now.ref, [[cell, text]], unit);
    });
    const done = landed as unknown as Landed;
    now = { doc: next, ref: done.ref, aside: now.aside + done.groupsAside };
  }
  return now;
}

/** Sides of a text for each cell from side 1 on. */
export const sides = (...texts: readonly string[]): CellTexts =>
  texts.map((text, i): readonly [Cell, string] => [i, text]);

/** The sides of a reading in millimetres. */
export const millimetres = (doc: Doc, index: number): number[] =>
  (doc.project.pile.readings[index]?.sides ?? []).map((side) => Math.round(side * 1e5) / 100);

/** What core finds wrong with the pile. */
export function faultsOf(doc: Doc): readonly Fault[] {
  const read = readPile(doc.project.pile);
  return read.ok ? pileFaults(doc.project.pile) : read.faults;
}
