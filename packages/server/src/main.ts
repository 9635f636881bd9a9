// The server's command: serves the app, prints where it is, ends on Ctrl-C.

import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type ListenOptions, lanAddresses, listen } from './listen.ts';
import { qrLines } from './qr-text.ts';
import { createServer } from './server.ts';

const appFolder = fileURLToPath(new URL('../../app/dist', import.meta.url));

const help = `Serves Shellraise on this computer and opens it.

  --lan          also to phones and computers in the same network
  --port NUMBER  this port, not the first free one from 4180 on
  --no-open      open no browser
`;

/** Options of the command. */
export interface ServeOptions extends ListenOptions {
  readonly open: boolean;
  readonly help: boolean;
}

/** Serves the app until it is interrupted. Exit code 2 for a wrong option, 3 where it can't serve. */
export async function main(words: readonly string[]): Promise<void> {
  let options: ServeOptions;
  try {
    options = readOptions(words);
  } catch (error) {
    console.error(messageOf(error));
    process.exitCode = 2;
    return;
  }
  if (options.help) {
    console.log(help);
    return;
  }
  try {
    await serve(options);
  } catch (error) {
    console.error(`Shellraise can't be served: ${messageOf(error)}.`);
    process.exitCode = 3;
  }
}

/** Options from the words after the command. Throws with what was found and what is allowed. */
export function readOptions(words: readonly string[]): ServeOptions {
  const { values } = parseArgs({
    args: [...words],
    options: {
      lan: { type: 'boolean', default: false },
      port: { type: 'string' },
      'no-open': { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  });
  const port = values.port === undefined ? null : Number(values.port);
  if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65_535))
    throw new Error(`--port: found ${values.port}, expected a whole number from 0 to 65535`);
  return { lan: values.lan, port, open: !values['no-open'], help: values.help };
}

async function serve(options: ServeOptions): Promise<void> {
  const server = await createServer(appFolder);
  const port = await listen(server, options);
  const own = `http://localhost:${port}/`;
  const end = (): void => {
    void server.close().then(() => process.exit(0));
  };
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  for (const line of greeting(own, options.lan ? lanAddresses() : null, port)) console.log(line);
  if (options.open && process.stdout.isTTY) openBrowser(own);
}

/** What is printed: the address, and for the network each address there with its QR code. */
export function greeting(own: string, lan: readonly string[] | null, port: number): string[] {
  const lines = [`Shellraise is at ${own}`];
  if (lan?.length === 0) lines.push('This computer is in no network that phones could come by.');
  for (const address of lan ?? []) {
    const there = `http://${address}:${port}/`;
    lines.push('', `In this network: ${there}`, ...qrLines(there, process.stdout.isTTY === true));
  }
  if (lan && lan.length > 0)
    lines.push(
      '',
      'Anyone in this network can open it. Each device keeps its own projects. A phone that comes',
      'over plain http needs this computer within reach: it can keep no copy for offline use.',
    );
  lines.push('', 'Ctrl-C ends it.');
  return lines;
}

/** Opens the page where there is a browser to open it with; where not, the address is printed. */
function openBrowser(address: string): void {
  const [program, args] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['cmd', ['/c', 'start', '', address]]
        : ['xdg-open', [address]];
  const child = spawn(program as string, args as string[], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
