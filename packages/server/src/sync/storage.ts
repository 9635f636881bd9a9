// What a server keeps, whatever keeps it: a file beside it (sqlite.ts), or a database that several servers
// share (postgres.ts).

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

/** Updates of a document, in the order in which they came, and the number of the last row. Rows count up;
 * 0: none. */
export interface Rows {
  readonly updates: readonly Uint8Array[];
  readonly upTo: number;
}

/** What the server keeps. Every method that changes something returns when it is on disk, or throws; then
 * nothing was changed, or it is not known whether it was. */
export interface Storage {
  /** Whether other servers may change what is kept. */
  readonly isShared: boolean;
  /** Updates of a document after a row. */
  updates(doc: DocName, after?: number): Promise<Rows>;
  /** Adds to a document, by one server at a time: `look` is told what others added after the row that this
   * one knows, and says what to add. Returns the number of the last row then. */
  turn(
    doc: DocName,
    after: number,
    look: (others: readonly Uint8Array[]) => readonly Uint8Array[],
  ): Promise<number>;
  /** Puts one update, which holds them all, in the place of a document's rows up to this one. */
  replace(doc: DocName, upTo: number, bytes: Uint8Array): Promise<void>;
  codes(): Promise<CodeRow[]>;
  addCode(role: Role, code: string, now: number): Promise<CodeRow>;
  revoke(id: number): Promise<boolean>;
  /** The living code with this text, or null. */
  codeOf(code: string): Promise<CodeRow | null>;
  addSession(hash: string, code: number, now: number): Promise<void>;
  /** The session with this hash, whose code lives, or null. */
  session(hash: string): Promise<SessionRow | null>;
  see(hash: string, now: number): Promise<void>;
  dropSessionsBefore(time: number): Promise<void>;
  readonly photos: Photos;
  close(): Promise<void>;
}

/** Photos by the SHA-256 of their bytes, in hexadecimal digits. */
export interface Photos {
  get(hash: string): Promise<Uint8Array | null>;
  /** The hash must be that of the bytes. Nothing changes where it is there already. */
  put(hash: string, bytes: Uint8Array): Promise<'new' | 'known'>;
  /** Bytes of all photos. */
  size(): Promise<number>;
}

/** A newer Shellraise keeps this; it is left untouched. */
export class NewerStorage extends Error {
  constructor(
    readonly version: number,
    readonly known: number,
  ) {
    super(`the database is of version ${version}, this Shellraise knows up to ${known}`);
  }
}

/** The database would not keep what it says it keeps. */
export class UnsafeDatabase extends Error {}
