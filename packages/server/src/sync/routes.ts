// What the server answers under /sync: joining with a code, the codes for a lead, and the sockets of
// the two documents.

import websocket, { type WebSocket } from '@fastify/websocket';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { lanAddresses } from '../lan.ts';
import { buckets } from './bucket.ts';
import { codesOf, cookieFor, join, newCode, type Session, sessionOf, siteName } from './codes.ts';
import { ALL_JOINS, GOOD_BYE, JOINS, MAX_MESSAGE, MAX_WAITING, SOCKETS } from './limits.ts';
import { photoRoutes } from './photo-routes.ts';
import { CLOSE, type Line, type Room } from './room.ts';
import type { Site } from './site.ts';
import { foreign } from './sites.ts';
import { DOCS, ROLES, type Role } from './storage.ts';

/** What the routes need. */
export interface SyncRoutes {
  /** The site, which is opened when the first request for it comes. */
  readonly site: () => Promise<Site>;
  /** Is handed what to do when another server may have revoked a code. */
  readonly onCodes: (cut: () => void) => void;
  /** Names besides this computer's own by which people reach it. */
  readonly names: readonly string[];
}

/** Routes of a site. */
export async function syncRoutes(
  server: FastifyInstance,
  { site, onCodes, names }: SyncRoutes,
): Promise<void> {
  await server.register(websocket, {
    options: { maxPayload: MAX_MESSAGE, perMessageDeflate: false },
    preClose(done) {
      for (const socket of open.keys()) socket.close();
      // A phone that went out of reach says no good-bye, and holds nobody up.
      setTimeout(() => {
        for (const socket of open.keys()) socket.terminate();
      }, GOOD_BYE).unref();
      this.websocketServer.close();
      done();
    },
  });
  const open = new Map<WebSocket, Session>();
  const joins = { one: buckets(JOINS), all: buckets(ALL_JOINS, 1) };

  server.addHook('onRequest', async (request, reply) => {
    reply.header('cache-control', 'no-store');
    const why = foreign(request.headers, names);
    if (why !== null) return reply.code(403).send({ fault: why });
    return undefined;
  });

  const session = async (request: FastifyRequest): Promise<Session | null> =>
    sessionOf((await site()).storage, request.headers.cookie, Date.now());

  const name = async (): Promise<string> => siteName(await (await site()).storage.codes());

  /** Answers who is not one of these, and returns null. */
  const only = async (
    roles: readonly Role[],
    request: FastifyRequest,
    reply: FastifyReply,
  ): Promise<Session | null> => {
    const who = await session(request);
    if (who && roles.includes(who.role)) return who;
    await reply
      .code(who ? 403 : 401)
      .send({ fault: who ? `not for a ${who.role}` : 'join with a code first' });
    return null;
  };

  /** Ends the lines of codes. */
  const cut = (holdsNoLonger: (code: number) => boolean): void => {
    for (const [socket, { code }] of open)
      if (holdsNoLonger(code)) socket.close(CLOSE.revoked, 'the code no longer holds');
  };
  const cutRevoked = async (): Promise<void> => {
    if (open.size === 0) return;
    const codes = await (await site()).storage.codes();
    const living = new Set(codes.filter(({ revoked }) => !revoked).map(({ id }) => id));
    cut((code) => !living.has(code));
  };
  onCodes(() => void cutRevoked().catch(() => undefined));

  photoRoutes(server, {
    only,
    photos: async () => (await site()).storage.photos,
  });

  server.post('/sync/join', { bodyLimit: 1024 }, async (request, reply) => {
    if (!joins.one(request.ip, 1) || !joins.all('all', 1))
      return reply.code(429).send({ fault: 'too many tries: wait a minute' });
    const { code } = (request.body ?? {}) as { code?: unknown };
    const joined = await join((await site()).storage, code, Date.now());
    if (!joined) return reply.code(403).send({ fault: 'no such code, or it no longer holds' });
    return reply
      .header('set-cookie', cookieFor(joined.token, request.protocol === 'https'))
      .send({ role: joined.role, site: await name() });
  });

  server.get('/sync/who', async (request, reply) => {
    const who = await only(ROLES, request, reply);
    return who ? { role: who.role, site: await name() } : reply;
  });

  server.get('/sync/addresses', async (request, reply) => {
    if (!(await only(['lead'], request, reply))) return reply;
    return addressesOf(request);
  });

  server.get('/sync/codes', async (request, reply) => {
    if (!(await only(['lead'], request, reply))) return reply;
    return codesOf((await site()).storage, Date.now());
  });

  server.post('/sync/codes', { bodyLimit: 1024 }, async (request, reply) => {
    if (!(await only(['lead'], request, reply))) return reply;
    const { role } = (request.body ?? {}) as { role?: unknown };
    if (!ROLES.includes(role as Role))
      return reply
        .code(400)
        .send({ fault: `role: found ${JSON.stringify(role)}, expected ${ROLES.join(', ')}` });
    return (await site()).storage.addCode(role as Role, newCode(), Date.now());
  });

  server.delete<{ Params: { id: string } }>('/sync/codes/:id', async (request, reply) => {
    if (!(await only(['lead'], request, reply))) return reply;
    const id = /^\d{1,9}$/.test(request.params.id) ? Number(request.params.id) : 0;
    const { storage, ring } = await site();
    const revoked = await storage.revoke(id);
    cut((code) => code === id);
    if (revoked) ring('codes');
    return revoked
      ? reply.code(204).send()
      : reply.code(404).send({ fault: `no code that still holds: ${id}` });
  });

  const entering = new WeakMap<FastifyRequest, { readonly who: Session; readonly room: Room }>();
  server.get<{ Params: { doc: string } }>(
    '/sync/doc/:doc',
    {
      websocket: true,
      preValidation: async (request, reply) => {
        const doc = DOCS.find((one) => one === request.params.doc);
        if (!doc) return reply.code(404).send({ fault: 'no such document' });
        const who = await only(ROLES, request, reply);
        if (!who) return reply;
        // A device that means another site must not pour that one's record into this.
        const meant = (request.query as { site?: unknown }).site;
        if (meant !== undefined && meant !== (await name()))
          return reply.code(409).send({ fault: 'another site is kept here' });
        const own = [...open.values()].filter(({ hash }) => hash === who.hash).length;
        if (own >= SOCKETS.session || open.size >= SOCKETS.all)
          return reply.code(503).send({ fault: 'too many lines open' });
        entering.set(request, { who, room: (await site()).rooms[doc] });
        return undefined;
      },
    },
    (socket, request) => {
      const entered = entering.get(request);
      if (!entered) return socket.close(CLOSE.malformed, 'no line was asked for');
      open.set(socket, entered.who);
      const peer = entered.room.join(lineOf(socket, entered.who.role));
      socket.on('message', (data: unknown, isBinary: boolean) => {
        if (isBinary && data instanceof Uint8Array) peer.hear(data);
        else socket.close(CLOSE.malformed, 'a message that is no bytes');
      });
      socket.on('close', () => {
        open.delete(socket);
        peer.leave();
      });
      socket.on('error', () => socket.terminate());
    },
  );
}

/** Where other devices find this server, over https first where it speaks that (plain http then gives
 * them the root alone); none where it listens to this computer alone. */
function addressesOf(request: FastifyRequest): readonly string[] {
  const at = request.server.server.address();
  if (typeof at !== 'object' || !at || at.address.startsWith('127.') || at.address === '::1')
    return [];
  const { port: secure } = request.server.httpsAt;
  const own = lanAddresses();
  return [
    ...(secure === null ? [] : own.map((address) => `https://${address}:${secure}/`)),
    ...own.map((address) => `http://${address}:${at.port}/`),
  ];
}

/** A socket as a line; one that reads no more is cut. */
const lineOf = (socket: WebSocket, role: Role): Line => ({
  role,
  send: (message) => {
    if (socket.bufferedAmount > MAX_WAITING) socket.terminate();
    else if (socket.readyState === socket.OPEN) socket.send(message);
  },
  close: (code, reason) => socket.close(code, reason),
});
