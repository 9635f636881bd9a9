// The site that this device has joined: who it is there, which project of the browser belongs to it, and
// the lines to the laptop while that project is on show. No DOM, no React.

import type { Project } from '@shellraise/core';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { type App, DEMO, projectOf } from '../state/app-state.ts';
import type { LoadOutcome } from '../store/project-store.ts';
import { type LineState, noLine } from './line-state.ts';
import type { LinesTold, SharedNow, SiteLines } from './lines.ts';
import type { JoinFault, Membership, NoAnswer, SiteCalls } from './site-calls.ts';
import { linkOf, type SiteLink, type SiteLinks } from './site-links.ts';

/** What a screen must know of the site. */
export interface SiteNow {
  /** What the server at this address last said. */
  readonly server: 'unasked' | 'in' | NoAnswer;
  /** Who this device is there; null where that is not known. */
  readonly who: Membership | null;
  readonly joining: 'no' | 'now' | JoinFault;
  /** The site of the project on show. */
  readonly link: SiteLink | null;
  /** A site that was joined whose project is not on show. */
  readonly other: SiteLink | null;
  readonly record: LineState;
  readonly project: LineState;
  readonly shared: SharedNow['is'];
}

/** The site, followed. */
export interface SiteSession {
  readonly store: StoreApi<SiteNow>;
  readonly calls: SiteCalls;
  /** Joins with a code as people type it. */
  readonly join: (code: string) => Promise<void>;
  /** Opens the project of the site that was joined. */
  readonly openProject: () => void;
  /** Puts the project on show on a site that has none; for a lead. */
  readonly put: () => Promise<void>;
  /** Makes a project of one's own of the one on show. */
  readonly copy: () => Promise<void>;
  /** Tries again now: the network is back, the page is looked at again. */
  readonly wake: () => void;
  readonly stop: () => void;
}

/** What the session needs from outside. */
export interface SiteOutside {
  readonly app: App;
  readonly calls: SiteCalls;
  readonly links: SiteLinks;
  /** The lines of a site; with its record where a project is named. Loads what they need. */
  readonly open: (link: SiteLink, withRecord: boolean, told: LinesTold) => Promise<SiteLines>;
  /** Brings what was noted on one project into another's record. */
  readonly carry: (from: string, to: string) => Promise<unknown>;
  /** Told of a site's project that is kept here and cannot be read. */
  readonly unopened: (outcome: LoadOutcome) => void;
  /** How what others changed is told in the list of steps. */
  readonly label: string;
  /** The least pause between two questions to the server, milliseconds. */
  readonly pause: number;
}

/** Follows the project on show and its site. */
export function createSite(outside: SiteOutside): SiteSession {
  const { app, calls, links, label } = outside;
  const store = createStore<SiteNow>(() => ({
    server: 'unasked',
    who: null,
    joining: 'no',
    link: null,
    other: null,
    record: noLine,
    project: noLine,
    shared: 'opening',
  }));
  const { getState: get, setState: set } = store;
  let open: { readonly key: string; lines: SiteLines | null } | null = null;
  /** The site whose project is opened as soon as it is there. */
  let toOpen: string | null = null;
  let asked = Number.NEGATIVE_INFINITY;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  let joins = 0;
  const shown = (): string => app.state.getState().projectId;

  /** The link whose lines are wanted: of the site that was just joined, of the project on show, or of a
   * site that has sent none yet. */
  function wanted(all: readonly SiteLink[]): SiteLink | null {
    return (
      all.find(({ site }) => site === toOpen) ??
      linkOf(all, shown()) ??
      all.findLast(({ project }) => project === null) ??
      null
    );
  }

  /** Opens and closes lines as the project on show wants them. */
  function follow(): void {
    const all = links.all();
    const link = linkOf(all, shown());
    const here = get().who?.site;
    const joined = all.find(({ site }) => site === here) ?? all.at(-1) ?? null;
    set({ link, other: link ? null : joined });
    const next = wanted(all);
    const key = next ? `${next.site} ${next.role} ${next === link ? shown() : ''}` : '';
    if ((open?.key ?? '') === key) return;
    close();
    if (next) openAnew(next, key, next === link);
  }

  function close(): void {
    app.share(null);
    open?.lines?.stop();
    open = null;
    set({ record: noLine, project: noLine, shared: 'opening' });
  }

  function openAnew(link: SiteLink, key: string, withRecord: boolean): void {
    const mine: { readonly key: string; lines: SiteLines | null } = { key, lines: null };
    open = mine;
    const told: LinesTold = {
      changed: () => open === mine && changed(mine.lines),
      others: () => open === mine && othersOf(link, mine.lines),
    };
    void outside.open(link, withRecord, told).then((lines) => {
      if (open !== mine || stopped) {
        lines.stop();
        return;
      }
      mine.lines = lines;
      lines.connect();
      told.changed();
      told.others();
      if (get().server === 'unasked') void ask();
    });
  }

  function changed(lines: SiteLines | null): void {
    if (!lines) return;
    const before = get();
    const [record, project] = [lines.record() ?? noLine, lines.project()];
    set({ record, project, shared: lines.shared().is });
    const on = project.on && (before.link === null || record.on);
    if (on && before.server !== 'in') void ask();
    if (!on && (before.project.on || before.record.on)) void ask();
    // Closed for good, by the laptop.
    const ended = record.trouble?.what === 'ended' || project.trouble?.what === 'ended';
    if (ended && before.server !== 'out') void ask();
  }

  /** The project's document is open, or others changed it. */
  function othersOf(link: SiteLink, lines: SiteLines | null): void {
    const shared = lines?.shared();
    if (!lines || shared?.is !== 'there') return;
    if (toOpen === link.site) {
      toOpen = null;
      if (shown() !== link.project) {
        void openShared(link, shared.project);
        return;
      }
    }
    if (link.project !== shown()) return;
    if (sharing === lines) app.takeOthers();
    else share(link.project, lines);
  }

  let sharing: SiteLines | null = null;
  function share(id: string, lines: SiteLines): void {
    sharing = lines;
    app.share({
      id,
      label,
      now: () => {
        const shared = lines.shared();
        return shared.is === 'there' ? shared.project : null;
      },
      changed: (project) => lines.write(project),
    });
  }

  /** A site's project never takes another's place: it has an id of its own. */
  async function openShared(link: SiteLink, project: Project): Promise<void> {
    const id = link.project ?? `site-${link.site}`;
    links.put({ ...link, project: id });
    const outcome = await app.openAs(id, project);
    if (outcome.status === 'newer' || outcome.status === 'damaged') outside.unopened(outcome);
    follow();
  }

  /** Asks the server who this device is there. */
  async function ask(): Promise<void> {
    clearTimeout(timer);
    const wait = asked + outside.pause - performance.now();
    if (wait > 0) {
      timer = setTimeout(() => void ask(), wait);
      return;
    }
    asked = performance.now();
    const before = joins;
    const answer = await calls.who();
    // What was asked before joining says nothing any more.
    if (stopped || before !== joins) return;
    if (answer.ok) here(answer.value);
    else set({ server: answer.why, who: answer.why === 'away' ? get().who : null });
    settle();
    const { server, link, other } = get();
    const again = server === 'away' || server === 'fault' || server === 'later';
    if (again && (link || other)) timer = setTimeout(() => void ask(), 4 * outside.pause);
  }

  function here(who: Membership): void {
    const before = links.all().find(({ site }) => site === who.site);
    if (before?.role !== who.role) links.put({ project: null, ...before, ...who });
    set({ server: 'in', who });
    follow();
  }

  /** Lines are tried as long as they may come to hold. */
  function settle(): void {
    const { server, who } = get();
    const lines = open?.lines;
    if (!lines) return;
    const elsewhere = server === 'in' && who !== null && !open?.key.startsWith(who.site);
    if (elsewhere || server === 'out' || server === 'none' || server === 'foreign')
      lines.disconnect();
    else lines.connect();
  }

  const unsubscribe = app.state.subscribe(({ projectId }, before) => {
    if (projectId === before.projectId) return;
    toOpen = null;
    follow();
  });
  follow();
  return {
    store,
    calls,
    join: async (code) => {
      if (get().joining === 'now') return;
      set({ joining: 'now' });
      const joined = await calls.join(code);
      if (typeof joined === 'string') {
        set({ joining: joined, ...(joined === 'none' ? { server: joined } : {}) });
        return;
      }
      const before = links.all().find(({ site }) => site === joined.site);
      links.put({ project: null, ...before, ...joined });
      toOpen = joined.site;
      joins++;
      close();
      set({ joining: 'no', server: 'in', who: joined });
      follow();
    },
    openProject: () => {
      const { other } = get();
      if (!other) return;
      toOpen = other.site;
      follow();
    },
    put: async () => {
      const { who, other } = get();
      const lines = open?.lines;
      if (!lines || !other || who?.role !== 'lead' || lines.shared().is !== 'none') return;
      const project = (): Project => projectOf(app.state.getState());
      if (shown() === DEMO) {
        await app.openNew(project());
        await outside.carry(DEMO, shown());
      }
      toOpen = null;
      // As it is now: it may have been changed while its record was carried.
      lines.write(project());
      app.putThere();
      links.put({ ...other, project: shown() });
      follow();
    },
    copy: () => app.openNew(projectOf(app.state.getState())),
    wake: () => {
      asked = Number.NEGATIVE_INFINITY;
      if (open) void ask();
    },
    stop: () => {
      stopped = true;
      clearTimeout(timer);
      unsubscribe();
      close();
    },
  };
}
