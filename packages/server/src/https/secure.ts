// Https beside plain http: the same server behind the laptop's own certificate, on a port of its own.
// Plain http then serves this computer alone, whose browser keeps its projects under that address; to
// any other device it gives the page from which a phone gets the root certificate, and nothing else.

import { createServer as createTls, type Server } from 'node:https';
import type { AddressInfo } from 'node:net';
import type { TLSSocket } from 'node:tls';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { isStale, type Leaf, makeLeaf, ownNames } from './leaf.ts';
import type { Root } from './root.ts';
import { trustPage } from './trust-page.ts';

/** How often the addresses are looked at, milliseconds. */
const LOOK = 60_000;

/** The secure side of a server. */
export interface Secure {
  /** Of the root certificate, as phones show it. */
  readonly fingerprint: string;
  /** Listens; the port. Passes on the system's faults. */
  listen(host: string, port: number): Promise<number>;
  /** Makes a new certificate where the addresses changed or the old one is a day old; whether it did. */
  look(names?: readonly string[], now?: number): Promise<boolean>;
}

const PAGE = '/trust';
const CERTIFICATE = '/root.crt';

/** Adds https to a server that does not listen yet. */
export async function secure(server: FastifyInstance, root: Root): Promise<Secure> {
  let leaf: Leaf = await makeLeaf(root, ownNames(), Date.now());
  let port = 0;
  const tls: Server = createTls({ key: leaf.key, cert: leaf.cert, minVersion: 'TLSv1.2' });
  tls.on('request', (request, reply) => server.routing(request, reply));
  tls.on('upgrade', (...upgrade) => server.server.emit('upgrade', ...upgrade));

  server.addHook('onRequest', async (request, reply) => {
    const path = request.url.split('?', 1)[0];
    if (path === PAGE || path === CERTIFICATE || isSafe(request)) return undefined;
    if (request.method !== 'GET' || path?.startsWith('/sync'))
      return reply.code(403).send({ fault: 'over plain http nothing is shared: use https' });
    return reply.redirect(PAGE);
  });
  server.get(PAGE, async ({ host }, reply) =>
    reply
      .type('text/html; charset=utf-8')
      .header('cache-control', 'no-store')
      .send(
        trustPage({
          certificate: CERTIFICATE,
          name: root.certificate.subjectName.getField('CN')[0] ?? '',
          fingerprint: root.fingerprint,
          secure: `https://${nameIn(host, leaf)}:${port}/`,
        }),
      ),
  );
  server.get(CERTIFICATE, async (_request, reply) =>
    reply
      .type('application/x-x509-ca-cert')
      .header('cache-control', 'no-store')
      .header('content-disposition', 'attachment; filename="shellraise-root.crt"')
      .send(Buffer.from(root.certificate.rawData)),
  );

  const look = async (names = ownNames(), now = Date.now()): Promise<boolean> => {
    if (!isStale(leaf, names, now)) return false;
    leaf = await makeLeaf(root, names, now);
    tls.setSecureContext({ key: leaf.key, cert: leaf.cert, minVersion: 'TLSv1.2' });
    return true;
  };
  const looking = setInterval(() => void look().catch(() => undefined), LOOK);
  looking.unref();
  let closed: Promise<void> | null = null;
  server.addHook('preClose', async () => {
    clearInterval(looking);
    if (!tls.listening) return;
    closed = new Promise<void>((resolve) => tls.close(() => resolve()));
    tls.closeAllConnections();
  });
  // Not waited for before: sockets are ended after this hook.
  server.addHook('onClose', async () => {
    await closed;
  });
  return {
    fingerprint: root.fingerprint,
    look,
    listen: async (host, asked) => {
      await new Promise<void>((resolve, reject) => {
        tls.once('error', reject);
        tls.listen(asked, host, () => {
          tls.off('error', reject);
          resolve();
        });
      });
      port = (tls.address() as AddressInfo).port;
      return port;
    },
  };
}

/** Whether nobody on the network can listen in: over TLS, or within this computer. */
const isSafe = ({ raw }: FastifyRequest): boolean =>
  (raw.socket as TLSSocket).encrypted === true || isLoopback(raw.socket.remoteAddress);

/** Whether an address is this computer's own, as the system writes it. */
export const isLoopback = (address: string | undefined): boolean =>
  address !== undefined && /^(::ffff:)?127\.|^::1$/.test(address);

/** The name by which a device called, where the certificate bears it; else the first on the network. */
function nameIn(host: string | undefined, { names }: Leaf): string {
  const asked = (host ?? '').replace(/:\d+$/, '').toLowerCase();
  return names.includes(asked)
    ? asked
    : (names.find((name) => name !== '127.0.0.1' && /^\d/.test(name)) ?? 'localhost');
}
