// The shell and the project that the simulated weekend is about: the same in every process.

import {
  coursesOf,
  namedNet,
  type RecordPlan,
  readProject,
  recordPlan,
  shellOfNet,
} from '@shellraise/core';
import { longTally } from '../piles.ts';

/** The names of a ball of 320 places. */
export function plan(): RecordPlan {
  const net = namedNet({ solid: 'icosahedron', b: 4, c: 0, division: 'equal chords' });
  const { shell } = shellOfNet(net, 2.7);
  return recordPlan(shell, coursesOf(shell));
}

/** A project with a pile of 700 readings. */
export function project() {
  const read = readProject(longTally());
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
