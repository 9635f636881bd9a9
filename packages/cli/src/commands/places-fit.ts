// `shellraise places --fit`: the best shells that the stock can stand, by the wishes of the file.

import {
  defaultWishes,
  type Fit,
  type FitAnswer,
  infillOf,
  type Kind,
  standingShell,
  type Wishes,
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
  table,
  wrap,
} from '../terminal.ts';
import { severalShapes, standCaution } from './places.ts';

/** Seconds that the fitting may take. */
const SECONDS = 60;

/** Runs the command; sets exit code 1 where the wishes can't be kept. */
export async function placesFit(file: string, options: StandOptions): Promise<void> {
  const stood = await stand(file, options);
  const wishes = wishesOf(stood, options);
  const { interchangeable } = stood.shape;
  const { shell } = stood.shape;
  const { kinds } = stood;
  const answer = await fitting({ shell, kinds, wishes, interchangeable, seconds: SECONDS });
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
  if (!best) return [...head, noFit(answer)];
  return [
    ...head,
    proofText(answer),
    fitTable(answer.fits, lengths),
    gotTable(stood, best),
    infillText(stood, best, lengths),
    caution(standCaution),
  ];
}

function wishesText(wishes: Wishes, lengths: Lengths): string {
  const { spares, mended, mostGaps, mostBought, flatBase } = wishes;
  const limits = [
    mended ? 'panels to be mended may be used' : 'good panels only',
    mostGaps > 0 ? `up to ${count(mostGaps, 'place')} left open` : 'no place left open',
    ...(spares > 0 ? [`${count(spares, 'spare')} of each kind kept aside`] : []),
    ...(mostBought === undefined ? [] : [`at most ${count(mostBought, 'panel')} bought`]),
    ...(flatBase ? ['a level base ring'] : []),
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

const words: Readonly<Record<FitAnswer['conflict'][number], string>> = {
  flatBase: 'a level base ring',
  leastHeight: 'the least height',
  leastFloor: 'the least floor',
  mostFloor: 'the largest floor',
  mostBought: 'the most panels bought',
};

function noFit({ reason, conflict }: FitAnswer): string {
  const which = conflict.map((one) => words[one]);
  const told = which.length > 0 ? ` These can't be kept together: ${which.join(', ')}.` : '';
  return paint.bold(wrap(`Nothing can stand as wished: ${reason}.${told}`, ''));
}

function proofText({ proved, tried, outlines }: FitAnswer): string {
  const text = proved
    ? `Proved: none of the ${outlines} ways up and cuts does better by these wishes.`
    : `The best found in the time (${tried} of ${outlines} ways up and cuts filled); not proved.`;
  return paint.bold(wrap(text, ''));
}

function fitTable(fits: readonly Fit[], lengths: Lengths): string {
  const right = (head: string) => ({ head, align: 'right' as const });
  return table(
    [
      right(''),
      right('height'),
      right('floor across'),
      right('panels'),
      right('to buy'),
      right('to mend'),
      right('left open'),
      { head: 'crown' },
      { head: 'base' },
    ],
    fits.map(({ way, arrangement: { cut }, bought, mended, gaps }, i) => [
      i === 0 ? 'best' : String(i + 1),
      lengths.large(cut.height),
      lengths.large(2 * cut.floor.mean),
      String(cut.places.length - gaps),
      String(bought),
      String(mended),
      String(gaps),
      `${way.at} of ${way.kinds.join(' ')}`,
      cut.flat ? 'level' : 'ragged',
    ]),
  );
}

/** Where the panels of the best fit come from, kind by kind, where not all are good ones. */
function gotTable({ shape, kinds }: Stood, { arrangement, sources }: Fit): string {
  const rows = new Map<string, { mended: number; bought: number; open: number }>();
  arrangement.cut.places.forEach((p, i) => {
    const source = sources[i];
    if (source === undefined || source === 'good') return;
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

function infillText({ shape }: Stood, { way, arrangement }: Fit, lengths: Lengths): string {
  const { shell } = standingShell(shape.shell, way, arrangement.cut);
  return bullets(
    'The base ring is ragged; these close it down to the ground:',
    infillOf(shell).map(
      ({ sides, count: n }) =>
        `${n} × ${lengths.sides(sides)} ${lengths.unit}, the first side on the ground`,
    ),
  );
}

function fitDocument({ shape, kinds }: Stood, wishes: Wishes, answer: FitAnswer): object {
  const idOf = (place: number): string => (kinds[shape.shell.kind[place] as number] as Kind).id;
  const { status, reason, proved, tried, outlines, conflict, fits } = answer;
  return {
    wishes,
    status,
    reason,
    proved,
    tried,
    outlines,
    conflict,
    fits: fits.map(({ way, arrangement: { cut }, sources, bought, mended, gaps }) => ({
      crown: { at: way.at, kinds: way.kinds, orbit: way.orbit },
      height: cut.height,
      floorDiameter: 2 * cut.floor.mean,
      flat: cut.flat,
      panels: cut.places.length - gaps,
      bought,
      mended,
      gaps,
      places: Array.from(cut.places, (place, i) => ({ kind: idOf(place), source: sources[i] })),
      infill: infillOf(standingShell(shape.shell, way, cut).shell),
    })),
    cautions: [standCaution],
  };
}
