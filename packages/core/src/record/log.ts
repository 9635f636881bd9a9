// The record as it grows: entries in, what stands out. Order of arrival, repeats and clocks change
// nothing: what stands is a function of the set of entries alone.
//
// An entry lives unless a living undo speaks of it; an undo counts only for what comes before it in
// the order, so no two can undo each other. A living claim stands unless another living claim about
// the same subject follows on it. Where several stand and differ, people have spoken unseen by each
// other: all are kept and it is a question, until somebody who has seen them says what is so.

import { ById, nameOf } from './by-id.ts';
import { compareEntries, type Entry, type EntryId, entryText, idOf } from './entry.ts';
import { rankOf, type Subject, saysOf, subjectOf } from './subject.ts';
import { MOST_FOLLOWED } from './tolerances.ts';
import type { What, WhatKind } from './what.ts';

/** What stands of one subject. */
export interface SubjectState {
  /** What is safe to suppose: the only claim, or of those that differ the one that supposes least. */
  readonly entry: Entry;
  /** Every claim that stands, in order. */
  readonly claims: readonly Entry[];
  /** Whether claims differ: to be asked, never settled by who came last. */
  readonly question: boolean;
}

/** What became of an entry that came in. `clash`: another entry has its id; the one whose text sorts
 * first is kept on every phone, the other is held in `clashes`. */
export type Added = 'new' | 'known' | 'clash';

/** Who writes the next entry, and when by the phone's clock. */
export interface Pen {
  readonly writer: string;
  readonly by: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** The record. Adding an entry costs the same whatever the number before it. */
export class RecordLog {
  private readonly byId = new ById<Entry>();
  private readonly claims = new Map<Subject, Entry[]>();
  private readonly undos = new ById<Entry[]>();
  private readonly standing = new Map<Subject, SubjectState | null>();
  private readonly ofKind = new Map<WhatKind, Entry[]>();
  private readonly nextSeq = new Map<string, number>();
  /** Subject → the last of its claims in the order. */
  private readonly last = new Map<Subject, Entry>();
  /** Entries that an undo speaks of. */
  private readonly spokenOf = new Set<Entry>();
  /** Undo → the entry that it is about in the end. */
  private readonly roots = new Map<Entry, Entry>();
  private readonly doubled = new Map<EntryId, Entry[]>();
  private sorted: Entry[] = [];
  private unsorted = false;
  private highest = 0;

  /** Entries kept. */
  get size(): number {
    return this.byId.size;
  }

  /** Adds an entry that `readEntry` has let pass. */
  add(entry: Entry): Added {
    const before = this.byId.at(entry);
    if (before) return this.addAgain(before, entry);
    this.byId.put(entry, entry);
    this.index(entry);
    return 'new';
  }

  /** Adds many; how many were new. */
  addAll(entries: Iterable<Entry>): number {
    let added = 0;
    for (const entry of entries) if (this.add(entry) === 'new') added++;
    return added;
  }

  /** The entry with an id, or null. */
  entry(id: EntryId): Entry | null {
    return this.byId.get(id) ?? null;
  }

  /** All entries in their order. Made when asked; not to be written in. */
  entries(): readonly Entry[] {
    if (this.unsorted) this.sorted.sort(compareEntries);
    this.unsorted = false;
    return this.sorted;
  }

  /** Living entries of a kind, in their order. */
  living<K extends WhatKind>(kind: K): (Entry & { readonly what: Extract<What, { kind: K }> })[] {
    const list = (this.ofKind.get(kind) ?? []).filter((entry) => this.lives(entry));
    return list.sort(compareEntries) as never;
  }

  /** Entries that came with an id that another has; a fault of a phone, or somebody's ill will. */
  clashes(): readonly Entry[] {
    return [...this.doubled.values()].flat().sort(compareEntries);
  }

  /** Subjects that anybody ever spoke of. */
  subjects(): Iterable<Subject> {
    return this.claims.keys();
  }

  /** Whether an entry is not undone. */
  lives(entry: Entry): boolean {
    if (!this.spokenOf.has(entry)) return true;
    // Undos of undos, without recursion: what is last in the order is settled first.
    const chain: Entry[] = [];
    const seen = new Set<Entry>();
    const open = [entry];
    for (let next = open.pop(); next; next = open.pop()) {
      if (seen.has(next)) continue;
      seen.add(next);
      chain.push(next);
      for (const undo of this.undos.at(next) ?? [])
        if (compareEntries(undo, next) > 0) open.push(undo);
    }
    if (chain.length === 1) return true;
    chain.sort((a, b) => compareEntries(b, a));
    const alive = new Set<Entry>();
    for (const one of chain)
      if (
        !(this.undos.at(one) ?? []).some((undo) => alive.has(undo) && compareEntries(undo, one) > 0)
      )
        alive.add(one);
    return alive.has(entry);
  }

  /** What stands of a subject; null where nobody said anything that stands. */
  stands(subject: Subject): SubjectState | null {
    const known = this.standing.get(subject);
    if (known !== undefined) return known;
    const found = this.find(subject);
    this.standing.set(subject, found);
    return found;
  }

  /** Subjects with claims that differ, in the order of their names. */
  questions(): Subject[] {
    return [...this.claims.keys()].filter((one) => this.stands(one)?.question).sort();
  }

  /** The next entry of a writer: after all that is here, following on what stands of its subject. It
   * is not added. */
  write(what: What, { writer, by, at }: Pen): Entry {
    const subject = subjectOf(what);
    const follows = subject === null ? [] : (this.stands(subject)?.claims ?? []).map(idOf);
    const seq = this.nextSeq.get(writer) ?? 0;
    return {
      writer,
      seq,
      order: this.highest + 1,
      at,
      by,
      ...(follows.length > 0 && { follows: follows.slice(-MOST_FOLLOWED) }),
      what,
    };
  }

  private addAgain(before: Entry, entry: Entry): Added {
    if (before === entry) return 'known';
    const id = idOf(entry);
    const [kept, came] = [entryText(before), entryText(entry)];
    if (kept === came) return 'known';
    const others = this.doubled.get(id) ?? [];
    if (others.some((other) => entryText(other) === came)) return 'clash';
    this.doubled.set(id, [...others, kept < came ? entry : before]);
    if (kept < came) return 'clash';
    this.byId.put(entry, entry);
    this.reindex();
    return 'clash';
  }

  /** Everything anew: only where an id was used twice. */
  private reindex(): void {
    for (const map of [this.claims, this.undos, this.standing, this.ofKind, this.roots])
      map.clear();
    this.sorted = [];
    for (const entry of this.byId.values()) this.index(entry);
  }

  private index(entry: Entry): void {
    const isUndone = this.undos.at(entry) !== undefined;
    const last = this.sorted.at(-1);
    if (last && compareEntries(last, entry) > 0) this.unsorted = true;
    this.sorted.push(entry);
    this.highest = Math.max(this.highest, entry.order);
    this.nextSeq.set(entry.writer, Math.max(this.nextSeq.get(entry.writer) ?? 0, entry.seq + 1));
    push(this.ofKind, entry.what.kind, entry);
    if (isUndone) this.spokenOf.add(entry);
    const subject = subjectOf(entry.what);
    if (subject !== null) this.claim(subject, entry);
    if (entry.what.kind === 'undo') {
      this.undone(entry.what.of, entry);
      const target = this.byId.get(entry.what.of);
      if (target) this.spokenOf.add(target);
    }
    if (entry.what.kind === 'undo' || isUndone) this.forget(entry);
  }

  private undone(of: EntryId, undo: Entry): void {
    const name = nameOf(of);
    const known = name && this.undos.at(name);
    if (known) known.push(undo);
    else if (name) this.undos.put(name, [undo]);
  }

  /** A claim that comes after all others of its subject changes what stands by itself alone. */
  private claim(subject: Subject, entry: Entry): void {
    const last = this.last.get(subject);
    const before = last ? this.standing.get(subject) : null;
    push(this.claims, subject, entry);
    if (!last || compareEntries(last, entry) < 0) this.last.set(subject, entry);
    if (
      before === undefined ||
      this.spokenOf.has(entry) ||
      (last && compareEntries(last, entry) > 0)
    )
      this.standing.delete(subject);
    else {
      const others = (before?.claims ?? []).filter((one) => !entry.follows?.includes(idOf(one)));
      this.standing.set(subject, stateOf([...others, entry]));
    }
  }

  /** Finds what an undo, and those of it that came before it, are about in the end: that subject is to
   * be looked at anew. */
  private forget(entry: Entry): void {
    const open = [entry];
    for (let next = open.pop(); next; next = open.pop()) {
      const root = this.rootOf(next);
      if (!root) continue;
      if (next.what.kind === 'undo') this.roots.set(next, root);
      const subject = subjectOf(root.what);
      if (subject !== null) this.standing.delete(subject);
      for (const undo of this.undos.at(next) ?? [])
        if (!this.roots.has(undo) && compareEntries(undo, next) > 0) open.push(undo);
    }
  }

  private rootOf(entry: Entry): Entry | undefined {
    if (entry.what.kind !== 'undo') return entry;
    const target = this.byId.get(entry.what.of);
    if (!target || compareEntries(target, entry) >= 0) return undefined;
    return target.what.kind === 'undo' ? this.roots.get(target) : target;
  }

  private find(subject: Subject): SubjectState | null {
    const living = (this.claims.get(subject) ?? []).filter((entry) => this.lives(entry));
    // In their order each takes the place of those it follows.
    let claims: Entry[] = [];
    for (const entry of living.sort(compareEntries)) {
      if (entry.follows) claims = claims.filter((one) => !entry.follows?.includes(idOf(one)));
      claims.push(entry);
    }
    return claims.length > 0 ? stateOf(claims) : null;
  }
}

/** Of claims that stand, in their order, at least one. */
function stateOf(claims: readonly Entry[]): SubjectState {
  const first = claims[0] as Entry;
  const entry = claims.reduce((low, one) => (rankOf(one.what) < rankOf(low.what) ? one : low));
  const question = claims.some((one) => saysOf(one.what) !== saysOf(first.what));
  return { entry, claims, question };
}

function push<K>(map: Map<K, Entry[]>, key: K, entry: Entry): void {
  const list = map.get(key);
  if (list) list.push(entry);
  else map.set(key, [entry]);
}
