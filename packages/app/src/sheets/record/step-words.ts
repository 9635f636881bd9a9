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
  if (what.kind === 'hub bolt') return step.hubBolt[what.pass];
  if (what.kind === 'seam sampled') return step.sampled(what.bolts, what.failed);
  if (what.kind === 'panel condition') return step.condition[what.condition];
  if (what.kind === 'stage done') return what.done ? step.stageDone : step.stageOpen;
  if (what.kind === 'closed down') return what.closed ? step.closed : step.reopened;
  if (what.kind === 'stop') return what.on ? step.stopOn : step.stopOff;
  if (what.kind === 'person') return what.here ? step.here : step.gone;
  if (what.kind === 'anchor driven') return what.driven ? step.driven : step.notDriven;
  if (what.kind === 'anchor pulled') return what.held ? step.held : step.notHeld;
  return step.noted;
}

/** What an entry is about, as people name it. */
export function aboutOf(what: What, words: Words['record']): string {
  if ('place' in what) return words.place(what.place);
  if ('seam' in what) return words.seam(what.seam);
  if ('hub' in what) return words.hub(what.hub);
  if ('tag' in what) return words.panel(what.tag);
  if ('stage' in what) return words.stage(what.stage);
  if ('anchor' in what) return words.anchor(what.anchor);
  if (what.kind === 'person') return what.person;
  if (what.kind === 'stop') return words.stop[what.why];
  return words.kind(what.kind);
}
