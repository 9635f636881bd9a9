// `shellraise places --fit`: the best shells that the stock can stand, by the wishes of the file.

import {
  type Demand,
  defaultWishes,
  type Fit,
  type FitAnswer,
  infillOf,
  type Kind,
  type Nearest,
  sawnBase,
  standingShell,
  type Wishes,
  withoutRagged,
} from '@shellraise/core';
import { fitting } from '../fitting.ts';
import { type Stood, stand } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { StandOptions } from '../options.ts';
import {
  bullets,
  caution,
  count,
  heading,
  paint,
  print,
  printJson,
  right,
  table,
  wrap,
} from '../terminal.ts';
import { severalShapes, standCaution } from './places.ts';
import { frameCaution } from './places-door.ts';
import { fitDocument } from './places-fit-document.ts';

/** Seconds that the fitting may take. */
const SECONDS = 60;

/** Runs the command; sets exit code 1 where the wishes can't be kept. */
export async function placesFit(file: string, options: StandOptions): Promise<void> {
  const stood = await stand(file, options);
  const wishes = wishesOf(stood, options);
  const { interchangeable } = stood.shape;
  const { shell } = stood.shape;
  const { kinds } = stood;
  const { groups } = stood.loaded.question;
  const asked = { shell, kinds, wishes, interchangeable, groups, seconds: SECONDS };
  const answer = await fitting(asked);
  if (answer.fits.length === 0) process.exitCode = 1;
  if (options.json) printJson(fitDocument(stood, wishes, answer));
  else print(...fitReport(stood, wishes, answer, options, lengthsIn(options.lengths)));
}

/** The wishes of the file; panels to be mended as the option says. */
function wishesOf({ loaded }: Stood, { repaired }: StandOptions): Wishes {
  const wishes = loaded.project?.wishes ?? defaultWishes;
  return repaired === undefined ? wishes : { ...wishes, mended: repaired };
}

function fitReport(
  stood: Stood,
  wishes: Wishes,
  answer: FitAnswer,
  options: StandOptions,
  lengths: Lengths,
): readonly string[] {
  const head = [
    heading('The best shell for this stock'),
    severalShapes(stood.found.shapes.length, options.shape),
    wrap(wishesText(wishes, lengths), ''),
  ];
  const [best] = answer.fits;
  if (!best) return [...head, noFit(answer, lengths)];
  return [
    ...head,
    proofText(answer),
    fitTable(answer.fits, lengths),
    gotTable(stood, best),
    doorText(stood, best, lengths),
    groupsText(stood, wishes, best),
    baseText(stood, best, lengths),
    caution([standCaution, ...(best.door ? [frameCaution] : [])].join(' ')),
  ];
}

function wishesText(wishes: Wishes, lengths: Lengths): string {
  const { spares, mended, mostGaps, mostBought, flatBase, door, mostParted } = wishes;
  const limits = [
    mended ? 'panels to be mended may be used' : 'good panels only',
    ...(wishes.mayCut ? ['the lowest panels may be sawn level'] : []),
    ...(wishes.leaning ? ['ways up off the crowns as well'] : []),
    mostGaps > 0 ? `up to ${count(mostGaps, 'place')} left open` : 'no place left open',
    ...(spares > 0 ? [`${count(spares, 'spare')} of each kind kept aside`] : []),
    ...(mostBought === undefined ? [] : [`at most ${count(mostBought, 'panel')} bought`]),
    ...(flatBase ? ['a level base ring'] : []),
    ...(door
      ? [`a door ${lengths.large(door.width)} wide and ${lengths.large(door.height)} high`]
      : []),
    ...(mostParted === undefined
      ? []
      : [`at most ${count(mostParted, 'joined group')} taken apart`]),
    ...lengthLimit('at least', 'high', wishes.leastHeight, lengths),
    ...lengthLimit('a floor of radius at least', '', wishes.leastFloor, lengths),
    ...lengthLimit('a base ring within a radius of', '', wishes.mostFloor, lengths),
  ];
  return `Wished for, in this order: ${wishes.order.join(', ')}; ${limits.join('; ')}.`;
}

const lengthLimit = (
  before: string,
  after: string,
  value: number | undefined,
  lengths: Lengths,
): string[] =>
  value === undefined ? [] : [`${before} ${lengths.large(value)} ${after}`.trimEnd()];

const words: Readonly<Record<Demand, string>> = {
  flatBase: 'a level base ring',
  leastHeight: 'the least height',
  leastFloor: 'the least floor',
  mostFloor: 'the largest floor',
  mostBought: 'the most panels bought',
  spares: 'the spares kept',
  door: 'the door',
  mostParted: 'the most groups taken apart',
};

function noFit({ reason, conflict, nearest }: FitAnswer, lengths: Lengths): string {
  const which = conflict.map((one) => words[one]);
  const told =
    which.length === 0
      ? ''
      : which.length === 1
        ? ` This cannot be had: ${which[0]}.`
        : ` These cannot be kept together: ${which.join(', ')}.`;
  const works = bullets(
    'With the other wishes kept, this works:',
    nearest.map((one) => nearestText(one, lengths)),
  );
  return [paint.bold(wrap(`Nothing can stand as wished: ${reason}.${told}`, '')), works]
    .filter((text) => text !== '')
    .join('\n');
}

/** What one wish could be. */
function nearestText(one: Nearest, lengths: Lengths): string {
  switch (one.demand) {
    case 'leastHeight':
      return `a height of ${lengths.large(one.value)}`;
    case 'leastFloor':
      return `a floor of radius ${lengths.large(one.value)} that is clear`;
    case 'mostFloor':
      return `a base ring within a radius of ${lengths.large(one.value)}`;
    case 'flatBase':
      return `a base ring uneven by ${lengths.side(one.value)}`;
    case 'mostBought':
      return `${count(one.value, 'panel')} bought`;
    case 'spares':
      return `${count(one.value, 'spare')} of each kind`;
    case 'mostParted':
      return `${count(one.value, 'joined group')} taken apart`;
    case 'door':
      return one.doors
        .map(
          ({ width, height }) =>
            `a door ${lengths.large(width)} wide and ${lengths.large(height)} high`,
        )
        .join(', or ');
  }
}

function proofText({ proved, tried, outlines }: FitAnswer): string {
  const text = proved
    ? `Proved: none of the ${outlines} ways up and cuts does better by these wishes.`
    : `The best found in the time (${tried} of ${outlines} ways up and cuts filled); not proved.`;
  return paint.bold(wrap(text, ''));
}

function fitTable(fits: readonly Fit[], lengths: Lengths): string {
  return table(
    [
      right(''),
      right('height'),
      right('floor across'),
      right('panels'),
      right('to buy'),
      right('to mend'),
      right('left open'),
      right('door'),
      { head: 'crown' },
      { head: 'base' },
    ],
    fits.map(({ way, arrangement: { cut }, bought, mended, gaps, door }, i) => [
      i === 0 ? 'best' : String(i + 1),
      lengths.large(cut.height),
      lengths.large(2 * cut.floor.mean),
      String(cut.places.length - gaps - (door?.places.length ?? 0)),
      String(bought),
      String(mended),
      String(gaps),
      door === null ? '' : String(door.places.length),
      `${way.at} of ${way.kinds.join(' ')}${way.lean ? `, ${tiltText(way.lean.by)} off` : ''}`,
      cut.flat ? 'level' : 'ragged',
    ]),
  );
}

/** An angle as people read it. */
const tiltText = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;

/** Where the panels of the best fit come from, kind by kind, where not all are good ones. */
function gotTable({ shape, kinds }: Stood, { arrangement, sources }: Fit): string {
  const rows = new Map<string, { mended: number; bought: number; open: number }>();
  arrangement.cut.places.forEach((p, i) => {
    const source = sources[i];
    if (source === undefined || source === 'good' || source === 'door') return;
    const { id } = kinds[shape.shell.kind[p] as number] as Kind;
    const row = rows.get(id) ?? { mended: 0, bought: 0, open: 0 };
    row[source]++;
    rows.set(id, row);
  });
  const heads = ['kind', 'to mend', 'to buy or make', 'left open'];
  return table(
    heads.map((head, i) => ({ head, align: i === 0 ? ('left' as const) : ('right' as const) })),
    [...rows].map(([id, row]) => [id, String(row.mended), String(row.bought), String(row.open)]),
  );
}

/** Which places the door takes, and what must be framed. */
function doorText({ shape }: Stood, { way, arrangement, door }: Fit, lengths: Lengths): string {
  if (door === null) return '';
  const { courses } = standingShell(shape.shell, way, arrangement.cut);
  const numbers = door.places.map((p) => courses.numbers[p] as string).sort();
  const edge = door.reveal.reduce((sum, { length }) => sum + length, 0);
  return wrap(
    `The door takes the places ${numbers.join(' ')}: ${count(door.seamsCut, 'seam')} fewer, ${count(door.hubsFreed, 'hub')} without panels, ${lengths.large(edge)} of edge to frame.`,
    '',
  );
}

/** Where the joined groups go, where a wish names them. */
function groupsText(
  { shape, loaded }: Stood,
  { order, mostParted }: Wishes,
  { way, arrangement, joined, parted }: Fit,
): string {
  if (!order.includes('groups joined') && mostParted === undefined) return '';
  const { courses, places } = standingShell(shape.shell, way, arrangement.cut);
  const numberOf = new Map(Array.from(places, (p, i) => [p, courses.numbers[i] as string]));
  const unsettled = loaded.worked.unsettledGroups.length;
  const note =
    unsettled > 0
      ? ` ${count(unsettled, 'sort')} of groups whose kinds are not settled could not be looked at.`
      : '';
  return [
    bullets(
      'Joined groups that stay so, and their places in turn (anticlockwise seen from outside):',
      joined.map(({ group, places: own }) => {
        const ids = loaded.question.groups[group]?.around ?? [];
        return `${ids.join(' ')}: ${own.map((p) => numberOf.get(p)).join(' ')}`;
      }),
    ),
    wrap(`${count(parted, 'joined group')} taken apart.${note}`, ''),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

/** How a ragged base comes down to the ground: new panels, a saw, or fewer places. */
function baseText({ shape, kinds }: Stood, { way, arrangement }: Fit, lengths: Lengths): string {
  const { shell, courses } = standingShell(shape.shell, way, arrangement.cut);
  const sawn = sawnBase(shell);
  const lower = withoutRagged(shell);
  const infill = bullets(
    'The base ring is ragged; these close it down to the ground:',
    infillOf(shell).map(
      ({ sides, count: n }) =>
        `${n} × ${lengths.sides(sides)} ${lengths.unit}, the first side on the ground`,
    ),
  );
  const saw = bullets(
    sawn === null
      ? ''
      : `Or sawn level ${lengths.large(sawn.height)} below the top, round a ring of radius ${lengths.large(sawn.radius.min)} to ${lengths.large(sawn.radius.max)} (the seams and their bolts there are then cut too):`,
    (sawn?.panels ?? []).map(
      ({ kind, sides, count: n }) =>
        `${n} × kind ${(kinds[kind] as Kind).id} down to ${lengths.sides(sides)} ${lengths.unit}, the sawn side first`,
    ),
  );
  const without =
    lower === null
      ? ''
      : wrap(
          `Or without ${numbersOf(courses.numbers, lower.leftOut)}: then it stands level, ${lengths.large(lower.height)} high.`,
          '',
        );
  return [infill, saw, without].filter((text) => text !== '').join('\n');
}

const numbersOf = (numbers: readonly string[], places: readonly number[]): string =>
  places.length > MOST_NAMED
    ? count(places.length, 'place')
    : places
        .map((p) => numbers[p] as string)
        .sort()
        .join(' ');

/** Places that are named one by one, at most. */
const MOST_NAMED = 20;
