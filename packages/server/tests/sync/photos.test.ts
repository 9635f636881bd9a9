import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { strippedPhoto } from '@shellraise/sync';
import { describe, expect, it } from 'vitest';
import { jpeg, phoneJpeg, png, webp } from '../../../sync/tests/photos.ts';
import { MAX_PHOTO } from '../../src/sync/limits.ts';
import { openPhotos } from '../../src/sync/photo-folder.ts';
import { emptyFolder } from '../built.ts';
import { joinWith, serve } from './phones.ts';

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

interface Sent {
  readonly method?: string;
  readonly body?: Uint8Array;
  readonly headers?: Record<string, string>;
}

function send(port: number, path: string, { method = 'GET', body, headers = {} }: Sent = {}) {
  return new Promise<{ status: number; type: string; bytes: Buffer }>((resolve, reject) => {
    const asked = request(
      {
        ...{ host: '127.0.0.1', port, path, method, agent: false },
        headers: { ...(body && { 'content-type': 'image/jpeg' }), ...headers },
      },
      (reply) => {
        const parts: Buffer[] = [];
        reply.on('data', (part: Buffer) => parts.push(part));
        reply.on('end', () =>
          resolve({
            status: reply.statusCode ?? 0,
            type: reply.headers['content-type'] ?? '',
            bytes: Buffer.concat(parts),
          }),
        );
      },
    );
    asked.once('error', reject);
    asked.end(body);
  });
}

async function site() {
  const served = await serve();
  const codes = await served.codes();
  const cookies = {
    lead: await joinWith(served.port, codes.lead),
    crew: await joinWith(served.port, codes.crew),
    looker: await joinWith(served.port, codes.looker),
  };
  const put = (body: Uint8Array, more: Sent & { readonly path?: string } = {}) =>
    send(served.port, more.path ?? `/sync/photos/${hashOf(body)}`, {
      method: 'PUT',
      body,
      headers: { cookie: cookies.crew, ...more.headers },
    });
  const get = (hash: string, headers: Record<string, string> = { cookie: cookies.looker }) =>
    send(served.port, `/sync/photos/${hash}`, { headers });
  const kept = (): readonly string[] =>
    existsSync(join(served.data, 'photos')) ? readdirSync(join(served.data, 'photos')) : [];
  return { ...served, cookies, put, get, kept };
}

describe('a photo', () => {
  it('is brought by lead and crew, seen by all who joined, and kept by its hash', async () => {
    const { put, get, kept, cookies, data } = await site();
    for (const [body, type] of [
      [jpeg(), 'image/jpeg'],
      [png(), 'image/png'],
      [webp, 'image/webp'],
    ] as const) {
      expect((await put(body)).status).toBe(201);
      expect((await put(body, { headers: { cookie: cookies.lead } })).status).toBe(200);
      const seen = await get(hashOf(body));
      expect([seen.status, seen.type]).toEqual([200, type]);
      expect(seen.bytes.equals(body)).toBe(true);
      const file = join(data, 'photos', hashOf(body));
      expect(readFileSync(file).equals(body)).toBe(true);
      expect(statSync(file).mode & 0o777).toBe(0o600);
    }
    expect(kept()).toHaveLength(3);
    expect((await get('0'.repeat(64))).status).toBe(404);
  });

  it('that tells where it was taken is refused, stripped it is taken, and kept whole on purpose', async () => {
    const { put, get, kept } = await site();
    const telling = phoneJpeg();
    const refused = await put(telling);
    expect([refused.status, refused.bytes.toString()]).toEqual([
      422,
      expect.stringContaining('strip it first'),
    ]);
    expect(kept()).toEqual([]);
    const stripped = strippedPhoto(telling) as Uint8Array;
    expect((await put(stripped)).status).toBe(201);
    const path = `/sync/photos/${hashOf(telling)}?keep=all`;
    expect((await put(telling, { path })).status).toBe(201);
    expect((await get(hashOf(telling))).bytes.equals(telling)).toBe(true);
  });

  it('is not brought by a looker or a stranger, nor seen by a stranger', async () => {
    const { put, get, kept, cookies } = await site();
    expect((await put(jpeg(), { headers: { cookie: cookies.looker } })).status).toBe(403);
    expect((await put(jpeg(), { headers: { cookie: '' } })).status).toBe(401);
    await put(png());
    expect((await get(hashOf(png()), {})).status).toBe(401);
    expect(kept()).toEqual([hashOf(png())]);
  });

  it('is refused with another’s hash, too long, cut off, or of no kind that is a photo', async () => {
    const { put, kept } = await site();
    const path = `/sync/photos/${hashOf(png())}`;
    expect((await put(jpeg(), { path })).status).toBe(422);
    const long = new Uint8Array(MAX_PHOTO + 1);
    expect(
      await put(long).then(
        ({ status }) => status,
        () => 413,
      ),
    ).toBe(413);
    for (const text of ['<svg xmlns="x" onload="x()"/>', '<html><script>x</script>', '', 'GIF89a'])
      expect((await put(Buffer.from(text))).status, text).toBeGreaterThanOrEqual(400);
    expect((await put(jpeg().subarray(0, 100))).status).toBe(415);
    for (const type of ['application/json', 'text/html', 'multipart/form-data'])
      expect(
        (await put(jpeg(), { headers: { 'content-type': type } })).status,
        type,
      ).toBeGreaterThanOrEqual(400);
    expect(kept()).toEqual([]);
  });

  it('cannot be a path', async () => {
    const { put, get, kept, data } = await site();
    writeFileSync(join(data, 'secret'), jpeg());
    const body = jpeg();
    for (const name of [
      '../secret',
      '..%2fsecret',
      '%2e%2e%2fsite.sqlite',
      hashOf(body).toUpperCase(),
      `${hashOf(body)}.jpg`,
      `${hashOf(body)}%00`,
      '__proto__',
      `${'0'.repeat(62)}..`,
    ]) {
      expect(
        (await put(body, { path: `/sync/photos/${name}` })).status,
        name,
      ).toBeGreaterThanOrEqual(400);
      expect((await get(name)).status, name).toBeGreaterThanOrEqual(400);
    }
    expect(kept()).toEqual([]);
  });

  it('is not brought or seen by way of a page of another site', async () => {
    const { put, get, kept, cookies } = await site();
    for (const headers of [
      { origin: 'http://evil.example' },
      { 'sec-fetch-site': 'cross-site' },
      { host: 'evil.example' },
    ] as Record<string, string>[]) {
      expect((await put(jpeg(), { headers })).status).toBe(403);
      expect((await get(hashOf(jpeg()), { cookie: cookies.crew, ...headers })).status).toBe(403);
    }
    expect(kept()).toEqual([]);
  });
});

describe('the folder of photos', () => {
  it('loses what a killed server left half written, and counts the rest', async () => {
    const folder = join(emptyFolder(), 'photos');
    expect(await openPhotos(folder).size()).toBe(0);
    mkdirSync(folder);
    writeFileSync(join(folder, '0123456789abcdef.part'), 'half');
    writeFileSync(join(folder, hashOf(png())), png());
    const photos = openPhotos(folder);
    expect(readdirSync(folder)).toEqual([hashOf(png())]);
    expect(await photos.put(hashOf(png()), png())).toBe('known');
    expect(await photos.put(hashOf(webp), webp)).toBe('new');
    expect(await photos.size()).toBe(png().length + webp.length);
    await expect(photos.get('../x')).rejects.toThrow('no hash');
  });
});
