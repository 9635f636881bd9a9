// Opens an address in the person's browser. Where that fails nothing is said: the address is printed
// anyway.

import { spawn } from 'node:child_process';

/** The command that opens an address on a system. */
export function openCommand(
  platform: string,
  address: string,
): readonly [string, readonly string[]] {
  if (platform === 'darwin') return ['open', [address]];
  if (platform === 'win32') return ['cmd', ['/c', 'start', '""', address]];
  return ['xdg-open', [address]];
}

/** Opens the address; returns at once. */
export function openPage(address: string): void {
  const [program, args] = openCommand(process.platform, address);
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
