import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { lanAddresses, qrLines } from '../src/lan.ts';
import { builtApp, emptyFolder } from './built.ts';

const main = new URL('../dist/main.js', import.meta.url).href;
const bin = fileURLToPath(new URL('../bin/shellraise-server.js', import.meta.url));

interface Started {
  readonly child: ChildProcess;
  readonly said: () => { readonly out: string; readonly err: string };
  /** Until this was printed. */
  readonly printed: (words: string) => Promise<void>;
  readonly ended: Promise<number | null>;
}

/** The built command, on a folder. */
function start(root: string, ...words: readonly string[]): Started {
  const script = `(await import(${JSON.stringify(main)})).main(${JSON.stringify(words)}, ${JSON.stringify(root)})`;
  return follow(spawn(process.execPath, ['--input-type=module', '-e', script]));
}

function follow(child: ChildProcess): Started {
  let [out, err] = ['', ''];
  child.stdout?.on('data', (data: Buffer) => {
    out += data;
  });
  child.stderr?.on('data', (data: Buffer) => {
    err += data;
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  const printed = (words: string) =>
    new Promise<void>((resolve, reject) => {
      const look = (): void => {
        if (out.includes(words)) resolve();
      };
      child.stdout?.on('data', look);
      void ended.then(() => reject(new Error(`ended before it printed ${words}: ${out}${err}`)));
      look();
    });
  return { child, said: () => ({ out, err }), printed, ended };
}

const freePort = () =>
  new Promise<number>((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

describe('the command', () => {
  it('prints where the app is, serves it, and ends well when interrupted', async () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const port = await freePort();
      const server = start(builtApp(), '--port', String(port));
      await server.printed('Ctrl-C');
      const reply = await fetch(`http://localhost:${port}/`);
      expect(await reply.text()).toContain('<title>app</title>');
      server.child.kill(signal);
      expect(await server.ended).toBe(0);
      expect(server.said()).toEqual({
        out: `Shellraise is at http://localhost:${port}/\nCtrl-C ends it.\n`,
        err: '',
      });
    }
  });

  it('says what phones can and cannot do where they may come', async () => {
    const port = await freePort();
    const server = start(builtApp(), '--lan', '--port', String(port));
    await server.printed('Ctrl-C');
    const { out } = server.said();
    if (lanAddresses().length === 0) {
      expect(out).toContain('This computer is on no network');
      return;
    }
    expect(out).toMatch(new RegExp(`http://\\d+\\.\\d+\\.\\d+\\.\\d+:${port}/`));
    expect(out).toContain('▄▄▄▄▄');
    expect(out).toContain('Anyone on that network can open this page');
    expect(out.replace(/\s+/g, ' ')).toContain('cannot keep the page for offline use');
  });

  it('prints the join codes where it is asked to, the same each time', async () => {
    const data = emptyFolder();
    const codes: string[] = [];
    for (let i = 0; i < 2; i++) {
      const server = start(
        builtApp(),
        '--port',
        String(await freePort()),
        '--data',
        data,
        '--codes',
      );
      await server.printed('Ctrl-C');
      codes.push(server.said().out.match(/Join codes.*(?=Ctrl-C)/s)?.[0] ?? '');
      server.child.kill('SIGKILL');
      await server.ended;
    }
    expect(codes[0]).toMatch(/lead +[A-Z2-9]{5}-[A-Z2-9]{5}\n +crew +\S{11}\n +looker +\S{11}\n/);
    expect(codes[1]).toBe(codes[0]);
  });

  it('brings a phone straight in by its picture where codes are printed', async () => {
    const server = start(
      builtApp(),
      '--lan',
      '--port',
      String(await freePort()),
      '--data',
      emptyFolder(),
      '--codes',
    );
    await server.printed('Ctrl-C');
    const { out } = server.said();
    const crew = /crew +(\S{11})/.exec(out)?.[1];
    expect(crew).toMatch(/^[A-Z2-9]{5}-[A-Z2-9]{5}$/);
    const address = lanAddresses()[0];
    if (address === undefined) return;
    const port = /http:\/\/localhost:(\d+)/.exec(out)?.[1];
    const picture = qrLines(`http://${address}:${port}/#join=${crew}`, false);
    expect(out).toContain(picture.map((line) => `  ${line}\n`).join(''));
    expect(out).toContain('joins as crew');
  });

  it('ends with 2 where the named port is taken, and says what to do', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => {
      other.close();
    });
    const { port } = other.address() as { port: number };
    const server = start(builtApp(), '--port', String(port));
    expect(await server.ended).toBe(2);
    expect(server.said().err).toContain(`Port ${port} is taken: give another with --port`);
  });

  it('ends with 3 where the app is not built, and says what to do', async () => {
    const server = start(emptyFolder());
    expect(await server.ended).toBe(3);
    expect(server.said().err).toContain('Run npm start, or npm run build.');
  });

  it('ends with 2 on an option it does not know, and with 0 on --help', async () => {
    const wrong = follow(spawn(process.execPath, [bin, '--wan']));
    expect(await wrong.ended).toBe(2);
    expect(wrong.said().err).toContain('--wan');
    const help = follow(spawn(process.execPath, [bin, '--help']));
    expect(await help.ended).toBe(0);
    expect(help.said().out).toContain('--lan');
  });
});
