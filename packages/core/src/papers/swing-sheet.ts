// The swing drawn in section: the shell cut upright through the mount along the azimuth where the dish comes
// nearest, the dish there and at both ends of its elevations, and the circle that it turns in.

import { type Dish, dishDepth, type Mount, pivotOf } from '../fitout/dish.ts';
import type { Swing } from '../fitout/swing.ts';
import { pointAt, type Vec3 } from '../math/vector.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import {
  circle,
  type Drawing,
  type Item,
  line,
  type Point,
  polygon,
  type Stroke,
  text,
} from './drawing.ts';
import { type FitoutSheetOptions, run, upright } from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type GroundPlacing, groundSheets, plainRow } from './ground-plan.ts';
import { largeFirst, lengthFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';

const caution =
  'An estimate from hub to hub: measure the clearance by hand on the standing shell, power off, before the dish is driven.';

/** What is drawn. */
export interface SwingDrawn {
  readonly shell: Shell;
  /** Numbers of the places. */
  readonly numbers: readonly string[];
  readonly dish: Dish;
  readonly mount: Mount;
  readonly floor: number;
  readonly margin: number;
  readonly swing: Swing;
}

/** The sheet; one at least. */
export function swingSheets(
  drawn: SwingDrawn,
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, numbers, dish, mount, floor, margin, swing } = drawn;
  const shown = options.lengths ?? 'metric';
  const { nearest, best, largest } = swing;
  const cut = sectionOf(shell, pivotOf(mount, floor), nearest.azimuth);
  const ends = cut.flat();
  const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(0)}°`;
  const where = (place: number): string => (place < 0 ? 'the floor' : (numbers[place] ?? ''));
  const rows = everyFew(swing.rows, 10);
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: swing.swings ? 'The dish swings' : 'The dish does not swing',
    remark: `Section through the mount at azimuth ${degrees(nearest.azimuth)}, where it comes nearest`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      `Dish of ${largeFirst(dish.diameter, shown)} on ${mount.kind}, ${largeFirst(mount.height, shown)} over the floor. Nearest: ${nearest.clearance < 0 ? `${lengthFirst(-nearest.clearance, shown)} through` : `${lengthFirst(nearest.clearance, shown)} from`} ${where(nearest.place)}, its ${nearest.part}, at elevation ${degrees(nearest.elevation)}; ${lengthFirst(margin, shown)} is asked for.`,
      largest > 0
        ? `Largest of this focal ratio on this mount: ${largeFirst(largest, shown)}; best height of the mount ${largeFirst(best.height, shown)}, for ${largeFirst(best.largest, shown)}.`
        : 'No dish at all swings on this mount.',
    ],
    points: [...ends.map(upright), [floor, 0]],
    plan: (placing) => items(drawn, cut, placing),
    columns: [
      { name: 'elevation', share: 0.22, align: 'start' },
      { name: 'nearest at', share: 0.26, align: 'end' },
      { name: 'clear', share: 0.26, align: 'end' },
      { name: 'of', share: 0.26, align: 'end' },
    ],
    rows: rows.map((row) =>
      plainRow(
        [
          degrees(row.elevation),
          degrees(row.azimuth),
          `${row.clearance < 0 ? '−' : ''}${lengthFirst(Math.abs(row.clearance), shown)}`,
          where(row.place),
        ],
        row.clearance < margin,
      ),
    ),
  });
}

/** Some of a list, evenly, both ends among them. */
function everyFew<T>(list: readonly T[], count: number): T[] {
  const few = Math.min(count, list.length);
  return Array.from(
    { length: few },
    (_, i) => list[Math.round((i * (list.length - 1)) / Math.max(1, few - 1))] as T,
  );
}

/** Where the upright plane through a point along an azimuth cuts the panels: lines, right (along the
 * azimuth, from the point) and up. */
export function sectionOf(shell: Shell, through: Vec3, azimuth: number): [Point, Point][] {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const off = (p: Vec3): number => -s * (p[0] - through[0]) + c * (p[1] - through[1]);
  const at = (p: Vec3): Point => [c * (p[0] - through[0]) + s * (p[1] - through[1]), p[2]];
  const lines: [Point, Point][] = [];
  for (let place = 0; place < placeCount(shell); place++) {
    const corners = hubsOf(shell, place as PlaceId).map((hub) => pointAt(shell.hubs, hub));
    const met: Point[] = [];
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % corners.length] as Vec3;
      const [a, b] = [off(p), off(q)];
      if (a >= 0 === b >= 0) return;
      const t = a / (a - b);
      met.push(at([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]));
    });
    if (met.length === 2) lines.push(met as [Point, Point]);
  }
  return lines;
}

function items(
  { dish, mount, floor, swing }: SwingDrawn,
  cut: readonly [Point, Point][],
  placing: GroundPlacing,
): Item[] {
  const at = (point: Point): Point => placing.at(upright(point));
  const pivot: Point = [0, floor + mount.height];
  const reach = cut.flat().map(([x]) => x);
  const k = 1000 / placing.scale;
  const turning = Math.max(
    Math.hypot(dish.vertexAhead + dishDepth(dish), dish.diameter / 2),
    Math.hypot(
      dish.vertexAhead + dish.focalRatio * dish.diameter + dish.feed.beyond,
      dish.feed.diameter / 2,
    ),
    Math.hypot(dish.back.behind, dish.back.diameter / 2),
  );
  const thin: Stroke = { weight: 'hair', dash: 'dashed', ink: 'grey' };
  return [
    ...cut.map(([a, b]) => line(at(a), at(b), { weight: 'bold' })),
    line(at([Math.min(...reach) - 0.3, floor]), at([Math.max(...reach) + 0.3, floor]), {
      weight: 'medium',
    }),
    circle(at(pivot), turning * k, { weight: 'hair', dash: 'dotted' }),
    line(at([0, floor]), at(pivot), { weight: 'bold' }),
    ...[mount.lowest, mount.highest].flatMap((one) => dishItems(dish, pivot, one, at, thin)),
    ...dishItems(dish, pivot, swing.nearest.elevation, at, {
      weight: 'medium',
      ...(swing.swings ? {} : { ink: 'accent' as const }),
    }),
    circle(at(pivot), 1, { weight: 'medium' }, { tint: '#ffffff', hatch: null }),
    text(
      [at([0, floor])[0], at([0, floor])[1] + 4],
      `azimuth ${((swing.nearest.azimuth * 180) / Math.PI).toFixed(0)}° →`,
      2.8,
      { anchor: 'start', ink: 'grey' },
    ),
  ];
}

/** A dish with feed and back as the section shows it. */
function dishItems(
  dish: Dish,
  pivot: Point,
  elevation: number,
  at: (point: Point) => Point,
  stroke: Stroke,
): Item[] {
  const [c, s] = [Math.cos(elevation), Math.sin(elevation)];
  const spot = (along: number, across: number): Point =>
    at([pivot[0] + c * along - s * across, pivot[1] + s * along + c * across]);
  const { diameter, focalRatio, vertexAhead, feed, back } = dish;
  const focal = focalRatio * diameter;
  const curve = Array.from({ length: 17 }, (_, i) => {
    const r = (diameter * (i - 8)) / 16;
    return spot(vertexAhead + (r * r) / (4 * focal), r);
  });
  const focus = vertexAhead + focal;
  const box = (from: number, to: number, width: number): Item =>
    polygon(
      [spot(from, -width / 2), spot(to, -width / 2), spot(to, width / 2), spot(from, width / 2)],
      stroke,
    );
  return [
    run(curve, stroke),
    run([curve[0] as Point, spot(focus, 0), curve[16] as Point], { ...stroke, weight: 'hair' }),
    box(focus, focus + feed.beyond, feed.diameter),
    box(-back.behind, 0, back.diameter),
    line(spot(0, 0), spot(vertexAhead, 0), stroke),
  ];
}
