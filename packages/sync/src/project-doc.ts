// The project as a Yjs document: objects as maps, lists as lists, so that people who change different
// rows and fields at once lose nothing. Where two put a project on an empty site at once, one of the two
// is there, whole. What two changed at one field is one of the two, the same on
// every device. What comes out passes the project's own reader: a merge may break a rule between rows.

import { type Project, projectFrom, type Read } from '@shellraise/core';
import * as Y from 'yjs';

/** Name of the project's map in the document. */
export const PROJECT = 'project';

/** The one key of that map: all of the project is under it. */
const WHOLE = 'whole';

/** The project in the document, or every fault of it. */
export const projectIn = (doc: Y.Doc): Read<Project> => projectFrom(wholeIn(doc)?.toJSON() ?? {});

/** Writes a project over what the document holds, changing no more than what differs. */
export function writeProject(doc: Y.Doc, project: Project): void {
  const fields = JSON.parse(JSON.stringify(project)) as Fields;
  doc.transact(() => {
    const whole = wholeIn(doc);
    if (whole) changeMap(whole, fields);
    else doc.getMap(PROJECT).set(WHOLE, shared(fields));
  });
}

function wholeIn(doc: Y.Doc): Y.Map<unknown> | null {
  const whole = doc.getMap(PROJECT).get(WHOLE);
  return whole instanceof Y.Map ? whole : null;
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function changeMap(map: Y.Map<unknown>, to: Fields): void {
  for (const key of [...map.keys()]) if (!(key in to)) map.delete(key);
  for (const [key, value] of Object.entries(to)) {
    const now = map.get(key);
    if (!changeInside(now, value) && !(map.has(key) && same(now, value)))
      map.set(key, shared(value));
  }
}

/** Changes what is there from within; false where something else is to take its place. */
function changeInside(now: unknown, to: unknown): boolean {
  if (now instanceof Y.Map && isFields(to)) changeMap(now, to);
  else if (now instanceof Y.Array && Array.isArray(to)) changeList(now, to);
  else return false;
  return true;
}

/** Rows alike at either end stay; those between are changed one for one, then added or taken out. */
function changeList(list: Y.Array<unknown>, to: readonly unknown[]): void {
  const now = list.toArray();
  let head = 0;
  while (head < Math.min(now.length, to.length) && same(now[head], to[head])) head++;
  let tail = 0;
  while (
    tail < Math.min(now.length, to.length) - head &&
    same(now[now.length - 1 - tail], to[to.length - 1 - tail])
  )
    tail++;
  const [left, wanted] = [now.slice(head, now.length - tail), to.slice(head, to.length - tail)];
  const both = Math.min(left.length, wanted.length);
  for (let i = 0; i < both; i++)
    if (!changeInside(left[i], wanted[i]) && !same(left[i], wanted[i])) {
      list.delete(head + i);
      list.insert(head + i, [shared(wanted[i])]);
    }
  if (left.length > both) list.delete(head + both, left.length - both);
  if (wanted.length > both) list.insert(head + both, wanted.slice(both).map(shared));
}

function shared(value: unknown): unknown {
  if (Array.isArray(value)) return Y.Array.from(value.map(shared) as string[]);
  if (!isFields(value)) return value;
  return new Y.Map(Object.entries(value).map(([key, item]) => [key, shared(item)]));
}

function same(now: unknown, to: unknown): boolean {
  if (now instanceof Y.Array)
    return (
      Array.isArray(to) && to.length === now.length && now.toArray().every((x, i) => same(x, to[i]))
    );
  if (now instanceof Y.Map) {
    if (!isFields(to)) return false;
    const keys = Object.keys(to);
    return (
      keys.length === now.size && keys.every((key) => now.has(key) && same(now.get(key), to[key]))
    );
  }
  return now === to;
}
