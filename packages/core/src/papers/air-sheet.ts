// Air and wet in section: where air comes in low and goes out high, and where rain comes down.

import type { AirAnswer } from '../fitout/keeping-answer.ts';
import { AIR_SOURCES } from '../fitout/vents.ts';
import type { Shell } from '../shell/shell.ts';
import { type Drawing, type Item, line, type Point, polygon, text } from './drawing.ts';
import { type FitoutSheetOptions, upright } from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { groundSheets, plainRow, sourceNotes } from './ground-plan.ts';
import { largeFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';
import { sectionOf } from './swing-sheet.ts';

const caution =
  'An estimate without wind. Nets in the vents, nothing that shuts them; what burns fuel needs air of its own and somebody’s word that decides.';

/** The sheet; one at least. */
export function airSheets(
  drawn: { readonly shell: Shell; readonly floor: number; readonly air: AirAnswer },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, floor, air } = drawn;
  const shown = options.lengths ?? 'metric';
  // Just off the datum's plane, so that no hub lies in it.
  const cut = sectionOf(shell, [0, 0, 0], 0.01);
  const ends = cut.flat();
  const area =
    air.ventArea === null
      ? 'none: nothing drives the air'
      : shown === 'metric'
        ? `${(1e4 * air.ventArea).toFixed(0)} cm²`
        : `${(air.ventArea / 0.0254 ** 2).toFixed(0)} in²`;
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Air and wet',
    remark: `Section along the datum, ${largeFirst(air.between, shown)} from low to high`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      'Vents as low and as high as they go; as much area high as low, more does nothing.',
      ...sourceNotes(AIR_SOURCES),
    ],
    points: [...ends.map(upright), [floor, 0]],
    plan: (placing): Item[] => {
      const at = (point: Point): Point => placing.at(upright(point));
      const x = ends.map(([right]) => right);
      const low: Point = [Math.min(...x), floor + 0.12 * air.between];
      const high: Point = [0, floor + air.between];
      return [
        ...cut.map(([a, b]) => line(at(a), at(b), { weight: 'bold' })),
        line(at([Math.min(...x) - 0.3, floor]), at([Math.max(...x) + 0.3, floor]), {
          weight: 'medium',
        }),
        ...arrow(at([low[0] - 0.35, low[1]]), at([low[0] + 0.35, low[1]])),
        ...arrow(at([high[0], high[1] - 0.3]), at([high[0], high[1] + 0.2])),
        line(at([low[0] + 0.5, low[1]]), at([high[0], high[1] - 0.4]), {
          weight: 'hair',
          dash: 'dashed',
          ink: 'accent',
        }),
        text(at([low[0] + 0.5, low[1] - 0.1]), `in, ${area}`, 3, { halo: 0.8 }),
        text(at([high[0] + 0.25, high[1] - 0.25]), `out, ${area}`, 3, { halo: 0.8 }),
      ];
    },
    columns: [
      { name: 'what', share: 0.45, align: 'start' },
      { name: 'how much', share: 0.55, align: 'end' },
    ],
    rows: [
      plainRow(['vents, each', area]),
      ...(air.drain === null
        ? []
        : [
            plainRow(['rain at the ring', `${air.drain.all.toFixed(2)} L/s`]),
            plainRow(['rain a metre', `${air.drain.perMetre.toFixed(3)} L/s`]),
          ]),
      ...(air.drips === null
        ? []
        : [
            plainRow(
              ['drips inside', `${air.drips.hours} of ${air.drips.of} h`],
              air.drips.hours > 0,
            ),
          ]),
    ],
  });
}

function arrow(from: Point, to: Point): Item[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const k = 1.4 / Math.hypot(dx, dy);
  return [
    line(from, to, { weight: 'medium', ink: 'accent' }),
    polygon(
      [
        to,
        [to[0] - 1.8 * k * dx - 0.7 * k * dy, to[1] - 1.8 * k * dy + 0.7 * k * dx],
        [to[0] - 1.8 * k * dx + 0.7 * k * dy, to[1] - 1.8 * k * dy - 0.7 * k * dx],
      ],
      { weight: 'thin', ink: 'accent' },
      { tint: '#bf3b0b', hatch: null },
    ),
  ];
}
