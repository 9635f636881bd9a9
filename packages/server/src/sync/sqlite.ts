// A site in a folder: SQLite compiled to WebAssembly, in one file, and photos beside it. It keeps a
// write-ahead log and holds the file for itself. Both matter: this build's lock is a folder beside the
// file, which outlives a killed process, and makes SQLite take its own lock for another's, so that it
// leaves the rollback journal of a half-written transaction lying; with the log, what was not committed is
// never read. Every commit is on disk (fsync) when it returns.

import { mkdirSync, rmdirSync } from 'node:fs';
import { join } from 'node:path';
import sqlite from 'node-sqlite3-wasm';
import { openPhotos } from './photo-folder.ts';
import { takeFolder } from './single.ts';
import {
  type CodeRow,
  type DocName,
  NewerStorage,
  type Photos,
  type SessionRow,
  type Storage,
} from './storage.ts';

const TABLES = `
CREATE TABLE IF NOT EXISTS updates (n INTEGER PRIMARY KEY AUTOINCREMENT, doc TEXT NOT NULL, bytes BLOB NOT NULL);
CREATE TABLE IF NOT EXISTS codes (id INTEGER PRIMARY KEY AUTOINCREMENT, role TEXT NOT NULL, code TEXT NOT NULL UNIQUE, made REAL NOT NULL, revoked INTEGER NOT NULL DEFAULT 0);
CREATE TABLE IF NOT EXISTS sessions (hash TEXT PRIMARY KEY, code INTEGER NOT NULL REFERENCES codes (id), seen REAL NOT NULL) WITHOUT ROWID;
`;

/** The version of the tables that this code writes. */
const VERSION = 1;

/** Opens the folder's database, making both where there is none. Throws `FolderTaken` or
 * `NewerStorage`. `mostPages` limits its size, for trials. */
export async function openStorage(folder: string, mostPages?: number): Promise<Storage> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const letGo = await takeFolder(folder);
  const file = join(folder, 'site.sqlite');
  try {
    removeStaleLock(file);
    const photos = openPhotos(join(folder, 'photos'));
    const db = new sqlite.Database(file);
    prepare(db, mostPages);
    return storageIn(db, photos, letGo);
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
  if (user_version > VERSION) throw new NewerStorage(user_version, VERSION);
  db.exec(`BEGIN; ${TABLES} PRAGMA user_version = ${VERSION}; COMMIT`);
  if (mostPages !== undefined) db.get(`PRAGMA max_page_count = ${mostPages}`);
}

function storageIn(db: sqlite.Database, photos: Photos, letGo: () => Promise<void>): Storage {
  const all = <T>(sql: string, ...values: (string | number)[]): T[] => db.all(sql, values) as T[];
  const first = <T>(sql: string, ...values: (string | number)[]): T | null =>
    (db.get(sql, values) as T | undefined) ?? null;
  const codes = `SELECT id, role, code, made, revoked, (SELECT count(*) FROM sessions WHERE sessions.code = codes.id) AS sessions FROM codes`;
  const codeRow = (row: CodeRow): CodeRow => ({ ...row, revoked: Boolean(row.revoked) });
  const add = 'INSERT INTO updates (doc, bytes) VALUES (?, ?)';
  const rows = (doc: DocName, after: number) =>
    all<{ n: number; bytes: Uint8Array }>(
      'SELECT n, bytes FROM updates WHERE doc = ? AND n > ? ORDER BY n',
      doc,
      after,
    );
  return {
    isShared: false,
    photos,
    updates: async (doc, after = 0) => {
      const found = rows(doc, after);
      return { updates: found.map(({ bytes }) => bytes), upTo: found.at(-1)?.n ?? after };
    },
    turn: async (doc, after, look) => {
      const found = rows(doc, after);
      let upTo = found.at(-1)?.n ?? after;
      const taken = look(found.map(({ bytes }) => bytes));
      if (taken.length > 0)
        inOne(db, () => {
          for (const bytes of taken) upTo = Number(db.run(add, [doc, bytes]).lastInsertRowid);
        });
      return upTo;
    },
    replace: async (doc, upTo, bytes) =>
      inOne(db, () => {
        db.run('DELETE FROM updates WHERE doc = ? AND n <= ?', [doc, upTo]);
        db.run('INSERT INTO updates (n, doc, bytes) VALUES (?, ?, ?)', [upTo, doc, bytes]);
      }),
    codes: async () => all<CodeRow>(`${codes} ORDER BY id`).map(codeRow),
    addCode: async (role, code, now) => {
      db.run('INSERT INTO codes (role, code, made) VALUES (?, ?, ?)', [role, code, now]);
      return codeRow(first<CodeRow>(`${codes} WHERE code = ?`, code) as CodeRow);
    },
    revoke: async (id) => {
      let revoked = 0;
      inOne(db, () => {
        revoked = db.run('UPDATE codes SET revoked = 1 WHERE id = ? AND revoked = 0', [id]).changes;
        db.run('DELETE FROM sessions WHERE code = ?', [id]);
      });
      return revoked > 0;
    },
    codeOf: async (code) => {
      const row = first<CodeRow>(`${codes} WHERE code = ? AND revoked = 0`, code);
      return row && codeRow(row);
    },
    addSession: async (hash, code, now) =>
      void db.run('INSERT INTO sessions (hash, code, seen) VALUES (?, ?, ?)', [hash, code, now]),
    session: async (hash) =>
      first<SessionRow>(
        'SELECT sessions.code, codes.role, sessions.seen FROM sessions JOIN codes ON codes.id = sessions.code WHERE hash = ? AND codes.revoked = 0',
        hash,
      ),
    see: async (hash, now) =>
      void db.run('UPDATE sessions SET seen = ? WHERE hash = ?', [now, hash]),
    dropSessionsBefore: async (time) => void db.run('DELETE FROM sessions WHERE seen < ?', [time]),
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
