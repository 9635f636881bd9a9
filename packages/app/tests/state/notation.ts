// A project in a few words, and an app with a clock and a store of its own.

import type { Project } from '@shellraise/core';
import { type App, type AppOutside, createApp } from '../../src/state/app-state.ts';
import { emptyProject } from '../../src/state/empty-project.ts';
import { defaultSettings } from '../../src/state/settings.ts';
import { memoryStore } from '../../src/store/memory-store.ts';
import type { ProjectStore } from '../../src/store/project-store.ts';

/** A pile with these readings, three sides each, metres. */
export function pileOf(title: string, ...sides: readonly number[][]): Project {
  const project = emptyProject(title);
  const readings = sides.map((own) => ({ sides: own, seenFrom: 'unknown' as const }));
  return { ...project, pile: { ...project.pile, readings } };
}

/** An app whose clock moves by hand and which saves when told. */
export function appWith(
  project: Project,
  store: ProjectStore = memoryStore(),
  more: Partial<AppOutside> = {},
) {
  let time = 1000;
  let ids = 0;
  const waiting: (() => void)[] = [];
  const app = createApp(
    { project, settings: defaultSettings, sheet: 'pile' },
    {
      store,
      now: () => time,
      newId: () => `own-${++ids}-${time}`,
      later: (act) => waiting.push(act),
      keepSettings: () => undefined,
      ...more,
    },
  );
  const pass = (ms: number): void => {
    time += ms;
  };
  return { app, store, pass, waiting };
}

/** Gives the project a title, as a person would. */
export const retitle = (app: App, title: string, of?: string): void =>
  app.change(
    ({ project }) => {
      project.title = title;
      return undefined;
    },
    { label: `name ${title}`, ...(of === undefined ? {} : { of }) },
  );

/** The title on show. */
export const titleOf = (app: App): string => app.state.getState().history.doc.project.title;
