// What an entry is about, and what it says of it. A claim is an entry about a subject that has one
// state at a time (a seam's pass, who sits in a place); others are events that only add up. One table
// by kind: the compiler asks for a line when a kind is added.

import { RECORD_PASSES, type RecordPass, type What, type WhatKind } from './what.ts';

/** Name of a thing that has one state at a time, as `seam 3-07/3-08`. */
export type Subject = string;

/** How to read the claims of one kind. */
interface ClaimRule<K extends WhatKind> {
  readonly subject: (what: Extract<What, { kind: K }>) => Subject;
  /** The state claimed, as text: equal texts agree. */
  readonly says: (what: Extract<What, { kind: K }>) => string;
  /** Of claims that differ the one with the lowest rank is taken until somebody settles it: what is
   * safe to suppose. */
  readonly rank: (what: Extract<What, { kind: K }>) => number;
}

const passRank = (pass: RecordPass): number => RECORD_PASSES.indexOf(pass);
const yes = (is: boolean): string => (is ? 'yes' : 'no');

const RULES: { readonly [K in WhatKind]: ClaimRule<K> | null } = {
  'panel measured': null,
  'panel found': { subject: ({ tag }) => `found ${tag}`, says: () => 'yes', rank: () => 0 },
  'panel cleaned': { subject: ({ tag }) => `cleaned ${tag}`, says: () => 'yes', rank: () => 0 },
  'panel condition': {
    subject: ({ tag }) => `condition ${tag}`,
    says: ({ condition }) => condition,
    rank: ({ condition }) => ['scrap', 'repair', 'good'].indexOf(condition),
  },
  'panel placed': {
    subject: ({ place }) => `place ${place}`,
    says: ({ tag, turn }) => `${JSON.stringify(tag)} turn ${turn}`,
    rank: () => 1,
  },
  'panel taken out': {
    subject: ({ place }) => `place ${place}`,
    says: () => 'empty',
    rank: () => 0,
  },
  'seam pass': {
    subject: ({ seam }) => `seam ${seam}`,
    says: ({ pass }) => pass,
    rank: ({ pass }) => passRank(pass),
  },
  'seam sealed': {
    subject: ({ seam }) => `seal ${seam}`,
    says: ({ sealed }) => yes(sealed),
    rank: ({ sealed }) => Number(sealed),
  },
  'seam sampled': null,
  'hub plate': {
    subject: ({ hub }) => `plate ${hub}`,
    says: ({ on }) => yes(on),
    rank: ({ on }) => Number(on),
  },
  'hub bolt': {
    subject: ({ hub }) => `hub bolt ${hub}`,
    says: ({ pass }) => pass,
    rank: ({ pass }) => passRank(pass),
  },
  prop: {
    subject: ({ hub }) => `prop ${hub}`,
    says: ({ set }) => yes(set),
    rank: ({ set }) => Number(set),
  },
  'anchor driven': {
    subject: ({ anchor }) => `anchor ${anchor}`,
    says: ({ driven }) => yes(driven),
    rank: ({ driven }) => Number(driven),
  },
  'anchor pulled': null,
  surveyed: null,
  // Of counts that differ the lower: it is bought for.
  'bolts counted': {
    subject: ({ thread, length }) => `bolts ${thread} ${length}`,
    says: ({ count }) => String(count),
    rank: ({ count }) => count,
  },
  note: null,
  weather: null,
  // Somebody may still be up there: taken as here until settled.
  person: {
    subject: ({ person }) => `person ${person}`,
    says: ({ here }) => yes(here),
    rank: ({ here }) => Number(!here),
  },
  'stage done': {
    subject: ({ stage }) => `stage ${stage}`,
    says: ({ done }) => yes(done),
    rank: ({ done }) => Number(done),
  },
  'closed down': {
    subject: ({ stage }) => `closed down ${stage}`,
    says: ({ closed }) => yes(closed),
    rank: ({ closed }) => Number(closed),
  },
  // A stop holds until everybody agrees that it is lifted.
  stop: {
    subject: ({ why }) => `stop ${why}`,
    says: ({ on }) => yes(on),
    rank: ({ on }) => Number(!on),
  },
  undo: null,
};

const ruleOf = (what: What): ClaimRule<WhatKind> | null =>
  RULES[what.kind] as ClaimRule<WhatKind> | null;

/** What a claim is about; null for an event or an undo. */
export const subjectOf = (what: What): Subject | null =>
  ruleOf(what)?.subject(what as never) ?? null;

/** What a claim says of its subject, as text; empty for an event or an undo. */
export const saysOf = (what: What): string => ruleOf(what)?.says(what as never) ?? '';

/** How much a claim supposes: of claims that differ the lowest is safe to suppose. */
export const rankOf = (what: What): number => ruleOf(what)?.rank(what as never) ?? 0;
