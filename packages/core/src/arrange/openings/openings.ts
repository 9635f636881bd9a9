// Where a door or hatch may be: every set of places that lets the body asked for pass, and what
// each costs in panels, seams and hubs. What it costs in strength is for the frame to say.

import { assertNumber } from '../../math/doors.ts';
import { add, scale, type Vec3 } from '../../math/vector.ts';
import { componentsOf } from '../../shell/check.ts';
import { endHubAt, hubPoint, placeCentre, sideLength } from '../../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../../shell/ids.ts';
import { partOf } from '../../shell/part.ts';
import { hubCount, placeCount, type Shell, sideCount } from '../../shell/shell.ts';
import { seamsInside } from '../fit/gap-laws.ts';
import {
  inTheWayOf,
  isWithin,
  type Passage,
  roundOutline,
  type ViewPoint,
  wallOf,
} from './passing.ts';

/** An opening that the body passes. */
export interface Opening {
  readonly passage: Passage;
  /** Places to be left out, ascending. */
  readonly places: readonly number[];
  /** Seams that are no longer bolted, and hubs that no panel has any more. */
  readonly seamsCut: number;
  readonly hubsFreed: number;
  /** The edge that must be framed: sides of panels that stand, in turn, with their lengths in metres;
   * those on the base ring are none of it. */
  readonly reveal: readonly { readonly side: SideId; readonly length: number }[];
  /** Whether the opening reaches the base ring, as a door does. */
  readonly toBase: boolean;
}

/** What is asked of openings. */
export interface OpeningQuestion {
  /** The body's section, anticlockwise, metres: u across, v up from the floor. */
  readonly outline: readonly ViewPoint[];
  /** Height of the floor in the shell's frame; the lowest hub unless told. */
  readonly floor?: number;
  /** Openings told, at most; 200 unless told. */
  readonly most?: number;
}

/** Azimuths nearer than this, radians, are one; so near to the axis, part of the radius, there is none. */
const SAME = 1e-6;

/** Every distinct opening of a standing shell (crown up) for a body, those with the fewest places
 * first, then fewest seams cut. Left out are sets without which a panel hangs by one seam, the shell
 * falls into pieces, or the crown is gone. RangeError for an outline of fewer than three points. */
export function openingsFor(shell: Shell, question: OpeningQuestion): Opening[] {
  if (question.outline.length < 3)
    throw new RangeError(`outline: found ${question.outline.length} points, expected 3 or more`);
  assertNumber('most', question.most ?? 0, 0);
  const floor = question.floor ?? lowest(shell);
  const passages = directionsOf(shell).map((azimuth): Passage => {
    return { azimuth, aside: 0, floor, outline: question.outline };
  });
  return distinctOpenings(shell, passages, question.most ?? 200);
}

/** What is asked of a round hatch. */
export interface HatchQuestion {
  /** Clear diameter, metres. */
  readonly diameter: number;
  /** Heights of its middle above the lowest hub, metres; anywhere unless told. */
  readonly least?: number;
  readonly most?: number;
  /** Openings told, at most; 200 unless told. */
  readonly count?: number;
}

/** Every distinct round opening about a hub, a seam's middle or a panel's middle, square to the wall
 * there; in the order of `openingsFor`, and with what is left out there. RangeError for a diameter that
 * is not more than 0. */
export function hatchesFor(shell: Shell, question: HatchQuestion): Opening[] {
  const { diameter, least = 0, most = Number.POSITIVE_INFINITY } = question;
  if (!(diameter > 0)) throw new RangeError(`diameter: found ${diameter}, expected more than 0`);
  const outline = roundOutline(diameter, 0);
  const floor = lowest(shell);
  const passages = middlesOf(shell).flatMap(([x, y, z]): Passage[] => {
    if (z - floor < least || z - floor > most) return [];
    const azimuth = Math.hypot(x, y) > SAME * shell.radius ? Math.atan2(y, x) : 0;
    return [{ azimuth, aside: 0, floor, outline, pitch: Math.atan2(z, Math.hypot(x, y)) }];
  });
  return distinctOpenings(shell, passages, question.count ?? 200);
}

/** Hubs, middles of seams and of panels. */
function middlesOf(shell: Shell): Vec3[] {
  const seams = Array.from({ length: shell.seams.length / 2 }, (_, m) => {
    const side = shell.seams[2 * m] as SideId;
    const ends = [shell.sideHub[side] as HubId, endHubAt(shell, side)];
    return scale(add(hubPoint(shell, ends[0] as HubId), hubPoint(shell, ends[1] as HubId)), 0.5);
  });
  return [
    ...Array.from({ length: hubCount(shell) }, (_, h) => hubPoint(shell, h as HubId)),
    ...seams,
    ...Array.from({ length: placeCount(shell) }, (_, p) => placeCentre(shell, p as PlaceId)),
  ];
}

function distinctOpenings(shell: Shell, passages: readonly Passage[], most: number): Opening[] {
  const wall = wallOf(shell);
  const seams = seamsInside(shell, new Uint8Array(placeCount(shell)).fill(1));
  const seen = new Set<string>();
  const found: Opening[] = [];
  for (const passage of passages) {
    const places = inTheWayOf(wall, passage);
    const key = places.join();
    if (places.length === 0 || seen.has(key) || !isWithin(wall, passage)) continue;
    seen.add(key);
    const opening = openingOf(shell, seams, passage, places);
    if (opening) found.push(opening);
  }
  return found
    .sort(
      (a, b) =>
        a.places.length - b.places.length ||
        a.seamsCut - b.seamsCut ||
        a.passage.azimuth - b.passage.azimuth,
    )
    .slice(0, most);
}

const lowest = (shell: Shell): number =>
  Array.from({ length: hubCount(shell) }, (_, h) => hubPoint(shell, h as HubId)[2]).reduce(
    (least, z) => Math.min(least, z),
    Number.POSITIVE_INFINITY,
  );

/** Azimuths of hubs and of panels' middles, each once, and those half-way between. */
function directionsOf(shell: Shell): number[] {
  const points = [
    ...Array.from({ length: hubCount(shell) }, (_, h) => hubPoint(shell, h as HubId)),
    ...Array.from({ length: placeCount(shell) }, (_, p) => placeCentre(shell, p as PlaceId)),
  ];
  const own = points
    .filter(([x, y]) => Math.hypot(x, y) > SAME * shell.radius)
    .map(([x, y]) => Math.atan2(y, x))
    .sort((a, b) => a - b);
  const apart = own.filter((a, i) => i === 0 || a - (own[i - 1] as number) > SAME);
  return apart.flatMap((a, i) => {
    const next = apart[i + 1] ?? (apart[0] as number) + 2 * Math.PI;
    return [a, (a + next) / 2];
  });
}

/** The opening, or null where what is left would not stand as one; `before`: the seams of the whole. */
function openingOf(
  shell: Shell,
  before: ReturnType<typeof seamsInside>,
  passage: Passage,
  places: readonly number[],
): Opening | null {
  const out = new Set(places);
  const inside = Uint8Array.from({ length: placeCount(shell) }, (_, p) => (out.has(p) ? 0 : 1));
  const after = seamsInside(shell, inside);
  if (takesCrown(shell, out) || hangs(inside, before, after)) return null;
  const left = partOf(
    shell,
    [...inside.keys()].filter((p) => inside[p]),
  );
  if (new Set(componentsOf(left.shell)).size !== 1) return null;
  const reveal: { side: SideId; length: number }[] = [];
  let toBase = false;
  for (let s = 0; s < sideCount(shell); s++) {
    const mate = shell.mate[s] as number;
    const isOut = out.has(shell.sidePlace[s] as number);
    if (isOut && mate < 0) toBase = true;
    if (!isOut && mate >= 0 && out.has(shell.sidePlace[mate] as number))
      reveal.push({ side: s as SideId, length: sideLength(shell, s as SideId) });
  }
  return {
    passage,
    places,
    seamsCut: before.length - after.length,
    hubsFreed: hubCount(shell) - hubCount(left.shell),
    reveal,
    toBase,
  };
}

/** Whether a panel that was held by two seams or more is left with one or none. */
function hangs(
  inside: Uint8Array,
  before: readonly (readonly [number, number])[],
  after: readonly (readonly [number, number])[],
): boolean {
  const count = (seams: readonly (readonly [number, number])[]): Int32Array => {
    const held = new Int32Array(inside.length);
    for (const pair of seams) for (const p of pair) held[p] = (held[p] as number) + 1;
    return held;
  };
  const [had, has] = [count(before), count(after)];
  return inside.some(
    (stands, p) => stands === 1 && (has[p] as number) < Math.min(2, had[p] as number),
  );
}

/** Whether a panel of the topmost hub is among them. */
function takesCrown(shell: Shell, out: ReadonlySet<number>): boolean {
  let top = 0;
  for (let h = 1; h < hubCount(shell); h++)
    if (hubPoint(shell, h as HubId)[2] > hubPoint(shell, top as HubId)[2]) top = h;
  return Array.from(shell.sideHub).some(
    (hub, s) => hub === top && out.has(shell.sidePlace[s] as number),
  );
}
