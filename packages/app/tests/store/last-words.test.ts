import { describe, expect, it } from 'vitest';
import {
  keepLastWords,
  LAST_WORDS,
  type SmallStorage,
  takeLastWords,
} from '../../src/store/last-words.ts';
import { memoryStore } from '../../src/store/memory-store.ts';
import type { CheckProject } from '../../src/store/stored.ts';
import { appWith, pileOf, retitle, titleOf } from '../state/notation.ts';

function smallStorage(): SmallStorage & { readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
    removeItem: (key) => void kept.delete(key),
  };
}

const check: CheckProject = async (raw) =>
  typeof raw === 'object' && raw !== null
    ? { ok: true, project: raw as never }
    : { ok: false, newer: false, detail: 'no project' };

const demo = pileOf('demo', [1, 1, 1]);

describe('what a page leaves unsaved', () => {
  it('is saved when the page comes again, with its undo', async () => {
    const storage = smallStorage();
    const { app, store } = appWith(demo);
    retitle(app, 'mine');
    keepLastWords(() => storage, app.unsaved());
    const id = await takeLastWords(
      () => storage,
      store,
      check,
      () => 'new',
    );
    const again = appWith(demo, store);
    await again.app.open(id as string);
    expect(titleOf(again.app)).toBe('mine');
    again.app.undo();
    expect(titleOf(again.app)).toBe('demo');
    expect(storage.kept.has(LAST_WORDS)).toBe(false);
  });

  it('is nothing where all was saved', async () => {
    const storage = smallStorage();
    const { app } = appWith(demo);
    retitle(app, 'mine');
    await app.save();
    keepLastWords(() => storage, app.unsaved());
    expect(storage.kept.size).toBe(0);
    expect(
      await takeLastWords(
        () => storage,
        memoryStore(),
        check,
        () => 'new',
      ),
    ).toBeNull();
  });

  it('stands beside the project where that was changed elsewhere since', async () => {
    const storage = smallStorage();
    const { app, store } = appWith(demo);
    retitle(app, 'one');
    await app.save();
    const { projectId } = app.state.getState();
    retitle(app, 'mine');
    keepLastWords(() => storage, app.unsaved());
    const other = appWith(demo, store);
    await other.app.open(projectId);
    retitle(other.app, 'theirs');
    await other.app.save();
    expect(
      await takeLastWords(
        () => storage,
        store,
        check,
        () => 'beside',
      ),
    ).toBe('beside');
    expect((await store.list()).map(({ title }) => title).sort()).toEqual(['mine', 'theirs']);
  });

  it('is left alone where it cannot be read, or the storage refuses', async () => {
    const storage = smallStorage();
    for (const text of ['', 'x', '7', '{"id":"a","doc":null}']) {
      storage.kept.set(LAST_WORDS, text);
      expect(
        await takeLastWords(
          () => storage,
          memoryStore(),
          check,
          () => 'new',
        ),
      ).toBeNull();
    }
    const refusing = (): SmallStorage => {
      throw new Error('refused');
    };
    expect(() => keepLastWords(refusing, null)).not.toThrow();
    expect(await takeLastWords(refusing, memoryStore(), check, () => 'new')).toBeNull();
  });
});
