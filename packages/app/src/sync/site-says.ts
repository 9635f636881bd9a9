// What can be said of the record's way to the laptop, out of all that is known: one of a few states, each
// with its own words.

import type { SiteNow } from './site.ts';

/** The states. `own`: the project on show belongs to no site; `opening`: the line is not up yet; `kept`:
 * all is on the laptop; `sending`: on its way; `away`: the laptop cannot be reached; `ended`: the code
 * holds no longer; `elsewhere`: another site is kept at this address; `no laptop`: nobody shares anything
 * at this address; `foreign`: the laptop does not take this address for its own; `later`, `not kept`,
 * `malformed`, `denied`: see the line's trouble; `fault`: the laptop could not. */
export type SiteSays =
  | 'own'
  | 'opening'
  | 'kept'
  | 'sending'
  | 'away'
  | 'ended'
  | 'elsewhere'
  | 'no laptop'
  | 'foreign'
  | 'later'
  | 'not kept'
  | 'malformed'
  | 'denied'
  | 'fault';

/** The state of the record on show. */
export function siteSays({ link, server, who, record }: SiteNow): SiteSays {
  if (!link) return 'own';
  if (record.on) {
    if (record.trouble && record.waiting > 0) return record.trouble.what;
    return record.waiting > 0 ? 'sending' : 'kept';
  }
  if (server === 'out') return 'ended';
  if (server === 'in' && who && who.site !== link.site) return 'elsewhere';
  if (server === 'none') return 'no laptop';
  if (server === 'foreign') return server;
  if (record.trouble) return record.trouble.what;
  if (server === 'in' || server === 'unasked') return 'opening';
  return server;
}

/** Whether what is not on the laptop yet goes there by itself. */
export const goesByItself = (says: SiteSays): boolean =>
  ['opening', 'sending', 'away', 'later', 'not kept', 'fault'].includes(says);
