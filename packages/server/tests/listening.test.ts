import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Listening, listen, PortTaken, USUAL_PORT } from '../src/listening.ts';
import { builtApp } from './built.ts';

async function listening(port: number | null, host = '127.0.0.1'): Promise<Listening> {
  const listening = await listen({ root: builtApp(), host, port });
  onTestFinished(() => listening.server.close());
  return listening;
}

/** Takes a port; where somebody else has it already that serves as well. */
function take(port: number): Promise<void> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once('error', () => resolve());
    server.listen(port, '127.0.0.1', resolve);
    onTestFinished(() => {
      server.close();
    });
  });
}

const hosts = ({ server }: Listening): readonly string[] =>
  server.addresses().map((one) => (typeof one === 'string' ? one : one.address));

describe('listening', () => {
  it('is on this computer alone where it is asked to be', async () => {
    const own = await listening(0);
    expect(hosts(own)).toEqual(['127.0.0.1']);
    expect((await fetch(`http://127.0.0.1:${own.port}/`)).status).toBe(200);
  });

  it('is on all networks where it is asked to be', async () => {
    expect(hosts(await listening(0, '0.0.0.0'))).toEqual(['0.0.0.0']);
  });

  it('takes the next free port where the usual one is taken', async () => {
    await take(USUAL_PORT);
    const { port } = await listening(null);
    expect(port).toBeGreaterThan(USUAL_PORT);
    expect(port).toBeLessThan(USUAL_PORT + 20);
  });

  it('takes no other port than the one that was named', async () => {
    const { port } = await listening(0);
    await expect(listen({ root: builtApp(), host: '127.0.0.1', port })).rejects.toMatchObject({
      constructor: PortTaken,
      first: port,
      last: port,
      code: 'EADDRINUSE',
    });
  });

  it('passes on a fault that is not the port’s', async () => {
    await expect(listen({ root: builtApp(), host: '203.0.113.1', port: 0 })).rejects.toMatchObject({
      code: 'EADDRNOTAVAIL',
    });
  });
});
