// Puts the page together: the state with its outside (clock, storage, ids), the engine's results
// that follow it, the address bar, other tabs.

import { demoProject } from 'virtual:demo';
import { fitEngine, longEngine, quickEngine } from './engine/bridge.ts';
import { createDerived, type Want } from './engine/derived.ts';
import { createFitting } from './engine/fitting.ts';
import { carriedHere, isPocketCopy } from './files/carried.ts';
import { openKept } from './files/open-kept.ts';
import { keepOffline } from './offline/register.ts';
import { createApp, DEMO, projectOf, type Sheet, sheets } from './state/app-state.ts';
import { readSettings, type Settings } from './state/settings.ts';
import { browserStore, checkProject } from './store/browser-store.ts';
import { keepLastWords, LAST_WORDS, takeLastWords } from './store/last-words.ts';
import { mayChange } from './sync/site-links.ts';
import { ownLinks, startSite, takeCode } from './sync/start-site.ts';
import type { Reach } from './ui/app-context.tsx';
import type { Words } from './words/words.ts';

/** How far each sheet wants the engine to go. The Shape sheet waits for the press. */
const wants: Readonly<Record<Sheet, Want>> = {
  pile: 'work',
  shape: 'work',
  places: 'standing',
  ground: 'standing',
  raising: 'standing',
  record: 'standing',
  fitout: 'standing',
  papers: 'standing',
};

const SETTINGS = 'shellraise-settings';
const LAST = 'shellraise-last';

/** Starts the page in a language. */
export function start(words: Words): Reach {
  const { frame, sharing } = words;
  const { store, ready } = browserStore();
  const carried = carriedHere();
  const links = ownLinks();
  const code = takeCode();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const app = createApp(
    {
      project: demoProject(),
      settings: readSettings(kept(SETTINGS)),
      sheet: sheetInAddress(),
      opening: carried !== null || (kept(LAST) ?? DEMO) !== DEMO || kept(LAST_WORDS) !== null,
    },
    {
      store,
      now: () => Date.now(),
      newId,
      later: (act) => {
        clearTimeout(timer);
        timer = setTimeout(act, 400);
      },
      keepSettings: (settings: Settings) => keep(SETTINGS, JSON.stringify(settings)),
      mayChange: (id) => mayChange(links.all(), id),
      refused: () =>
        app.tell('note', sharing.fixed, [], [{ label: sharing.copy, act: () => void site.copy() }]),
    },
  );
  const site = startSite(app, links, words);
  const derived = createDerived(quickEngine, longEngine, () => performance.now());
  const fitting = createFitting(fitEngine, () => performance.now());
  followAddress(app, site);
  followProject(app, derived, fitting);
  store.watch((id) => void app.reload(id));
  const leave = (): void => {
    keepLastWords(() => localStorage, app.unsaved());
    void app.save().then(() => keepLastWords(() => localStorage, app.unsaved()));
  };
  addEventListener('pagehide', leave);
  addEventListener('visibilitychange', leave);
  void ready.then(async () => {
    const left = await takeLastWords(() => localStorage, store, checkProject, newId);
    await app.listProjects();
    const last = left ?? kept(LAST);
    setTimeout(() => void dropOldPhotos(app), 10_000);
    // A file that was dropped meanwhile stays.
    const free = app.state.getState().projectId === DEMO;
    if (free && carried && left === null) {
      const { openCarried } = await import('./files/open-carried.ts');
      await openCarried(app, store, frame, carried);
    } else if (free && last && last !== DEMO) await openKept(app, frame, last, true);
    app.opened();
    if (code !== null) void site.join(code);
  });
  // Once the page is there: keeping the other files must not hold up the first sheet.
  addEventListener('load', () => setTimeout(() => void keepForOffline(app, frame), 500));
  return { app, derived, fitting, site };
}

type App = Reach['app'];

/** Photos of a removed project stay until the page is opened anew: it may be put back till then. */
async function dropOldPhotos(app: App): Promise<void> {
  const { keepPhotosOf } = await import('./store/photo-store.ts');
  const { projects, projectId } = app.state.getState();
  if (projects.length === 0) return;
  await keepPhotosOf([projectId, ...projects.map(({ id }) => id)]).catch(() => undefined);
}

async function keepForOffline(app: App, words: Words['frame']): Promise<void> {
  if (isPocketCopy()) return;
  await keepOffline({
    ready: () => {
      if (app.state.getState().settings.offlineTold) return;
      app.tell('note', words.offlineReady);
      app.set({ offlineTold: true });
    },
    newer: () => app.tell('note', words.updateReady),
  });
}

function followProject(app: App, derived: Reach['derived'], fitting: Reach['fitting']): void {
  const follow = (): void => {
    const state = app.state.getState();
    if (!state.opening) derived.follow(projectOf(state), wants[state.sheet]);
  };
  app.state.subscribe((state, before) => {
    if (state.projectId !== before.projectId) {
      keep(LAST, state.projectId);
      // The demo's first change makes it a project of one's own: the same pile under a new id.
      const same =
        before.projectId === DEMO && state.history.past.length > 0 && state.revision === 0;
      if (!same) {
        derived.reset();
        fitting.reset();
      } else void carryDemo(state.projectId);
    }
    const others =
      state.sheet !== before.sheet ||
      state.opening !== before.opening ||
      state.projectId !== before.projectId;
    if (others || projectOf(state) !== projectOf(before)) follow();
  });
  follow();
}

/** What was noted on the demo belongs to the project that it becomes. Where the browser keeps nothing, it
 * stays where it is. */
async function carryDemo(to: string): Promise<void> {
  const { carryHere } = await import('./record/this-record.ts');
  await carryHere(DEMO, to).catch(() => 0);
}

function followAddress(app: App, site: Reach['site']): void {
  addEventListener('hashchange', () => {
    const code = takeCode();
    app.goTo(sheetInAddress());
    if (code !== null) void site.join(code);
  });
  app.state.subscribe(({ sheet }, before) => {
    if (sheet !== before.sheet && sheetInAddress() !== sheet) location.hash = sheet;
  });
}

const sheetInAddress = (): Sheet =>
  sheets.find((sheet) => location.hash === `#${sheet}`) ?? sheets[0];

function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function keep(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    // A browser that keeps nothing says so when the project is saved.
  }
}

/** Random enough to name a project on one device; over plain http there is no secure source. */
function newId(): string {
  return `p${Date.now().toString(36)}${Math.floor(Math.random() * 1e9).toString(36)}`;
}
