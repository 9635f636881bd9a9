// The record of the project on show, in this browser.

import { linkOf, siteLinks } from '../sync/site-links.ts';
import { carryRecord } from './carry-record.ts';
import { openRecord, type RecordOutside, type RecordSession } from './record-session.ts';
import { updateStore } from './update-store.ts';

let open: { readonly project: string; readonly session: RecordSession } | null = null;

/** The record of a project; the one open before is closed. */
export function recordOf(project: string): RecordSession {
  if (open?.project === project) return open.session;
  open?.session.close();
  const session = openRecord(project, outsideOf(project));
  const link = linkOf(siteLinks(() => localStorage).all(), project);
  session.let(link?.role !== 'looker');
  open = { project, session };
  return session;
}

/** Brings what one record holds into another, and empties it: see `carryRecord`. */
export const carryHere = (from: string, to: string): Promise<number> =>
  carryRecord(from, to, open?.project === from ? open.session : null, outsideOf);

const outsideOf = (project: string): RecordOutside => ({
  updates: updateStore(),
  channel: new BroadcastChannel(`shellraise-record ${project}`),
  now: () => Date.now(),
  newWriter,
});

/** Sixteen letters and digits: over plain http too this source of chance is there. */
const newWriter = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => (byte % 36).toString(36)).join(
    '',
  );

const NAME = 'shellraise-name';

/** Who uses this device, as they said; empty where nobody did. */
export function ownName(): string {
  try {
    return localStorage.getItem(NAME) ?? '';
  } catch {
    return '';
  }
}

/** Keeps the name on this device. */
export function keepOwnName(name: string): void {
  try {
    localStorage.setItem(NAME, name);
  } catch {
    // It is asked for again next time.
  }
}
