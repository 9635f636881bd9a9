// The site in a browser: where its links are kept, the lines to the page's own server, and the moments at
// which it is worth trying again.

import type { App } from '../state/app-state.ts';
import type { Words } from '../words/words.ts';
import { codeIn } from './join-address.ts';
import { createSite, type SiteSession } from './site.ts';
import { siteCalls } from './site-calls.ts';
import { type SiteLinks, siteLinks } from './site-links.ts';

/** The sites that this browser has joined. */
export const ownLinks = (): SiteLinks => siteLinks(() => localStorage);

/** The join code in the page's address, which is taken out of it at once; null where there is none. */
export function takeCode(): string | null {
  const code = codeIn(location.hash);
  if (code !== null)
    history.replaceState(null, '', `${location.pathname}${location.search}#record`);
  return code;
}

/** Follows the project on show and its site. */
export function startSite(app: App, links: SiteLinks, { frame, sharing }: Words): SiteSession {
  const site = createSite({
    app,
    links,
    calls: siteCalls(location.href, (...asked) => fetch(...asked)),
    label: sharing.byOthers,
    pause: 5000,
    carry: async (from, to) => {
      const { carryHere } = await import('../record/this-record.ts');
      await carryHere(from, to).catch(() => 0);
    },
    unopened: (outcome) =>
      app.tell(
        'fault',
        outcome.status === 'damaged' ? frame.storedDamaged(outcome.detail) : frame.storedNewer,
      ),
    open: async (link, withRecord, told) => {
      const [{ openLines }, { recordOf }, { updateStore }] = await Promise.all([
        import('./lines.ts'),
        import('../record/this-record.ts'),
        import('../record/update-store.ts'),
      ]);
      const isShown = app.state.getState().projectId === link.project;
      const record = withRecord && isShown && link.project ? recordOf(link.project) : null;
      record?.let(link.role !== 'looker');
      const outside = {
        server: new URL('/sync/doc', location.href).href.replace(/^http/, 'ws'),
        updates: updateStore,
        channel: (name: string) => new BroadcastChannel(name),
        storage: () => localStorage,
      };
      return openLines(link.site, record, outside, told);
    },
  });
  addEventListener('online', site.wake);
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') site.wake();
  });
  return site;
}
