// What was found wrong, in one line of words.

import type { Fault } from '@shellraise/core';
import type { Words } from '../../words/words.ts';

/** The faults, a sentence each. */
export const faultsInWords = (faults: readonly Fault[], words: Words['raising']): string =>
  faults.map(({ path, found, expected }) => words.fault(path, found, expected)).join(' ');
