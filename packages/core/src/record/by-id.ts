// Things by the id of an entry, kept by writer and number: so that no id is put together for an entry that
// comes in, which costs more than all else where there are hundreds of thousands.

import type { Entry, EntryId } from './entry.ts';

type Name = Pick<Entry, 'writer' | 'seq'>;

/** A map from ids of entries. */
export class ById<T> {
  private readonly writers = new Map<string, Map<number, T>>();
  private last: { readonly writer: string; readonly own: Map<number, T> } | null = null;
  private count = 0;

  /** Things kept. */
  get size(): number {
    return this.count;
  }

  /** What is kept for an entry. */
  at({ writer, seq }: Name): T | undefined {
    return this.count === 0 ? undefined : this.of(writer)?.get(seq);
  }

  /** What is kept for an id. */
  get(id: EntryId): T | undefined {
    const name = nameOf(id);
    return name ? this.at(name) : undefined;
  }

  /** Keeps something for an entry, in the place of what was. */
  put({ writer, seq }: Name, thing: T): void {
    let own = this.of(writer);
    if (!own) {
      own = new Map();
      this.writers.set(writer, own);
    }
    const before = own.size;
    own.set(seq, thing);
    this.count += own.size - before;
  }

  /** Everything, by writer. */
  *values(): Iterable<T> {
    for (const own of this.writers.values()) yield* own.values();
  }

  /** Nothing is kept any longer. */
  clear(): void {
    this.writers.clear();
    [this.last, this.count] = [null, 0];
  }

  /** Entries come in runs of one writer. */
  private of(writer: string): Map<number, T> | undefined {
    if (this.last?.writer === writer) return this.last.own;
    const own = this.writers.get(writer);
    if (own) this.last = { writer, own };
    return own;
  }
}

/** The writer and number that an id names; null where it is none. */
export function nameOf(id: EntryId): Name | null {
  const dash = id.lastIndexOf('-');
  const digits = id.slice(dash + 1);
  const seq = Number(digits);
  // `-01` names nothing: no entry has that id.
  return dash > 0 && String(seq) === digits ? { writer: id.slice(0, dash), seq } : null;
}
