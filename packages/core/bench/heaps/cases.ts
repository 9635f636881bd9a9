// The twelve cases, in the order of their numbers.

import { ambiguity } from './ambiguity.ts';
import { culprits } from './culprits.ts';
import { cutBase } from './cut-base.ts';
import { gap } from './gap.ts';
import { hands } from './hands.ts';
import type { HardCase } from './heap.ts';
import { laps } from './laps.ts';
import { marks } from './marks.ts';
import { mixtures } from './mixtures.ts';
import { nearEqual } from './near-equal.ts';
import { nothing } from './nothing.ts';
import { part } from './part.ts';
import { strangers } from './strangers.ts';

/** All cases. */
export const cases: readonly HardCase[] = [
  part,
  cutBase,
  strangers,
  culprits,
  nearEqual,
  hands,
  marks,
  laps,
  gap,
  mixtures,
  nothing,
  ambiguity,
];
