// What holds the hubs of a plan by name, props and lines, and what of it stands, goes in or out in a stage.

import type { PlannedProp, RaisingPlan, Shell } from '@shellraise/core';

/** A held hub with its name: `P1` is a prop that goes in first, `G2` guys or chains that come second. */
export interface NamedProp extends PlannedProp {
  readonly name: string;
}

/** What a prop does in a stage. */
export type PropState = 'in' | 'stands' | 'out';

/** The props that matter in a stage: standing from before, put in, or taken out in it. One that goes in
 * and out in one stage counts as going out, with `in` told by its lift. */
export function propsAt(
  { props }: Pick<RaisingPlan, 'props'>,
  number: number,
): readonly { readonly prop: NamedProp; readonly state: PropState }[] {
  return props.flatMap((own, i) => {
    if (own.from.stage > number || (own.until !== null && own.until.stage < number)) return [];
    const state: PropState =
      own.until?.stage === number ? 'out' : own.from.stage === number ? 'in' : 'stands';
    return [{ prop: { ...own, name: nameOf(own, i) }, state }];
  });
}

const nameOf = ({ lines }: PlannedProp, i: number): string =>
  `${lines.length === 0 ? 'P' : 'G'}${i + 1}`;

/** Props that go in and those that go out with one lift of a stage, by name. */
export function propsOfLift(
  { props }: Pick<RaisingPlan, 'props'>,
  stage: number,
  lift: number,
): { readonly goIn: readonly string[]; readonly goOut: readonly string[] } {
  const names = (of: (prop: PlannedProp) => PlannedProp['until']): string[] =>
    props.flatMap((prop, i) => {
      const at = of(prop);
      return at !== null && at.stage === stage && at.lift === lift ? [nameOf(prop, i)] : [];
    });
  return { goIn: names(({ from }) => from), goOut: names(({ until }) => until) };
}

/** Numbers of the places among these that meet at a hub, in number order. */
export function placesAround(
  shell: Shell,
  numbers: readonly string[],
  placed: Iterable<number>,
  hub: number,
): string[] {
  const found: number[] = [];
  for (const place of placed)
    for (
      let s = shell.placeStart[place] as number;
      s < (shell.placeStart[place + 1] as number);
      s++
    )
      if (shell.sideHub[s] === hub) found.push(place);
  return found.map((place) => unbroken(numbers[place] ?? '')).sort();
}

/** A place's number that no line breaks at its hyphen. */
export const unbroken = (number: string): string => number.replace('-', '-\u2060');
