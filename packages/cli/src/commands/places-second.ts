// `shellraise places --second`: what the panels that an arrangement leaves over can stand; with --out each
// of them drawn.

import {
  bestSplit,
  type Drawing,
  familiesOf,
  familyGroups,
  familyIndex,
  flatPlanSheet,
  groupsWithin,
  type Kind,
  kindsAfter,
  type RimLevel,
  rimLevels,
  type SecondShell,
  type SecondUse,
  type SmallBall,
  type Split,
  secondShells,
  smallBalls,
  standSecond,
  toSvg,
  useOf,
} from '@shellraise/core';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { keptBesides, plainNumbers } from '../openings.ts';
import type { PlacesOptions } from '../options.ts';
import {
  bullets,
  caution,
  heading,
  paint,
  print,
  printJson,
  right,
  table,
  wrap,
} from '../terminal.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { standCaution } from './places.ts';
import { sparesOf } from './places-broken.ts';

/** A lesser shell with what is told of it. */
interface Told {
  readonly shell: SecondShell;
  readonly use: SecondUse;
  readonly rims: readonly RimLevel[];
  /** Joined groups that need not be taken apart for it, so many at least. */
  readonly groups: number;
  /** Metres that it is taller than the tallest of its sort that lacks less; null for the first. */
  readonly adds: number | null;
}

/** Runs the command; sets exit code 1 where nothing can be made of the leftovers. */
export async function placesSecond(file: string, options: PlacesOptions): Promise<void> {
  const chosen = await choose(file, options);
  const { kinds, shape } = chosen;
  const asked = { interchangeable: shape.interchangeable };
  const left = sparesOf(chosen);
  const found = toldOf(chosen, secondShells(shape.shell, kinds, left, asked));
  const balls = smallBalls(fittedKinds(chosen), left, shape.radius);
  const stock = kindsAfter(
    chosen.standing.shell,
    kinds,
    plainNumbers(chosen),
    keptBesides(chosen),
  ).map((kind) => kind.good);
  const split = bestSplit(shape.shell, kinds, stock, asked);
  if (found.length + balls.length === 0) process.exitCode = 1;
  const written =
    options.out === undefined ? '' : writeSheets(chosen, found, split, options, options.out);
  if (options.json)
    printJson({
      left: leftDocument(kinds, left),
      second: found.map(one),
      balls,
      split: splitDocument(split),
      cautions: [standCaution],
    });
  else
    print(
      ...secondReport(chosen, left, found, balls, lengthsIn(options.lengths)),
      splitText(split, lengthsIn(options.lengths)),
      found.length + balls.length > 0 ? caution(standCaution) : '',
      written,
    );
}

function toldOf({ shape, kinds, loaded }: Chosen, found: readonly SecondShell[]): readonly Told[] {
  const familyOf = familyIndex(kinds, familiesOf(kinds, shape.interchangeable));
  const byId = new Map(kinds.map(({ id }, k) => [id, familyOf[k] as number]));
  const groups = familyGroups(loaded.question.groups, (id) => byId.get(id));
  const family = Array.from(shape.shell.kind, (kind) => familyOf[kind] as number);
  return found.map((shell) => {
    const lesser = found.filter((own) => own.what === shell.what && own.lacks < shell.lacks);
    return {
      shell,
      use: useOf(shell),
      rims: rimLevels(standSecond(shape.shell, shell).shell),
      groups: groupsWithin(shape.shell, family, groups, shell.places),
      adds:
        lesser.length === 0 ? null : shell.height - Math.max(...lesser.map(({ height }) => height)),
    };
  });
}

function secondReport(
  { number }: Chosen,
  left: readonly number[],
  found: readonly Told[],
  balls: readonly SmallBall[],
  lengths: Lengths,
): readonly string[] {
  const panels = left.reduce((sum, n) => sum + n, 0);
  return [
    heading('A second shell'),
    wrap(
      found.length === 0
        ? `Arrangement ${number} leaves ${panels} good panels: no part of the net stands of them.`
        : `Arrangement ${number} leaves ${panels} good panels. Of them, or with one or two more, can stand:`,
      '',
    ),
    secondTable(found, lengths),
    found.length === 0 ? '' : wrap(`${useWords} Shims are for level ground.`, ''),
    ballsText(balls, lengths),
  ];
}

function secondTable(found: readonly Told[], lengths: Lengths): string {
  const hasGroups = found.some(({ groups }) => groups > 0);
  return table(
    [
      { head: '' },
      { head: '' },
      right('height'),
      right('floor'),
      right('panels'),
      ...(hasGroups ? [right('groups whole')] : []),
      { head: 'rims' },
      { head: 'lacks' },
      right('adds'),
    ],
    found.map(({ shell: { what, cut, places, height, lacking }, use, rims, groups, adds }) => [
      use,
      what,
      lengths.large(height),
      lengths.large(2 * cut.floor.mean),
      String(places.length),
      ...(hasGroups ? [String(groups)] : []),
      rims.map((rim, i) => rimText(rim, i === 0, lengths)).join('\n'),
      lacking.map(({ kinds, panels }) => `${panels} of ${kinds}`).join(', ') || 'nothing',
      adds === null ? '' : lengths.large(adds),
    ]),
  );
}

/** The lowest rim stands on the ground, and on shims where it is not level; others are only told. */
const rimText = ({ inPlane, uneven }: RimLevel, isBase: boolean, lengths: Lengths): string =>
  inPlane ? 'level' : `${isBase ? 'shims to' : 'uneven by'} ${lengths.side(uneven)}`;

/** By what a shell is called a hut or a kerb. */
const useWords =
  'One can stand in a hut (1.9 m) and sit in a shelter (1.2 m); a wall (1 m) keeps wind off who sits: our own judgement by height alone, no source.';

/** Balls of one kind, closed on themselves. */
const ballsText = (balls: readonly SmallBall[], lengths: Lengths): string =>
  bullets(
    'Small whole shells of one kind; flanges must give or be bent by the degrees shown:',
    balls.map(({ kind, panels, shape, height, across, lacks, flangesOff }) => {
      const lacking = lacks === 0 ? '' : `, ${lacks} lacking`;
      const how = shape === 'regular' ? 'a ball' : 'two pyramids base to base';
      return `${how} of ${panels} panels of kind ${kind}${lacking}: ${lengths.large(height)} high, ${lengths.large(across)} across; flanges off by ${((flangesOff * 180) / Math.PI).toFixed(0)}° a seam`;
    }),
  );

function splitText(split: Split | null, lengths: Lengths): string {
  if (split === null) return '';
  const parts = split.cuts.map(
    ({ height, floor, places }) =>
      `a ${useOf({ what: 'cap', height })} ${lengths.large(height)} high and ${lengths.large(2 * floor.mean)} across, of ${places.length} panels`,
  );
  return paint.bold(
    wrap(
      `Two shells at once out of all good panels, the lower as tall as can be: ${parts.join('; and ')}.`,
      '',
    ),
  );
}

/** Flat plans of all, and of the two that share the heap. */
function writeSheets(
  chosen: Chosen,
  found: readonly Told[],
  split: Split | null,
  options: PlacesOptions,
  folder: string,
): string {
  const { shape, loaded, number } = chosen;
  const kinds = fittedKinds(chosen);
  const plan = (what: string, own: Pick<SecondShell, 'way' | 'places'>): Drawing => {
    const { shell, courses } = standSecond(shape.shell, own);
    return flatPlanSheet(
      shell,
      courses.numbers,
      kinds,
      {
        project: loaded.title,
        sheet: what,
        date: dateOf(options),
        assumes: `Numbers are its own. Panels left by arrangement ${number}.`,
        caution: standCaution,
      },
      { paper: 'A4', lengths: options.lengths },
    );
  };
  const sheets = [
    ...found.map(({ shell, use }, i): readonly [string, Drawing] => {
      const name = `second-${i + 1}-${use}`;
      return [name, plan(`Second shell ${i + 1}: ${use}`, shell)];
    }),
    ...(split?.cuts ?? []).map((cut, i): readonly [string, Drawing] => {
      const way = (split as Split).ways[i as 0 | 1];
      const use = useOf({ what: 'cap', height: cut.height });
      const title = `Two shells out of one heap, ${i + 1}: ${use}`;
      return [`split-${i + 1}-${use}`, plan(title, { way, places: cut.places })];
    }),
  ];
  const files = sheets.map(([name, sheet]) => ({ name: `${name}.svg`, text: toSvg(sheet) }));
  writeAll(folder, files);
  return writtenText(folder, files);
}

const leftDocument = (kinds: readonly Kind[], left: readonly number[]): object =>
  Object.fromEntries(kinds.map((kind, k) => [kind.id, left[k]]));

const one = ({ shell, use, rims, groups, adds }: Told): object => ({
  what: shell.what,
  use,
  crown: { at: shell.way.at, kinds: shell.way.kinds, orbit: shell.way.orbit },
  height: shell.height,
  floorDiameter: 2 * shell.cut.floor.mean,
  flat: shell.cut.flat,
  rims,
  panels: shell.places.length,
  groups,
  lacks: shell.lacks,
  lacking: shell.lacking,
  adds,
});

const splitDocument = (split: Split | null): object | null =>
  split && {
    shells: split.cuts.map((cut, i) => ({
      crown: { at: split.ways[i]?.at, kinds: split.ways[i]?.kinds, orbit: split.ways[i]?.orbit },
      use: useOf({ what: 'cap', height: cut.height }),
      height: cut.height,
      floorDiameter: 2 * cut.floor.mean,
      panels: cut.places.length,
    })),
  };
