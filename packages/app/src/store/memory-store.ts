// Projects kept as long as the page lives: for tests, and where the browser keeps nothing.

import type { ProjectEntry, ProjectStore, StoredProject } from './project-store.ts';

/** A store that forgets everything with the page. */
export function memoryStore(): ProjectStore {
  const kept = new Map<string, StoredProject>();
  const watchers = new Set<(id: string) => void>();
  return {
    list: async () => [...kept.values()].map(entryOf).sort((a, b) => b.savedAt - a.savedAt),
    load: async (id) => {
      const stored = kept.get(id);
      return stored ? { status: 'loaded', stored } : { status: 'missing' };
    },
    save: async (project) => {
      const before = kept.get(project.id);
      if (before && before.revision !== project.revision)
        return { status: 'conflict', stored: before };
      const revision = project.revision + 1;
      kept.set(project.id, { ...project, revision });
      return { status: 'saved', revision };
    },
    remove: async (id) => {
      kept.delete(id);
      for (const tell of watchers) tell(id);
    },
    watch: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
  };
}

/** A project's line in the list. */
export function entryOf({ id, savedAt, doc }: StoredProject): ProjectEntry {
  const { title, pile } = doc.project;
  const tagged = new Set(pile.readings.flatMap((row) => row.tag ?? []));
  const untagged = pile.readings.reduce((sum, row) => sum + (row.tag ? 0 : (row.count ?? 1)), 0);
  const counted = pile.kinds.reduce(
    (sum, row) => sum + (row.good ?? 0) + (row.repair ?? 0) + (row.scrap ?? 0),
    0,
  );
  return { id, title, savedAt, panels: Math.max(counted, tagged.size + untagged) };
}
