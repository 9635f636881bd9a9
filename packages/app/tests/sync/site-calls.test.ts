import { describe, expect, it } from 'vitest';
import { siteCalls } from '../../src/sync/site-calls.ts';

/** Calls to a server that always answers so. */
const answering = (status: number, body: unknown = {}) =>
  siteCalls(
    'http://10.0.0.1:4180/x',
    (async () =>
      new Response(status === 204 ? null : typeof body === 'string' ? body : JSON.stringify(body), {
        status,
      })) as typeof fetch,
  );

describe('what the laptop answers', () => {
  it('has a name for each reason why there is no answer', async () => {
    const reasons = { 401: 'out', 403: 'foreign', 404: 'none', 405: 'none', 429: 'later' } as const;
    for (const [status, why] of [...Object.entries(reasons), ['500', 'fault'], ['503', 'later']])
      expect(await answering(Number(status)).who(), status).toEqual({ ok: false, why });
    const away = siteCalls('http://10.0.0.1:1/', () => Promise.reject(new TypeError('no network')));
    expect(await away.who()).toEqual({ ok: false, why: 'away' });
    expect(await away.join('x')).toBe('away');
    expect(await answering(403).join('x')).toBe('wrong');
    expect(await answering(500).join('x')).toBe('fault');
  });

  it('is nobody who shares where a page comes, another thing, or the app itself is a file', async () => {
    const none = { ok: false, why: 'none' };
    expect(await answering(200, '<!doctype html>').who()).toEqual(none);
    expect(await answering(200, { role: 'king', site: '0123456789abcdef' }).who()).toEqual(none);
    expect(await answering(200, { role: 'crew', site: '../..' }).who()).toEqual(none);
    const file = siteCalls('file:///app/index.html', () => Promise.reject(new Error('asked')));
    expect(await file.who()).toEqual(none);
  });

  it('is read where it is what was asked for', async () => {
    const who = { role: 'crew', site: '0123456789abcdef' };
    expect(await answering(200, who).who()).toEqual({ ok: true, value: who });
    expect(await answering(200, who).join('x')).toEqual(who);
    expect(await answering(204).revoke(3)).toEqual({ ok: true, value: true });
    const code = { id: 1, role: 'lead', code: 'ABCDEFGHJK', sessions: 2 };
    expect(await answering(200, [code, { id: 'x' }]).codes()).toEqual({ ok: true, value: [code] });
  });
});
