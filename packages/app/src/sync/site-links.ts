// Which project of this browser belongs to which site, and what this device may do there: kept in the
// browser, beside the projects. A site's project is an entry of its own among them.

import { type Role, roles } from './site-calls.ts';

/** A site that this device has joined. */
export interface SiteLink {
  readonly site: string;
  readonly role: Role;
  /** The id of the project in this browser; null until the laptop has sent one. */
  readonly project: string | null;
}

/** The sites that this device has joined. */
export interface SiteLinks {
  readonly all: () => readonly SiteLink[];
  /** Puts a link in the place of the one to the same site. */
  readonly put: (link: SiteLink) => void;
}

const KEY = 'shellraise-sites';
/** Sites kept, at most: the oldest are forgotten first. */
const MOST = 50;

/** The links in a browser's storage, which may refuse: then they last as long as the page. */
export function siteLinks(storage: () => Pick<Storage, 'getItem' | 'setItem'>): SiteLinks {
  let own: readonly SiteLink[] = [];
  const all = (): readonly SiteLink[] => {
    try {
      own = readLinks(storage().getItem(KEY));
    } catch {
      // What this page knows.
    }
    return own;
  };
  return {
    all,
    put: (link) => {
      own = [...all().filter(({ site }) => site !== link.site), link].slice(-MOST);
      try {
        storage().setItem(KEY, JSON.stringify(own));
      } catch {
        // It is joined again next time.
      }
    },
  };
}

/** Links from what storage holds; anything unknown is left out. */
export function readLinks(text: string | null): readonly SiteLink[] {
  try {
    const raw: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(raw) ? raw.filter(isLink) : [];
  } catch {
    return [];
  }
}

/** The link of a project; null where it belongs to no site. */
export const linkOf = (links: readonly SiteLink[], project: string): SiteLink | null =>
  links.find((link) => link.project === project) ?? null;

/** Whether this device may change a project: its own, or a site's as a lead. */
export const mayChange = (links: readonly SiteLink[], project: string): boolean =>
  (linkOf(links, project)?.role ?? 'lead') === 'lead';

function isLink(raw: unknown): raw is SiteLink {
  if (typeof raw !== 'object' || raw === null) return false;
  const { site, role, project } = raw as Record<string, unknown>;
  return (
    typeof site === 'string' &&
    roles.some((one) => one === role) &&
    (project === null || typeof project === 'string')
  );
}
