// The star of the trial on the grass, laid flat: its hub at the origin, panels anticlockwise as seen
// with their smooth faces up. Metres, x right, y up; the gap is closed about straight up.

import { type GrassTrial, type Kind, panelShape } from '@shellraise/core';

type Point = readonly [number, number];

/** One panel of the star. */
export interface LaidPanel {
  readonly kind: string;
  /** The hub's corner first, then anticlockwise. */
  readonly corners: readonly Point[];
  readonly middle: Point;
}

/** The star, and the two ends of the last seam that do not meet. */
export interface LaidStar {
  readonly panels: readonly LaidPanel[];
  readonly gap: readonly [Point, Point];
}

/** The star of a trial; null where a panel of it is none of these kinds or does not close. `sides`:
 * kind → its sides, as the net has them. */
export function layStar(
  { around }: Pick<GrassTrial, 'around'>,
  kinds: readonly Kind[],
  sides: readonly (readonly number[])[],
): LaidStar | null {
  const fans = around.map(({ kind, side }) => {
    const k = kinds.findIndex(({ id }) => id === kind);
    const own = sides[k] ?? kinds[k]?.sides;
    if (!own || own.length === 0) return null;
    const shape = panelShape([...own.slice(side), ...own.slice(0, side)]);
    return shape && { kind, corners: shape.corners, angle: shape.angles[0] as number };
  });
  if (fans.length < 2 || fans.some((fan) => fan === null)) return null;
  const whole = fans.map((fan) => fan as NonNullable<typeof fan>);
  const filled = whole.reduce((sum, { angle }) => sum + angle, 0);
  let turn = Math.PI / 2 + (2 * Math.PI - filled) / 2;
  const panels = whole.map(({ kind, corners, angle }): LaidPanel => {
    const laid = corners.map((corner) => turned(corner, turn));
    turn += angle;
    return { kind, corners: laid, middle: meanOf(laid) };
  });
  const [first, last] = [panels[0], panels.at(-1)];
  return { panels, gap: [first?.corners[1] as Point, last?.corners.at(-1) as Point] };
}

const turned = ([x, y]: Point, by: number): Point => [
  x * Math.cos(by) - y * Math.sin(by),
  x * Math.sin(by) + y * Math.cos(by),
];

const meanOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];
