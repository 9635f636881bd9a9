// The server's database: SQLite compiled to WebAssembly, in one file. It keeps a write-ahead log and
// holds the file for itself. Both matter: this build's lock is a folder beside the file, which outlives
// a killed process, and makes SQLite take its own lock for another's, so that it leaves the rollback
// journal of a half-written transaction lying; with the log, what was not committed is never read.
// Every commit is on disk (fsync) when it returns.

import { mkdirSync, rmdirSync } from 'node:fs';
import { join } from 'node:path';
import sqlite from 'node-sqlite3-wasm';
import { takeFolder } from './single.ts';

/** The documents that are kept. */
export const DOCS = ['project', 'record'] as const;

/** One of the documents. */
export type DocName = (typeof DOCS)[number];

/** Who may do what: a lead everything, a crew write the record, a looker read. */
export const ROLES = ['lead', 'crew', 'looker'] as const;

/** What a join code lets people do. */
export type Role = (typeof ROLES)[number];

/** A join code as kept. */
export interface CodeRow {
  readonly id: number;
  readonly role: Role;
  readonly code: string;
  /** Milliseconds since 1970. */
  readonly made: number;
  readonly revoked: boolean;
  readonly sessions: number;
}

/** A session as kept. */
export interface SessionRow {
  readonly code: number;
  readonly role: Role;
  readonly seen: number;
}

/** What the server keeps. Every method that changes something returns when it is on disk, or throws and
 * has changed nothing. */
export interface Storage {
  /** Updates of a document, in the order in which they came. */
  updates(doc: DocName): Uint8Array[];
  append(updates: readonly { readonly doc: DocName; readonly bytes: Uint8Array }[]): void;
  /** Puts one update in the place of all of a document's. */
  replace(doc: DocName, bytes: Uint8Array): void;
  codes(): CodeRow[];
  addCode(role: Role, code: string, now: number): void;
  revoke(id: number): boolean;
  /** The living code with this text, or null. */
  codeOf(code: string): CodeRow | null;
  addSession(hash: string, code: number, now: number): void;
  /** The session with this hash, whose code lives, or null. */
  session(hash: string): SessionRow | null;
  see(hash: string, now: number): void;
  dropSessionsBefore(time: number): void;
  close(): Promise<void>;
}

const TABLES = `
CREATE TABLE IF NOT EXISTS updates (n INTEGER PRIMARY KEY AUTOINCREMENT, doc TEXT NOT NULL, bytes BLOB NOT NULL);
CREATE TABLE IF NOT EXISTS codes (id INTEGER PRIMARY KEY AUTOINCREMENT, role TEXT NOT NULL, code TEXT NOT NULL UNIQUE, made REAL NOT NULL, revoked INTEGER NOT NULL DEFAULT 0);
CREATE TABLE IF NOT EXISTS sessions (hash TEXT PRIMARY KEY, code INTEGER NOT NULL REFERENCES codes (id), seen REAL NOT NULL) WITHOUT ROWID;
`;

/** The version of the tables that this code writes. */
const VERSION = 1;

/** A newer Shellraise keeps this folder; it is left untouched. */
export class NewerStorage extends Error {
  constructor(readonly version: number) {
    super(`the database is of version ${version}, this Shellraise knows up to ${VERSION}`);
  }
}

/** Opens the folder's database, making both where there is none. Throws `FolderTaken` or
 * `NewerStorage`. `mostPages` limits its size, for trials. */
export async function openStorage(folder: string, mostPages?: number): Promise<Storage> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const letGo = await takeFolder(folder);
  const file = join(folder, 'site.sqlite');
  try {
    removeStaleLock(file);
    const db = new sqlite.Database(file);
    prepare(db, mostPages);
    return storageIn(db, letGo);
  } catch (error) {
    await letGo();
    throw error;
  }
}

/** No other server has the folder, so a lock that lies there was left by one that was killed. */
function removeStaleLock(file: string): void {
  try {
    rmdirSync(`${file}.lock`);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

function prepare(db: sqlite.Database, mostPages: number | undefined): void {
  db.get('PRAGMA locking_mode = EXCLUSIVE');
  const { journal_mode } = (db.get('PRAGMA journal_mode = WAL') ?? {}) as { journal_mode?: string };
  if (journal_mode !== 'wal') throw new Error(`the database keeps no log but ${journal_mode}`);
  db.exec('PRAGMA synchronous = FULL');
  const { user_version } = db.get('PRAGMA user_version') as { user_version: number };
  if (user_version > VERSION) throw new NewerStorage(user_version);
  db.exec(`BEGIN; ${TABLES} PRAGMA user_version = ${VERSION}; COMMIT`);
  if (mostPages !== undefined) db.get(`PRAGMA max_page_count = ${mostPages}`);
}

function storageIn(db: sqlite.Database, letGo: () => Promise<void>): Storage {
  const all = <T>(sql: string, ...values: (string | number)[]): T[] => db.all(sql, values) as T[];
  const first = <T>(sql: string, ...values: (string | number)[]): T | null =>
    (db.get(sql, values) as T | undefined) ?? null;
  const codes = `SELECT id, role, code, made, revoked, (SELECT count(*) FROM sessions WHERE sessions.code = codes.id) AS sessions FROM codes`;
  const codeRow = (row: CodeRow): CodeRow => ({ ...row, revoked: Boolean(row.revoked) });
  return {
    updates: (doc) =>
      all<{ bytes: Uint8Array }>('SELECT bytes FROM updates WHERE doc = ? ORDER BY n', doc).map(
        ({ bytes }) => bytes,
      ),
    append: (updates) =>
      inOne(db, () => {
        for (const { doc, bytes } of updates)
          db.run('INSERT INTO updates (doc, bytes) VALUES (?, ?)', [doc, bytes]);
      }),
    replace: (doc, bytes) =>
      inOne(db, () => {
        db.run('DELETE FROM updates WHERE doc = ?', [doc]);
        db.run('INSERT INTO updates (doc, bytes) VALUES (?, ?)', [doc, bytes]);
      }),
    codes: () => all<CodeRow>(`${codes} ORDER BY id`).map(codeRow),
    addCode: (role, code, now) =>
      void db.run('INSERT INTO codes (role, code, made) VALUES (?, ?, ?)', [role, code, now]),
    revoke: (id) => {
      let revoked = 0;
      inOne(db, () => {
        revoked = db.run('UPDATE codes SET revoked = 1 WHERE id = ? AND revoked = 0', [id]).changes;
        db.run('DELETE FROM sessions WHERE code = ?', [id]);
      });
      return revoked > 0;
    },
    codeOf: (code) => {
      const row = first<CodeRow>(`${codes} WHERE code = ? AND revoked = 0`, code);
      return row && codeRow(row);
    },
    addSession: (hash, code, now) =>
      void db.run('INSERT INTO sessions (hash, code, seen) VALUES (?, ?, ?)', [hash, code, now]),
    session: (hash) =>
      first<SessionRow>(
        'SELECT sessions.code, codes.role, sessions.seen FROM sessions JOIN codes ON codes.id = sessions.code WHERE hash = ? AND codes.revoked = 0',
        hash,
      ),
    see: (hash, now) => void db.run('UPDATE sessions SET seen = ? WHERE hash = ?', [now, hash]),
    dropSessionsBefore: (time) => void db.run('DELETE FROM sessions WHERE seen < ?', [time]),
    close: async () => {
      db.close();
      await letGo();
    },
  };
}

/** All of it or nothing. */
function inOne(db: sqlite.Database, change: () => void): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    change();
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}
