// The flat plan of what was noted: panels in place tinted, seams by their pass, plates as filled hubs;
// what was forgotten in the accent. Millimetres of the drawing, x right, y down.

import {
  type Fill,
  type Forgotten,
  type Item,
  inkColours,
  type Point,
  type RecordPlan,
  type RecordState,
  type Stroke,
  tints,
} from '@shellraise/core';
import { planLayers } from '../../drawing/plan-view/recolour.ts';
import type { PlanPicture } from '../../engine/drawings.ts';
import type { Noting } from '../../record/next-state.ts';
import { seamStrokes, sidePoints } from '../raising/stage-items.ts';

/** How places are filled. */
export const recordFills = {
  placed: { tint: tints.mist, hatch: null },
  next: { tint: tints.rose, hatch: null },
  empty: { tint: null, hatch: null },
} as const satisfies Readonly<Record<string, Fill>>;

/** What is drawn. */
export interface RecordScene {
  readonly plan: RecordPlan;
  readonly state: RecordState;
  readonly forgotten: readonly Forgotten[];
  readonly noting: Noting;
  readonly leftOut: readonly number[];
  /** Places whose panels go up next. */
  readonly next: readonly number[];
  readonly picture: PlanPicture;
}

const empty: Stroke = { weight: 'light', dash: 'dotted', ink: 'grey' };
const rim: Stroke = { weight: 'medium' };
/** A seam between two panels of which nobody noted a bolt. */
const unbolted: Stroke = { weight: 'light', dash: 'dotted' };
const sealed: Stroke = { weight: 'heavy' };

/** The drawing's items: groups of places and labels as the plan view wants them, lines, hubs. */
export function recordItems(scene: RecordScene): Item[] {
  const { plan, picture, leftOut } = scene;
  const out = new Set(leftOut);
  const places = plan.places.map(
    (_, place): Item => ({
      type: 'group',
      data: { place: String(place) },
      items: out.has(place)
        ? []
        : [{ type: 'path', points: pointsOf(picture.outlines[place]), closed: true, stroke: null }],
    }),
  );
  return [...places, ...lines(scene, out), ...plates(scene), ...labels(scene, out)];
}

const pointsOf = (flat: Float64Array | undefined): Point[] =>
  Array.from({ length: (flat?.length ?? 0) / 2 }, (_, i) => [flat![2 * i]!, flat![2 * i + 1]!]);

function lines({ plan, state, forgotten, noting, picture }: RecordScene, out: Set<number>): Item[] {
  const { shell } = plan;
  const due = new Set(
    forgotten.filter(({ what }) => what !== 'missing plate').map(({ index }) => index),
  );
  const drawn: { order: number; item: Item }[] = [];
  const put = (side: number, stroke: Stroke, order: number): void => {
    const points = sidePoints(shell, picture, side);
    drawn.push({ order, item: { type: 'path', points, closed: false, stroke } });
  };
  const isIn = (place: number): boolean => state.placed[place] !== null && !out.has(place);
  plan.seamPlaces.forEach(([p, q], seam) => {
    if (out.has(p) && out.has(q)) return;
    const side = shell.seams[2 * seam]!;
    if (isIn(p) !== isIn(q)) put(side, rim, 2);
    else if (!isIn(p)) put(side, empty, 0);
    else if (noting === 'seal') put(side, state.sealed[seam] ? sealed : unbolted, 1);
    else {
      const pass = state.passes[seam]!;
      const own = pass === 'none' ? unbolted : seamStrokes[pass];
      put(side, due.has(seam) ? { ...own, ink: 'accent' } : own, due.has(seam) ? 3 : 1);
    }
  });
  shell.mate.forEach((mate, side) => {
    const place = shell.sidePlace[side]!;
    if (mate < 0 && !out.has(place)) put(side, isIn(place) ? rim : empty, isIn(place) ? 2 : 0);
  });
  return drawn.sort((a, b) => a.order - b.order).map(({ item }) => item);
}

/** Size of a plate and of a prop's foot, parts of the usual type. */
const PLATE = 0.34;
const FOOT = 0.62;

function plates({ plan, state, forgotten, noting, picture }: RecordScene): Item[] {
  const missing = new Set(
    forgotten.filter(({ what }) => what === 'missing plate').map(({ index }) => index),
  );
  return plan.hubs.flatMap((_, hub): Item[] => {
    const centre: Point = [picture.hubs[2 * hub]!, picture.hubs[2 * hub + 1]!];
    const ring = (radius: number, ink: 'ink' | 'accent', filled: boolean): Item => ({
      type: 'circle',
      centre,
      radius: radius * picture.type,
      stroke: { weight: 'medium', ink },
      fill: { tint: filled ? inkColours[ink] : inkColours.paper, hatch: null },
    });
    const items: Item[] = [];
    if (state.props[hub]) items.push(ring(FOOT, 'ink', false));
    if (state.plates[hub]) items.push(ring(PLATE, 'ink', true));
    else if (missing.has(hub) && noting !== 'seal') items.push(ring(PLATE, 'accent', false));
    return items;
  });
}

function labels({ state, picture, next }: RecordScene, out: Set<number>): Item[] {
  return planLayers(picture.items).labels.flatMap((item): Item[] => {
    if (item.type !== 'group') return [item];
    const place = Number(item.data?.label);
    if (out.has(place)) return [];
    const there = state.placed[place] !== null;
    const isNext = next.includes(place);
    const ink = there ? 'ink' : isNext ? 'accent' : 'grey';
    const texts = item.items.map(
      (one): Item => (one.type === 'text' ? { ...one, ink, bold: there || isNext } : one),
    );
    return [{ ...item, items: texts }];
  });
}
