// How far it is: done and left, places left out on purpose aside.

import {
  RECORD_PASSES,
  type RecordPass,
  type RecordPlan,
  type RecordState,
} from '@shellraise/core';
import { useWords } from '../../words/words.ts';

/** One line of the tally. */
export interface TallyRow {
  readonly what: 'placed' | 'finger' | 'snug' | 'final' | 'sealed' | 'plates';
  readonly done: number;
  readonly of: number;
}

/** What is done of all that is to be done. */
export function tallyOf(
  state: RecordState,
  plan: RecordPlan,
  leftOut: readonly number[],
): readonly TallyRow[] {
  const out = new Set(leftOut);
  const places = plan.places.map((_, place) => place).filter((place) => !out.has(place));
  const seams = plan.seamPlaces.flatMap(([p, q], seam) => (out.has(p) || out.has(q) ? [] : [seam]));
  const hubs = plan.hubPlaces.flatMap((around, hub) =>
    around.some((place) => !out.has(place)) ? [hub] : [],
  );
  const atLeast = (pass: RecordPass): number =>
    seams.filter(
      (seam) => RECORD_PASSES.indexOf(state.passes[seam]!) >= RECORD_PASSES.indexOf(pass),
    ).length;
  const row = (what: TallyRow['what'], done: number, of: number): TallyRow => ({ what, done, of });
  return [
    row('placed', places.filter((place) => state.placed[place]).length, places.length),
    row('finger', atLeast('finger'), seams.length),
    row('snug', atLeast('snug'), seams.length),
    row('final', atLeast('final'), seams.length),
    row('sealed', seams.filter((seam) => state.sealed[seam]).length, seams.length),
    row('plates', hubs.filter((hub) => state.plates[hub]).length, hubs.length),
  ];
}

/** The table. */
export function Tally(props: { state: RecordState; plan: RecordPlan; leftOut: readonly number[] }) {
  const words = useWords().record;
  return (
    <section>
      <h2>{words.tally}</h2>
      <table className="record-tally">
        <thead>
          <tr>
            <th scope="col">{words.tallyHead.what}</th>
            <th scope="col">{words.tallyHead.done}</th>
            <th scope="col">{words.tallyHead.left}</th>
          </tr>
        </thead>
        <tbody>
          {tallyOf(props.state, props.plan, props.leftOut).map(({ what, done, of }) => (
            <tr key={what}>
              <th scope="row">{words.tallyOf[what]}</th>
              <td>{done}</td>
              <td>{of - done}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
