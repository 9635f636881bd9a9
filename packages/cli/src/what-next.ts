// What to read or look at next, the star to lay out on the grass, what is free: the end of the shape
// report. Lengths in the units asked for; the engine's own words are in millimetres.

import type { GrassTrial, Identification, NextOutcome, NextReading } from '@shellraise/core';
import type { Lengths } from './lengths.ts';
import { bullets, caution, wrap } from './terminal.ts';

/** Readings told, at most. */
const TOLD = 3;

/** The blocks about what comes next; those with nothing to say are empty. */
export const whatNext = (found: Identification, lengths: Lengths): readonly string[] => [
  enoughText(found),
  nextBlock(found, lengths),
  freedomBlock(found, lengths),
  trialBlock(found, lengths),
];

const enoughText = ({ shapes, enough }: Identification): string =>
  shapes.length > 0 && enough
    ? wrap('Enough is measured: more readings would change nothing that matters.', '')
    : '';

function nextBlock({ next, enough }: Identification, lengths: Lengths): string {
  const title = enough ? 'If you want to be surer still:' : 'What to read or look at next:';
  return bullets(
    title,
    next.slice(0, TOLD).map((one) => nextText(one, lengths)),
  );
}

function nextText(one: NextReading, lengths: Lengths): string {
  const { outcomes } = one;
  const words = lengths.inWords(one.words);
  const told = outcomes.filter(({ length }) => length !== undefined);
  if (one.about !== 'shape' || told.length < 2) return words;
  const finds = told.map((outcome) => `${findText(outcome, lengths)}: ${shapeText(outcome)}`);
  return `${words} (${finds.join('; ')})`;
}

const findText = ({ find, length }: NextOutcome, lengths: Lengths): string =>
  length === undefined ? lengths.inWords(find) : lengths.fine(length);

/** The likeliest shape then; the last entry stands for none of those listed. */
function shapeText({ shapes }: NextOutcome): string {
  const most = Math.max(...shapes);
  const at = shapes.indexOf(most);
  const share = `${(100 * most).toFixed(0)} %`;
  return at === shapes.length - 1 ? `none of these (${share})` : `shape ${at + 1} (${share})`;
}

function freedomBlock({ freedom, shapes }: Identification, lengths: Lengths): string {
  if (!freedom || shapes.length < 2) return '';
  return bullets('Settled whichever shape it is:', freedom.settled.map(lengths.inWords));
}

function trialBlock({ trial }: Identification, lengths: Lengths): string {
  if (trial === null) return '';
  return [
    wrap(trialText(trial, lengths), ''),
    caution(
      'Panels are heavy and catch the wind: two people to each, on level ground, nobody under a panel that stands.',
    ),
  ].join('\n');
}

function trialText({ around, gap, gapSd, most }: GrassTrial, lengths: Lengths): string {
  const run = around.map(({ kind, side }) => `${kind} (side ${side + 1})`).join(', ');
  return `Before anyone commits, lay one star out flat on the grass, anticlockwise with the outer faces up: kind ${run}; the side named starts at the middle, each panel against the one before. Between the last and the first a gap of ${lengths.fine(gap)} ± ${lengths.small(gapSd)} is left at the far end. Beyond ${lengths.fine(most)} the kinds do not belong together as told, or a side is wrong: measure that star again.`;
}
