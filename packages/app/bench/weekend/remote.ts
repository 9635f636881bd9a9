// Calls to another process of ours, one for each phone and for the laptop, so that each has a heap of its
// own that can be weighed, and can be killed.

import { type ChildProcess, fork } from 'node:child_process';

type Call = (...args: never[]) => unknown;

/** What a process answers, by name. */
export type Calls = Readonly<Record<string, Call>>;

/** The same calls from outside. */
type From<T> = {
  readonly [K in keyof T]: T[K] extends (...args: infer A) => infer R
    ? (...args: A) => Promise<Awaited<R>>
    : never;
};

/** A process of ours. */
export interface Remote<T> {
  readonly calls: From<T>;
  /** As when the power goes: nothing more is done. */
  readonly kill: () => Promise<void>;
  /** Lets it end by itself. */
  readonly ended: Promise<void>;
}

interface Asked {
  readonly n: number;
  readonly name: string;
  readonly args: never[];
}

interface Answered {
  readonly n: number;
  readonly value?: unknown;
  readonly fault?: string;
}

/** Answers calls from the process that started this one; ends with it. */
export function answerCalls(calls: Calls): void {
  process.on('disconnect', () => process.exit(0));
  process.on('message', async ({ n, name, args }: Asked) => {
    const answer = async (): Promise<Answered> => {
      try {
        return { n, value: await calls[name]?.(...args) };
      } catch (error) {
        return { n, fault: error instanceof Error ? (error.stack ?? error.message) : `${error}` };
      }
    };
    process.send?.(await answer());
  });
}

/** Starts a process, with the right to ask for a collection of its garbage. */
export function remote<T>(file: URL, args: readonly string[], env: NodeJS.ProcessEnv): Remote<T> {
  const child: ChildProcess = fork(file, args, { execArgv: ['--expose-gc'], env });
  const open = new Map<number, { done: (value: never) => void; fail: (error: Error) => void }>();
  let last = 0;
  child.on('message', ({ n, value, fault }: Answered) => {
    const asked = open.get(n);
    open.delete(n);
    if (fault === undefined) asked?.done(value as never);
    else asked?.fail(new Error(fault));
  });
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => {
      for (const { fail } of open.values()) fail(new Error(`${file.pathname} has ended`));
      open.clear();
      resolve();
    });
  });
  const calls = new Proxy({} as From<T>, {
    get:
      (_, name: string) =>
      (...args: unknown[]) =>
        new Promise((done, fail) => {
          open.set(++last, { done, fail });
          child.send({ n: last, name, args });
        }),
  });
  return {
    calls,
    ended,
    kill: () => {
      child.kill('SIGKILL');
      return ended;
    },
  };
}
