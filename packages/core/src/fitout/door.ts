// What a door or hatch cut into a standing shell asks for: what its frame must follow, where to prop
// before the first panel comes out, the order in which panels come out, and what is saved for spares. How
// much stiffness is left and what props, header and jambs bear the frame says (doorFrame); their sections
// are the lead's.

import type { Opening } from '../arrange/openings/openings.ts';
import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { endHubAt, hubPoint, placeCentre, sideLength } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubAt, placeAt, type Shell, seamCount } from '../shell/shell.ts';

/** Source of the order and of the props. */
export const DOOR_SOURCES: readonly Provenance[] = [
  commonPractice('prop every free hub of the edge, frame, then take panels out from the top'),
];

/** A length of the edge to be framed. */
export interface RevealPart {
  /** Header: nearer level than upright and at the top; sill: at the bottom; jamb: the rest. */
  readonly part: 'header' | 'jamb' | 'sill';
  /** Side of the panel that stays. */
  readonly side: number;
  readonly length: number;
}

/** What an opening asks for. */
export interface DoorAdvice {
  readonly reveal: readonly RevealPart[];
  /** Metres of header, jambs and sill in all. */
  readonly lengths: Readonly<Record<RevealPart['part'], number>>;
  /** Hubs of the edge that are off the base ring, from the highest: propped before the first panel comes
   * out, until the frame is in. */
  readonly props: readonly number[];
  /** Places in the order in which their panels come out. */
  readonly cutOrder: readonly number[];
  /** Steps of that order, from 0, after which a panel that is still in hangs by one seam or none: it must
   * be held by hand or come out with the one before. */
  readonly held: readonly number[];
  /** Angle between the door's middle and where the wind comes from, radians, 0 to π: π is best; null for
   * an opening at the crown. */
  readonly offWind: number | null;
  /** Panels that come out and are spares from then on. */
  readonly spares: number;
}

/** What the advice asks of an opening. */
export type DoorPlaces = Pick<Opening, 'places' | 'reveal'>;

/** Places left out on purpose as an opening: its edge is made of the sides of panels that stay. */
export function doorOfPlaces(shell: Shell, places: readonly number[]): DoorPlaces {
  const out = new Set(places);
  const reveal = Array.from({ length: seamCount(shell) }, (_, seam) => seam).flatMap((seam) => {
    const sides = [0, 1].map((end) => shell.seams[2 * seam + end] as SideId);
    const stays = sides.filter((side) => !out.has(placeAt(shell, side)));
    return stays.length === 1
      ? stays.map((side) => ({ side, length: sideLength(shell, side) }))
      : [];
  });
  return { places: [...places].sort((a, b) => a - b), reveal };
}

/** The advice for an opening of a standing shell; `windFrom` radians from the datum. */
export function doorAdvice(shell: Shell, opening: DoorPlaces, windFrom: number): DoorAdvice {
  const out = new Set(opening.places);
  const reveal = revealParts(shell, opening);
  const total = (part: RevealPart['part']): number =>
    reveal.reduce((sum, one) => sum + (one.part === part ? one.length : 0), 0);
  const { order, held } = cutting(shell, out);
  return {
    reveal,
    lengths: { header: total('header'), jamb: total('jamb'), sill: total('sill') },
    props: propHubs(shell, opening),
    cutOrder: order,
    held,
    offWind: offWindOf(shell, opening, windFrom),
    spares: opening.places.length,
  };
}

/** The edge of an opening, side by side in its order. */
export function revealParts(shell: Shell, opening: DoorPlaces): RevealPart[] {
  const middle = middleOf(shell, opening);
  return opening.reveal.map(({ side, length }) => ({
    part: partOf(shell, side, middle),
    side: side as number,
    length,
  }));
}

function middleOf(shell: Shell, { places }: DoorPlaces): readonly [number, number, number] {
  let [x, y, z] = [0, 0, 0];
  for (const place of places) {
    const at = placeCentre(shell, place as PlaceId);
    [x, y, z] = [x + at[0] / places.length, y + at[1] / places.length, z + at[2] / places.length];
  }
  return [x, y, z];
}

function partOf(
  shell: Shell,
  side: SideId,
  middle: readonly [number, number, number],
): RevealPart['part'] {
  const [a, b] = [hubPoint(shell, hubAt(shell, side)), hubPoint(shell, endHubAt(shell, side))];
  const level = Math.hypot(a[0] - b[0], a[1] - b[1]);
  if (Math.abs(a[2] - b[2]) > level) return 'jamb';
  return (a[2] + b[2]) / 2 > middle[2] ? 'header' : 'sill';
}

/** Hubs of the edge that are off the base ring, from the highest. */
export function propHubs(shell: Shell, { reveal }: DoorPlaces): number[] {
  const ring = new Set<number>(baseRing(shell)?.hubs ?? []);
  const hubs = new Set(
    reveal.flatMap(({ side }) => [hubAt(shell, side) as number, endHubAt(shell, side) as number]),
  );
  const height = (hub: number): number => shell.hubs[3 * hub + 2];
  return [...hubs].filter((hub) => !ring.has(hub)).sort((a, b) => height(b) - height(a) || a - b);
}

/** From the highest panel down; of those the next is one that leaves none hanging, where there is one. */
function cutting(shell: Shell, out: ReadonlySet<number>): { order: number[]; held: number[] } {
  const neighbours = new Map<number, number[]>();
  for (let i = 0; i < seamCount(shell); i++) {
    const [p, q] = [0, 1].map(
      (end) => placeAt(shell, shell.seams[2 * i + end] as SideId) as number,
    );
    neighbours.set(p, [...(neighbours.get(p) ?? []), q]);
    neighbours.set(q, [...(neighbours.get(q) ?? []), p]);
  }
  const left = new Set(out);
  const isIn = (place: number): boolean => !out.has(place) || left.has(place);
  const hangs = (place: number): boolean =>
    (neighbours.get(place) ?? []).filter(isIn).length <
    Math.min(2, neighbours.get(place)?.length ?? 0);
  const height = (place: number): number => placeCentre(shell, place as PlaceId)[2];
  const order: number[] = [];
  const held: number[] = [];
  while (left.size > 0) {
    const from = [...left].sort((a, b) => height(b) - height(a) || a - b);
    const leavesHanging = (place: number): boolean => {
      left.delete(place);
      const does = [...left].some(hangs);
      left.add(place);
      return does;
    };
    const next = from.find((place) => !leavesHanging(place)) ?? from[0];
    left.delete(next);
    order.push(next);
    if ([...left].some(hangs)) held.push(order.length - 1);
  }
  return { order, held };
}

function offWindOf(shell: Shell, opening: DoorPlaces, windFrom: number): number | null {
  const [x, y] = middleOf(shell, opening);
  if (Math.hypot(x, y) < 1e-6 * shell.radius) return null;
  const turned = Math.atan2(y, x) - windFrom;
  return Math.abs(Math.atan2(Math.sin(turned), Math.cos(turned)));
}
