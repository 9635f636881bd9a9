// `shellraise places --second`: what the panels that an arrangement leaves over can stand.

import { bestSplit, type Kind, type SecondShell, type Split, secondShells } from '@shellraise/core';
import { type Chosen, choose } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { StandOptions } from '../options.ts';
import { caution, heading, paint, print, printJson, table, wrap } from '../terminal.ts';
import { standCaution } from './places.ts';

/** Runs the command; sets exit code 1 where nothing can be made of the leftovers. */
export async function placesSecond(file: string, options: StandOptions): Promise<void> {
  const chosen = await choose(file, options);
  const { kinds, shape } = chosen;
  const asked = { interchangeable: shape.interchangeable };
  const left = leftOf(chosen);
  const found = secondShells(shape.shell, kinds, left, asked);
  const stock = kinds.map((kind) => kind.good);
  const split = bestSplit(shape.shell, kinds, stock, asked);
  if (found.length === 0) process.exitCode = 1;
  if (options.json)
    printJson({
      left: leftDocument(kinds, left),
      second: found.map(one),
      split: splitDocument(split),
      cautions: [standCaution],
    });
  else print(...secondReport(chosen, left, found, split, lengthsIn(options.lengths)));
}

/** Kind → good panels that the arrangement leaves over. */
function leftOf({ kinds, standing }: Chosen): number[] {
  const places = kinds.map(() => 0);
  for (const kind of standing.shell.kind) places[kind] = (places[kind] as number) + 1;
  return kinds.map((kind, k) => Math.max(0, kind.good - (places[k] as number)));
}

function secondReport(
  { number }: Chosen,
  left: readonly number[],
  found: readonly SecondShell[],
  split: Split | null,
  lengths: Lengths,
): readonly string[] {
  const panels = left.reduce((sum, n) => sum + n, 0);
  return [
    heading('A second shell'),
    wrap(
      found.length === 0
        ? `Arrangement ${number} leaves ${panels} good panels: nothing stands of them.`
        : `Arrangement ${number} leaves ${panels} good panels. Of them, or with one or two more, can stand:`,
      '',
    ),
    secondTable(found, lengths),
    splitText(split, lengths),
    found.length > 0 ? caution(standCaution) : '',
  ];
}

function secondTable(found: readonly SecondShell[], lengths: Lengths): string {
  const right = (head: string) => ({ head, align: 'right' as const });
  return table(
    [
      { head: '' },
      right('height'),
      right('floor across'),
      right('panels'),
      { head: 'rim below' },
      { head: 'lacks' },
    ],
    found.map(({ what, cut, places, height, lacking }) => [
      what,
      lengths.large(height),
      lengths.large(2 * cut.floor.mean),
      String(places.length),
      cut.flat ? 'level' : `uneven by ${lengths.side(cut.baseZ.max - cut.baseZ.min)}`,
      lacking.map(({ kinds, panels }) => `${panels} of kind ${kinds}`).join(', ') || 'nothing',
    ]),
  );
}

function splitText(split: Split | null, lengths: Lengths): string {
  if (split === null) return '';
  const [low, high] = split.cuts.map((cut) => lengths.large(cut.height));
  return paint.bold(
    wrap(
      `Two shells at once out of all good panels, the lower as tall as can be: ${low} and ${high} high.`,
      '',
    ),
  );
}

const leftDocument = (kinds: readonly Kind[], left: readonly number[]): object =>
  Object.fromEntries(kinds.map((kind, k) => [kind.id, left[k]]));

const one = ({ what, way, cut, places, height, lacks, lacking }: SecondShell): object => ({
  what,
  crown: { at: way.at, kinds: way.kinds, orbit: way.orbit },
  height,
  floorDiameter: 2 * cut.floor.mean,
  flat: cut.flat,
  panels: places.length,
  lacks,
  lacking,
});

const splitDocument = (split: Split | null): object | null =>
  split && {
    shells: split.cuts.map((cut, i) => ({
      crown: { at: split.ways[i]?.at, kinds: split.ways[i]?.kinds, orbit: split.ways[i]?.orbit },
      height: cut.height,
      floorDiameter: 2 * cut.floor.mean,
      panels: cut.places.length,
    })),
  };
