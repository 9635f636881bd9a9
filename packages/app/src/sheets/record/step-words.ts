// What an entry says of its thing, in a word or two.

import type { What } from '@shellraise/core';
import type { Words } from '../../words/words.ts';

/** The step that an entry speaks of; empty where it is of another kind. */
export function stepOf(what: What, { step }: Words['record']): string {
  if (what.kind === 'panel placed') return what.tag ? `${step.placed}, ${what.tag}` : step.placed;
  if (what.kind === 'panel taken out') return step.out;
  if (what.kind === 'seam pass') return step[what.pass];
  if (what.kind === 'seam sealed') return what.sealed ? step.sealed : step.unsealed;
  if (what.kind === 'hub plate') return what.on ? step.plateOn : step.plateOff;
  if (what.kind === 'prop') return what.set ? step.propSet : step.propGone;
  return '';
}

/** What an entry is about, as people name it. */
export function aboutOf(what: What, words: Words['record']): string {
  if ('place' in what) return words.place(what.place);
  if ('seam' in what) return words.seam(what.seam);
  if ('hub' in what) return words.hub(what.hub);
  return '';
}
