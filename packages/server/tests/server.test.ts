import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer as createNetServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listen } from '../src/listen.ts';
import { greeting, readOptions } from '../src/main.ts';
import { qrLines } from '../src/qr-text.ts';
import { createServer } from '../src/server.ts';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shellraise-server-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>app</title>');
  writeFileSync(join(folder, 'sw.js'), '// worker');
  writeFileSync(join(folder, 'manifest.webmanifest'), '{}');
  writeFileSync(join(folder, 'assets', 'main-1234.js'), 'export {}');
  writeFileSync(join(folder, 'assets', 'solver.wasm'), '');
});

afterEach(() => rmSync(folder, { recursive: true }));

const addressesOf = (server: Awaited<ReturnType<typeof createServer>>): string[] =>
  server.addresses().map((one) => (typeof one === 'string' ? one : one.address));

describe('the server', () => {
  it('serves the page, to be asked for anew each time', async () => {
    const reply = await (await createServer(folder)).inject('/');
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toContain('text/html');
    expect(reply.headers['cache-control']).toBe('no-cache');
  });

  it('lets files with a hash in their name be kept for good, and no others', async () => {
    const server = await createServer(folder);
    const kept = await server.inject('/assets/main-1234.js');
    expect(kept.headers['cache-control']).toContain('immutable');
    expect((await server.inject('/sw.js')).headers['cache-control']).toBe('no-cache');
  });

  it('names the types that browsers insist on', async () => {
    const server = await createServer(folder);
    const typeOf = async (path: string) => (await server.inject(path)).headers['content-type'];
    expect(await typeOf('/assets/solver.wasm')).toContain('application/wasm');
    expect(await typeOf('/sw.js')).toContain('javascript');
    expect(await typeOf('/manifest.webmanifest')).toContain('application/manifest+json');
  });

  it('keeps foreign code out, and asks for no encryption', async () => {
    const { headers } = await (await createServer(folder)).inject('/');
    expect(headers['content-security-policy']).toContain("script-src 'self'");
    expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['strict-transport-security']).toBeUndefined();
  });

  it('serves nothing from outside of its folder', async () => {
    const server = await createServer(join(folder));
    for (const path of ['/../package.json', '/%2e%2e/%2e%2e/etc/passwd', '/assets/../../x'])
      expect((await server.inject(path)).statusCode).toBeGreaterThanOrEqual(400);
  });

  it('says that the app is not built', async () => {
    await expect(createServer(join(folder, 'assets'))).rejects.toThrow('not built');
  });
});

describe('listening', () => {
  it('is on this computer alone unless asked', async () => {
    const server = await createServer(folder);
    const port = await listen(server, { lan: false, port: 0 });
    expect(addressesOf(server)).toEqual(['127.0.0.1']);
    expect((await fetch(`http://127.0.0.1:${port}/`)).status).toBe(200);
    await server.close();
  });

  it('is on all networks where asked', async () => {
    const server = await createServer(folder);
    await listen(server, { lan: true, port: 0 });
    expect(addressesOf(server)).toEqual(['0.0.0.0']);
    await server.close();
  });

  it('refuses a port that was asked for and is taken', async () => {
    const other = createNetServer();
    await new Promise<void>((done) => other.listen(0, '127.0.0.1', done));
    const { port } = other.address() as { port: number };
    const server = await createServer(folder);
    await expect(listen(server, { lan: false, port })).rejects.toMatchObject({
      code: 'EADDRINUSE',
    });
    await server.close();
    other.close();
  });
});

describe('the command', () => {
  it('reads its options, and names what it can not read', () => {
    expect(readOptions(['--lan', '--port', '8000'])).toMatchObject({ lan: true, port: 8000 });
    expect(readOptions([])).toMatchObject({ lan: false, port: null, open: true });
    expect(() => readOptions(['--port', 'x'])).toThrow('--port: found x');
    expect(() => readOptions(['--wan'])).toThrow('--wan');
  });

  it('prints the address, and for the network what phones need to know', () => {
    expect(greeting('http://localhost:4180/', null, 4180).join('\n')).not.toContain('network');
    const lan = greeting('http://localhost:4180/', ['192.168.7.9'], 4180).join('\n');
    expect(lan).toContain('http://192.168.7.9:4180/');
    expect(lan).toContain('Anyone in this network');
  });

  it('draws the QR code with its quiet edge, light around dark', () => {
    const lines = qrLines('http://192.168.7.9:4180/', false);
    expect(new Set(lines.map((line) => line.length)).size).toBe(1);
    expect(lines[0]).toMatch(/^█+$/);
    expect(lines[4]).toMatch(/^████.*████$/);
    expect(lines.join('')).toMatch(/ /);
  });
});
