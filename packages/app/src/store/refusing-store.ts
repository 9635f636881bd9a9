// Where the browser keeps nothing at all: every save is refused, so that the page can say so.

import type { ProjectStore } from './project-store.ts';

/** A store that refuses; `detail` says why. */
export const refusingStore = (detail: string): ProjectStore => ({
  list: async () => [],
  load: async () => ({ status: 'missing' }),
  save: async () => ({ status: 'refused', why: 'unavailable', detail }),
  remove: async () => undefined,
  watch: () => () => undefined,
});
