// The entry: reads the command line, listens, says where, and ends cleanly when it is told to.

import { fileURLToPath } from 'node:url';
import { joinAddress, spelled } from '@shellraise/sync';
import { RootUnusable } from './https/unusable.ts';
import { isPrivate, lanAddresses, qrLines } from './lan.ts';
import { type Listening, listen, PortTaken, USUAL_PORT } from './listening.ts';
import { openPage } from './open-page.ts';
import { help, readOptions, type ServeOptions } from './options.ts';
import { NotBuilt } from './server.ts';
import { NewsLost } from './sync/bell.ts';
import { usualFolder } from './sync/folder.ts';
import { FolderTaken } from './sync/single.ts';
import { NewerStorage, UnsafeDatabase } from './sync/storage.ts';

/** The built app of this checkout. */
const builtApp = fileURLToPath(new URL('../../app/dist', import.meta.url));

/** Runs the server with the words after the program's name until it is interrupted. Sets the
 * process's exit code: 0 ended as asked, 2 bad input, 3 a fault of ours. */
export async function main(words: readonly string[], root = builtApp): Promise<void> {
  const read = readOptions(words, process.env);
  if (!read.ok) {
    end(2, read.fault, 'shellraise-server --help lists what there is.');
    return;
  }
  if (read.options.help) {
    console.log(help);
    return;
  }
  let listening: Listening;
  try {
    const host = read.options.lan ? '0.0.0.0' : '127.0.0.1';
    const data = read.options.data ?? usualFolder();
    const { port, https, httpsPort, newRoot, postgres, redis, names, proxies } = read.options;
    const secured = https && {
      https: {
        root: await (await import('./https/root.ts')).openRoot(data, Date.now(), newRoot),
        port: httpsPort,
      },
    };
    const where = postgres === null ? data : { postgres, redis };
    listening = await listen({
      root,
      host,
      port,
      data: where,
      names,
      proxies,
      onFault,
      ...secured,
    });
  } catch (error) {
    end(...explained(error));
    return;
  }
  const address = `http://localhost:${listening.port}/`;
  const codes = read.options.codes ? await spelledCodes(listening) : [];
  say(address, listening, read.options, codes);
  if (read.options.codes) sayCodes(codes);
  console.log('Ctrl-C ends it.');
  if (read.options.open && process.stdout.isTTY && process.stdin.isTTY) openPage(address);
  await ended(listening);
}

function say(
  address: string,
  { port, https }: Listening,
  { lan, port: asked }: ServeOptions,
  codes: readonly JoinCode[],
): void {
  console.log(`Shellraise is at ${address}`);
  if (asked === null && port !== USUAL_PORT)
    console.log(
      `(Port ${USUAL_PORT} is taken. A browser keeps projects by address: those kept at port ${USUAL_PORT} are not seen at this one.)`,
    );
  if (https) sayHttps(port, https);
  else if (lan) sayLan(port, codes.find(({ role }) => role === 'crew')?.code ?? null);
}

interface JoinCode {
  readonly role: string;
  /** As people read it out. */
  readonly code: string;
}

/** The living join codes; none while nothing can be kept. */
async function spelledCodes({ server }: Listening): Promise<readonly JoinCode[]> {
  try {
    const codes = (await server.joinCodes?.()) ?? [];
    return codes.map(({ role, code }) => ({ role, code: spelled(code) }));
  } catch {
    return [];
  }
}

function sayCodes(codes: readonly JoinCode[]): void {
  if (codes.length === 0) {
    console.log('There are no join codes while nothing can be kept.');
    return;
  }
  console.log('Join codes. Whoever has one may do as much as its role:');
  for (const { role, code } of codes) console.log(`  ${role.padEnd(7)} ${code}`);
}

/** Faults of ours go to standard error; the server goes on. */
function onFault(error: unknown): void {
  const { message, code } = error as NodeJS.ErrnoException;
  // Some faults of the network have a code and no words.
  const why = message || code || String(error);
  const isShut = [FolderTaken, NewerStorage, UnsafeDatabase].some((kind) => error instanceof kind);
  if (error instanceof NewsLost) console.error(`${why}.`);
  else
    console.error(isShut ? `Nothing is shared: ${why}.` : `The record could not be kept: ${why}`);
}

/** With the crew's code the picture brings a phone straight in. */
function sayLan(port: number, crew: string | null): void {
  const [first, ...others] = lanAddresses().map((address) => `http://${address}:${port}/`);
  if (first === undefined) {
    console.log('This computer is on no network, so no phone can open it.');
    return;
  }
  console.log(`\nFor phones on the same network:\n  ${[first, ...others].join('\n  ')}\n`);
  const picture = crew === null ? first : joinAddress(first, crew);
  for (const line of qrLines(picture, process.stdout.isTTY === true)) console.log(`  ${line}`);
  if (crew !== null)
    console.log(
      `
A phone that reads this picture joins as crew. Over plain http others on the network can read the code
on its way and join too; --https keeps it from them.`,
    );
  console.log(
    `
Caution. Anyone on that network can open this page. Each device keeps its own projects; nothing is
sent to this computer but by devices that join with a code: on the Record sheet, Laptop, a lead shows
the codes as pictures that bring a phone straight in. Over plain http a phone cannot keep the page for
offline use: it needs this computer each time it opens it.
`,
  );
}

function sayHttps(port: number, https: NonNullable<Listening['https']>): void {
  const all = lanAddresses();
  const first = all.find(isPrivate);
  if (first === undefined) {
    console.log(
      all.length === 0
        ? 'This computer is on no network, so no phone can open it.'
        : `No phone can open it over https: its certificate is for private addresses alone, and this computer has ${all.join(', ')}.`,
    );
    return;
  }
  const page = `http://${first}:${port}/trust`;
  console.log(`
For phones on the same network: https://${first}:${https.port}/
Each phone has to trust this computer once. It gets the certificate, and what to tap, at
  ${page}
`);
  for (const line of qrLines(page, process.stdout.isTTY === true)) console.log(`  ${line}`);
  console.log(`
Fingerprint of the certificate (SHA-256), to be compared on the phone:
  ${https.fingerprint}

Caution. A phone that trusts it believes whoever holds this computer’s key when it poses as a computer
on a private network. docs/https.md says what that means, and how to take it away again.
`);
}

/** Waits for an interrupt, then closes. A second interrupt ends at once. */
function ended({ server }: Listening): Promise<void> {
  return new Promise((resolve) => {
    let asked = false;
    const stop = (): void => {
      if (asked) process.exit(0);
      asked = true;
      if (process.stdout.isTTY) console.log('\nEnded.');
      void server.close().finally(resolve);
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
}

/** The exit code and the lines for a server that could not start. */
function explained(error: unknown): readonly [2 | 3, ...string[]] {
  if (error instanceof NotBuilt)
    return [3, `The app is not built yet (${error.root}).`, 'Run npm start, or npm run build.'];
  if (error instanceof RootUnusable)
    return [
      2,
      `The root certificate cannot be used: ${error.message}.`,
      'It was left as it is. --new-root makes another, which every phone has to trust again.',
    ];
  if (!(error instanceof PortTaken)) {
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return [3, 'The server could not start: a fault of ours. Please report this:', detail];
  }
  const { first, last, code } = error;
  if (code === 'EACCES')
    return [2, `Port ${first} is not open to you: give one above 1023 with --port.`];
  if (first !== last)
    return [2, `Ports ${first} to ${last} are all taken: give another with --port.`];
  return [
    2,
    `Port ${first} is taken: give another with --port, or leave it out and a free one is found.`,
  ];
}

function end(code: 2 | 3, ...lines: readonly string[]): void {
  for (const line of lines) console.error(line);
  process.exitCode = code;
}
