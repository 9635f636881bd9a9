// `shellraise shape`: every shell that the kinds close into.

import {
  hubCount,
  type Identification,
  type Kind,
  kindsOfShape,
  marksInNet,
  marksWords,
  placeCount,
  placesByKind,
  type Shape,
} from '@shellraise/core';
import { identification } from '../identification.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { type LoadedPile, loadPile } from '../load.ts';
import type { CommonOptions } from '../options.ts';
import { shapeDocument } from '../shape-document.ts';
import { conflictBlock, findingsOf } from '../shape-findings.ts';
import { bullets, count, heading, paint, print, printJson, table, wrap } from '../terminal.ts';
import { whatNext } from '../what-next.ts';

/** Runs the command; sets exit code 1 where nothing closes. */
export async function shape(file: string, options: CommonOptions): Promise<void> {
  const loaded = await loadPile(file, options);
  const found = await identification(loaded.question);
  if (found.shapes.length === 0) process.exitCode = 1;
  if (options.json) printJson(shapeDocument(found, loaded.kinds));
  else print(...shapeReport(found, loaded, lengthsIn(options.lengths)));
}

/** The blocks of the report. */
export function shapeReport(
  found: Identification,
  loaded: LoadedPile,
  lengths: Lengths,
): readonly string[] {
  if (found.shapes.length === 0) return noShape(found, lengths);
  return [
    heading(loaded.title || 'Shape'),
    headline(found),
    ...found.shapes.map((one, i) => shapeBlock(one, i, found, loaded.kinds, lengths)),
    marksBlock(found, loaded),
    settleBlock(found, lengths),
    ...whatNext(found, lengths),
    besidesBlock(found, lengths),
  ];
}

function noShape(found: Identification, lengths: Lengths): readonly string[] {
  const cut = found.complete ? '' : ' The search was cut short, so this is no proof.';
  return [
    `These kinds close into no shell that was found.${cut}`,
    bullets('', found.reasons.map(lengths.inWords)),
    conflictBlock(found),
    bullets('What to do next:', found.settle.map(lengths.inWords)),
  ];
}

function headline({ shapes, complete }: Identification): string {
  const alone = shapes.length === 1 && complete;
  const text = alone
    ? 'One shell fits, and it stands alone.'
    : shapes.length === 1
      ? 'One shell fits. The search was cut short: there may be more.'
      : `${shapes.length} shells fit; the tape alone does not say which it is.`;
  return paint.bold(text);
}

function shapeBlock(
  one: Shape,
  i: number,
  found: Identification,
  pileKinds: readonly Kind[],
  lengths: Lengths,
): string {
  const several = found.shapes.length > 1;
  const kinds = kindsOfShape(one, pileKinds);
  const facts = [
    [
      'radius',
      `${lengths.large(one.radius)} ± ${lengths.small(one.radiusSd)} (one standard deviation)`,
    ],
    ['across', lengths.large(2 * one.radius)],
    [one.closed ? 'whole ball' : 'part', wholeBall(one)],
    ['subdivision', subdivisionText(one)],
    ['side misfit', `${lengths.small(one.residual)} root mean square`],
    ['probability', `${percent(one.probability)}`],
  ];
  return [
    several ? paint.bold(`Shape ${i + 1} of ${found.shapes.length}`) : '',
    facts.map(([name, value]) => `  ${(name ?? '').padEnd(13)}${value}`).join('\n'),
    i === 0 || !sameStock(one, found.shapes[0]) ? stockTable(one, kinds, lengths) : '',
    suspectBlock(one, lengths),
    ...findingsOf(one, kinds, lengths),
    interchangeableBlock(one, lengths),
    several && one.apart !== '' ? wrap(`  Told apart by: ${one.apart}`, '  ') : '',
  ]
    .filter((block) => block !== '')
    .join('\n\n');
}

function wholeBall({ shell, closed }: Shape): string {
  const counts = `${count(placeCount(shell), 'place')}, ${count(hubCount(shell), 'hub')}`;
  return closed ? `${counts}, closed` : `${counts}, with an open rim`;
}

function subdivisionText({ subdivision }: Shape): string {
  if (subdivision === null) return 'none with a name';
  const { solid, b, c, division } = subdivision;
  const star = { icosahedron: 5, octahedron: 4, tetrahedron: 3 }[solid];
  return `${solid}, {3,${star}+}${b},${c}: ${b} and ${c} steps along a side, ${division}`;
}

function sameStock(a: Shape, b: Shape | undefined): boolean {
  const key = ({ shell }: Shape) => [...shell.kind].sort().join();
  return b !== undefined && key(a) === key(b);
}

function stockTable(one: Shape, kinds: readonly Kind[], lengths: Lengths): string {
  const places = placesByKind(one.shell, kinds.length);
  return table(
    [
      { head: 'kind' },
      { head: `sides as measured, ${lengths.unit}` },
      { head: `fitted, ${lengths.unit}` },
      { head: 'places', align: 'right' },
      { head: 'good', align: 'right' },
    ],
    kinds.flatMap((kind, k) =>
      one.strangers.includes(kind.id)
        ? []
        : [
            [
              kind.id,
              lengths.sides(kind.sides),
              lengths.sides(one.fittedSides[k] ?? []),
              String(places[k]),
              kind.counted ? String(kind.good) : '?',
            ],
          ],
    ),
  );
}

function suspectBlock({ suspects }: Shape, lengths: Lengths): string {
  if (suspects.length === 0) return '';
  const rows = suspects.map(({ kind, side, measured, expected }) => [
    kind,
    String(side + 1),
    lengths.fine(measured),
    lengths.fine(expected),
    lengths.off(measured - expected),
  ]);
  const columns = ['kind', 'side', 'measured', 'expected', 'off'];
  return `${paint.yellow('Suspect lengths; measure these again:')}\n${table(
    columns.map((head, i) => ({ head, align: i < 2 ? ('left' as const) : ('right' as const) })),
    rows,
  )}`;
}

function interchangeableBlock(
  { interchangeable, interchangeCosts }: Shape,
  lengths: Lengths,
): string {
  return interchangeable
    .map((kinds, i) => {
      const cost = interchangeCosts[i];
      const costs = cost === undefined ? '' : `, at a misfit of ${lengths.small(cost)} a side`;
      return wrap(
        `  Kinds ${kinds.join(' and ')} differ by less than the tape can tell; either may stand in the places of the other${costs}.`,
        '  ',
      );
    })
    .join('\n');
}

/** What the marks mean in the best shape. */
function marksBlock({ shapes }: Identification, { question, pile, worked }: LoadedPile): string {
  const [best] = shapes;
  if (!best?.closed) return '';
  const { kinds } = question;
  return bullets(
    'What the marks say in shape 1:',
    marksWords(marksInNet(best, kinds, pile, worked)),
  );
}

/** What the kinds that the best shape has no place for make on their own. */
function besidesBlock({ besides }: Identification, lengths: Lengths): string {
  const [other] = besides?.shapes ?? [];
  return other
    ? wrap(
        `The kinds that have no place in it close on their own: a second shell ${lengths.large(2 * other.radius)} across, ${count(placeCount(other.shell), 'place')}. Leave the first one’s kinds out of the file ("leaveOut") to go on with it.`,
        '',
      )
    : '';
}

const settleBlock = ({ settle }: Identification, lengths: Lengths): string =>
  bullets('To settle it:', settle.map(lengths.inWords));

const percent = (share: number): string =>
  share > 0.9995 ? 'over 99.9 %' : `${(100 * share).toFixed(1)} %`;
