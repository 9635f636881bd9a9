// The floor from above: all of it, the part with headroom, things that fit where they stand furthest out,
// and where sound gathers.

import type { UseAnswer } from '../fitout/keeping-answer.ts';
import { floorWithHeadroom } from '../fitout/room.ts';
import type { FitoutSettings } from '../fitout/schema.ts';
import type { PlanPoint } from '../ground/base.ts';
import type { Shell } from '../shell/shell.ts';
import { circle, type Drawing, type Item, polygon, text } from './drawing.ts';
import type { FitoutSheetOptions } from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { groundSheets, plainRow } from './ground-plan.ts';
import { largeFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';

const caution = 'Sizes from hub to hub, less the flanges entered: measure before you buy.';

/** The sheet; one at least. */
export function roomSheets(
  drawn: {
    readonly shell: Shell;
    readonly floor: number;
    readonly settings: FitoutSettings;
    readonly use: UseAnswer;
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, floor, settings, use } = drawn;
  const shown = options.lengths ?? 'metric';
  const all = floorWithHeadroom(shell, floor, 0);
  const high = floorWithHeadroom(shell, floor, settings.use.headroom, settings.seams.depth);
  const boxes = settings.use.boxes.map((box) => ({
    ...box,
    room: use.boxes.find(({ name }) => name === box.name)?.room ?? null,
  }));
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'The floor',
    remark: `${use.floorArea.toFixed(1)} m², ${use.headroomArea.toFixed(1)} m² with ${largeFirst(settings.use.headroom, shown)} of headroom`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      'Bold: the floor. Dashed: where there is headroom. Things stand as far out as they go, each by itself.',
      `Sound of somebody ${largeFirst(settings.use.soundOff, shown)} off the sphere’s centre gathers ${largeFirst(use.focus, shown)} beyond it.`,
    ],
    points: all,
    plan: (placing): Item[] => [
      polygon(all.map(placing.at), { weight: 'bold' }),
      ...(high.length > 2
        ? [polygon(high.map(placing.at), { weight: 'light', dash: 'dashed' })]
        : []),
      ...boxes.flatMap(({ name, length, depth, room }): Item[] => {
        if (room === null) return [];
        const out = Math.max(0, room.out);
        const [c, s] = [Math.cos(room.azimuth), Math.sin(room.azimuth)];
        const spot = (along: number, across: number): PlanPoint => [
          c * (out + along) - s * across,
          s * (out + along) + c * across,
        ];
        const corners = [
          spot(-depth / 2, -length / 2),
          spot(depth / 2, -length / 2),
          spot(depth / 2, length / 2),
          spot(-depth / 2, length / 2),
        ];
        return [
          polygon(corners.map(placing.at), { weight: 'medium', ink: 'accent' }),
          text(placing.at(spot(0, 0)), name, 2.8, { anchor: 'middle', halo: 0.6 }),
        ];
      }),
      circle(placing.at([0, 0]), 1.2, { weight: 'light' }),
    ],
    columns: [
      { name: 'thing', share: 0.5, align: 'start' },
      { name: 'its middle from the axis', share: 0.5, align: 'end' },
    ],
    rows: boxes.map(({ name, room }) =>
      plainRow(
        [name, room === null ? 'does not fit' : largeFirst(Math.max(0, room.out), shown)],
        room === null,
      ),
    ),
  });
}
