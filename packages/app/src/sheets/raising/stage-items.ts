// The flat plan at a stage: panels that stand white, those that go up now tinted with a heavy outline,
// the rest dotted; seams by their pass, what changes in the stage in the accent; props as feet with
// their names. Millimetres of the drawing, x right, y down.

import {
  type Fill,
  type Item,
  inkColours,
  type Point,
  passAfter,
  type RaisingPlan,
  type SeamPassOrNone,
  type Shell,
  type Stroke,
  tints,
} from '@shellraise/core';
import { planLayers } from '../../drawing/plan-view/recolour.ts';
import type { PlanPicture } from '../../engine/drawings.ts';
import { propsAt } from './props-at.ts';

/** How the panels of a stage are filled. */
export const stageFills = {
  now: { tint: tints.rose, hatch: null },
  placed: { tint: tints.mist, hatch: null },
  later: { tint: null, hatch: null },
} as const satisfies Readonly<Record<string, Fill>>;

/** Where a place is in a stage. */
export type PlaceState = keyof typeof stageFills;

/** Place → where it is in the stage with this number. */
export function placeStates(plan: Pick<RaisingPlan, 'stages'>, number: number, places: number) {
  const state = new Array<PlaceState>(places).fill('later');
  const stage = plan.stages[number - 1];
  for (const place of stage?.placed ?? []) state[place] = 'placed';
  for (const place of stage?.pieces.flat() ?? []) state[place] = 'now';
  return state;
}

/** How a seam of a pass is drawn. */
export const seamStrokes: Readonly<Record<'finger' | 'snug' | 'final', Stroke>> = {
  finger: { weight: 'light', dash: 'dashed' },
  snug: { weight: 'light' },
  final: { weight: 'heavy' },
};

const later: Stroke = { weight: 'hair', dash: 'dotted', ink: 'grey' };
const rim: Stroke = { weight: 'medium' };
const nowRim: Stroke = { weight: 'bold', ink: 'accent' };

/** What is drawn. */
export interface StageScene {
  readonly shell: Shell;
  readonly plan: RaisingPlan;
  readonly number: number;
  readonly leftOut: readonly number[];
  readonly picture: PlanPicture;
}

/** The drawing's items: groups of places and labels as the plan view wants them, and lines. */
export function stageItems({ shell, plan, number, leftOut, picture }: StageScene): Item[] {
  const states = placeStates(plan, number, shell.kind.length);
  const out = new Set(leftOut);
  const places = states.map(
    (_, place): Item => ({
      type: 'group',
      data: { place: String(place) },
      items: out.has(place)
        ? []
        : [{ type: 'path', points: pointsOf(picture.outlines[place]), closed: true, stroke: null }],
    }),
  );
  return [
    ...places,
    ...lines(shell, plan, number, states, out, picture),
    ...propItems(plan, number, picture),
    ...labels(picture, states, out, taken(plan, number, picture)),
    ...propNames(plan, number, picture),
  ];
}

const pointsOf = (flat: Float64Array | undefined): Point[] =>
  Array.from({ length: (flat?.length ?? 0) / 2 }, (_, i) => [
    flat?.[2 * i] as number,
    flat?.[2 * i + 1] as number,
  ]);

function lines(
  shell: Shell,
  plan: RaisingPlan,
  number: number,
  states: readonly PlaceState[],
  out: ReadonlySet<number>,
  picture: PlanPicture,
): Item[] {
  const seams = shell.seams.length / 2;
  const pass = passAfter(plan.stages, number, seams);
  const before = passAfter(plan.stages, number - 1, seams);
  const drawn: { readonly order: number; readonly item: Item }[] = [];
  const put = (side: number, stroke: Stroke, order: number): void => {
    drawn.push({
      order,
      item: { type: 'path', points: sidePoints(shell, picture, side), closed: false, stroke },
    });
  };
  const isIn = (place: number): boolean => states[place] !== 'later' && !out.has(place);
  for (let i = 0; i < seams; i++) {
    const [a, b] = [shell.seams[2 * i] as number, shell.seams[2 * i + 1] as number];
    const [p, q] = [shell.sidePlace[a] as number, shell.sidePlace[b] as number];
    if (out.has(p) && out.has(q)) continue;
    const [first, second] = [isIn(p), isIn(q)];
    if (first && second) {
      const own = seamStroke(pass[i] ?? null, before[i] ?? null);
      put(a, own, own.ink === 'accent' ? 3 : 1);
    } else if (first || second) {
      const now = states[first ? p : q] === 'now';
      put(a, now ? nowRim : rim, now ? 4 : 2);
    } else put(a, later, 0);
  }
  shell.mate.forEach((mate, side) => {
    const place = shell.sidePlace[side] as number;
    if (mate >= 0 || out.has(place)) return;
    const now = states[place] === 'now';
    put(side, isIn(place) ? (now ? nowRim : rim) : later, isIn(place) ? (now ? 4 : 2) : 0);
  });
  return drawn.sort((a, b) => a.order - b.order).map(({ item }) => item);
}

/** A seam between two panels that stand; one without a bolt yet is drawn as finger-tight. */
function seamStroke(now: SeamPassOrNone, before: SeamPassOrNone): Stroke {
  const own = seamStrokes[now ?? 'finger'];
  return now === before ? own : { ...own, ink: 'accent' };
}

/** A side along its outline, which bends where the drawing is far below the equator. */
export function sidePoints(
  shell: Shell,
  { outlines, hubs }: Pick<PlanPicture, 'outlines' | 'hubs'>,
  side: number,
): Point[] {
  const place = shell.sidePlace[side] as number;
  const first = shell.placeStart[place] as number;
  const next = side + 1 === shell.placeStart[place + 1] ? first : side + 1;
  const points = pointsOf(outlines[place]);
  const at = (s: number): Point => {
    const hub = shell.sideHub[s] as number;
    return [hubs[2 * hub] as number, hubs[2 * hub + 1] as number];
  };
  const indexOf = ([x, y]: Point): number =>
    points.findIndex((one) => one[0] === x && one[1] === y);
  const [from, to] = [indexOf(at(side)), indexOf(at(next))];
  if (from < 0 || to < 0) return [at(side), at(next)];
  const path: Point[] = [];
  for (let i = from; ; i = (i + 1) % points.length) {
    path.push(points[i] as Point);
    if (i === to) return path;
  }
}

/** Size of a prop's foot, parts of the usual type; of its name likewise. */
const FOOT = 0.62;
const NAME = 1.05;

const hubAt = ({ hubs }: PlanPicture, hub: number): Point => [
  hubs[2 * hub] as number,
  hubs[2 * hub + 1] as number,
];

const propItems = (plan: RaisingPlan, number: number, picture: PlanPicture): Item[] =>
  propsAt(plan, number).map(
    ({ prop, state }): Item => ({
      type: 'group',
      data: { prop: prop.name },
      items: propMark(hubAt(picture, prop.hub), FOOT * picture.type, state),
    }),
  );

/** Where a prop's name stands: towards the crown, where there are no panels yet, as a rule. */
function nameAt(hub: number, picture: PlanPicture): Point {
  const away = 2 * FOOT * picture.type;
  const [x, y] = hubAt(picture, hub);
  const far = Math.hypot(x, y) || 1;
  return [x - (x / far) * away * 1.3, y - (y / far) * away];
}

/** Half a letter's width, parts of its size. */
const HALF_LETTER = 0.3;

/** A box on the drawing: its middle and half its sides. */
interface Taken {
  readonly at: Point;
  readonly wide: number;
  readonly high: number;
}

/** What feet of props and their names take up: numbers of panels to come give way to them. */
function taken(plan: RaisingPlan, number: number, picture: PlanPicture): Taken[] {
  const { type } = picture;
  return propsAt(plan, number).flatMap(({ prop }): Taken[] => [
    { at: hubAt(picture, prop.hub), wide: FOOT * type, high: FOOT * type },
    {
      at: nameAt(prop.hub, picture),
      wide: HALF_LETTER * NAME * type * prop.name.length,
      high: 0.5 * NAME * type,
    },
  ]);
}

function isTaken(text: string, [x, y]: Point, size: number, boxes: readonly Taken[]): boolean {
  const [wide, high] = [HALF_LETTER * size * text.length, 0.5 * size];
  return boxes.some(
    ({ at, ...box }) =>
      Math.abs(at[0] - x) < box.wide + wide && Math.abs(at[1] - y) < box.high + high,
  );
}

function propNames(plan: RaisingPlan, number: number, picture: PlanPicture): Item[] {
  return propsAt(plan, number).map(({ prop, state }): Item => {
    const at = nameAt(prop.hub, picture);
    return {
      type: 'group',
      data: { label: prop.name },
      items: [
        {
          type: 'text',
          at,
          text: prop.name,
          size: NAME * picture.type,
          bold: true,
          anchor: 'middle',
          ink: state === 'stands' ? 'ink' : 'accent',
          halo: 0.8,
        },
      ],
    };
  });
}

/** A prop seen from above: a filled foot where it stands, an open one where it goes out. */
export function propMark(
  [x, y]: Point,
  r: number,
  state: 'in' | 'stands' | 'out',
): readonly Item[] {
  const ink = state === 'stands' ? 'ink' : 'accent';
  const stroke: Stroke = { weight: 'medium', ink };
  const cross = (dx: number, dy: number): Item => ({
    type: 'path',
    points: [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ],
    closed: false,
    stroke,
  });
  const ring = {
    type: 'circle',
    centre: [x, y] as Point,
    radius: r,
    stroke,
    fill: { tint: state === 'out' ? inkColours.paper : inkColours[ink], hatch: null },
  } as const satisfies Item;
  return state === 'out' ? [ring, cross(0.7 * r, 0.7 * r), cross(0.7 * r, -0.7 * r)] : [ring];
}

function labels(
  { items }: PlanPicture,
  states: readonly PlaceState[],
  out: ReadonlySet<number>,
  boxes: readonly Taken[],
): Item[] {
  const ink = { now: 'accent', placed: 'ink', later: 'grey' } as const;
  return planLayers(items).labels.flatMap((item): Item[] => {
    if (item.type !== 'group') return [item];
    const place = Number(item.data?.label);
    if (out.has(place)) return [];
    const own = states[place] ?? 'later';
    const hidden = item.items.some(
      (one) => one.type === 'text' && isTaken(one.text, one.at, one.size, boxes),
    );
    if (own === 'later' && hidden) return [];
    // Of panels that stand the number stays, what is smaller gives way.
    const texts = item.items
      .filter(
        (one, i) => i === 0 || one.type !== 'text' || !isTaken(one.text, one.at, one.size, boxes),
      )
      .map(
        (one): Item =>
          one.type === 'text'
            ? { ...one, ink: ink[own], bold: own === 'now' || (one.bold ?? false) }
            : one,
      );
    return [{ ...item, items: texts }];
  });
}
