// What did not go straight: what was taken back, panels that came out or made room for another, panels
// found broken, seams loosened again. The dossier's list of changes; times with clocks put right.

import { timeOf } from './clocks.ts';
import { compareEntries, type Entry, type EntryId } from './entry.ts';
import type { RecordLog } from './log.ts';
import { RECORD_PASSES, type RecordPass } from './what.ts';

/** One change. `by` and `at` (milliseconds since 1970) are of the entry that made it. */
export type RecordChange = {
  readonly by: string;
  readonly at: number;
} & (
  | { readonly change: 'taken back'; readonly entry: Entry }
  | { readonly change: 'taken out'; readonly place: string; readonly tag: string | null }
  | {
      readonly change: 'swapped';
      readonly place: string;
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly change: 'not good'; readonly tag: string; readonly condition: 'repair' | 'scrap' }
  | {
      readonly change: 'loosened';
      readonly seam: string;
      readonly from: string;
      readonly to: string;
    }
);

/** Every change, in the order of the entries. `offsets`: as `clockOffsets` gives them. A panel that
 * comes into a place after another was taken out of it is a swap. */
export function recordChanges(
  log: RecordLog,
  offsets: ReadonlyMap<string, number>,
): readonly RecordChange[] {
  const found: { readonly entry: Entry; readonly change: RecordChange }[] = [];
  const put = (entry: Entry, change: object): void => {
    const said = { by: entry.by, at: timeOf(entry, offsets) };
    found.push({ entry, change: { ...said, ...change } as RecordChange });
  };
  for (const undo of log.living('undo')) {
    const entry = log.entry(undo.what.of);
    if (entry && entry.what.kind !== 'undo' && !log.lives(entry))
      put(undo, { change: 'taken back', entry });
  }
  for (const entry of log.living('panel condition'))
    if (entry.what.condition !== 'good')
      put(entry, { change: 'not good', tag: entry.what.tag, condition: entry.what.condition });
  for (const { entry, change } of placeChanges(log)) put(entry, change);
  for (const entry of log.living('seam pass')) {
    const from = followedPass(log, entry.follows ?? []);
    const { seam, pass } = entry.what;
    if (from !== null && RECORD_PASSES.indexOf(pass) < RECORD_PASSES.indexOf(from))
      put(entry, { change: 'loosened', seam, from, to: pass });
  }
  return found.sort((a, b) => compareEntries(a.entry, b.entry)).map(({ change }) => change);
}

interface PlaceChange {
  readonly entry: Entry;
  readonly change: object;
}

function placeChanges(log: RecordLog): PlaceChange[] {
  const last = new Map<string, string | null>();
  const out = new Map<string, string | null>();
  const entries: Entry[] = [...log.living('panel placed'), ...log.living('panel taken out')];
  return entries.sort(compareEntries).flatMap((entry): PlaceChange[] => {
    const { what } = entry;
    if (what.kind === 'panel taken out') {
      const { place } = what;
      const tag = last.get(place);
      last.delete(place);
      if (tag === undefined) return [];
      out.set(place, tag);
      return [{ entry, change: { change: 'taken out', place, tag } }];
    }
    if (what.kind !== 'panel placed') return [];
    const { place } = what;
    const from = last.has(place) ? last.get(place) : out.get(place);
    last.set(place, what.tag);
    out.delete(place);
    return from === undefined || from === what.tag
      ? []
      : [{ entry, change: { change: 'swapped', place, from, to: what.tag } }];
  });
}

function followedPass(log: RecordLog, ids: readonly EntryId[]): RecordPass | null {
  const passes = ids.flatMap((id) => {
    const entry = log.entry(id);
    return entry && log.lives(entry) && entry.what.kind === 'seam pass' ? [entry.what.pass] : [];
  });
  // Of those that differ the one that supposes least: who settles a question loosens nothing.
  const lowest = Math.min(...passes.map((pass) => RECORD_PASSES.indexOf(pass)));
  return RECORD_PASSES[lowest] ?? null;
}
