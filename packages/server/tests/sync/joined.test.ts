import { once } from 'node:events';
import { describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { lanAddresses } from '../../src/lan.ts';
import { listen } from '../../src/listening.ts';
import { siteName } from '../../src/sync/codes.ts';
import type { CodeRow } from '../../src/sync/storage.ts';
import { builtApp, emptyFolder } from '../built.ts';
import { ask, joinWith, serve } from './phones.ts';

const who = async (port: number, cookie: string) =>
  JSON.parse((await ask(port, 'GET', '/sync/who', { headers: { cookie } })).text) as {
    role: string;
    site: string;
  };

/** How a line that is asked for comes to be: the status of a refusal, or 101. */
async function lineTo(port: number, cookie: string, query: string): Promise<number> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/sync/doc/record${query}`, {
    headers: { cookie },
  });
  onTestFinished(() => socket.terminate());
  socket.on('error', () => undefined);
  return Promise.race([
    once(socket, 'open').then(() => 101),
    once(socket, 'unexpected-response').then(([, reply]) => reply.statusCode as number),
  ]);
}

describe('the name of a site', () => {
  it('is told to who has joined, stays when the server ends and a code is revoked, and no other has it', async () => {
    const first = await serve();
    const { lead, crew } = await first.codes();
    const cookie = await joinWith(first.port, lead);
    const { site } = await who(first.port, cookie);
    expect(site).toMatch(/^[0-9a-f]{16}$/);
    const joined = await ask(first.port, 'POST', '/sync/join', { body: { code: crew } });
    expect(JSON.parse(joined.text)).toEqual({ role: 'crew', site });
    await ask(first.port, 'DELETE', '/sync/codes/2', { headers: { cookie } });
    await first.server.close();
    const again = await serve(first.data);
    expect((await who(again.port, cookie)).site).toBe(site);
    const other = await serve();
    const there = await joinWith(other.port, (await other.codes()).lead);
    expect((await who(other.port, there)).site).not.toBe(site);
  });

  it('is no secret, nor made of one', () => {
    const row = (id: number, code: string): CodeRow =>
      ({ id, made: 5, code, role: 'lead', revoked: false, sessions: 0 }) as const;
    expect(siteName([row(1, 'A')])).toBe(siteName([row(1, 'B')]));
    expect(siteName([row(1, 'A')])).not.toBe(siteName([row(2, 'A')]));
    expect(siteName([])).toBe('');
  });

  it('can be asked for with a line: one that means another site is refused', async () => {
    const { port, codes } = await serve();
    const cookie = await joinWith(port, (await codes()).crew);
    const { site } = await who(port, cookie);
    expect(await lineTo(port, cookie, `?site=${site}`)).toBe(101);
    expect(await lineTo(port, cookie, '')).toBe(101);
    expect(await lineTo(port, cookie, '?site=0000000000000000')).toBe(409);
  });
});

describe('the addresses for phones', () => {
  it('are told to a lead alone, and are none where the server listens to its computer alone', async () => {
    const { port, codes } = await serve();
    const all = await codes();
    const asked = async (code: string) => {
      const headers = { cookie: await joinWith(port, code) };
      return ask(port, 'GET', '/sync/addresses', { headers });
    };
    expect(JSON.parse((await asked(all.lead)).text)).toEqual([]);
    expect((await asked(all.crew)).status).toBe(403);
    expect((await ask(port, 'GET', '/sync/addresses')).status).toBe(401);
  });

  it('are those of its networks, with its port, where it was asked to be open to them', async () => {
    const { server, port } = await listen({
      root: builtApp(),
      host: '0.0.0.0',
      port: 0,
      data: emptyFolder(),
    });
    onTestFinished(() => server.close());
    const lead = (await server.joinCodes?.())?.find(({ role }) => role === 'lead')?.code ?? '';
    const headers = { cookie: await joinWith(port, lead) };
    const { text } = await ask(port, 'GET', '/sync/addresses', { headers });
    expect(JSON.parse(text)).toEqual(lanAddresses().map((one) => `http://${one}:${port}/`));
  });
});
