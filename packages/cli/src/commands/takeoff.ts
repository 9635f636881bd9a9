// `shellraise takeoff`: bolts, nuts, washers, plates and tape of one arrangement against the pile.

import {
  type BuyLine,
  countProof,
  type ProofRow,
  sizeWords,
  type TakeOff,
  takenFor,
  takeOff,
  takeOffNotes,
} from '@shellraise/core';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { keptOpenings } from '../openings.ts';
import type { StandOptions } from '../options.ts';
import {
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
import { severalShapes } from './places.ts';

/** Runs the command. A list that has to leave bolts out says so; it is no failure. */
export async function takeoff(file: string, options: StandOptions): Promise<void> {
  const chosen = await choose(file, options);
  const list = takeOffOf(chosen);
  if (options.json) printJson(takeoffDocument(chosen, list, options));
  else print(...takeoffReport(chosen, list, options, lengthsIn(options.lengths)));
}

/** The take-off of an arrangement, by the settings and hardware of its project. */
export const takeOffOf = (chosen: Chosen): TakeOff => {
  const { shell } = chosen.standing;
  const { hardware, takeoff, holes } = chosen.loaded;
  return takeOff(shell, fittedKinds(chosen), hardware, takeoff, holes);
};

/** The proof of an arrangement's count; `list` is its take-off. */
export const proofOf = (chosen: Chosen, list = takeOffOf(chosen)): readonly ProofRow[] => {
  const { takeoff, holes } = chosen.loaded;
  return countProof(chosen.standing.shell, fittedKinds(chosen), list, takeoff, holes);
};

/** The blocks of the report. */
export function takeoffReport(
  chosen: Chosen,
  list: TakeOff,
  options: Pick<StandOptions, 'shape'>,
  lengths: Lengths,
): readonly string[] {
  return [
    heading(`Take-off of arrangement ${chosen.number}`),
    severalShapes(chosen.found.shapes.length, options.shape),
    wrap(taken(chosen), ''),
    accountText(list),
    seamTable(list, lengths),
    hubTable(list),
    buyTable(list),
    costText(list),
    warnings(list, chosen),
    caution(list.cautions.join(' ')),
  ];
}

/** What the list takes for granted; empty: nothing. */
const taken = (chosen: Chosen): string =>
  takenFor({ takeoff: chosen.loaded.project?.takeoff, leftOut: keptOpenings(chosen) });

function accountText({ account }: TakeOff): string {
  const { places, openSides, seams, hubs, agrees } = account;
  const check = agrees ? 'as the formulas have it' : paint.red('NOT as the formulas have it');
  return wrap(
    `${places} panels, ${openSides} open sides at the rim, ${seams.counted} bolted seams, ${hubs.counted} hubs; ${check}.`,
    '',
  );
}

function seamTable({ seams }: TakeOff, lengths: Lengths): string {
  return table(
    [right('seams of'), right('seams'), right('in all'), right('bolts'), { head: '' }],
    seams.map((size) => [
      lengths.side(size.length),
      String(size.seams),
      lengths.large(size.total),
      size.known === 0 ? '?' : String(size.bolts),
      size.known < size.seams ? paint.yellow(`holes unknown on ${size.seams - size.known}`) : '',
    ]),
  );
}

function hubTable({ hubs }: TakeOff): string {
  return table(
    [right('hubs of'), right('hubs'), { head: '' }],
    hubs.map((size) => [
      count(size.corners, 'corner'),
      String(size.hubs),
      size.rim ? 'at the rim' : '',
    ]),
  );
}

function buyTable({ lines }: TakeOff): string {
  return table(
    [
      { head: 'item' },
      right('need'),
      right('spare'),
      right('in hand'),
      right('short'),
      right('to buy'),
      right('packs'),
      right('cost'),
    ],
    lines.map((line) => [
      itemWords(line),
      amount(line.quantity),
      amount(line.spare),
      amount(line.inHand),
      line.short > 0 ? paint.red(amount(line.short)) : '0',
      amount(line.toBuy),
      packsWords(line),
      line.toBuy === 0 ? '' : line.cost === null ? '?' : line.cost.toFixed(2),
    ]),
  );
}

const itemWords = (line: BuyLine): string => `${line.item} ${sizeWords(line)}`.trim();

const practice = /common practice/;

/** Packs of more than one piece; starred where their size is nobody's statement. */
function packsWords({ packs, pack, notes }: BuyLine): string {
  if (packs === 0 || pack === 1) return '';
  return `${packs} × ${amount(pack)}${notes.some((note) => practice.test(note)) ? ' *' : ''}`;
}

/** What the table's star means, and what else is to be said of its lines. */
function lineNotes({ lines }: TakeOff): string[] {
  const starred = lines.some((line) => packsWords(line).endsWith('*'));
  const others = lines.flatMap((line) =>
    line.notes
      .filter((note) => note !== 'no price' && !practice.test(note))
      .map((note) => `${itemWords(line)}: ${note}.`),
  );
  return [...(starred ? ['* Pack size by common practice, no source.'] : []), ...others];
}

const amount = (value: number): string =>
  Number.isInteger(value) ? String(value) : value.toFixed(1);

function costText({ cost, costComplete, lines }: TakeOff): string {
  if (!lines.some((line: BuyLine) => line.toBuy > 0)) return 'Nothing to buy.';
  const priced = lines.some((line) => line.toBuy > 0 && line.cost !== null);
  if (!priced) return 'To buy: see the list; no prices are known.';
  return `To buy, where prices are known: ${cost.toFixed(2)}${costComplete ? '' : '; some lines have no price'}.`;
}

function warnings(list: TakeOff, { loaded }: Chosen): string {
  return [...lineNotes(list), ...takeOffNotes(list, loaded.hardware)]
    .map((note) => wrap(`- ${note}`, '  '))
    .join('\n');
}

function takeoffDocument(chosen: Chosen, list: TakeOff, options: StandOptions): object {
  const { shape, found } = chosen;
  return {
    shape: { number: options.shape, of: found.shapes.length, radius: shape.radius },
    arrangement: { number: chosen.number, of: chosen.list.arrangements.length },
    ...list,
    assumes: taken(chosen) === '' ? [] : [taken(chosen)],
  };
}
