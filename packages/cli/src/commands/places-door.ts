// `shellraise places --door "0.9 m x 2.0 m"`: where a door may be in an arrangement, and what it costs.

import { doorOutline, type Kind, type Opening, openingsFor, readLength } from '@shellraise/core';
import { badInput } from '../ending.ts';
import { type Chosen, choose } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { PlacesOptions } from '../options.ts';
import { caution, heading, print, printJson, table, wrap } from '../terminal.ts';

/** Openings told on the screen. */
const SHOWN = 10;

/** What an opening must say beside it. */
const openingCaution =
  'An opening weakens a shell more than its number of panels shows: it wants a frame around it, and what the shell still bears is not calculated here. Local codes and a licensed engineer decide.';

/** Runs the command; sets exit code 1 where no such door can be had. */
export async function placesDoor(file: string, options: PlacesOptions): Promise<void> {
  const [width, height] = sizeOf(options.door ?? '');
  const chosen = await choose(file, options);
  const found = openingsFor(chosen.standing.shell, { outline: doorOutline(width, height) });
  const list = distinct(chosen, found);
  if (list.length === 0) process.exitCode = 1;
  if (options.json)
    printJson({
      door: { width, height },
      openings: list.map((one) => openingDocument(chosen, one)),
      cautions: [openingCaution],
    });
  else print(...doorReport(chosen, [width, height], list, lengthsIn(options.lengths)));
}

function sizeOf(text: string): readonly [number, number] {
  const sizes = text.split(/[x×]/i).map((part) => readLength(part.trim()));
  const [width, height] = sizes.map((read) => (read.ok ? read.value : 0));
  if (sizes.length !== 2 || !width || !height || width <= 0 || height <= 0)
    throw badInput(
      `--door: found ${text}, expected width x height with units, such as "0.9 m x 2 m" or 3' x 6' 6"`,
    );
  return [width, height];
}

/** One of each sort: openings that cost the same kinds and seams at the same courses are alike. */
function distinct(chosen: Chosen, found: readonly Opening[]): Opening[] {
  const seen = new Set<string>();
  return found.filter((one) => {
    const key = JSON.stringify([kindsOut(chosen, one), one.seamsCut, coursesOf(chosen, one)]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const coursesOf = ({ standing }: Chosen, { places }: Opening): number[] =>
  places.map((p) => standing.courses.course[p] as number).sort((a, b) => a - b);

function kindsOut({ standing, kinds }: Chosen, { places }: Opening): string {
  const out = new Map<string, number>();
  for (const p of places) {
    const { id } = kinds[standing.shell.kind[p] as number] as Kind;
    out.set(id, (out.get(id) ?? 0) + 1);
  }
  return [...out]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, n]) => `${n} × ${id}`)
    .join(', ');
}

function doorReport(
  chosen: Chosen,
  [width, height]: readonly [number, number],
  list: readonly Opening[],
  lengths: Lengths,
): readonly string[] {
  const size = `${lengths.large(width)} wide and ${lengths.large(height)} high`;
  if (list.length === 0)
    return [
      heading('Door'),
      wrap(
        `No door ${size} can be had in arrangement ${chosen.number}: the wall leans in too soon, or the shell would fall into pieces. Try a lower or narrower one.`,
        '',
      ),
    ];
  return [
    heading('Door'),
    wrap(
      `Where a door ${size} may be in arrangement ${chosen.number}: straight ahead on the line named, on the level of the lowest base hub.`,
      '',
    ),
    openingTable(chosen, list.slice(0, SHOWN), lengths),
    list.length > SHOWN ? `… and ${list.length - SHOWN} more (--json lists all)` : '',
    caution(openingCaution),
  ];
}

function openingTable(chosen: Chosen, list: readonly Opening[], lengths: Lengths): string {
  const right = (head: string) => ({ head, align: 'right' as const });
  return table(
    [
      right('panels out'),
      { head: 'kinds' },
      right('seams cut'),
      right('hubs gone'),
      right('edge to frame'),
      { head: 'places' },
    ],
    list.map((one) => [
      String(one.places.length),
      kindsOut(chosen, one),
      String(one.seamsCut),
      String(one.hubsFreed),
      lengths.large(one.reveal.reduce((sum, { length }) => sum + length, 0)),
      wrap(numbersOf(chosen, one).join(' '), '', 30),
    ]),
  );
}

const numbersOf = ({ numbers }: Chosen, { places }: Opening): string[] =>
  places.map((p) => numbers.numbers[p] as string).sort();

const openingDocument = (chosen: Chosen, one: Opening): object => ({
  places: numbersOf(chosen, one),
  azimuth: one.passage.azimuth,
  seamsCut: one.seamsCut,
  hubsFreed: one.hubsFreed,
  toBase: one.toBase,
  reveal: one.reveal.map(({ length }) => length),
});
