import { describe, expect, it } from 'vitest';
import { type App, DEMO } from '../../src/state/app-state.ts';
import { memoryStore } from '../../src/store/memory-store.ts';
import type { ProjectStore } from '../../src/store/project-store.ts';
import { refusingStore } from '../../src/store/refusing-store.ts';
import { appWith, pileOf, retitle, titleOf } from './notation.ts';

const demo = pileOf('demo', [1, 1, 1]);

/** A project of one's own in two tabs, both as it was saved. */
async function twoTabs() {
  const mine = appWith(demo);
  retitle(mine.app, 'shared');
  await mine.app.save();
  const { projectId } = mine.app.state.getState();
  const theirs = appWith(demo, mine.store);
  await theirs.app.open(projectId);
  return { ...mine, theirs, projectId };
}

const takeRowOut = (app: App): void =>
  app.change(({ project }) => void project.pile.readings.pop(), { label: 'take a row out' });

describe('the page', () => {
  it('opens on the demo and keeps nothing as long as nothing is changed', async () => {
    const { app, store } = appWith(demo);
    await app.save();
    expect(app.state.getState()).toMatchObject({ projectId: DEMO, saving: { status: 'demo' } });
    expect(await store.list()).toEqual([]);
  });

  it('makes the demo a project of its own with the first change', async () => {
    const { app, store } = appWith(demo);
    retitle(app, 'mine');
    expect(app.state.getState().projectId).not.toBe(DEMO);
    await app.save();
    expect((await store.list()).map(({ title }) => title)).toEqual(['mine']);
    expect(app.state.getState().saving.status).toBe('saved');
  });

  it('keeps undo and redo with the project', async () => {
    const { app, store } = appWith(demo);
    retitle(app, 'mine');
    await app.save();
    const { projectId } = app.state.getState();
    const other = appWith(pileOf('another'), store);
    await other.app.open(projectId);
    expect(titleOf(other.app)).toBe('mine');
    other.app.undo();
    expect(titleOf(other.app)).toBe('demo');
  });

  it('saves what was changed while a save was under way', async () => {
    const { app, store } = appWith(demo);
    retitle(app, 'one');
    const saving = app.save();
    retitle(app, 'two');
    await saving;
    expect((await store.list())[0]?.title).toBe('two');
    expect(app.state.getState().saving.status).toBe('saved');
  });

  it('lays its own change on what another tab saved first', async () => {
    const { app, store, pass, theirs, projectId } = await twoTabs();
    theirs.pass(10);
    takeRowOut(theirs.app);
    await theirs.app.save();
    pass(20);
    retitle(app, 'mine');
    await app.save();
    expect(titleOf(app)).toBe('mine');
    expect(app.state.getState().history.doc.project.pile.readings).toEqual([]);
    const kept = await store.load(projectId);
    expect(kept.status === 'loaded' && kept.stored.doc.project.title).toBe('mine');
  });

  it('loses no change of its own that is older than what another tab saved', async () => {
    const { app, theirs } = await twoTabs();
    retitle(app, 'mine');
    theirs.pass(5000);
    takeRowOut(theirs.app);
    await theirs.app.save();
    await app.save();
    expect(titleOf(app)).toBe('mine');
    expect(app.state.getState().history.doc.project.pile.readings).toEqual([]);
  });

  it('takes back in what another tab saved what it had taken back itself', async () => {
    const { app, theirs } = await twoTabs();
    takeRowOut(theirs.app);
    await theirs.app.save();
    app.undo();
    await app.save();
    expect(titleOf(app)).toBe('demo');
    expect(app.state.getState().history.doc.project.pile.readings).toEqual([]);
  });

  it('shows what another tab saved', async () => {
    const { app, theirs, projectId } = await twoTabs();
    theirs.pass(50);
    retitle(theirs.app, 'theirs');
    await theirs.app.save();
    await app.reload(projectId);
    expect(titleOf(app)).toBe('theirs');
  });

  it('says why nothing is kept, and goes on working', async () => {
    const { app } = appWith(demo, refusingStore('no database'));
    retitle(app, 'mine');
    await app.save();
    expect(app.state.getState().saving).toMatchObject({ status: 'refused', why: 'unavailable' });
    retitle(app, 'still mine');
    expect(titleOf(app)).toBe('still mine');
  });

  it('saves again once there is room again', async () => {
    const kept = memoryStore();
    let full = true;
    const store: ProjectStore = {
      ...kept,
      save: async (project) =>
        full ? { status: 'refused', why: 'full', detail: '' } : kept.save(project),
    };
    const { app } = appWith(demo, store);
    retitle(app, 'one');
    await app.save();
    full = false;
    retitle(app, 'two');
    await app.save();
    expect(app.state.getState().saving.status).toBe('saved');
    expect((await kept.list())[0]?.title).toBe('two');
  });

  it('puts a removed project back', async () => {
    const { app, store } = appWith(demo);
    retitle(app, 'mine');
    await app.save();
    const { projectId } = app.state.getState();
    await app.openDemo(demo);
    const removed = await app.remove(projectId);
    expect(await store.list()).toEqual([]);
    if (removed) await app.restore(removed);
    expect((await store.list())[0]?.title).toBe('mine');
  });

  it('saves the project at hand before another is opened', async () => {
    const { app, store } = appWith(demo);
    retitle(app, 'mine');
    await app.openNew(pileOf('new'));
    expect((await store.list()).map(({ title }) => title).sort()).toEqual(['mine', 'new']);
    expect(app.state.getState().history.past).toEqual([]);
  });

  it('shows one message once', () => {
    const { app } = appWith(demo);
    app.tell('note', 'twice');
    app.tell('note', 'twice');
    expect(app.state.getState().notices.map(({ text }) => text)).toEqual(['twice']);
  });
});
