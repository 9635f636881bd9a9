// Answers of the engine that took long, in this browser: a project that is opened again is there at
// once. An answer is found by the whole question, and by the engine that gave it; where the browser
// keeps nothing, every question is simply asked anew.

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** Where answers are kept. */
export interface AnswerStore {
  /** The answer to this question; undefined where it is not kept. */
  find(question: string): Promise<unknown>;
  keep(question: string, answer: unknown): Promise<void>;
  /** Forgets all: they may hold what a removed project held. */
  clear(): Promise<void>;
}

/** How many are kept; the ones not used for longest go first. */
const KEPT = 24;

interface Kept {
  /** Of engine and question, short; the whole question decides. */
  readonly key: string;
  readonly engine: string;
  readonly question: string;
  readonly usedAt: number;
  readonly answer: unknown;
}

interface Schema extends DBSchema {
  answers: { key: string; value: Kept; indexes: { used: number } };
}

/** The store of this browser. `engine` names the engine's build: no other's answers are given. */
export function answerStore(engine: string, now: () => number): AnswerStore {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;
  const opened = (): Promise<IDBPDatabase<Schema>> => {
    opening ??= openDB<Schema>('shellraise-answers', 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore('answers', { keyPath: 'key' }).createIndex('used', 'usedAt');
      },
    });
    return opening;
  };
  const keyOf = (question: string): string => `${engine} ${hashOf(question)}`;
  return {
    find: async (question) => {
      try {
        const db = await opened();
        const kept = await db.get('answers', keyOf(question));
        if (kept?.question !== question) return undefined;
        void db.put('answers', { ...kept, usedAt: now() }).catch(() => undefined);
        return kept.answer;
      } catch {
        return undefined;
      }
    },
    keep: async (question, answer) => {
      try {
        const db = await opened();
        const tx = db.transaction('answers', 'readwrite');
        await tx.store.put({ key: keyOf(question), engine, question, usedAt: now(), answer });
        const oldest = await tx.store.index('used').getAllKeys();
        for (const key of oldest.slice(0, -KEPT)) await tx.store.delete(key);
        await tx.done;
      } catch {
        // It is asked anew next time.
      }
    },
    clear: async () => {
      await opened()
        .then((db) => db.clear('answers'))
        .catch(() => undefined);
    },
  };
}

/** 53 bits of a text, mixed: to find by, not to rely on. */
function hashOf(text: string): string {
  let [a, b] = [0xdeadbeef, 0x41c6ce57];
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  return `${(a >>> 0).toString(36)}${(b >>> 0).toString(36)}`;
}
