// A kept project as read from storage: the project through its versioned parser, the rest of it row
// by row. Anything that can't be read is left out; a project that can't be is refused whole.

import type { Project } from '@shellraise/core';
import type { DraftRow, Step } from '../state/doc.ts';
import type { LoadOutcome } from './project-store.ts';

/** Checks a project from storage: every fault in one text, or the project as this version reads it. */
export type CheckProject = (
  raw: unknown,
) => Promise<
  | { readonly ok: true; readonly project: Project }
  | { readonly ok: false; readonly newer: boolean; readonly detail: string }
>;

/** The project that was kept under this id. */
export async function readStored(
  id: string,
  raw: unknown,
  check: CheckProject,
): Promise<LoadOutcome> {
  const stored = recordOf(raw);
  const doc = recordOf(stored.doc);
  const read = await check(doc.project);
  if (!read.ok)
    return read.newer ? { status: 'newer' } : { status: 'damaged', detail: read.detail };
  const { revision, savedAt } = stored;
  return {
    status: 'loaded',
    stored: {
      id,
      revision: Number.isInteger(revision) ? (revision as number) : 0,
      savedAt: Number.isFinite(savedAt) ? (savedAt as number) : 0,
      doc: { project: read.project, drafts: listOf(doc.drafts, isDraft) },
      past: listOf(stored.past, isStep),
      future: listOf(stored.future, isStep),
    },
  };
}

const recordOf = (raw: unknown): Readonly<Record<string, unknown>> => (isRecord(raw) ? raw : {});

function listOf<T>(raw: unknown, is: (item: unknown) => item is T): readonly T[] {
  return Array.isArray(raw) ? raw.filter(is) : [];
}

const isDraft = (raw: unknown): raw is DraftRow =>
  isRecord(raw) && typeof raw.key === 'string' && Array.isArray(raw.sides);

const isStep = (raw: unknown): raw is Step =>
  isRecord(raw) &&
  typeof raw.label === 'string' &&
  Array.isArray(raw.patches) &&
  Array.isArray(raw.inverse);

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null;
