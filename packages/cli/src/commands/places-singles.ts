// `shellraise places --singles`: which tagged panel goes where, so that seams and courses come out even.

import {
  type Kind,
  placeSingles,
  type SinglePanel,
  type SinglesAnswer,
  taggedPanels,
} from '@shellraise/core';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { StandOptions } from '../options.ts';
import { count, heading, print, printJson, table, wrap } from '../terminal.ts';

/** Runs the command; sets exit code 1 where no panel has a tag and a kind. */
export async function placesSingles(file: string, options: StandOptions): Promise<void> {
  const chosen = await choose(file, options);
  const kinds = fittedKinds(chosen);
  const panels = taggedPanels(chosen.loaded.pile, chosen.loaded.worked, kinds);
  const { shell, courses } = chosen.standing;
  const family = Array.from(shell.kind);
  const answer = placeSingles({ shell, family, course: courses.course, panels });
  if (panels.length === 0) process.exitCode = 1;
  if (options.json) printJson(singlesDocument(chosen, panels, answer));
  else print(...singlesReport(chosen, panels, answer, lengthsIn(options.lengths)));
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
