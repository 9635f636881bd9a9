// A project with nothing in it yet.

import type { Project } from '@shellraise/core';

/** An empty pile; one reading is taken to be good to 1 mm until the readings say better. */
export const emptyProject = (title: string): Project => ({
  shellraise: 1,
  title,
  pile: {
    measuredAlong: 'holes',
    hubAllowance: null,
    readingSd: 0.001,
    kinds: [],
    readings: [],
    groups: [],
    hardware: [],
  },
});
