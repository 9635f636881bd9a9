// `shellraise places --singles`: which tagged panel goes where, so that seams and courses come out even.

import {
  type AssignedReading,
  type Kind,
  placeSingles,
  type SinglePanel,
  type SinglesAnswer,
} from '@shellraise/core';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { LoadedPile } from '../load.ts';
import type { StandOptions } from '../options.ts';
import { count, heading, print, printJson, table, wrap } from '../terminal.ts';

/** Runs the command; sets exit code 1 where no panel has a tag and a kind. */
export async function placesSingles(file: string, options: StandOptions): Promise<void> {
  const chosen = await choose(file, options);
  const kinds = fittedKinds(chosen);
  const panels = singlesOf(chosen.loaded, kinds);
  const { shell, courses } = chosen.standing;
  const family = Array.from(shell.kind);
  const answer = placeSingles({ shell, family, course: courses.course, panels });
  if (panels.length === 0) process.exitCode = 1;
  if (options.json) printJson(singlesDocument(chosen, panels, answer));
  else print(...singlesReport(chosen, panels, answer, lengthsIn(options.lengths)));
}

/** Tagged panels of a settled kind that are not scrap: the mean of their readings against the kind's
 * fitted sides, each person's own error taken off. */
function singlesOf({ pile, worked }: LoadedPile, kinds: readonly Kind[]): SinglePanel[] {
  const biases = new Map(worked.people.map((one) => [one.by, one.applied ? one.bias : 0]));
  const byTag = new Map<string, AssignedReading[]>();
  for (const one of worked.assigned)
    if (one.tag !== null && one.kind !== null)
      byTag.set(one.tag, [...(byTag.get(one.tag) ?? []), one]);
  return [...byTag].flatMap(([tag, readings]) => {
    const family = kinds.findIndex((kind) => kind.id === readings[0]?.kind);
    const sides = kinds[family]?.sides;
    const rows = readings.flatMap(({ reading }) => pile.readings[reading] ?? []);
    if (!sides || rows.some((row) => row.condition === 'scrap')) return [];
    const sums = sides.map(() => 0);
    readings.forEach(({ liesOn }, r) => {
      const row = rows[r];
      row?.sides.forEach((measured, i) => {
        const at = liesOn[i] as number;
        const bias = row.by === undefined ? 0 : (biases.get(row.by) ?? 0);
        sums[at] = (sums[at] as number) + measured - bias + (pile.hubAllowance ?? 0);
      });
    });
    const off = sides.map((side, i) => (sums[i] as number) / readings.length - side);
    return [{ tag, family, off, weak: rows.some((row) => row.condition === 'repair') }];
  });
}

function singlesReport(
  chosen: Chosen,
  panels: readonly SinglePanel[],
  { panelAt, before, after, worstCourse }: SinglesAnswer,
  lengths: Lengths,
): readonly string[] {
  const { numbers, kinds, standing } = chosen;
  const placed = panelAt.filter((i) => i >= 0).length;
  if (panels.length === 0)
    return [heading('Panel by panel'), 'No panel has both a tag and a settled kind.'];
  const rows = [...panelAt.keys()]
    .sort((p, q) => ((numbers.numbers[p] as string) < (numbers.numbers[q] as string) ? -1 : 1))
    .flatMap((p) => {
      const panel = panels[panelAt[p] as number];
      const { id } = kinds[standing.shell.kind[p] as number] as Kind;
      return [[numbers.numbers[p] as string, id, panel?.tag ?? 'any', panel?.weak ? 'mended' : '']];
    });
  return [
    heading('Panel by panel'),
    wrap(
      `${count(placed, 'tagged panel')} placed, ${standing.places.length - placed} places take any panel of their kind. Seams between tagged panels are off by ${lengths.small(after)} (root mean square), instead of ${lengths.small(before)} as they come; no course comes round more than ${lengths.small(worstCourse)} too long or too short. Mended panels go low where they can. The best of many exchanges, not proved.`,
      '',
    ),
    table(
      ['place', 'kind', 'tag', ''].map((head) => ({ head })),
      rows,
    ),
  ];
}

const singlesDocument = (
  { numbers, kinds, standing }: Chosen,
  panels: readonly SinglePanel[],
  { panelAt, before, after, worstCourse }: SinglesAnswer,
): object => ({
  before,
  after,
  worstCourse,
  places: Array.from(panelAt, (panel, p) => ({
    number: numbers.numbers[p],
    kind: (kinds[standing.shell.kind[p] as number] as Kind).id,
    tag: panels[panel]?.tag ?? null,
  })),
});
