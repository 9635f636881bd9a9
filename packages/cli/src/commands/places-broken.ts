// `shellraise places --broken 3-07`: what to do when a panel breaks, the least undoing first.

import {
  type CutDown,
  cutDown,
  type Kind,
  leftAfter,
  type Replacement,
  replacementsFor,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { keptBesides, keptOpenings, plainNumbers } from '../openings.ts';
import type { PlacesOptions } from '../options.ts';
import { bullets, caution, count, heading, paint, print, printJson, wrap } from '../terminal.ts';

/** What moving panels in a shell that stands must say beside it. */
const moveCaution =
  'Taking a panel out of a shell that stands can let it move: prop the hubs around it first, and leave any place that bears a tower, a prop or people alone. A licensed rigger or engineer decides.';

/** Runs the command; sets exit code 1 where only a new panel helps. */
export async function placesBroken(file: string, options: PlacesOptions): Promise<void> {
  const chosen = await choose(file, options);
  const { numbers } = chosen.numbers;
  const place = placeOf(numbers, options.broken ?? '');
  const built = builtOf(chosen, options.built);
  const kinds = fittedKinds(chosen);
  const spares = sparesOf(chosen);
  const ways = replacementsFor(
    chosen.standing.shell,
    kinds,
    place,
    { built, spares, fixed: new Set(keptOpenings(chosen)) },
    { interchangeable: chosen.shape.interchangeable },
  );
  const cuts = namedCuts(kinds, chosen.standing.shell.kind[place] as number, spares);
  if (ways.every((one) => one.act === 'make')) process.exitCode = 1;
  if (options.json) printJson(brokenDocument(chosen, place, built, ways, cuts));
  else print(...brokenReport(chosen, place, built, ways, cuts, lengthsIn(options.lengths)));
}

/** What could be cut down, by its kind's name. */
export type NamedCut = Omit<CutDown, 'kind'> & { readonly kind: string };

/** Kinds with panels to spare that the one wanted could be cut from, the most room first. */
export const namedCuts = (
  kinds: readonly Kind[],
  wanted: number,
  spares: readonly number[],
): readonly NamedCut[] =>
  cutDown(kinds, wanted, spares).map((cut) => ({ ...cut, kind: (kinds[cut.kind] as Kind).id }));

function placeOf(numbers: readonly string[], asked: string): number {
  const place = numbers.indexOf(asked);
  if (place < 0)
    throw badInput(
      `--broken: found ${asked}, expected a place number of this arrangement, such as ${numbers[0]}`,
    );
  return place;
}

/** Place → 1 where its panel is up: everything unless told up to which course. */
function builtOf({ standing }: Chosen, courses: number | undefined): Uint8Array {
  const { course } = standing.courses;
  return Uint8Array.from(course, (own) => (own <= (courses ?? Number.POSITIVE_INFINITY) ? 1 : 0));
}

/** Kind → good panels that no place of the arrangement needs, with all that the file decides. */
export const sparesOf = (chosen: Chosen): number[] =>
  leftAfter(chosen.standing.shell, chosen.kinds, plainNumbers(chosen), keptBesides(chosen));

function brokenReport(
  chosen: Chosen,
  place: number,
  built: Uint8Array,
  ways: readonly Replacement[],
  cuts: readonly NamedCut[],
  lengths: Lengths,
): readonly string[] {
  const number = chosen.numbers.numbers[place] as string;
  const { id } = chosen.kinds[chosen.standing.shell.kind[place] as number] as Kind;
  const up = built.reduce((sum, one) => sum + one, 0);
  return [
    heading(`${number} is broken`),
    wrap(`It takes a panel of kind ${id}; ${up} of ${built.length} panels are taken to be up.`, ''),
    ...ways.map((one, i) => wayText(chosen, one, i, lengths)),
    bullets(
      'To make one, a panel left over could be cut down, keeping one flange:',
      cuts.map((cut) => cutText(cut, lengths)),
    ),
    caution(moveCaution),
  ];
}

/** How a panel is cut down, keeping one flange. */
export const cutText = ({ kind, spare, trim }: NamedCut, lengths: Lengths): string =>
  `kind ${kind} (${spare} to spare): its side ${trim.keptSide + 1} becomes side ${trim.becomes + 1}, from ${lengths.side(trim.from)} on; ${lengths.side(trim.margin)} of room at the sides that are cut`;

function wayText({ numbers }: Chosen, one: Replacement, i: number, lengths: Lengths): string {
  const nameOf = (place: number): string => numbers.numbers[place] as string;
  if (one.act === 'make')
    return wrap(
      `${i + 1}. Buy or make one of kind ${one.lacks}: its card is among the papers ("shellraise papers"), its drawing by "shellraise places FILE --make ${one.lacks} --out FOLDER".`,
      '   ',
    );
  const steps = one.moves.map(({ from, to, kind, misfit }) => {
    const bend = misfit > 0 ? `, off by up to ${lengths.small(misfit)}` : '';
    return `kind ${kind} from ${from === null ? 'the spares' : nameOf(from)} into ${nameOf(to)}${bend}`;
  });
  const undone = one.undone === 0 ? 'nothing is undone' : `${count(one.undone, 'seam')} undone`;
  const holes =
    one.misfit === 0
      ? ''
      : one.holesTake
        ? ' The holes take it where bolts have 1 mm of room (common practice, no source).'
        : paint.yellow(' The holes do NOT take it without reaming.');
  const left =
    one.leaves === null ? '' : ` Then ${nameOf(one.leaves)} lacks its panel of kind ${one.lacks}.`;
  return wrap(`${i + 1}. ${steps.join('; then ')}: ${undone}.${left}${holes}`, '   ');
}

function brokenDocument(
  { numbers }: Chosen,
  place: number,
  built: Uint8Array,
  ways: readonly Replacement[],
  cuts: readonly NamedCut[],
): object {
  const nameOf = (at: number | null): string | null =>
    at === null ? null : (numbers.numbers[at] as string);
  return {
    broken: nameOf(place),
    built: built.reduce((sum, one) => sum + one, 0),
    ways: ways.map((one) => ({
      ...one,
      leaves: nameOf(one.leaves),
      moves: one.moves.map((move) => ({ ...move, from: nameOf(move.from), to: nameOf(move.to) })),
    })),
    cutDown: cuts,
    cautions: [moveCaution],
  };
}
