// What a shape says of a hard pile, block by block: kinds measured wrong, kinds that are not of it,
// kinds that it wants, hands, the hub gap, the ground's cut.

import type { AddedKind, Identification, Kind, Mend, Shape, Stranger } from '@shellraise/core';
import type { Lengths } from './lengths.ts';
import { bullets, count, paint, table, wrap } from './terminal.ts';

/** The blocks for one shape; those with nothing to say are empty. `kinds` are those that its places
 * go by. */
export const findingsOf = (
  shape: Shape,
  kinds: readonly Kind[],
  lengths: Lengths,
): readonly string[] => [
  mendBlock(shape.mends, lengths),
  wantedBlock(shape, lengths),
  strangerBlock(shape, kinds, lengths),
  bullets('', [
    ...cutLines(shape, lengths),
    ...courseLines(shape, lengths),
    ...allowanceLines(shape, lengths),
    ...handLines(shape),
  ]),
];

function mendBlock(mends: readonly Mend[], lengths: Lengths): string {
  if (mends.length === 0) return '';
  return [
    paint.yellow('Kinds measured or written down wrong; the net says what they should read:'),
    ...mends.map((mend) => wrap(`- ${mendText(mend, lengths)}`, '  ')),
  ].join('\n');
}

const slips: Readonly<Record<Mend['slip'], (which: string) => string>> = {
  length: (which) => `${which} read wrong`,
  swapped: (which) => `${which} written down in each other’s place`,
  unit: (which) => `${which} read in one unit and written in another`,
  face: () => 'read from the other face, so its sides run the other way round',
  shift: () => 'every side off by one length, as by a broken hook',
};

const sidesOf = (sides: readonly number[]): string =>
  `${sides.length === 1 ? 'side' : 'sides'} ${sides.map((side) => side + 1).join(' and ')}`;

/** `Kind 4: side 2 read wrong: 1182 mm, should read 1103 mm.` */
function mendText({ kind, slip, sides, measured, expected }: Mend, lengths: Lengths): string {
  const which = sidesOf(sides);
  const told = sides.length > 0 ? sides : measured.map((_, side) => side);
  const row = (list: readonly number[]): string =>
    told.map((side) => lengths.fine(list[side] as number)).join(', ');
  return `Kind ${kind}: ${slips[slip](which)}: ${row(measured)}; should read ${row(expected)}.`;
}

function wantedBlock(shape: Shape, lengths: Lengths): string {
  const places = new Map<number, number>();
  for (const kind of shape.shell.kind) places.set(kind, (places.get(kind) ?? 0) + 1);
  const first = shape.fittedSides.length - shape.added.length;
  const wanted = shape.added.flatMap((one, i) =>
    one.why === 'wanted' ? [wantedRow(one, places.get(first + i) ?? 0, lengths)] : [],
  );
  if (wanted.length === 0) return '';
  return [
    paint.yellow('Kinds that the shell needs and the pile has none of:'),
    table(
      [
        { head: 'kind' },
        { head: `sides, hub to hub, ${lengths.unit}` },
        { head: 'known to', align: 'right' },
        { head: 'places', align: 'right' },
      ],
      wanted,
    ),
  ].join('\n');
}

const wantedRow = ({ kind }: AddedKind, places: number, lengths: Lengths): string[] => [
  kind.id,
  lengths.sides(kind.sides),
  `± ${lengths.small(Math.max(...kind.sideSds))}`,
  String(places),
];

function strangerBlock({ explained }: Shape, kinds: readonly Kind[], lengths: Lengths): string {
  return bullets(
    'Kinds that have no place in the ball:',
    explained.map((one) => `Kind ${one.kind}: ${strangerText(one, kinds, lengths)}.`),
  );
}

function strangerText(one: Stranger, kinds: readonly Kind[], lengths: Lengths): string {
  switch (one.as) {
    case 'cut':
      return `a panel of kind ${(kinds[one.from] as Kind).id} cut by the ground along its side ${one.cutSide + 1}, within ${lengths.small(one.misfit)}`;
    case 'course':
      return `of the straight course between the halves, ${lengths.side(one.height)} high, sides ${one.rimSides.map((side) => side + 1).join(' and ')} on the rims`;
    case 'misread':
      return `one more panel of kind ${(kinds[one.of] as Kind).id}, ${slips[one.slip](sidesOf(one.sides))}; should read ${lengths.sides(one.expected)}`;
    case 'other shell':
      return 'of another shell in the same heap (below)';
    case 'nothing':
      return 'a stranger: nothing here explains it; put it aside';
  }
}

function cutLines({ cut, radius }: Shape, lengths: Lengths): string[] {
  if (cut === null) return [];
  const where = cut.height < 0 ? 'below' : 'above';
  return [
    `The ground cut the lowest panels: its plane lies ${lengths.fine(Math.abs(cut.height))} ± ${lengths.small(cut.heightSd)} ${where} the ball’s centre, so the shell stands ${lengths.large(radius - cut.height)} high on a base circle of radius ${lengths.large(cut.baseRadius)}.`,
  ];
}

const courseLines = ({ course }: Shape, lengths: Lengths): string[] =>
  course === null
    ? []
    : [
        `Between two half balls stands a straight course, ${lengths.side(course.height)} high, ${count(course.panels, 'panel')} around.`,
      ];

function allowanceLines({ allowance }: Shape, lengths: Lengths): string[] {
  if (allowance === null) return [];
  const { value, sd, tellable } = allowance;
  return tellable
    ? [
        `Hub to hub is longer than measured by ${lengths.fine(value)} ± ${lengths.small(sd)} (one standard deviation), as the net says.`,
      ]
    : [
        `How much longer hub to hub is than measured cannot be told apart from the radius here: ± ${lengths.small(sd)}. What tells: the distance across a joined group between two of its outer corners, a hub plate’s radius, or the angle between two joined panels.`,
      ];
}

const handLines = ({ hands }: Shape): string[] =>
  hands === 'known'
    ? []
    : [
        'Nobody noted from which face the panels were read: the mirror image of the whole shell fits as well. One look at one panel settles it (see what to do next).',
      ];

/** Why laps or holes allow no net. */
export const conflictBlock = ({ conflicts }: Identification): string =>
  bullets(
    'Laps or holes that do not go together:',
    conflicts.map(({ words }) => words),
  );
