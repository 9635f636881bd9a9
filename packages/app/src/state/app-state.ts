// The whole state of the page and everything that can be done to it. No DOM, no React: the screens
// show it and call its actions; time and storage come from outside.

import type { Project } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { ProjectEntry, ProjectStore, StoredProject } from '../store/project-store.ts';
import {
  type ChangeInfo,
  changed,
  type Doc,
  freshHistory,
  type History,
  type Recipe,
  rebased,
  redone,
  undone,
} from './doc.ts';
import { layOn } from './lay-on.ts';
import { type Selection, sameSelection } from './selection.ts';
import type { Settings } from './settings.ts';

/** The sheets, in the order of the phases. */
export const sheets = [
  'pile',
  'shape',
  'places',
  'ground',
  'raising',
  'record',
  'fitout',
  'papers',
] as const;
/** A sheet. */
export type Sheet = (typeof sheets)[number];

/** Whether what is on the screen is kept. `demo`: nothing was changed yet, so nothing is kept. */
export type Saving =
  | { readonly status: 'demo' | 'saved' | 'saving' }
  | {
      readonly status: 'refused';
      readonly why: 'full' | 'unavailable' | 'fault';
      readonly detail: string;
    };

/** A message to the person, until it is put away. `key` names a text of the message table. */
export interface Notice {
  readonly id: number;
  readonly kind: 'note' | 'fault';
  readonly text: string;
  readonly lines: readonly string[];
  /** What the person can do about it; each also puts the message away. */
  readonly choices: readonly Choice[];
}

/** One thing that can be done about a message. */
export interface Choice {
  readonly label: string;
  readonly act: () => void;
}

/** The page. */
export interface AppState {
  /** True until the project that was worked on last is open: nothing else is shown meanwhile. */
  readonly opening: boolean;
  readonly sheet: Sheet;
  readonly projectId: string;
  readonly revision: number;
  readonly history: History;
  readonly saving: Saving;
  readonly selection: Selection | null;
  readonly settings: Settings;
  readonly notices: readonly Notice[];
  readonly projects: readonly ProjectEntry[];
}

/** What the state needs from outside. */
export interface AppOutside {
  readonly store: ProjectStore;
  readonly now: () => number;
  readonly newId: () => string;
  /** Called after a pause in which nothing changed, to save. */
  readonly later: (act: () => void) => void;
  readonly keepSettings: (settings: Settings) => void;
  /** Whether this device may change a project; without it, any. */
  readonly mayChange?: (id: string) => boolean;
  /** Told of a change that was not made because it may not be. */
  readonly refused?: () => void;
}

/** What others share of a project, while this page follows it. */
export interface SharedProject {
  readonly id: string;
  /** The project as all have it; null where nobody knows. */
  readonly now: () => Project | null;
  /** Told of each change that was made here. */
  readonly changed: (project: Project) => void;
}

/** How what others changed is told in the list of steps. */
export interface TakenInfo {
  readonly label: string;
}

/** The demo's id: it becomes a project of its own with the first change. */
export const DEMO = 'demo';

/** The page's state, opened on a project. */
export function createApp(
  start: { project: Project; settings: Settings; sheet: Sheet; opening?: boolean },
  outside: AppOutside,
) {
  const state = createStore<AppState>(() => ({
    opening: start.opening ?? false,
    sheet: start.sheet,
    projectId: DEMO,
    revision: 0,
    history: freshHistory(start.project),
    saving: { status: 'demo' },
    selection: null,
    settings: start.settings,
    notices: [],
    projects: [],
  }));
  const { getState: get, setState: set } = state;
  let noticeCount = 0;
  let saveRunning: Promise<void> | null = null;
  /** The project as the store has it. */
  let kept: History = get().history;
  /** The project as it was when it was opened, or as all have it since: what was done after is not
   * known to them. */
  let opened: History = kept;
  let shared: (SharedProject & TakenInfo) | null = null;

  function put(history: History): void {
    if (history === get().history) return;
    if (outside.mayChange?.(get().projectId) === false) {
      outside.refused?.();
      return;
    }
    const fresh = get().projectId === DEMO;
    set({
      history,
      saving: { status: 'saving' },
      ...(fresh ? { projectId: outside.newId(), revision: 0 } : {}),
    });
    outside.later(() => void save());
    if (shared?.id !== get().projectId) return;
    shared.changed(history.doc.project);
    opened = history;
  }

  /** A history with what others changed laid on it, as a step of its own. */
  function withOthers(history: History, id: string): History {
    const now = shared?.id === id ? shared.now() : null;
    if (!shared || !now) return history;
    return changed(
      history,
      (doc) => {
        layOn(doc.project, now);
        return undefined;
      },
      { label: shared.label, of: 'others', at: outside.now() },
    );
  }

  /** Saves until what is kept is what is shown. */
  async function save(): Promise<void> {
    if (saveRunning) return saveRunning;
    saveRunning = saveAll().finally(() => {
      saveRunning = null;
    });
    return saveRunning;
  }

  async function saveAll(): Promise<void> {
    for (let tries = 0; tries < 5; tries++) {
      const { history, projectId, revision, saving } = get();
      if (projectId === DEMO || saving.status === 'saved') return;
      const stored: StoredProject = { id: projectId, revision, savedAt: outside.now(), ...history };
      const outcome = await outside.store.save(stored);
      if (get().projectId !== projectId) return;
      if (outcome.status === 'refused') {
        set({ saving: { status: 'refused', why: outcome.why, detail: outcome.detail } });
        return;
      }
      if (outcome.status === 'conflict') {
        adopt(outcome.stored);
        continue;
      }
      kept = history;
      const same = get().history === history;
      set({ revision: outcome.revision, saving: { status: same ? 'saved' : 'saving' } });
      if (same) {
        await listProjects();
        return;
      }
    }
  }

  /** Another tab saved first: what it saved is the ground, and what was done here since is laid on
   * it again. Where the project is shared, what was done is in what all have. */
  function adopt({ id, doc, past, future, revision }: StoredProject): void {
    const base: History = { doc, past, future };
    const all = shared?.id === id && shared.now() !== null;
    const history = all ? withOthers(base, id) : rebased(base, kept, get().history);
    opened = all ? history : base;
    kept = base;
    set({ history, revision, saving: { status: history === base ? 'saved' : 'saving' } });
  }

  async function listProjects(): Promise<void> {
    set({ projects: await outside.store.list() });
  }

  function show(stored: StoredProject): void {
    const { id, revision, doc, past, future } = stored;
    kept = { doc, past, future };
    opened = kept;
    set({
      projectId: id,
      revision,
      history: kept,
      saving: { status: 'saved' },
      selection: null,
    });
    takeOthers();
  }

  /** What all have of the project on show, shown and kept here too. */
  function takeOthers(): void {
    const history = withOthers(get().history, get().projectId);
    if (history === get().history) return;
    opened = history;
    set({ history, saving: { status: 'saving' } });
    outside.later(() => void save());
  }

  return {
    state,
    /** Makes a change that can be taken back. */
    change(recipe: Recipe, info: Omit<ChangeInfo, 'at'>): void {
      put(changed(get().history, recipe, { ...info, at: outside.now() }));
    },
    undo: (): void => put(undone(get().history)),
    redo: (): void => put(redone(get().history)),
    /** Goes to a sheet. */
    goTo: (sheet: Sheet): void => set({ sheet }),
    /** Selects a thing everywhere; the same thing again, or null, selects nothing. */
    select(selection: Selection | null): void {
      if (!sameSelection(selection, get().selection)) set({ selection });
    },
    set(settings: Partial<Settings>): void {
      const next = { ...get().settings, ...settings };
      set({ settings: next });
      outside.keepSettings(next);
    },
    /** Shows a message until it is put away; the same message again replaces the former. */
    tell(
      kind: Notice['kind'],
      text: string,
      lines: readonly string[] = [],
      choices: readonly Choice[] = [],
    ): void {
      noticeCount += 1;
      const others = get().notices.filter((notice) => notice.text !== text);
      set({ notices: [...others, { id: noticeCount, kind, text, lines, choices }].slice(-4) });
    },
    putAway: (id: number): void => set({ notices: get().notices.filter((one) => one.id !== id) }),
    save,
    /** What the store does not have yet; null where it has all. */
    unsaved(): StoredProject | null {
      const { projectId, revision, history, saving } = get();
      if (saving.status !== 'saving' && saving.status !== 'refused') return null;
      return { id: projectId, revision, savedAt: outside.now(), ...history };
    },
    listProjects,
    /** Opens a project that is new to this browser: a file, an empty pile. It is kept at once. */
    async openNew(project: Project): Promise<void> {
      await save();
      opened = freshHistory(project);
      set({
        projectId: outside.newId(),
        revision: 0,
        history: opened,
        saving: { status: 'saving' },
        selection: null,
      });
      await save();
    },
    /** Opens a project under an id of its own: the one that is kept under it, else this one. */
    async openAs(id: string, project: Project) {
      await save();
      const outcome = await outside.store.load(id);
      if (outcome.status === 'loaded') show(outcome.stored);
      if (outcome.status !== 'missing') return outcome;
      opened = freshHistory(project);
      set({
        projectId: id,
        revision: 0,
        history: opened,
        saving: { status: 'saving' },
        selection: null,
      });
      await save();
      return outcome;
    },
    /** Follows what others share of a project, or nothing more. */
    share(next: (SharedProject & TakenInfo) | null): void {
      shared = next;
      const now = get().history;
      if (!next || next.id !== get().projectId) return;
      if (now === opened) {
        takeOthers();
        return;
      }
      // What was done before it was known what all have is laid on that.
      const history = rebased(withOthers(opened, next.id), opened, now);
      opened = history;
      if (history !== now) set({ history, saving: { status: 'saving' } });
      outside.later(() => void save());
      next.changed(history.doc.project);
    },
    takeOthers,
    /** What is on show was put where others share it: nothing of it is to be laid on it again. */
    putThere(): void {
      opened = get().history;
    },
    /** Opens the demo as it comes. */
    async openDemo(project: Project): Promise<void> {
      await save();
      opened = freshHistory(project);
      set({
        projectId: DEMO,
        revision: 0,
        history: opened,
        saving: { status: 'demo' },
        selection: null,
      });
    },
    /** Shows the sheets: the project that was worked on last is open, or can't be. */
    opened: (): void => set({ opening: false }),
    /** Opens a project kept in this browser. */
    async open(id: string) {
      await save();
      const outcome = await outside.store.load(id);
      if (outcome.status === 'loaded') show(outcome.stored);
      return outcome;
    },
    /** Another tab changed this project: shows what it saved. */
    async reload(id: string): Promise<void> {
      await listProjects();
      if (id !== get().projectId || get().saving.status !== 'saved') return;
      const outcome = await outside.store.load(id);
      if (outcome.status === 'loaded' && outcome.stored.revision > get().revision)
        show(outcome.stored);
    },
    /** Removes a kept project; returns it, so that it can be put back. */
    async remove(id: string): Promise<StoredProject | null> {
      const outcome = await outside.store.load(id);
      await outside.store.remove(id);
      await listProjects();
      return outcome.status === 'loaded' ? outcome.stored : null;
    },
    /** Puts a removed project back. */
    async restore(stored: StoredProject): Promise<void> {
      await outside.store.save(stored);
      await listProjects();
    },
  };
}

/** The page with its actions. */
export type App = ReturnType<typeof createApp>;

/** The project on show. */
export const projectOf = (state: AppState): Project => state.history.doc.project;

/** The document on show. */
export const docOf = (state: AppState): Doc => state.history.doc;
