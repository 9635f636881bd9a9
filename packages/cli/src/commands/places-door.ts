// `shellraise places --door "0.9 m x 2.0 m"`, `--hatch "0.6 m"`, `--section "0 m, 0 m; 1.2 m, 0 m; …"`:
// where an opening may be in an arrangement, and what it costs.

import {
  areaOf,
  convexParts,
  doorOutline,
  familiesOf,
  familyIndex,
  hatchesFor,
  type Kind,
  type Opening,
  type OpeningFigures,
  openingsFor,
  rankOpenings,
  readLength,
  type ViewPoint,
  type WithStiffness,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { flagBlock } from '../ground-loads.ts';
import { type Chosen, choose } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { askStiffness, partsOf } from '../opening-stiffness.ts';
import type { PlacesOptions } from '../options.ts';
import { caution, heading, print, printJson, right, table, wrap } from '../terminal.ts';

/** Openings told on the screen. */
const SHOWN = 10;

/** What an opening must say beside it. */
export const frameCaution =
  'An opening weakens a shell more than its number of panels shows: it wants a frame around it.';

/** The same where the stiffness that is left is told. */
const openingCaution = `${frameCaution} What stiffness is left is an estimate, without that frame and with every seam snug; what the shell still bears is not reckoned here. Local codes and a licensed engineer decide.`;

/** An opening with its figures. */
interface Ranked {
  readonly opening: Opening;
  readonly figures: OpeningFigures;
}

/** What was asked for. */
interface Asked {
  readonly title: 'Door' | 'Hatch' | 'Passage';
  /** In words: `0.9 m wide and 2 m high`. */
  readonly size: (lengths: Lengths) => string;
  readonly json: object;
  readonly find: (chosen: Chosen) => readonly Opening[];
}

/** Runs the command; sets exit code 1 where no such opening can be had. */
export async function placesDoor(file: string, options: PlacesOptions): Promise<void> {
  const asked = askedOf(options);
  const chosen = await choose(file, options);
  const found = distinct(chosen, ranked(chosen, asked.find(chosen), options));
  const rank = options.rank ?? 'fewest panels';
  const list = askStiffness(chosen, found, rank);
  if (list.length === 0) process.exitCode = 1;
  if (options.json)
    printJson({
      ...asked.json,
      rank,
      openings: list.map((one) => openingDocument(chosen, one)),
      stiffnessFrom: partsOf(chosen).sources,
      cautions: [openingCaution],
    });
  else print(...doorReport(chosen, asked, list, lengthsIn(options.lengths)));
}

function askedOf({ door, hatch, section }: PlacesOptions): Asked {
  if (door !== undefined) {
    const [width, height] = sizeOf(door);
    return {
      title: 'Door',
      size: (lengths) => `${lengths.large(width)} wide and ${lengths.large(height)} high`,
      json: { door: { width, height } },
      find: ({ standing }) => openingsFor(standing.shell, { outline: doorOutline(width, height) }),
    };
  }
  if (hatch !== undefined) {
    const read = readLength(hatch.trim());
    if (!read.ok || read.value <= 0)
      throw badInput(`--hatch: found ${hatch}, expected a diameter with its unit, such as "0.6 m"`);
    const diameter = read.value;
    return {
      title: 'Hatch',
      size: (lengths) => `${lengths.large(diameter)} across`,
      json: { hatch: { diameter } },
      find: ({ standing }) => hatchesFor(standing.shell, { diameter }),
    };
  }
  const outline = sectionOf(section ?? '');
  const span = (axis: 0 | 1): number =>
    Math.max(...outline.map((point) => point[axis])) -
    Math.min(...outline.map((point) => point[axis]));
  return {
    title: 'Passage',
    size: (lengths) =>
      `for a section ${lengths.large(span(0))} wide and ${lengths.large(span(1))} high`,
    json: { section: outline },
    find: ({ standing }) => openingsFor(standing.shell, { outline }),
  };
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

/** Corners across and up from the floor, anticlockwise and about the middle. */
function sectionOf(text: string): readonly ViewPoint[] {
  const points = text.split(';').map((point): ViewPoint | null => {
    const [u, v, more] = point.split(',').map((part) => readLength(part.trim()));
    return u?.ok && v?.ok && more === undefined ? [u.value, v.value] : null;
  });
  const known = points.filter((point) => point !== null);
  if (known.length !== points.length || known.length < 3)
    throw badInput(
      `--section: found ${text}, expected three or more corners "across, up" with units, such as "0 m, 0 m; 1.2 m, 0 m; 0.6 m, 1.5 m"`,
    );
  const across = known.map(([u]) => u);
  const middle = (Math.min(...across) + Math.max(...across)) / 2;
  const about = known.map(([u, v]): ViewPoint => [u - middle, v]);
  const outline = areaOf(about) < 0 ? about.reverse() : about;
  if (isCrossed(outline))
    throw badInput(`--section: found ${text}, expected an outline that does not cross itself`);
  return outline;
}

/** Whether an outline crosses itself, so that it has no inside. */
function isCrossed(outline: readonly ViewPoint[]): boolean {
  try {
    return convexParts(outline).length === 0;
  } catch (error) {
    if (error instanceof RangeError) return true;
    throw error;
  }
}

/** Openings by what was asked for. */
function ranked(
  { kinds, shape, standing, arrangement, loaded }: Chosen,
  openings: readonly Opening[],
  { rank, wind }: PlacesOptions,
): readonly Ranked[] {
  const families = familiesOf(kinds, shape.interchangeable);
  const familyOf = familyIndex(kinds, families);
  const windFrom = wind === undefined ? loaded.project?.wishes?.windFrom : (-wind * Math.PI) / 180;
  if (rank === 'away from wind' && windFrom === undefined)
    throw badInput(
      '--rank "away from wind": found no wind, expected --wind with degrees from the datum, or wishes.windFrom in the file',
    );
  const question = {
    family: Array.from(standing.shell.kind, (kind) => familyOf[kind] as number),
    short: arrangement.stock.map(({ short }) => short),
    ...(windFrom !== undefined && { windFrom }),
  };
  return rankOpenings(standing.shell, openings, question, rank ? [rank] : []);
}

/** One of each sort: openings that cost the same kinds and seams at the same courses, as far from the
 * wind, are alike. */
function distinct(chosen: Chosen, found: readonly Ranked[]): Ranked[] {
  const seen = new Set<string>();
  return found.filter(({ opening, figures }) => {
    const key = JSON.stringify([
      kindsOut(chosen, opening),
      opening.seamsCut,
      coursesOf(chosen, opening),
      figures.offWind?.toFixed(2),
    ]);
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

const how: Readonly<Record<Asked['title'], string>> = {
  Door: 'straight ahead on the line named, on the level of the lowest base hub',
  Hatch: 'square to the wall about a hub, a seam or a panel',
  Passage:
    'straight ahead on a level line, its lowest corner as high above the lowest base hub as given',
};

function doorReport(
  chosen: Chosen,
  { title, size }: Asked,
  list: readonly WithStiffness<Ranked>[],
  lengths: Lengths,
): readonly string[] {
  const what = `${title.toLowerCase()} ${size(lengths)}`;
  if (list.length === 0)
    return [
      heading(title),
      wrap(
        `No ${what} can be had in arrangement ${chosen.number}: the wall leans in too soon, or the shell would fall into pieces. Try a lower or narrower one.`,
        '',
      ),
    ];
  return [
    heading(title),
    wrap(`Where a ${what} may be in arrangement ${chosen.number}: ${how[title]}.`, ''),
    openingTable(chosen, list.slice(0, SHOWN), lengths),
    list.length > SHOWN ? `… and ${list.length - SHOWN} more (--json lists all)` : '',
    flagBlock('Stiffness is reckoned with:', partsOf(chosen).sources),
    caution(openingCaution),
  ];
}

function openingTable(
  chosen: Chosen,
  list: readonly WithStiffness<Ranked>[],
  lengths: Lengths,
): string {
  const isShort = list.some(({ figures }) => figures.saved > 0);
  const hasWind = list.some(({ figures }) => figures.offWind !== null);
  return table(
    [
      right('panels out'),
      ...(isShort ? [right('short saved')] : []),
      { head: 'kinds' },
      right('seams cut'),
      right('hubs gone'),
      right('stiffness left'),
      ...(hasWind ? [right('off the wind')] : []),
      right('from, to'),
      right('edge to frame'),
      { head: 'places' },
    ],
    list.map(({ opening, figures, stiffness }) => [
      String(opening.places.length),
      ...(isShort ? [String(figures.saved)] : []),
      wrap(kindsOut(chosen, opening), '', 16),
      String(opening.seamsCut),
      String(opening.hubsFreed),
      stiffness === null ? '' : `${Math.round(100 * stiffness.kept)} %`,
      ...(hasWind ? [`${Math.round(((figures.offWind ?? 0) * 180) / Math.PI)}°`] : []),
      `${lengths.large(figures.sill)}\n${lengths.large(figures.top)}`,
      lengths.large(figures.edge),
      wrap(numbersOf(chosen, opening).join(' '), '', 24),
    ]),
  );
}

const numbersOf = ({ numbers }: Chosen, { places }: Opening): string[] =>
  places.map((p) => numbers.numbers[p] as string).sort();

const openingDocument = (
  chosen: Chosen,
  { opening, figures, stiffness }: WithStiffness<Ranked>,
): object => ({
  places: numbersOf(chosen, opening),
  azimuth: opening.passage.azimuth,
  pitch: opening.passage.pitch ?? 0,
  toBase: opening.toBase,
  ...figures,
  stiffnessKept: stiffness?.kept ?? null,
  reveal: opening.reveal.map(({ length }) => length),
});
