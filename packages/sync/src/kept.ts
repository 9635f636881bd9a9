// What of a document is kept elsewhere. The sync protocol has no receipt of its own, but each side
// tells the other its state vector: how much of every client's changes it has. The server tells its own
// again whenever what a device sent is on disk, and hands on nothing before it is; so what it told and
// what came from it is safe, and a device knows what is still waiting.

import * as decoding from 'lib0/decoding';
import * as Y from 'yjs';

/** What is known to be kept elsewhere. */
export interface Kept {
  /** The other side told its state vector. */
  told(stateVector: Uint8Array): void;
  /** An update came from there. */
  came(update: Uint8Array): void;
  /** What is known, as a state vector: to be kept over a reload. */
  known(): Uint8Array;
  /** Changes in the document, whoever made them, that are not known to be kept there: 0, all is. */
  waiting(): number;
}

/** At first what was `known` before, as a state vector: without it nothing. It holds until the other side
 * tells its own. */
export function keptElsewhere(doc: Y.Doc, known?: Uint8Array): Kept {
  const there = new Map(known && Y.decodeStateVector(known));
  const upTo = (client: number, clock: number): void => {
    there.set(client, Math.max(clock, there.get(client) ?? 0));
  };
  return {
    told: (stateVector) => {
      // Not merged with what was known: a laptop put in another's place has only what it says.
      there.clear();
      for (const [client, clock] of Y.decodeStateVector(stateVector)) upTo(client, clock);
    },
    came: (update) => {
      const { from, to } = Y.parseUpdateMeta(update);
      for (const [client, clock] of to)
        if ((from.get(client) ?? 0) <= (there.get(client) ?? 0)) upTo(client, clock);
    },
    known: () => Y.encodeStateVector(there),
    waiting: () => {
      let missing = 0;
      for (const [client, clock] of Y.decodeStateVector(Y.encodeStateVector(doc)))
        missing += Math.max(0, clock - (there.get(client) ?? 0));
      return missing;
    },
  };
}

/** What of a sync provider is needed here: the one of y-websocket has it. */
export interface Provider {
  readonly doc: Y.Doc;
  readonly messageHandlers: ((
    encoder: never,
    decoder: decoding.Decoder,
    ...rest: never[]
  ) => void)[];
}

/** Listens in on a provider's messages; call it before the provider connects. `changed` is told when
 * something came that may change what is waiting; `known`: see `keptElsewhere`. */
export function followKept(
  provider: Provider,
  changed: () => void = () => undefined,
  known?: Uint8Array,
): Kept {
  const kept = keptElsewhere(provider.doc, known);
  const handle = provider.messageHandlers[SYNC];
  provider.messageHandlers[SYNC] = (encoder, decoder, ...rest) => {
    const peek = decoding.clone(decoder);
    const step = decoding.readVarUint(peek);
    const bytes = decoding.readVarUint8Array(peek);
    handle?.(encoder, decoder, ...rest);
    if (step === STATE) kept.told(bytes);
    else kept.came(bytes);
    changed();
  };
  return kept;
}

/** Number of sync messages on the line, and of the message that tells a state vector. */
const SYNC = 0;
const STATE = 0;
