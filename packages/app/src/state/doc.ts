// What a project is while somebody works on it: the project file, and the rows of the tally that
// are not whole yet. Every change is a step with its way back; steps are plain data, so that they
// can be kept with the project, laid on a newer copy of it, and later sent to other phones.

import type { Project } from '@shellraise/core';
import { applyPatches, type Draft, enablePatches, type Patch, produceWithPatches } from 'immer';

enablePatches();

/** A row of the tally as far as it was typed: cells as text, read once all of them can be. */
export interface DraftRow {
  /** Names the row while it is a draft. */
  readonly key: string;
  readonly tag: string;
  readonly by: string;
  readonly mark: string;
  /** One text a side, as typed. */
  readonly sides: readonly string[];
  readonly seenFrom: 'outside' | 'inside' | 'unknown';
  readonly condition: '' | 'good' | 'repair' | 'scrap';
  readonly count: string;
  /** Index of the reading that this row corrects: its cells hold only what could not be read, the
   * reading stands until they can. Absent for a row that is no reading yet. */
  readonly of?: number;
}

/** A project under work. */
export interface Doc {
  readonly project: Project;
  readonly drafts: readonly DraftRow[];
}

/** One change that can be taken back. */
export interface Step {
  /** What was done, in the words of the message table. */
  readonly label: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Steps that follow each other with the same `of` within a moment are one: a word typed letter by letter. */
  readonly of: string | null;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** A project with what was done to it. */
export interface History {
  readonly doc: Doc;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** What a change does; it may write into the draft or return a new whole. */
export type Recipe = (doc: Draft<Doc>) => Draft<Doc> | undefined;

/** How a change is told. */
export interface ChangeInfo {
  readonly label: string;
  readonly at: number;
  readonly of?: string;
}

/** Steps kept, at most: the oldest are forgotten first. */
export const MOST_STEPS = 500;
/** Steps of one thing closer together than this are one, milliseconds. */
const ONE_GO = 1500;

/** A project with nothing done yet. */
export const freshHistory = (project: Project): History => ({
  doc: { project, drafts: [] },
  past: [],
  future: [],
});

/** The history with one change made; the same object where nothing changed. */
export function changed(history: History, recipe: Recipe, info: ChangeInfo): History {
  const [doc, patches, inverse] = produceWithPatches(
    history.doc,
    recipe as (doc: Draft<Doc>) => Draft<Doc>,
  );
  if (patches.length === 0) return history;
  const step: Step = { label: info.label, at: info.at, of: info.of ?? null, patches, inverse };
  return { doc, past: withStep(history.past, step), future: [] };
}

/** The history one step back; the same object where there is none. */
export function undone(history: History): History {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    doc: applyPatches(history.doc, [...step.inverse]),
    past: history.past.slice(0, -1),
    future: [step, ...history.future],
  };
}

/** The history one step on again; the same object where there is none. */
export function redone(history: History): History {
  const [step, ...future] = history.future;
  if (step === undefined) return history;
  return {
    doc: applyPatches(history.doc, [...step.patches]),
    past: [...history.past, { ...step, of: null }],
    future,
  };
}

/** What was done to a project since it was `before`, laid on `base`, a copy that somebody else has
 * changed meanwhile. Steps that no longer fit it are left out. */
export function rebased(base: History, before: History, now: History): History {
  let same = 0;
  while (same < before.past.length && before.past[same] === now.past[same]) same++;
  const takenBack = before.past
    .slice(same)
    .reverse()
    .map((step) => ({ ...step, of: null, patches: step.inverse, inverse: step.patches }));
  let history = base;
  for (const step of [...takenBack, ...now.past.slice(same)])
    history = laidOn(history, step) ?? history;
  return history;
}

function laidOn({ doc, past }: History, step: Step): History | null {
  try {
    return redone({ doc, past, future: [step] });
  } catch {
    return null;
  }
}

function withStep(past: readonly Step[], step: Step): Step[] {
  const last = past.at(-1);
  const joins = last && step.of !== null && last.of === step.of && step.at - last.at < ONE_GO;
  if (!last || !joins) return [...past, step].slice(-MOST_STEPS);
  const joined: Step = {
    ...step,
    patches: [...last.patches, ...step.patches],
    inverse: [...step.inverse, ...last.inverse],
  };
  return [...past.slice(0, -1), joined];
}
