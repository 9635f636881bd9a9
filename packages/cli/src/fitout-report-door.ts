// The door and what must pass it, as text.

import type { DoorBracing, DoorFrame, LastPassing, PartBears } from '@shellraise/core';
import type { Carried } from './fitout-report.ts';
import { force } from './ground-loads.ts';
import type { Chosen } from './job.ts';
import type { Lengths } from './lengths.ts';
import { bullets, count, heading, paint } from './terminal.ts';

const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(0)}°`;

/** The blocks. */
export function doorBlocks(
  { numbers }: Chosen,
  { door, carried, last }: Carried,
  lengths: Lengths,
): string[] {
  const named = (place: number): string => numbers.numbers[place] ?? '';
  const passes = carried.map(({ name, answer, roughly }) =>
    answer.status === 'passes'
      ? `${name} passes: a way of ${count(answer.motion.length, 'pose')} was found, ${lengths.side(answer.clearance)} clear${roughly ? ' (a body that holds it)' : ''}`
      : answer.status === 'cannot pass'
        ? paint.red(`${name} cannot pass: ${answer.why}`)
        : paint.yellow(`${name}: no way was found: ${answer.why}`),
  );
  const through = bullets(passes.length + last.length === 0 ? '' : 'What must pass:', [
    ...passes,
    ...last.map((one) => lastRow(one, named)),
  ]);
  if (door === null)
    return [
      heading('Door'),
      'No panel is left out ("fitout", "door", or --door "1-08, 1-09, 1-10").',
      through,
    ];
  const { advice, frame, windFrom } = door;
  const lengthsTold = (['header', 'jamb', 'sill'] as const)
    .filter((part) => advice.lengths[part] > 0)
    .map((part) => `${part === 'jamb' ? 'jambs' : part} ${lengths.large(advice.lengths[part])}`);
  return [
    heading('Door'),
    bullets('', [
      `frame: ${lengthsTold.join(', ')}`,
      `props under ${count(advice.props.length, 'hub')} of its edge first, until the frame is in`,
      `then panels come out in this order, spares from then on: ${advice.cutOrder.map(named).join(', ')}`,
      ...(advice.held.length > 0
        ? [
            `after ${advice.held.map((step) => named(advice.cutOrder[step] ?? -1)).join(', ')} another panel hangs by one seam or none: hold it by hand`,
          ]
        : []),
      ...(windFrom === null || advice.offWind === null
        ? [
            'where the wind comes from is not entered ("wishes", "windFrom"): put it on the side away',
          ]
        : [
            `it looks ${degrees(advice.offWind)} away from where the wind comes from; 180° is best`,
          ]),
      ...(frame === null
        ? []
        : [
            ...costRows(frame),
            ...(frame.bracing === null ? [] : bracingRows(frame.bracing, advice.props, lengths)),
            ...(frame.supposed.length > 0
              ? [`supposed, nobody said: ${frame.supposed.join(', ')}`]
              : []),
          ]),
    ]),
    through,
  ];
}

/** The latest moment of one thing while the shell is built. */
function lastRow(
  { name, panels, last, after }: LastPassing,
  named: (place: number) => string,
): string {
  if (last === null)
    return paint.red(`${name}: no way was found, not even before the first panel stands`);
  if (after === null) return `${name} passes the finished shell, by its opening`;
  const newest = last.carried.placed.at(-1);
  return `${name}: the latest way that was found is with ${last.placed} of ${panels} panels placed${newest === undefined ? '' : `, up to ${named(newest)}`}; with one more none was found${after.answer.status === 'cannot pass' ? ` (${after.answer.why})` : ', which is no proof'}`;
}

function costRows({ stiffness, sag, buckling }: DoorFrame): string[] {
  return [
    `without a frame the shell keeps ${(100 * stiffness.kept).toFixed(0)} % of its stiffness`,
    ...(sag === null
      ? []
      : [
          `its edge sags by ${(1000 * sag.open).toFixed(1)} mm under the own weight (${(1000 * sag.whole).toFixed(1)} mm whole)`,
        ]),
    ...(buckling === null
      ? []
      : [
          `${(100 * Math.min(1, buckling.open / buckling.whole)).toFixed(0)} % is left of the load at which a perfect shell buckles; a real one does at a third or a fifth of it`,
        ]),
  ];
}

function bracingRows(
  { props, bears, sag, snow, section }: DoorBracing,
  hubs: readonly number[],
  lengths: Lengths,
): string[] {
  const pushes = props.map(({ push }) => force(push)).join(', ');
  return [
    ...(hubs.length === 0
      ? []
      : [`the props push ${pushes}, from the highest, under the own weight; cut in still air`]),
    ...bears.map((one) => bearsRow(one)),
    `that is under weight${snow > 0 ? ` and snow of ${(snow / 1000).toFixed(2)} kN/m²` : ' (no snow is entered)'}, in bars of ${lengths.fine(section.width)} by ${lengths.fine(section.depth)}${section.wall === null ? '' : `, wall ${lengths.fine(section.wall)}`}, without wind or a factor of safety; the edge then sags by ${(1000 * sag).toFixed(1)} mm`,
    ...(section.allowable === null
      ? [
          'the stress that they may bear is not entered ("fitout", "doorFrame", "allowable"): an engineer sizes them',
        ]
      : []),
  ];
}

function bearsRow({ part, axial, moment, area, modulus, used, aside }: PartBears): string {
  const wants =
    area === null || modulus === null
      ? ''
      : `; that wants ${(1e4 * area).toFixed(2)} cm² for the force alone and ${(1e6 * modulus).toFixed(1)} cm³ for the moment alone`;
  const takes =
    used === null ? '' : `; the bar named takes ${(100 * used).toFixed(0)} % of its stress`;
  const bends =
    aside > 0.2 ? `, ${(100 * aside).toFixed(0)} % of the push at which it bends aside` : '';
  return `${part === 'jamb' ? 'jambs bear' : `the ${part} bears`} ${axial < 0 ? 'a push' : 'a pull'} of ${force(Math.abs(axial))} and ${moment.toFixed(0)} N·m${wants}${takes}${bends}`;
}
