// Join codes and sessions. A code is what people are given; joining with it opens a session, which a
// cookie carries. Revoking a code ends its sessions. Only a session's hash is kept.

import { createHash, randomBytes, randomInt } from 'node:crypto';
import { SESSION_AGE, SESSIONS_OF_CODE } from './limits.ts';
import { type CodeRow, ROLES, type Role, type Storage } from './storage.ts';

/** Letters and digits that nobody takes for others, read out on a field. */
const SIGNS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789';
const SIGNS_OF_CODE = 10;

/** Name of the cookie. */
const COOKIE = 'shellraise';

/** Who asks. */
export interface Session {
  readonly hash: string;
  readonly code: number;
  readonly role: Role;
}

/** A new code: 50 bits, so that guessing at ten tries a minute finds none. */
export const newCode = (): string =>
  Array.from({ length: SIGNS_OF_CODE }, () => SIGNS[randomInt(SIGNS.length)]).join('');

/** A code as people type it: any capitals, blanks or dashes; null where it is none. */
export function readCode(typed: unknown): string | null {
  if (typeof typed !== 'string' || typed.length > 40) return null;
  const code = typed.replace(/[\s-]/g, '').toUpperCase();
  return /^[A-Z2-9]{10}$/.test(code) ? code : null;
}

/** The living codes, one for each role at the least. */
export async function codesOf(storage: Storage, now: number): Promise<readonly CodeRow[]> {
  const living = async (): Promise<CodeRow[]> =>
    (await storage.codes()).filter(({ revoked }) => !revoked);
  const there = await living();
  const missing = ROLES.filter((role) => !there.some((code) => code.role === role));
  for (const role of missing) await storage.addCode(role, newCode(), now);
  return missing.length > 0 ? living() : there;
}

/** The name of a site, which tells it from another kept at the same address: made of the moments at which
 * its first codes were, which never change, and of nothing that is secret. Empty where there are none. */
export const siteName = (codes: readonly CodeRow[]): string =>
  codes.length === 0
    ? ''
    : createHash('sha256')
        .update(`site ${codes.slice(0, ROLES.length).map(({ id, made }) => `${id} ${made}`)}`)
        .digest('hex')
        .slice(0, 16);

/** Opens a session for a code; null where the code is unknown, revoked, or has too many. */
export async function join(
  storage: Storage,
  typed: unknown,
  now: number,
): Promise<{ readonly role: Role; readonly token: string } | null> {
  const code = readCode(typed);
  const row = code === null ? null : await storage.codeOf(code);
  if (!row || row.sessions >= SESSIONS_OF_CODE) return null;
  const token = randomBytes(32).toString('base64url');
  await storage.addSession(hashOf(token), row.id, now);
  return { role: row.role, token };
}

/** The session that a request's cookies name, or null. */
export async function sessionOf(
  storage: Storage,
  cookies: string | undefined,
  now: number,
): Promise<Session | null> {
  const token = cookieIn(cookies);
  if (token === null) return null;
  const hash = hashOf(token);
  const row = await storage.session(hash);
  if (!row || row.seen < now - SESSION_AGE) return null;
  // Noted once a day: a tap need not write twice.
  if (row.seen < now - 24 * 3600 * 1000) await storage.see(hash, now);
  return { hash, code: row.code, role: row.role };
}

/** The cookie that carries a session: sent by no other site, read by no script. */
export const cookieFor = (token: string, secure: boolean): string =>
  `${COOKIE}=${token}; Path=/sync; HttpOnly; SameSite=Strict; Max-Age=${SESSION_AGE / 1000}${secure ? '; Secure' : ''}`;

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

function cookieIn(cookies: string | undefined): string | null {
  for (const part of (cookies ?? '').split(';')) {
    const [name, value] = part.trim().split('=', 2);
    if (name === COOKIE && value && /^[\w-]{43}$/.test(value)) return value;
  }
  return null;
}
