// Whether an update that came from elsewhere may go into a document. Nothing is applied here. An
// update that needs something the document has not yet is no fault: `gap` asks for all that is missing.

import { readEntry } from '@shellraise/core';
import * as Y from 'yjs';
import { MAX_ENTRIES, MAX_PROJECT_UPDATE, MAX_RECORD_UPDATE, ORDER_AHEAD } from './limits.ts';
import { PROJECT } from './project-doc.ts';
import { entryCount, itemOf, listName } from './record-doc.ts';

/** What is to become of an update. `known`: the document has all of it. */
export type UpdateVerdict =
  | { readonly verdict: 'take' | 'known' | 'gap' }
  | { readonly verdict: 'refuse'; readonly why: string };

type Struct = Y.Item | Y.GC | Y.Skip;

const refuse = (why: string): UpdateVerdict => ({ verdict: 'refuse', why });

/** An update of the record: it may only add entries, each whole and readable. */
export function recordUpdate(doc: Y.Doc, update: Uint8Array): UpdateVerdict {
  if (update.length > MAX_RECORD_UPDATE) return tooLong(update, MAX_RECORD_UPDATE);
  const read = decoded(update);
  if (!read) return refuse('the update cannot be read');
  if (read.ds.clients.size > 0) return refuse('nothing may be deleted from the record');
  const raw = read.structs.flatMap((struct) => entriesIn(struct) ?? [undefined]);
  const count = entryCount(doc) + raw.length;
  if (count > MAX_ENTRIES) return refuse(`more than ${MAX_ENTRIES} entries`);
  for (const item of raw.map(itemOf)) {
    if (item === undefined) return refuse('the record takes nothing but entries');
    const entry = readEntry(item);
    if (!entry.ok) return refuse(`no entry: ${entry.faults[0]?.path} is ${entry.faults[0]?.found}`);
    if (entry.value.order > count + ORDER_AHEAD)
      return refuse(`an order of ${entry.value.order} among ${count} entries`);
  }
  return fitting(doc, read.structs, false);
}

/** An update of the project: plain data in maps and lists. What rules there are between rows is told
 * when the project is read. */
export function projectUpdate(doc: Y.Doc, update: Uint8Array): UpdateVerdict {
  if (update.length > MAX_PROJECT_UPDATE) return tooLong(update, MAX_PROJECT_UPDATE);
  const read = decoded(update);
  if (!read) return refuse('the update cannot be read');
  for (const struct of read.structs) {
    if (!(struct instanceof Y.Item)) continue;
    const { parent, content } = struct;
    if (typeof parent === 'string' && parent !== PROJECT)
      return refuse('the project takes nothing but itself');
    const isPlain =
      content instanceof Y.ContentAny ||
      content instanceof Y.ContentDeleted ||
      (content instanceof Y.ContentType &&
        (content.type instanceof Y.Map || content.type instanceof Y.Array));
    if (!isPlain) return refuse('the project takes nothing but plain data');
  }
  const told = fitting(doc, read.structs, read.ds.clients.size > 0);
  return told.verdict === 'take' && !applies(doc, update)
    ? refuse('the update cannot be taken in')
    : told;
}

/** Whether an update goes into the document: what is damaged may be found out there only, with half of it
 * taken in. Tried on a copy, for a project is small. */
function applies(doc: Y.Doc, update: Uint8Array): boolean {
  const copy = new Y.Doc();
  try {
    Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
    Y.applyUpdate(copy, update);
    return true;
  } catch {
    return false;
  } finally {
    copy.destroy();
  }
}

const tooLong = (update: Uint8Array, most: number): UpdateVerdict =>
  refuse(`an update of ${update.length} bytes, at most ${most}`);

function decoded(update: Uint8Array): {
  readonly structs: readonly Struct[];
  readonly ds: { readonly clients: ReadonlyMap<number, unknown> };
} | null {
  try {
    return Y.decodeUpdate(update) as never;
  } catch {
    return null;
  }
}

/** The items that a struct adds to the end of its own client's list; null where it does anything else. */
function entriesIn(struct: Struct): readonly unknown[] | null {
  if (struct instanceof Y.Skip) return [];
  if (!(struct instanceof Y.Item) || !(struct.content instanceof Y.ContentAny)) return null;
  const { id, parent, parentSub, origin, rightOrigin } = struct;
  const begins = id.clock === 0 && (parent as unknown) === listName(id.client) && origin === null;
  const goesOn = origin?.client === id.client && origin.clock === id.clock - 1;
  const atEnd = rightOrigin === null && parentSub === null;
  return atEnd && (begins || goesOn) ? struct.content.arr : null;
}

/** Whether all that the structs build on is in the document or comes before them. */
function fitting(doc: Y.Doc, structs: readonly Struct[], deletes: boolean): UpdateVerdict {
  const ends = new Map<number, number>();
  const known = (client: number): number => ends.get(client) ?? Y.getState(doc.store, client);
  let fresh = deletes;
  for (const struct of structs) {
    if (struct instanceof Y.Skip) continue;
    const { client, clock } = struct.id;
    if (clock > known(client)) return { verdict: 'gap' };
    const end = clock + struct.length;
    if (end > known(client)) fresh = true;
    ends.set(client, Math.max(known(client), end));
  }
  for (const struct of structs) {
    if (!(struct instanceof Y.Item)) continue;
    const parent = struct.parent instanceof Y.ID ? struct.parent : null;
    for (const on of [struct.origin, struct.rightOrigin, parent])
      if (on && on.clock >= known(on.client)) return { verdict: 'gap' };
  }
  return { verdict: fresh ? 'take' : 'known' };
}
