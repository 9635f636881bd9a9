// Photos by the hash of their bytes: who has joined may see them, lead and crew bring them. What comes is
// looked through before it is kept: that it is a photo of a kind that browsers show, that the hash is its
// own, and that it does not tell where it was taken, unless whoever brings it says that it should.

import { createHash } from 'node:crypto';
import { photoKind, strippedPhoto } from '@shellraise/sync';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { buckets } from './bucket.ts';
import type { Session } from './codes.ts';
import { MAX_PHOTO, MAX_PHOTOS, PHOTO_BYTES } from './limits.ts';
import { type Photos, ROLES, type Role } from './storage.ts';

/** What the routes need. */
export interface PhotoRoutes {
  /** Answers who is not one of these, and returns null. */
  readonly only: (
    roles: readonly Role[],
    request: FastifyRequest,
    reply: FastifyReply,
  ) => Promise<Session | null>;
  readonly photos: () => Promise<Photos>;
}

interface Asked {
  readonly Params: { readonly hash: string };
  readonly Querystring: { readonly keep?: unknown };
}

/** Adds `PUT` and `GET` of `/sync/photos/:hash`. */
export function photoRoutes(server: FastifyInstance, { only, photos }: PhotoRoutes): void {
  const brought = buckets(PHOTO_BYTES);
  const bringing = new WeakMap<FastifyRequest, Session>();
  // Whatever a photo calls itself: what it is, its bytes say.
  for (const kind of [/^image\//, 'application/octet-stream'])
    server.addContentTypeParser(
      kind,
      { parseAs: 'buffer', bodyLimit: MAX_PHOTO },
      (_request, body, done) => done(null, body),
    );

  server.put<Asked>(
    '/sync/photos/:hash',
    {
      bodyLimit: MAX_PHOTO,
      // Before the body is read: strangers' bytes are not taken in.
      onRequest: async (request, reply) => {
        const who = await only(['lead', 'crew'], request, reply);
        if (!who) return reply;
        bringing.set(request, who);
        return isHash(request.params.hash) ? undefined : notThere(reply);
      },
    },
    async (request, reply) => {
      const refuse = (code: number, fault: string): FastifyReply =>
        reply.code(code).send({ fault });
      const { body } = request;
      const who = bringing.get(request);
      if (!(body instanceof Uint8Array) || !who)
        return refuse(415, 'expected the bytes of a photo, as image/jpeg, image/png or image/webp');
      if (!brought(who.hash, body.length))
        return refuse(429, 'too many photos at once: wait a minute');
      if (hashOf(body) !== request.params.hash)
        return refuse(422, `the bytes have the hash ${hashOf(body)}`);
      const stripped = strippedPhoto(body);
      if (stripped === null) return refuse(415, 'expected a whole photo: JPEG, PNG or WebP');
      const tellsMore = Buffer.compare(stripped, body) !== 0;
      if (tellsMore && request.query.keep !== 'all')
        return refuse(
          422,
          'the photo tells more than its picture, as where it was taken: strip it first',
        );
      const kept = await photos();
      if ((await kept.size()) + body.length > MAX_PHOTOS)
        return refuse(507, `all photos together may have ${MAX_PHOTOS} bytes`);
      return reply.code((await kept.put(request.params.hash, body)) === 'new' ? 201 : 200).send({});
    },
  );

  server.get<Asked>('/sync/photos/:hash', async (request, reply) => {
    if (!(await only(ROLES, request, reply))) return reply;
    const { hash } = request.params;
    const bytes = isHash(hash) ? await (await photos()).get(hash) : null;
    const kind = bytes && photoKind(bytes);
    if (!bytes || !kind) return notThere(reply);
    return reply
      .type(kind)
      .header('cache-control', 'private, max-age=31536000, immutable')
      .header('content-security-policy', "default-src 'none'")
      .send(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  });
}

const isHash = (text: string): boolean => /^[\da-f]{64}$/.test(text);

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const notThere = (reply: FastifyReply): FastifyReply =>
  reply.code(404).send({ fault: 'no such photo' });
