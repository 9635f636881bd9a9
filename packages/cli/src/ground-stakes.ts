// The stake-out and the shims as tables.

import { type Peg, type TapeCheck, tapePlan } from '@shellraise/core';
import type { ChosenSite } from './ground-site.ts';
import type { Lengths } from './lengths.ts';
import { count, heading, paint, right, table, wrap } from './terminal.ts';

/** Radians as degrees to the hundredth. */
const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(2)}°`;

/** Where each stake stands, how two tapes find it, what to check, and what goes under each hub. */
export function stakeOutBlocks(site: ChosenSite, lengths: Lengths): string[] {
  const { base } = site.site;
  return [
    heading('Stake-out'),
    wrap(
      `${count(base.hubs.length, 'base hub')}, numbered clockwise seen from above from the datum; bearings clockwise from it, distances level. Highest base hub ${lengths.side(base.spread)} above the lowest.`,
      '',
    ),
    table(
      [right('hub'), right('bearing'), right('from centre'), right('to the next'), right('rise')],
      base.hubs.map((hub) => [
        String(hub.number),
        degrees(hub.bearing),
        lengths.side(hub.radius),
        lengths.side(hub.levelChord),
        lengths.side(hub.rise),
      ]),
    ),
    ...tapeBlocks(site, lengths),
    ...shimBlocks(site, lengths),
  ];
}

function tapeBlocks({ site, ground }: ChosenSite, lengths: Lengths): string[] {
  const { sd, length, datum } = ground.tape;
  const plan = tapePlan(site.base, {
    tapeSd: sd,
    tapeLength: length,
    ...(datum === null ? {} : { datum }),
  });
  const rows = plan.rounds.flatMap(({ pegs, stakes }) =>
    stakes.map((stake) => [
      String(stake.hub),
      pegWords(pegs[0]),
      lengths.side(stake.lengths[0]),
      pegWords(pegs[1]),
      lengths.side(stake.lengths[1]),
      stake.side,
      lengths.small(stake.sd),
    ]),
  );
  return [
    `By two tapes; the datum peg stands ${lengths.side(plan.datum)} from the centre.`,
    table(
      [
        right('hub'),
        { head: 'tape 1 on' },
        right('reads'),
        { head: 'tape 2 on' },
        right('reads'),
        { head: 'side' },
        right('sd'),
      ],
      rows,
    ),
    plan.unreached.length === 0
      ? ''
      : paint.red(`The tape is too short for hub ${plan.unreached.join(', ')}.`),
    'Then check:',
    table(
      [{ head: 'from' }, { head: 'to' }, { head: 'what' }, right('level'), right('may be off')],
      plan.checks.map((check: TapeCheck) => [
        pegWords(check.from),
        pegWords(check.to),
        check.what,
        lengths.side(check.length),
        lengths.small(check.allowed),
      ]),
    ),
  ];
}

const pegWords = (peg: Peg): string => (typeof peg === 'number' ? `stake ${peg}` : peg);

function shimBlocks({ shims, unread, ground }: ChosenSite, lengths: Lengths): string[] {
  if (shims === null)
    return [
      ground.levels.length === 0
        ? 'No levels are entered, so no shims are reckoned.'
        : wrap(
            `No shims are reckoned: the level is still to be read at hub ${unread.join(', ')}.`,
            '',
          ),
    ];
  return [
    heading('Shims'),
    table(
      [right('hub'), right('ground'), right('shim'), { head: 'pieces' }],
      shims.shims.map((shim) => [
        String(shim.hub),
        lengths.side(shim.ground),
        lengths.fine(shim.thickness),
        shim.pieces === null ? 'cut to measure' : shim.pieces.map(lengths.fine).join(' + '),
      ]),
    ),
    `Thickest ${lengths.fine(shims.max)}, all together ${lengths.side(shims.total)}.`,
  ];
}
