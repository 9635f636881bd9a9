// Whether what was said here is kept there. The sync protocol has no receipt of its own, but each side
// tells the other its state vector: how much of every client's changes it has. The server tells its own
// again whenever an update is on disk, so a device knows what is safe by comparing.

import * as Y from 'yjs';

/** Changes made here that a state vector does not cover: 0, and all is kept where it came from. */
export function changesUnsaved(doc: Y.Doc, stateVector: Uint8Array): number {
  const there = Y.decodeStateVector(stateVector);
  let missing = 0;
  for (const [client, clock] of Y.decodeStateVector(Y.encodeStateVector(doc)))
    missing += Math.max(0, clock - (there.get(client) ?? 0));
  return missing;
}
