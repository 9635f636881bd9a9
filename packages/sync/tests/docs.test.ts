import { type Entry, type Project, projectFrom, RecordLog } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import {
  addToDoc,
  keptElsewhere,
  listName,
  projectIn,
  projectUpdate,
  rawEntries,
  recordUpdate,
  sharedRecord,
  writeProject,
} from '../src/index.ts';

const AT = Date.UTC(2026, 5, 12, 9);
const log = new RecordLog();

function entry(pass: 'finger' | 'snug' = 'finger', writer = 'ada00000'): Entry {
  const made = log.write(
    { kind: 'seam pass', seam: '3-07/3-08', pass },
    { writer, by: 'Ada', at: AT },
  );
  log.add(made);
  return made;
}

const own = (doc: Y.Doc) => doc.getArray(listName(doc.clientID));

/** An update as a device would send it. */
function update(change: (doc: Y.Doc) => void, from?: Y.Doc): Uint8Array {
  const doc = new Y.Doc();
  if (from) Y.applyUpdate(doc, Y.encodeStateAsUpdate(from));
  const before = Y.encodeStateVector(doc);
  change(doc);
  return Y.encodeStateAsUpdate(doc, before);
}

const verdictOf = (bytes: Uint8Array, doc = new Y.Doc()) => {
  const told = recordUpdate(doc, bytes);
  return told.verdict === 'refuse' ? told.why : told.verdict;
};

describe('the record’s document', () => {
  it('hands on every entry once, whatever is repeated or comes late', () => {
    const updates = Array.from({ length: 6 }, () => update((doc) => addToDoc(doc, [entry()])));
    const doc = new Y.Doc();
    const shared = sharedRecord(doc);
    const came: Entry[] = [];
    const stop = shared.watch((entries) => came.push(...entries));
    for (const bytes of [...updates.slice(3), ...updates, ...updates.slice(0, 2)])
      Y.applyUpdate(doc, bytes);
    expect(shared.log.size).toBe(6);
    expect(came).toHaveLength(6);
    stop();
    Y.applyUpdate(
      doc,
      update((other) => addToDoc(other, [entry()])),
    );
    expect([shared.log.size, came.length]).toEqual([7, 6]);
    expect(sharedRecord(doc).log.entries()).toEqual(shared.log.entries());
    shared.stop();
  });

  it('takes what a file brings without doubles', () => {
    const doc = new Y.Doc();
    const shared = sharedRecord(doc);
    const [a, b] = [entry(), entry()];
    expect(shared.bring([a, b, a])).toBe(2);
    expect(shared.bring([a, b])).toBe(0);
    expect(rawEntries(doc)).toHaveLength(2);
  });

  it('shows nothing that is no entry, and loses none of those that are', () => {
    const doc = new Y.Doc();
    own(doc).push([{ writer: 'x' }, entry(), 7, null]);
    own(doc).push(['{"writer"', 'x', '7', JSON.stringify(entry())]);
    const shared = sharedRecord(doc);
    expect([shared.log.size, shared.refused()]).toEqual([2, 6]);
  });

  it('holds an entry as text, and reads those that are objects as well', () => {
    const doc = new Y.Doc();
    const [a, b] = [entry(), entry()];
    addToDoc(doc, [a]);
    own(doc).push([b]);
    expect(own(doc).get(0)).toBe(JSON.stringify(a));
    expect(sharedRecord(doc).log.entries()).toEqual([a, b]);
    expect(verdictOf(Y.encodeStateAsUpdate(doc))).toBe('take');
    own(doc).push([JSON.stringify({ ...a, seq: -1 })]);
    expect(verdictOf(Y.encodeStateAsUpdate(doc))).toContain('no entry: seq');
  });
});

describe('an update of the record', () => {
  it('is taken where it adds entries, and known the second time', () => {
    const bytes = update((doc) => addToDoc(doc, [entry(), entry('snug')]));
    const doc = new Y.Doc();
    expect(verdictOf(bytes, doc)).toBe('take');
    Y.applyUpdate(doc, bytes);
    expect(verdictOf(bytes, doc)).toBe('known');
    const more = update((other) => addToDoc(other, [entry()]), doc);
    expect(verdictOf(more, doc)).toBe('take');
    expect(verdictOf(Y.mergeUpdates([bytes, more]), doc)).toBe('take');
  });

  it('is asked for again, whole, where something before it is missing', () => {
    const doc = new Y.Doc();
    const parts: Uint8Array[] = [];
    doc.on('update', (bytes: Uint8Array) => parts.push(bytes));
    for (let i = 0; i < 3; i++) addToDoc(doc, [entry()]);
    expect(parts.map((bytes) => verdictOf(bytes))).toEqual(['take', 'gap', 'gap']);
    const other = update((copy) => addToDoc(copy, [entry()]), doc);
    expect([verdictOf(other), verdictOf(other, doc)]).toEqual(['take', 'take']);
  });

  it('is refused where it deletes, changes or adds anything else', () => {
    const doc = new Y.Doc();
    addToDoc(doc, [entry()]);
    const tries: Record<string, Uint8Array> = {
      'nothing may be deleted from the record': update(
        (copy) => copy.getArray(listName(doc.clientID)).delete(0, 1),
        doc,
      ),
      'the record takes nothing but entries': update((copy) =>
        copy.getMap(listName(copy.clientID)).set('x', entry()),
      ),
    };
    for (const [why, bytes] of Object.entries(tries)) expect(verdictOf(bytes, doc)).toBe(why);
    const others = [
      (copy: Y.Doc) => copy.getArray('other').push([entry()]),
      (copy: Y.Doc) => copy.getText(listName(copy.clientID)).insert(0, 'x'),
      (copy: Y.Doc) => copy.getArray(listName(doc.clientID)).push([entry()]),
      (copy: Y.Doc) => own(copy).push([new Y.Map()]),
      (copy: Y.Doc) => own(copy).push([new Uint8Array(8)]),
    ];
    for (const change of others)
      expect(verdictOf(update(change), doc)).toBe('the record takes nothing but entries');
    expect(verdictOf(update((copy) => own(copy).push([{ ...entry(), by: 7 }])))).toBe(
      'no entry: by is 7',
    );
    expect(verdictOf(update((copy) => addToDoc(copy, [{ ...entry(), order: 5000 }])))).toContain(
      'an order of 5000',
    );
  });

  it('is refused where it cannot be read, however it is cut or changed, and never throws', () => {
    const bytes = update((doc) => addToDoc(doc, [entry(), entry('snug'), entry()]));
    let [refused, taken] = [0, 0];
    for (let cut = 0; cut < bytes.length - 1; cut += 3) {
      const verdict = recordUpdate(new Y.Doc(), bytes.slice(0, cut)).verdict;
      if (verdict === 'refuse') refused++;
      else taken++;
    }
    for (let at = 0; at < bytes.length; at += 2) {
      const bent = bytes.slice();
      bent[at] = (bent[at] as number) ^ 0x55;
      expect(['refuse', 'take', 'gap', 'known']).toContain(recordUpdate(new Y.Doc(), bent).verdict);
    }
    expect(refused).toBeGreaterThan(40);
    expect(taken).toBe(0);
  });
});

describe('the project’s document', () => {
  const project = (more: object = {}): Project => {
    const read = projectFrom({
      shellraise: 1,
      title: 'Barn',
      pile: { kinds: [1, 2, 3].map((id) => ({ id: String(id), sides: [0.9, 0.9, 1], good: 4 })) },
      ...more,
    });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return read.value;
  };
  const readIn = (doc: Y.Doc) => {
    const read = projectIn(doc);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return read.value;
  };
  const withGood = (at: number, good: number): Project => {
    const one = project();
    const kinds = one.pile.kinds.map((kind, i) => (i === at ? { ...kind, good } : kind));
    return { ...one, pile: { ...one.pile, kinds } };
  };

  it('gives back what was written', () => {
    const doc = new Y.Doc();
    for (const one of [project(), project({ title: 'Shed' }), withGood(1, 9)]) {
      writeProject(doc, one);
      expect(readIn(doc)).toEqual(one);
    }
    const fewer = {
      ...project(),
      pile: { ...project().pile, kinds: project().pile.kinds.slice(1) },
    };
    writeProject(doc, fewer);
    expect(readIn(doc)).toEqual(fewer);
  });

  it('changes no more than what differs', () => {
    const doc = new Y.Doc();
    writeProject(doc, project());
    let bytes = 0;
    doc.on('update', (part: Uint8Array) => {
      bytes += part.length;
    });
    writeProject(doc, project());
    expect(bytes).toBe(0);
    writeProject(doc, withGood(1, 5));
    expect(bytes).toBeLessThan(60);
  });

  it('keeps what two change at once in different rows, and agrees where it is one field', () => {
    const [a, b] = [new Y.Doc(), new Y.Doc()];
    writeProject(a, project());
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    writeProject(a, withGood(0, 7));
    writeProject(b, withGood(2, 8));
    for (const [to, from] of [
      [a, b],
      [b, a],
    ] as const)
      Y.applyUpdate(to, Y.encodeStateAsUpdate(from));
    expect(readIn(a).pile.kinds.map(({ good }) => good)).toEqual([7, 4, 8]);
    expect(readIn(b)).toEqual(readIn(a));
    writeProject(a, { ...readIn(a), title: 'A' });
    writeProject(b, { ...readIn(b), title: 'B' });
    for (const [to, from] of [
      [a, b],
      [b, a],
    ] as const)
      Y.applyUpdate(to, Y.encodeStateAsUpdate(from));
    expect(readIn(a)).toEqual(readIn(b));
    expect(['A', 'B']).toContain(readIn(a).title);
  });

  it('is one of two that were put there at once, whole', () => {
    const [a, b] = [new Y.Doc(), new Y.Doc()];
    const [barn, shed] = [project({ title: 'Barn' }), { ...withGood(0, 9), title: 'Shed' }];
    writeProject(a, barn);
    writeProject(b, shed);
    Y.applyUpdate(a, Y.encodeStateAsUpdate(b));
    Y.applyUpdate(b, Y.encodeStateAsUpdate(a));
    expect(readIn(a)).toEqual(readIn(b));
    expect([barn, shed]).toContainEqual(readIn(a));
  });

  it('takes plain data alone from elsewhere', () => {
    const told = (change: (doc: Y.Doc) => void) => projectUpdate(new Y.Doc(), update(change));
    expect(told((doc) => writeProject(doc, project())).verdict).toBe('take');
    expect(told((doc) => doc.getMap('other').set('x', 1)).verdict).toBe('refuse');
    expect(told((doc) => doc.getMap('project').set('x', new Y.Text('x'))).verdict).toBe('refuse');
    expect(told((doc) => doc.getMap('project').set('x', new Uint8Array(3))).verdict).toBe('refuse');
    expect(projectUpdate(new Y.Doc(), Uint8Array.of(255, 255, 255)).verdict).toBe('refuse');
  });

  it('tells every fault where a merge broke a rule between rows', () => {
    const doc = new Y.Doc();
    expect(projectIn(doc).ok).toBe(false);
  });
});

describe('what is kept elsewhere', () => {
  it('is what the other side told, and what came from it', () => {
    const [here, there] = [new Y.Doc(), new Y.Doc()];
    const kept = keptElsewhere(here);
    addToDoc(here, [entry(), entry()]);
    expect(kept.waiting()).toBe(2);
    kept.told(Y.encodeStateVector(there));
    expect(kept.waiting()).toBe(2);
    Y.applyUpdate(there, Y.encodeStateAsUpdate(here));
    kept.told(Y.encodeStateVector(there));
    expect(kept.waiting()).toBe(0);
    const theirs = update((doc) => addToDoc(doc, [entry()]));
    Y.applyUpdate(here, theirs);
    expect(kept.waiting()).toBe(1);
    kept.came(theirs);
    expect(kept.waiting()).toBe(0);
    kept.told(Y.encodeStateVector(new Y.Doc()));
    expect(kept.waiting()).toBe(3);
  });

  it('is remembered until the other side speaks again', () => {
    const here = new Y.Doc();
    const before = keptElsewhere(here);
    addToDoc(here, [entry(), entry()]);
    before.told(Y.encodeStateVector(here));
    addToDoc(here, [entry()]);
    const after = keptElsewhere(here, before.known());
    expect([before.waiting(), after.waiting()]).toEqual([1, 1]);
    expect(keptElsewhere(here).waiting()).toBe(3);
    after.told(Y.encodeStateVector(new Y.Doc()));
    expect(after.waiting()).toBe(3);
  });

  it('is not what comes with a gap before it', () => {
    const [here, parts] = [new Y.Doc(), [] as Uint8Array[]];
    here.on('update', (bytes: Uint8Array) => parts.push(bytes));
    for (let i = 0; i < 3; i++) addToDoc(here, [entry()]);
    const kept = keptElsewhere(here);
    kept.came(parts[2] as Uint8Array);
    expect(kept.waiting()).toBe(3);
    for (const part of parts) kept.came(part);
    expect(kept.waiting()).toBe(0);
  });
});
