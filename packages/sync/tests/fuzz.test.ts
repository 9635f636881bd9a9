import { type Project, projectFrom, RecordLog, readEntry } from '@shellraise/core';
import { expect, it } from 'vitest';
import * as Y from 'yjs';
import { damagedBytes, fuzz } from '../../core/tests/fuzz/fuzzing.ts';
import {
  addToDoc,
  projectIn,
  projectUpdate,
  rawEntries,
  recordUpdate,
  writeProject,
} from '../src/index.ts';

/** A document, and the updates in which it came. */
function told(change: (doc: Y.Doc) => void) {
  const doc = new Y.Doc();
  const updates: Uint8Array[] = [];
  doc.on('update', (bytes) => updates.push(bytes));
  change(doc);
  return { whole: Y.encodeStateAsUpdate(doc), updates };
}

/** Empty, or with all that was told. */
function docWith(update: Uint8Array | null): Y.Doc {
  const doc = new Y.Doc();
  if (update) Y.applyUpdate(doc, update);
  return doc;
}

it('a damaged update of the record is refused, or adds entries that can be read', {
  timeout: 3_600_000,
}, () => {
  const log = new RecordLog();
  const { whole, updates } = told((doc) => {
    for (const seam of ['1-01/1-02', '1-02/1-03', '3-07/3-08']) {
      const what = { kind: 'seam pass', seam, pass: 'snug' } as const;
      const entry = log.write(what, { writer: 'ada00000', by: 'Ada', at: Date.UTC(2026, 5, 12) });
      log.add(entry);
      addToDoc(doc, [entry]);
    }
  });
  const make = (random: Parameters<typeof damagedBytes>[0]) => ({
    bytes: damagedBytes(random, [...updates, whole]),
    doc: docWith(random.below(2) === 0 ? null : whole),
  });
  fuzz('updates of the record', 0.04, make, ({ bytes, doc }) => {
    const before = rawEntries(doc);
    const { verdict } = recordUpdate(doc, bytes);
    if (verdict === 'refuse' || verdict === 'gap') return 'refused';
    Y.applyUpdate(doc, bytes);
    const after = rawEntries(doc);
    for (const item of before) expect(after).toContainEqual(item);
    for (const item of after) expect(readEntry(item).ok).toBe(true);
    return 'read';
  });
});

it('a project with a number that is no JSON is told of, not thrown over', () => {
  const doc = new Y.Doc();
  doc.getMap('project').set('whole', new Y.Map([['shellraise', 10n ** 20n]]));
  expect(projectIn(doc).ok).toBe(false);
});

it('a damaged update of the project is refused, or leaves a document that is read or told of', {
  timeout: 3_600_000,
}, () => {
  const read = projectFrom({ shellraise: 1, title: 'Heap', pile: { kinds: [] } });
  if (!read.ok) throw new Error('no project');
  const { whole, updates } = told((doc) => {
    writeProject(doc, read.value);
    writeProject(doc, { ...read.value, title: 'Another heap', notes: 'of nothing' } as Project);
  });
  const make = (random: Parameters<typeof damagedBytes>[0]) => ({
    bytes: damagedBytes(random, [...updates, whole]),
    doc: docWith(random.below(2) === 0 ? null : whole),
  });
  fuzz('updates of the project', 0.02, make, ({ bytes, doc }) => {
    const { verdict } = projectUpdate(doc, bytes);
    if (verdict === 'refuse' || verdict === 'gap') return 'refused';
    Y.applyUpdate(doc, bytes);
    const now = projectIn(doc);
    if (!now.ok) expect(now.faults.length).toBeGreaterThan(0);
    return 'read';
  });
});
