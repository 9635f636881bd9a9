// Which phones' clocks can be believed. The order of entries does not come from clocks. But where an
// entry was written by somebody who had seen another and its time is the earlier one, one of the two
// clocks is off: the writer who so disagrees with most others is shifted by as much as it takes.
// A clock that is off by less than what passes between seeing and writing cannot be told.

import { type Entry, type EntryId, idOf } from './entry.ts';
import { CLOCK_DOUBT } from './tolerances.ts';

/** Writer → others that its clock stands behind, and by how much at the least, milliseconds. */
type Behind = Map<string, Map<string, number>>;

/** Writer → how far its clock stands ahead of the others' at the least, milliseconds, behind where
 * negative; only writers whose clock must be off by more than CLOCK_DOUBT. Of two that disagree with
 * as many, the one with fewer entries is taken to be off, then the one met later. */
export function clockOffsets(entries: readonly Entry[]): ReadonlyMap<string, number> {
  const behind = contradictions(entries);
  const count = new Map<string, number>();
  for (const { writer } of entries) count.set(writer, (count.get(writer) ?? 0) + 1);
  const met = [...count.keys()];
  const offsets = new Map<string, number>();
  for (;;) {
    const worst = met
      .map((writer, i) => ({ writer, i, against: disagreesWith(behind, writer).size }))
      .filter(({ against }) => against > 0)
      .sort(
        (a, b) => b.against - a.against || count.get(a.writer)! - count.get(b.writer)! || b.i - a.i,
      )[0];
    if (!worst) return offsets;
    const { writer } = worst;
    const late = Math.max(0, ...(behind.get(writer)?.values() ?? []));
    const early = Math.max(0, ...[...behind.values()].map((others) => others.get(writer) ?? 0));
    offsets.set(writer, early >= late ? early : -late);
    behind.delete(writer);
    for (const others of behind.values()) others.delete(writer);
  }
}

/** An entry's time with its writer's offset taken out, milliseconds since 1970. */
export const timeOf = (entry: Entry, offsets: ReadonlyMap<string, number>): number =>
  entry.at - (offsets.get(entry.writer) ?? 0);

function disagreesWith(behind: Behind, writer: string): Set<string> {
  const others = new Set(behind.get(writer)?.keys());
  for (const [other, ahead] of behind) if (ahead.has(writer)) others.add(other);
  return others;
}

function contradictions(entries: readonly Entry[]): Behind {
  const byId = new Map<EntryId, Entry>(entries.map((entry) => [idOf(entry), entry]));
  const behind: Behind = new Map();
  for (const entry of entries)
    for (const id of entry.follows ?? []) {
      const seen = byId.get(id);
      const late = seen ? seen.at - entry.at : 0;
      if (!seen || seen.writer === entry.writer || late <= CLOCK_DOUBT) continue;
      const others = behind.get(entry.writer) ?? new Map<string, number>();
      others.set(seen.writer, Math.max(late, others.get(seen.writer) ?? 0));
      behind.set(entry.writer, others);
    }
  return behind;
}
