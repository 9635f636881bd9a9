// The flat plan turned about the crown, and turned over for whoever stands inside: mirrored left to right
// first, then turned clockwise. Texts stay upright. Millimetres of the drawing, x right, y down, the crown
// at the origin.

import type { Item, Point } from '@shellraise/core';
import type { PlanPicture } from '../../engine/drawings.ts';

/** How the plan lies. */
export interface PlanTurn {
  /** Clockwise on the drawing. */
  readonly degrees: number;
  readonly mirrored: boolean;
}

/** As it is drawn: from above, the datum up. */
export const notTurned: PlanTurn = { degrees: 0, mirrored: false };

/** The plan so turned; the same picture where it is not. Its box is then one that holds it however it is
 * turned, so that it keeps its size on the way round. */
export function turnedPicture(picture: PlanPicture, { degrees, mirrored }: PlanTurn): PlanPicture {
  if (degrees % 360 === 0 && !mirrored) return picture;
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const point = ([x, y]: Point): Point => {
    const own = mirrored ? -x : x;
    return [c * own - s * y, s * own + c * y];
  };
  const flat = (points: Float64Array): Float64Array =>
    points.map((_, i) => {
      const even = i - (i % 2);
      return point([points[even]!, points[even + 1]!])[i % 2 === 0 ? 0 : 1];
    });
  const turn = (item: Item): Item => {
    if (item.type === 'group') return { ...item, items: item.items.map(turn) };
    if (item.type === 'path') return { ...item, points: item.points.map(point) };
    if (item.type === 'circle') return { ...item, centre: point(item.centre) };
    return { ...item, at: point(item.at) };
  };
  const far = picture.outlines.reduce((most, outline) => {
    let own = most;
    for (let i = 0; i < outline.length; i += 2)
      own = Math.max(own, Math.hypot(outline[i]!, outline[i + 1]!));
    return own;
  }, 0);
  return {
    ...picture,
    items: picture.items.map(turn),
    outlines: picture.outlines.map(flat),
    labels: flat(picture.labels),
    hubs: flat(picture.hubs),
    box: [-far, -far, 2 * far, 2 * far],
  };
}
