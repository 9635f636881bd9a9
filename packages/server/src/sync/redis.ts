// The bell by way of Redis: a channel for a site, on which each server publishes what there is news of.

import { Redis } from 'ioredis';
import { type Bell, type News, NewsLost, type OnNews } from './bell.ts';
import type { OnFault } from './room.ts';

const NEWS: readonly News[] = ['project', 'record', 'codes'];

/** Listens on a site's channel. Returns at once: while Redis is not there, the bell is not live, and it
 * goes on trying. `onNews` is told of everything whenever the line is there again. */
export function redisBell(address: string, site: string, onNews: OnNews, onFault: OnFault): Bell {
  const channel = `shellraise ${site}`;
  let live = false;
  let told = false;
  // Its check for readiness races with subscribing; retries never end.
  const options = {
    enableReadyCheck: false,
    retryStrategy: (times: number) => Math.min(times * 50, 1000),
  };
  const ears = new Redis(address, { ...options, autoResubscribe: false });
  // News that cannot be sent now is not worth keeping.
  const mouth = new Redis(address, { ...options, enableOfflineQueue: false });
  const lost = (error: unknown): void => {
    live = false;
    if (told) return;
    told = true;
    const why = error instanceof Error ? error.message : String(error);
    onFault(
      new NewsLost(`Redis is not reached (${why}); other servers learn of changes by looking`),
    );
  };
  for (const line of [ears, mouth]) line.on('error', lost);
  ears.on('close', () => {
    live = false;
  });
  ears.on('ready', () => {
    ears.subscribe(channel).then(
      () => {
        live = true;
        told = false;
        onNews(null);
      },
      () => undefined,
    );
  });
  ears.on('message', (_channel, message) => {
    const news = NEWS.find((one) => one === message);
    if (news) onNews(news);
  });
  return {
    isLive: () => live && mouth.status === 'ready',
    ring: (news) => void mouth.publish(channel, news).catch(() => undefined),
    close: async () => {
      ears.disconnect();
      mouth.disconnect();
    },
  };
}
