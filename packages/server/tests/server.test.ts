import { request } from 'node:http';
import { describe, expect, it } from 'vitest';
import { createServer, NotBuilt } from '../src/server.ts';
import { builtApp, emptyFolder } from './built.ts';

const ask = (path: string) => createServer({ root: builtApp() }).inject(path);

describe('the server', () => {
  it('serves the page, to be asked for anew each time', async () => {
    const reply = await ask('/');
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(reply.headers['cache-control']).toBe('no-cache');
    expect(reply.body).toContain('<title>app</title>');
  });

  it('lets a file with a hash in its name be kept for good, and no other', async () => {
    const kept = async (path: string) => (await ask(path)).headers['cache-control'];
    expect(await kept('/assets/main-Ab3_-x9Z.js')).toBe('public, max-age=31536000, immutable');
    expect(await kept('/sw.js')).toBe('no-cache');
    expect(await kept('/manifest.webmanifest')).toBe('no-cache');
  });

  it('names the types that browsers insist on', async () => {
    const type = async (path: string) => (await ask(path)).headers['content-type'];
    expect(await type('/assets/main-Ab3_-x9Z.js')).toMatch(/^(text|application)\/javascript/);
    expect(await type('/sw.js')).toMatch(/^(text|application)\/javascript/);
    expect(await type('/assets/solver-12345678.wasm')).toBe('application/wasm');
    expect(await type('/assets/text-abcdefgh.woff2')).toBe('font/woff2');
    expect(await type('/manifest.webmanifest')).toMatch(/^application\/manifest\+json/);
  });

  it('keeps foreign code out of the page, and its faults too', async () => {
    for (const path of ['/', '/no-such-file']) {
      const { headers } = await ask(path);
      const policy = String(headers['content-security-policy']).split('; ');
      expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
      expect(policy).toContain("default-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  it('never asks for https, which a field has not', async () => {
    const { headers } = await ask('/');
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
  });

  it('says in words that a file is not there, and keeps no such answer', async () => {
    const reply = await ask('/assets/gone-12345678.js');
    expect(reply.statusCode).toBe(404);
    expect(reply.headers['content-type']).toMatch(/^text\/plain/);
    expect(reply.headers['cache-control']).toBe('no-store');
    expect(reply.body).toContain('no such file');
  });

  it('answers an address that cannot be read, and goes on', async () => {
    const server = createServer({ root: builtApp() });
    expect((await server.inject('/%E0%A4%A')).statusCode).toBe(400);
    expect((await server.inject('/')).statusCode).toBe(200);
  });

  it('serves nothing from outside its folder, and no hidden file', async () => {
    const root = builtApp();
    const server = createServer({ root });
    await server.listen({ host: '127.0.0.1', port: 0 });
    const { port } = server.server.address() as { port: number };
    // As a client that does not tidy its path first.
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/.stamp',
    ]) {
      const reply = await raw(port, path);
      expect(reply.code, path).toBeGreaterThanOrEqual(400);
      expect(reply.text).not.toContain('not for the page');
    }
    await server.close();
  });

  it('takes no requests that would change something', async () => {
    const server = createServer({ root: builtApp() });
    for (const method of ['POST', 'PUT', 'DELETE'] as const)
      expect((await server.inject({ method, url: '/' })).statusCode).toBe(404);
  });

  it('refuses a folder without a page', () => {
    expect(() => createServer({ root: emptyFolder() })).toThrow(NotBuilt);
  });
});

const raw = (port: number, path: string) =>
  new Promise<{ code: number; text: string }>((resolve, reject) => {
    request({ host: '127.0.0.1', port, path }, (reply) => {
      let text = '';
      reply.on('data', (data: Buffer) => {
        text += data;
      });
      reply.on('end', () => resolve({ code: reply.statusCode ?? 0, text }));
    })
      .once('error', reject)
      .end();
  });
