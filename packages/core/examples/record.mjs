// Entries from two phones, in whatever order they arrive, fold into the same state.
import { coursesOf, netShell, RecordLog, recordPlan, recordState } from '@shellraise/core';

const entry = (writer, seq, order, what) => ({ writer, seq, order, at: 0, by: 'Ada', what });
const placed = entry('a', 1, 1, { kind: 'panel placed', place: '1-01', tag: 'P7', turn: 0 });
const stopped = entry('b', 1, 2, { kind: 'stop', why: 'wind', on: true });
const { shell } = netShell({ solid: 'icosahedron', b: 1, c: 0, division: 'equal chords' }, 2);
for (const entries of [
  [placed, stopped],
  [stopped, placed],
]) {
  const log = new RecordLog();
  log.addAll(entries);
  const state = recordState(log, recordPlan(shell, coursesOf(shell)));
  console.log(state.placed.filter(Boolean).length, 'placed; stopped for', state.stops.join());
}

// → 1 placed; stopped for wind
// → 1 placed; stopped for wind
