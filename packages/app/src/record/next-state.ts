// What one tap says, and what else may be said, of a place, a seam or a hub: plain entries.

import type { RecordPass, RecordPlan, RecordState, What } from '@shellraise/core';

/** What is being noted: a tap on the drawing means the nearest of these. */
export const notings = ['panels', 'seams', 'plates', 'seal'] as const;
/** What is being noted. */
export type Noting = (typeof notings)[number];

/** A thing on the plan, by its index in the shell. */
export interface Thing {
  readonly sort: 'place' | 'seam' | 'hub';
  readonly index: number;
}

/** What one tap says next. `done`: nothing is left to say of it; `not yet`: a panel beside it is
 * missing; `left out`: it belongs to an opening. */
export type Next = What | 'done' | 'not yet' | 'left out';

const AFTER: Readonly<Record<RecordPass, RecordPass | null>> = {
  none: 'finger',
  finger: 'snug',
  snug: 'final',
  final: null,
};

/** The next state of a thing, one tap on. A seam waits for both panels, a plate for all around it save
 * those of openings. */
export function nextOf(
  plan: RecordPlan,
  state: RecordState,
  noting: Noting,
  { sort, index }: Thing,
  leftOut: readonly number[] = [],
): Next {
  if (sort === 'place') {
    if (leftOut.includes(index)) return 'left out';
    if (state.placed[index]) return 'done';
    return { kind: 'panel placed', place: plan.places[index]!, tag: null, turn: null };
  }
  const all = sort === 'seam' ? plan.seamPlaces[index]! : plan.hubPlaces[index]!;
  const around = all.filter((place) => !leftOut.includes(place));
  if (around.length === 0 || (sort === 'seam' && around.length < 2)) return 'left out';
  if (!around.every((place) => state.placed[place])) return 'not yet';
  if (sort === 'hub')
    return state.plates[index] ? 'done' : { kind: 'hub plate', hub: plan.hubs[index]!, on: true };
  const seam = plan.seams[index]!;
  if (noting === 'seal')
    return state.sealed[index] ? 'done' : { kind: 'seam sealed', seam, sealed: true };
  const pass = AFTER[state.passes[index]!];
  return pass === null ? 'done' : { kind: 'seam pass', seam, pass };
}

/** The same with how many people were at it, where that belongs to the kind of work. */
export function withHands(what: What, hands: number | null): What {
  if (hands === null) return what;
  const counts =
    what.kind === 'panel placed' ||
    (what.kind === 'seam pass' && what.pass !== 'none') ||
    (what.kind === 'hub plate' && what.on) ||
    (what.kind === 'hub bolt' && what.pass !== 'none') ||
    (what.kind === 'prop' && what.set);
  return counts ? { ...what, hands } : what;
}

/** Everything that may be said of a thing, in the order of the work; `is`: it is so already. */
export function choicesOf(
  plan: RecordPlan,
  state: RecordState,
  { sort, index }: Thing,
): readonly { readonly what: What; readonly is: boolean }[] {
  if (sort === 'place') {
    const place = plan.places[index]!;
    const there = state.placed[index] !== null;
    return [
      { what: { kind: 'panel taken out', place }, is: !there },
      { what: { kind: 'panel placed', place, tag: null, turn: null }, is: there },
    ];
  }
  if (sort === 'hub') {
    const hub = plan.hubs[index]!;
    return [
      { what: { kind: 'hub plate', hub, on: true }, is: state.plates[index] === true },
      { what: { kind: 'hub plate', hub, on: false }, is: !state.plates[index] },
      { what: { kind: 'prop', hub, set: true }, is: state.props[index] === true },
      { what: { kind: 'prop', hub, set: false }, is: !state.props[index] },
      ...(['none', 'snug', 'final'] as const).map((pass) => ({
        what: { kind: 'hub bolt', hub, pass } as const,
        is: state.hubBolts[index] === pass,
      })),
    ];
  }
  const seam = plan.seams[index]!;
  return [
    ...(['none', 'finger', 'snug', 'final'] as const).map((pass) => ({
      what: { kind: 'seam pass', seam, pass } as const,
      is: state.passes[index] === pass,
    })),
    { what: { kind: 'seam sealed', seam, sealed: true }, is: state.sealed[index] === true },
    { what: { kind: 'seam sealed', seam, sealed: false }, is: !state.sealed[index] },
  ];
}
