// The laptop's server in a process of its own: the built server over https with its own root, a folder with
// SQLite. Arguments: the folder, the app to serve, the ports of http and https.

import { listen } from '@shellraise/server';
import { answerCalls } from './remote.ts';
import { type Weight, weigh } from './weight.ts';

/** What the laptop answers. */
export interface LaptopCalls {
  /** Join codes by role. */
  codes(): Promise<Readonly<Record<string, string>>>;
  weigh(entries: number): Weight;
  /** Ends as when somebody stops it. */
  end(): void;
}

const [data = '', root = '', port = '0', secure = '0'] = process.argv.slice(2);
const { openRoot } = (await import(
  new URL('../../../../server/dist/https/root.js', import.meta.url).href
)) as { openRoot: (folder: string, now: number) => Promise<never> };
const { server } = await listen({
  ...{ root, data, host: '127.0.0.1', port: Number(port) },
  https: { root: await openRoot(data, Date.now()), port: Number(secure) },
  onFault: (fault) => console.error('laptop:', fault),
});

const calls: LaptopCalls = {
  codes: async () =>
    Object.fromEntries((await server.joinCodes?.())?.map(({ role, code }) => [role, code]) ?? []),
  weigh,
  end: () => void server.close().then(() => process.exit(0)),
};
answerCalls({ ...calls });
