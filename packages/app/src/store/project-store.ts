// Where projects are kept, as the app's state sees it. The browser's database is behind it today;
// something that syncs between phones can stand there without the state knowing.

import type { Doc, Step } from '../state/doc.ts';

/** A project as kept. */
export interface StoredProject {
  readonly id: string;
  /** Raised by one with every save. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  readonly doc: Doc;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** A line of the list of projects. */
export interface ProjectEntry {
  readonly id: string;
  readonly title: string;
  readonly savedAt: number;
  readonly panels: number;
}

/** What became of a save. `conflict`: another tab saved first, and what it saved is returned. */
export type SaveOutcome =
  | { readonly status: 'saved'; readonly revision: number }
  | { readonly status: 'conflict'; readonly stored: StoredProject }
  | {
      readonly status: 'refused';
      readonly why: 'full' | 'unavailable' | 'fault';
      readonly detail: string;
    };

/** What became of a load. `newer`: a newer Shellraise kept it; it is left untouched. */
export type LoadOutcome =
  | { readonly status: 'loaded'; readonly stored: StoredProject }
  | { readonly status: 'missing' }
  | { readonly status: 'newer' }
  | { readonly status: 'damaged'; readonly detail: string };

/** A keeper of projects. No method throws. */
export interface ProjectStore {
  list(): Promise<readonly ProjectEntry[]>;
  load(id: string): Promise<LoadOutcome>;
  /** Saves what was made from `project.revision`; nothing is overwritten that was saved since. */
  save(project: StoredProject): Promise<SaveOutcome>;
  remove(id: string): Promise<void>;
  /** Told when another tab saved or removed a project. Returns the way to stop. */
  watch(changed: (id: string) => void): () => void;
}
