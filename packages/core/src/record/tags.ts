// A panel's tag, scanned or typed: where does it go, and which way round.

import type { RecordLog } from './log.ts';
import type { RecordPlan } from './names.ts';
import type { RecordState } from './state.ts';

/** A place for a panel. */
export interface PlaceForPanel {
  readonly place: number;
  readonly number: string;
  /** Its side that lies on the place's first side; null: nobody noted. */
  readonly turn: number | null;
}

/** Where a panel goes. `placed`: it is said to sit there already. `goes`: free places that take its
 * kind, the lowest course first, then those next to what stands, then by number. `scrap`: it is not
 * to be used. `ambiguous`: several tags fit what was typed. */
export type WhereTo =
  | { readonly status: 'placed'; readonly tag: string; readonly at: readonly PlaceForPanel[] }
  | { readonly status: 'goes'; readonly tag: string; readonly to: readonly PlaceForPanel[] }
  | { readonly status: 'no place'; readonly tag: string; readonly why: 'scrap' | 'none free' }
  | { readonly status: 'unknown'; readonly typed: string }
  | { readonly status: 'ambiguous'; readonly tags: readonly string[] };

/** What was typed or scanned as one of the tags: as it stands; else whatever its capitals, blanks and
 * leading zeros, where only one tag fits. */
export function readTag(typed: string, tags: Iterable<string>): readonly string[] {
  const all = [...new Set(tags)];
  if (all.includes(typed.trim())) return [typed.trim()];
  const bare = bareTag(typed);
  return bare === '' ? [] : all.filter((tag) => bareTag(tag) === bare).sort();
}

const bareTag = (tag: string): string =>
  tag
    .replace(/\s+/g, '')
    .toLowerCase()
    .replace(/^0+(?=.)/, '');

/** Where a panel goes. `kinds`: tag → index of its kind in the shell's list, null where nobody
 * measured it. */
export function whereTo(
  log: RecordLog,
  plan: RecordPlan,
  state: RecordState,
  kinds: ReadonlyMap<string, number | null>,
  typed: string,
): WhereTo {
  const placed = state.placed.flatMap((panel, place) => (panel ? [{ place, ...panel }] : []));
  const known = placed.flatMap(({ tag }) => (tag === null ? [] : [tag]));
  const tags = readTag(typed, [...kinds.keys(), ...known]);
  const tag = tags[0];
  if (tag === undefined) return { status: 'unknown', typed };
  if (tags.length > 1) return { status: 'ambiguous', tags };
  const at = placed
    .filter((panel) => panel.tag === tag)
    .map(({ place, turn }) => ({ place, number: plan.places[place]!, turn }));
  if (at.length > 0) return { status: 'placed', tag, at };
  const condition = log.stands(`condition ${tag}`)?.entry.what;
  if (condition?.kind === 'panel condition' && condition.condition === 'scrap')
    return { status: 'no place', tag, why: 'scrap' };
  const kind = kinds.get(tag) ?? null;
  if (kind === null) return { status: 'unknown', typed };
  const to = freePlaces(plan, state, kind);
  return to.length > 0
    ? { status: 'goes', tag, to }
    : { status: 'no place', tag, why: 'none free' };
}

function freePlaces(plan: RecordPlan, state: RecordState, kind: number): PlaceForPanel[] {
  const { shell } = plan;
  const beside = new Set(
    plan.seamPlaces.flatMap(([a, b]) => [
      ...(state.placed[a] ? [b] : []),
      ...(state.placed[b] ? [a] : []),
    ]),
  );
  return plan.places
    .map((number, place) => ({ number, place, turn: shell.turn[place]! }))
    .filter(({ place }) => shell.kind[place] === kind && !state.placed[place])
    .sort(
      (a, b) =>
        plan.course[a.place]! - plan.course[b.place]! ||
        Number(beside.has(b.place)) - Number(beside.has(a.place)) ||
        (a.number < b.number ? -1 : 1),
    );
}
