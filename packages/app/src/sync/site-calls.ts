// What the app asks of the server at its own address: who this device is there, joining, the codes. Every
// answer that is not what was asked for has a name, so that it can be said in words.

/** What a join code lets people do. */
export const roles = ['lead', 'crew', 'looker'] as const;
/** What a join code lets people do. */
export type Role = (typeof roles)[number];

/** Who this device is at a site. */
export interface Membership {
  readonly role: Role;
  /** The site's name, which tells it from another kept at the same address. */
  readonly site: string;
}

/** Why there is no answer. `none`: nobody shares anything here (the app is served as plain files);
 * `away`: the laptop cannot be reached; `out`: not joined, or no longer; `foreign`: the laptop does not
 * take this address for its own; `later`: too many tries; `fault`: the laptop could not. */
export type NoAnswer = 'none' | 'away' | 'out' | 'foreign' | 'later' | 'fault';

/** Why a device did not join. `wrong`: no such code, or it no longer holds. */
export type JoinFault = Exclude<NoAnswer, 'out' | 'foreign'> | 'wrong';

/** A join code. */
export interface JoinCode {
  readonly id: number;
  readonly role: Role;
  readonly code: string;
  /** Devices that joined with it. */
  readonly sessions: number;
}

/** The answer, or why there is none. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: NoAnswer };

/** The calls. None throws. */
export interface SiteCalls {
  who(): Promise<Answer<Membership>>;
  join(code: string): Promise<Membership | JoinFault>;
  codes(): Promise<Answer<readonly JoinCode[]>>;
  makeCode(role: Role): Promise<Answer<JoinCode>>;
  revoke(id: number): Promise<Answer<true>>;
  /** Where phones find the laptop; none where it listens to itself alone. */
  addresses(): Promise<Answer<readonly string[]>>;
  /** Brings a photo, by the SHA-256 of its bytes; one that is there already is as good. */
  bringPhoto(hash: string, picture: Blob): Promise<Answer<true>>;
  /** A photo that somebody brought. */
  photo(hash: string): Promise<Answer<Blob>>;
}

/** How long an answer is waited for, milliseconds; a photo takes longer over a weak network. */
const PATIENCE = 8000;
const PHOTO_PATIENCE = 60_000;

/** The calls to the server that a page comes from. `base` is the page's address. */
export function siteCalls(base: string, ask: typeof fetch): SiteCalls {
  const call = async <T>(
    path: string,
    read: (raw: unknown) => T | null,
    init: RequestInit = {},
  ): Promise<Answer<T>> => {
    if (!/^https?:/.test(base)) return { ok: false, why: 'none' };
    try {
      const reply = await ask(new URL(path, base), {
        cache: 'no-store',
        signal: AbortSignal.timeout(PATIENCE),
        ...init,
      });
      if (reply.status === 204) return answerOf(read(null));
      if (!reply.ok) return { ok: false, why: reasonOf(reply.status) };
      return answerOf(read(await reply.json().catch(() => undefined)));
    } catch {
      return { ok: false, why: 'away' };
    }
  };
  return {
    who: () => call('/sync/who', membershipOf),
    join: async (code) => {
      const answer = await call('/sync/join', membershipOf, sending({ code }));
      if (answer.ok) return answer.value;
      return answer.why === 'foreign' || answer.why === 'out' ? 'wrong' : answer.why;
    },
    codes: () => call('/sync/codes', codesIn),
    makeCode: (role) => call('/sync/codes', codeOf, sending({ role })),
    revoke: (id) => call(`/sync/codes/${id}`, () => true as const, { method: 'DELETE' }),
    addresses: () => call('/sync/addresses', textsIn),
    bringPhoto: (hash, picture) =>
      call(`/sync/photos/${hash}`, () => true as const, {
        method: 'PUT',
        headers: { 'content-type': picture.type },
        body: picture,
        signal: AbortSignal.timeout(PHOTO_PATIENCE),
      }),
    photo: async (hash) => {
      if (!/^https?:/.test(base)) return { ok: false, why: 'none' };
      try {
        const signal = AbortSignal.timeout(PHOTO_PATIENCE);
        const reply = await ask(new URL(`/sync/photos/${hash}`, base), { signal });
        if (!reply.ok) return { ok: false, why: reasonOf(reply.status) };
        return { ok: true, value: await reply.blob() };
      } catch {
        return { ok: false, why: 'away' };
      }
    },
  };
}

const sending = (body: object): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** Where something else than what was asked for comes, a server of plain files answered with a page. */
const answerOf = <T>(value: T | null): Answer<T> =>
  value === null ? { ok: false, why: 'none' } : { ok: true, value };

function reasonOf(status: number): NoAnswer {
  if (status === 401) return 'out';
  if (status === 403) return 'foreign';
  if (status === 429 || status === 503) return 'later';
  return status >= 500 && status !== 501 ? 'fault' : 'none';
}

function membershipOf(raw: unknown): Membership | null {
  const { role, site } = fieldsOf(raw);
  return isRole(role) && typeof site === 'string' && /^[0-9a-f]{16}$/.test(site)
    ? { role, site }
    : null;
}

function codeOf(raw: unknown): JoinCode | null {
  const { id, role, code, sessions } = fieldsOf(raw);
  return Number.isInteger(id) && isRole(role) && typeof code === 'string'
    ? { id: id as number, role, code, sessions: Number(sessions) || 0 }
    : null;
}

function codesIn(raw: unknown): readonly JoinCode[] | null {
  if (!Array.isArray(raw)) return null;
  return raw.map(codeOf).filter((one) => one !== null);
}

const textsIn = (raw: unknown): readonly string[] | null =>
  Array.isArray(raw) ? raw.filter((one) => typeof one === 'string') : null;

const isRole = (raw: unknown): raw is Role => roles.some((role) => role === raw);

const fieldsOf = (raw: unknown): Readonly<Record<string, unknown>> =>
  typeof raw === 'object' && raw !== null ? (raw as Record<string, unknown>) : {};
