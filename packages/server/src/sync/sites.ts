// Which requests may be heard: those that name this computer as their host, which a page from
// elsewhere that points its own name here does not, and that no page of another site sent.

import type { IncomingHttpHeaders } from 'node:http';
import { hostname } from 'node:os';
import { lanAddresses } from '../lan.ts';

/** Why a request is not heard; null where it may be. `names`: other names by which people reach this
 * server, as that of a balancer. */
export function foreign(
  headers: IncomingHttpHeaders,
  names: readonly string[] = [],
): string | null {
  const { host, origin } = headers;
  const name = nameOf(host ?? '');
  if (host === undefined || !(names.includes(name) || isOurs(name)))
    return `no host of ours: ${host ?? 'none'}`;
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    return `sent by a page of another site (${site})`;
  if (origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`)
    return `sent by a page of ${origin}`;
  return null;
}

/** The host's name without its port. */
function nameOf(host: string): string {
  const match = /^(\[[\da-f:.]+\]|[^:]+)(:\d{1,5})?$/i.exec(host);
  return (match?.[1] ?? '').toLowerCase();
}

function isOurs(name: string): boolean {
  const own = hostname().toLowerCase();
  return (
    ['localhost', '127.0.0.1', '[::1]', own, `${own}.local`].includes(name) ||
    lanAddresses().includes(name)
  );
}
