// The built app in a real Chromium for the benchmark: one server, a fresh profile for every page.

import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { listen } from '@shellraise/server';
import { type CDPSession, chromium, type Page } from 'playwright-core';

/** A page with the line to its browser. */
export interface Opened {
  readonly page: Page;
  readonly line: CDPSession;
  readonly close: () => Promise<void>;
}

/** Where pages are opened. */
export interface Ground {
  readonly address: string;
  /** A new profile with an empty page, on a laptop's screen; `slowed` times slower. */
  readonly page: (slowed: number) => Promise<Opened>;
  readonly close: () => Promise<void>;
}

/** Starts server and browser. Throws where there is no Chromium. */
export async function startGround(): Promise<Ground> {
  const executablePath = process.env.SHELLRAISE_CHROMIUM || '/usr/bin/chromium';
  if (!existsSync(executablePath)) throw new Error(`there is no Chromium at ${executablePath}`);
  const root = fileURLToPath(new URL('../../dist', import.meta.url));
  const { server, port } = await listen({ root, host: '127.0.0.1', port: 0 });
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-angle=swiftshader'],
  });
  return {
    address: `http://localhost:${port}/`,
    page: async (slowed) => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
      const page = await context.newPage();
      const line = await context.newCDPSession(page);
      await line.send('Emulation.setCPUThrottlingRate', { rate: slowed });
      return { page, line, close: () => context.close() };
    },
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

/** Drops a file with this text onto the page, as a person does. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content as string], fileName as string));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer });
}
