// `shellraise serve`: the server that `npm start` runs.

import { main } from '@shellraise/server';
import type { ServeOptions } from '../options.ts';

/** Runs the command until it is interrupted; the server reads the options itself. */
export async function serve({ open, ...options }: ServeOptions): Promise<void> {
  // The server ends by itself when it is interrupted.
  process.removeAllListeners('SIGINT');
  await main([
    ...Object.entries(options).flatMap(([name, value]) => words(dashed(name), value)),
    ...(open ? [] : ['--no-open']),
  ]);
}

/** An option as it was typed. */
const words = (name: string, value: Value): readonly string[] => {
  if (typeof value === 'string') return [`${name}=${value}`];
  if (typeof value === 'object') return value.map((one) => `${name}=${one}`);
  return value ? [name] : [];
};

type Value = string | boolean | readonly string[] | undefined;

const dashed = (name: string): string =>
  `--${name.replace(/[A-Z]/g, (sign) => `-${sign.toLowerCase()}`)}`;
