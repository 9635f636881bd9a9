// The real PostgreSQL and Redis, as this machine has them, each started for a test in a folder of its own
// and ended with it. Where one is not there, or cannot be started, the reason is told.

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { Redis } from 'ioredis';
import pg from 'pg';
import { until } from './phones.ts';

/** A service that runs. */
export interface Service {
  readonly address: string;
  /** Ends it as a power cut would, as far as its processes go. */
  readonly kill: () => Promise<void>;
  readonly start: () => Promise<void>;
}

/** The services, or why there are none. */
export type Services =
  | { readonly postgres: Service; readonly redis: Service; readonly end: () => Promise<void> }
  | { readonly missing: string };

const POSTGRES = '/usr/lib/postgresql';

function found(name: string, more: readonly string[] = []): string | null {
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...more];
  return folders.map((folder) => join(folder, name)).find((file) => existsSync(file)) ?? null;
}

/** Folders of Debian's versions of PostgreSQL, newest first. */
const debian = (): readonly string[] =>
  existsSync(POSTGRES)
    ? readdirSync(POSTGRES)
        .sort((a, b) => Number(b) - Number(a))
        .map((version) => join(POSTGRES, version, 'bin'))
    : [];

/** Whom PostgreSQL runs as: root it refuses. */
function runner(): { readonly uid?: number; readonly gid?: number } | null {
  if (process.getuid?.() !== 0) return {};
  const users = readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['postgres', 'nobody']) {
    const [, , uid, gid] = users.find((line) => line.startsWith(`${name}:`))?.split(':') ?? [];
    if (uid && gid) return { uid: Number(uid), gid: Number(gid) };
  }
  return null;
}

/** A port that is free now. */
export const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

/** Starts both. */
export async function startServices(): Promise<Services> {
  if (process.platform === 'win32') return { missing: 'they are not looked for on Windows' };
  const [redisServer, ...rest] = ['redis-server', 'initdb', 'postgres'].map((name) =>
    found(name, name === 'redis-server' ? [] : debian()),
  );
  const [initdb, server] = rest;
  if (!redisServer) return { missing: 'redis-server is not installed' };
  if (!initdb || !server) return { missing: 'PostgreSQL is not installed' };
  const as = runner();
  if (!as)
    return { missing: 'PostgreSQL refuses to run as root, and there is no other user for it' };
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-services-'));
  chmodSync(folder, 0o755);
  const data = mkdtempSync(join(folder, 'pg-'));
  if (as.uid !== undefined) chownSync(data, as.uid, as.gid ?? 0);
  const cluster = join(data, 'data');
  const made = spawnSync(initdb, ['-D', cluster, '-U', 'shellraise', '-A', 'trust', '--no-sync'], {
    ...as,
    cwd: data,
    encoding: 'utf8',
  });
  if (made.status !== 0) {
    rmSync(folder, { recursive: true, force: true });
    return { missing: `initdb failed: ${made.error?.message ?? made.stderr}` };
  }
  const [postgresPort, redisPort] = [await freePort(), await freePort()];
  const postgres = service({
    address: `postgres://shellraise@127.0.0.1:${postgresPort}/postgres`,
    // Its own word for "at once, and put it right at the next start"; killed outright, its children hold
    // the folder for a moment.
    signal: 'SIGQUIT',
    run: () =>
      spawn(
        server,
        ['-D', cluster, '-p', `${postgresPort}`, '-k', data, '-c', 'listen_addresses=127.0.0.1'],
        { ...as, cwd: data, stdio: 'ignore' },
      ),
    answers: async (address) => {
      const client = new pg.Client({ connectionString: address, connectionTimeoutMillis: 2000 });
      client.on('error', () => undefined);
      try {
        await client.connect();
        await client.query('SELECT 1');
      } finally {
        await client.end().catch(() => undefined);
      }
    },
  });
  const redis = service({
    address: `redis://127.0.0.1:${redisPort}`,
    signal: 'SIGKILL',
    run: () =>
      spawn(
        redisServer,
        ['--port', `${redisPort}`, '--bind', '127.0.0.1', '--save', '', '--dir', folder],
        { stdio: 'ignore' },
      ),
    answers: async (address) => {
      const client = new Redis(address, { lazyConnect: true, retryStrategy: null });
      client.on('error', () => undefined);
      try {
        await client.connect();
        await client.ping();
      } finally {
        client.disconnect();
      }
    },
  });
  const end = async (): Promise<void> => {
    await Promise.all([postgres.kill(), redis.kill()]);
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    await Promise.all([postgres.start(), redis.start()]);
  } catch (error) {
    await end();
    return { missing: `they do not start: ${String(error)}` };
  }
  return { postgres, redis, end };
}

interface Running {
  readonly address: string;
  readonly signal: NodeJS.Signals;
  readonly run: () => ChildProcess;
  /** Rejects while it does not answer. */
  readonly answers: (address: string) => Promise<void>;
}

function service({ address, signal, run, answers }: Running): Service {
  let child: ChildProcess | null = null;
  return {
    address,
    start: async () => {
      child = run();
      await until(
        () =>
          answers(address).then(
            () => true,
            () => false,
          ),
        `${address} answers`,
        60,
      );
    },
    kill: async () => {
      const ended = child;
      if (!ended || ended.exitCode !== null || ended.signalCode !== null) return;
      await new Promise<void>((resolve) => {
        ended.once('exit', () => resolve());
        ended.kill(signal);
      });
    },
  };
}
