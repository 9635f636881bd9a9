import { RecordLog } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { bringPhotos, notedPhotos, photoOf, photoTag } from '../../src/record/note-photos.ts';
import type { Answer } from '../../src/sync/site-calls.ts';

const [one, two] = ['a'.repeat(64), 'b'.repeat(64)] as const;
const away: Answer<never> = { ok: false, why: 'away' };

/** A browser's photos, by their hashes. */
function photosHere(...hashes: string[]) {
  const kept = new Map(hashes.map((hash) => [photoTag(hash), new Blob([hash])]));
  return {
    kept,
    photosOf: async (_: string, tag: string) => {
      const picture = kept.get(tag);
      return picture ? [{ picture }] : [];
    },
    keepPhoto: async ({ tag, picture }: { tag: string; picture: Blob }) => {
      kept.set(tag, picture);
      return true;
    },
  };
}

describe('photos of notes', () => {
  it('are those of living notes, each once, the newest first', () => {
    const log = new RecordLog();
    const say = (what: Parameters<RecordLog['write']>[0]) => {
      const entry = log.write(what, { writer: 'abcdefgh', by: 'Ada', at: 1781254800000 });
      log.add(entry);
      return entry;
    };
    const note = (hash: string) =>
      say({ kind: 'note', text: 'seen', photo: { hash, type: 'image/jpeg', bytes: 9 } });
    note(one);
    const wrong = note('c'.repeat(64));
    note(two);
    note(two);
    say({ kind: 'undo', of: `${wrong.writer}-${wrong.seq}` });
    expect(notedPhotos(log)).toEqual([two, one]);
  });

  it('are brought once, those of other devices not, and tried again after the laptop was away', async () => {
    const asked: string[] = [];
    let there = false;
    const calls = {
      bringPhoto: async (hash: string): Promise<Answer<true>> => {
        asked.push(hash);
        return there ? { ok: true, value: true } : away;
      },
    };
    const brought = new Set<string>();
    const bring = () =>
      bringPhotos([one, two, 'c'.repeat(64)], brought, 'p', photosHere(one, two), calls);
    expect(await bring()).toBe(false);
    expect(asked).toEqual([one]);
    there = true;
    expect(await bring()).toBe(true);
    expect(await bring()).toBe(true);
    expect(asked).toEqual([one, one, two]);
  });

  it('of another device come from the laptop, once', async () => {
    let asked = 0;
    const calls = {
      photo: async (hash: string): Promise<Answer<Blob>> => {
        asked++;
        return hash === one ? { ok: true, value: new Blob(['picture']) } : away;
      },
    };
    const here = photosHere();
    expect(await photoOf(one, 'p', here, null)).toBeNull();
    expect(await (await photoOf(one, 'p', here, calls))?.text()).toBe('picture');
    expect(await (await photoOf(one, 'p', here, calls))?.text()).toBe('picture');
    expect(asked).toBe(1);
    expect(await photoOf(two, 'p', here, calls)).toBeNull();
    expect(here.kept.has(photoTag(two))).toBe(false);
  });
});
