// What holds a door while it is cut and after: the push in each temporary prop under the hubs of its edge
// once the panels are out, and what header, jambs and sill bear when the frame is in and the props are
// gone. From the frame of the whole shell; the frame's bars run along the edge from hub to hub, fixed to
// the panels that stay. Load on hubs only: what lies on a bar between two hubs is not in its moment. No
// factor of safety and no wind is in any number.

import type { Beam } from '../frame/elements/element.ts';
import type { FrameMesh } from '../frame/mesh.ts';
import type { Vec3 } from '../math/vector.ts';
import { endHubAt, placeNormal } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubAt, placeAt, placeCount, type Shell } from '../shell/shell.ts';
import { type DoorPlaces, propHubs, type RevealPart, revealParts } from './door.ts';
import {
  fallOf,
  type Rested,
  type RestQuestion,
  restOf,
  standingOf,
  underLoad,
} from './door-rest.ts';
import {
  barSection,
  type DoorSection,
  type EndForces,
  eulerLoad,
  SHEAR_SHARE,
  stressAt,
} from './door-section.ts';

/** A temporary prop. */
export interface DoorProp {
  readonly hub: number;
  /** Its push once the door's panels are out, newtons, upwards; 0: it stands by. */
  readonly push: number;
}

/** What the bars of one part bear. */
export interface PartBears {
  readonly part: RevealPart['part'];
  /** The greatest pull (over 0) or push (under 0) along a bar, newtons: the greater of both. */
  readonly axial: number;
  /** The greatest bending moment at an end of a bar, newton metres. */
  readonly moment: number;
  /** Square metres that bear the force alone, and metres³ of section modulus that bear the moment alone,
   * at the stress that the lead allows; null where none is told. */
  readonly area: number | null;
  readonly modulus: number | null;
  /** Share of the allowed stress that the named section takes at its worst end; null likewise. */
  readonly used: number | null;
  /** Share of the load at which a bar between two hubs bends aside (Euler, hinged ends). */
  readonly aside: number;
}

/** What holds the door. */
export interface DoorBracing {
  /** From the highest, under the panels' weight alone: nobody cuts in snow or wind. */
  readonly props: readonly DoorProp[];
  /** Header, jambs and sill, as far as there are such, under weight and snow. */
  readonly bears: readonly PartBears[];
  /** Greatest fall of a hub of the edge with the frame in, under the weight alone, metres. */
  readonly sag: number;
  /** Pascals of snow that were reckoned. */
  readonly snow: number;
  readonly section: DoorSection;
}

/** What it is reckoned from. */
export interface BracingQuestion extends Pick<RestQuestion, 'shell' | 'parts' | 'massOf'> {
  readonly door: DoorPlaces;
  readonly section: DoorSection;
  /** Snow, pascals on the plan; 0: none. */
  readonly snow: number;
}

/** The bracing; null where the shell with the door open does not stand even so. RangeError for a section
 * that is none. */
export function doorBracing(question: BracingQuestion): DoorBracing | null {
  const { shell, door, section, snow } = question;
  const out = new Set(door.places);
  const placed = [...Array(placeCount(shell)).keys()].filter((place) => !out.has(place));
  const { parts, massOf } = question;
  const asked = { shell, parts, massOf, placed };
  const propped = restOf({
    ...asked,
    props: propHubs(shell, door).map((hub) => ({ hub, along: [0, 0, 1], stiffness: null })),
  });
  const beams = (mesh: FrameMesh): Beam[] => beamsOf(shell, door, placed, section, mesh);
  const framed = standingOf({ ...asked, beams });
  const bare = underLoad(framed);
  const loaded = snow > 0 ? underLoad(framed, snow) : bare;
  if (propped === null || bare === null || loaded === null) return null;
  return {
    props: propHubs(shell, door).map((hub, i) => ({ hub, push: pushOf(propped, i) })),
    bears: bearsOf(shell, door, section, loaded),
    sag: fallOf(bare, edgeHubs(shell, door)),
    snow,
    section,
  };
}

/** Hubs of a door's edge. */
export const edgeHubs = (shell: Shell, { reveal }: DoorPlaces): ReadonlySet<number> =>
  new Set(reveal.flatMap(({ side }): number[] => [hubAt(shell, side), endHubAt(shell, side)]));

function pushOf({ mesh, at }: Rested, prop: number): number {
  const elements = mesh.props[prop] ?? [];
  return elements.reduce((sum, e) => sum - ((at.forces[e] as Float64Array)[0] as number), 0);
}

/** A bar along each side of the edge, between the nodes of the panel that stays. */
function beamsOf(
  shell: Shell,
  { reveal }: DoorPlaces,
  placed: readonly number[],
  section: DoorSection,
  { nodeOfCorner, cornerStart }: FrameMesh,
): Beam[] {
  const { young } = section;
  return reveal.map(({ side }): Beam => {
    const place = placeAt(shell, side as SideId);
    const panel = placed.indexOf(place);
    const [start, end] = [shell.placeStart[place] as number, shell.placeStart[place + 1] as number];
    const at = side - start;
    const node = (corner: number): number =>
      nodeOfCorner[(cornerStart[panel] as number) + (corner % (end - start))] as number;
    const axisY: Vec3 = placeNormal(shell, place as PlaceId);
    return {
      kind: 'beam',
      nodes: [node(at), node(at + 1)],
      section: barSection(section),
      young,
      shear: SHEAR_SHARE * young,
      axisY,
    };
  });
}

function bearsOf(
  shell: Shell,
  door: DoorPlaces,
  section: DoorSection,
  { at, own }: Rested,
): PartBears[] {
  const bars = revealParts(shell, door).map(({ part, length }, i) => ({
    ...{ part, length },
    ends: endsOf(at.forces[own + i] as Float64Array),
  }));
  return (['header', 'jamb', 'sill'] as const).flatMap((part) => {
    const of = bars.filter((bar) => bar.part === part);
    return of.length === 0 ? [] : [partBears(part, of, section)];
  });
}

/** Both ends of a beam from its natural forces: pull, torque, moments about z and then y. */
export function endsOf(forces: Float64Array): readonly [EndForces, EndForces] {
  const [axial, , z1, z2, y1, y2] = forces as unknown as readonly number[] & { length: 6 };
  return [
    { axial: axial as number, y: y1 as number, z: z1 as number },
    { axial: axial as number, y: y2 as number, z: z2 as number },
  ];
}

/** What bars of one part bear, each with its length. */
export function partBears(
  part: RevealPart['part'],
  bars: readonly { readonly length: number; readonly ends: readonly EndForces[] }[],
  section: DoorSection,
): PartBears {
  const ends = bars.flatMap((bar) => bar.ends);
  const axial = ends.reduce(
    (most, one) => (Math.abs(one.axial) > Math.abs(most) ? one.axial : most),
    0,
  );
  const moment = Math.max(...ends.map(({ y, z }) => Math.hypot(y, z)));
  const { allowable } = section;
  return {
    part,
    axial,
    moment,
    area: allowable === null ? null : Math.abs(axial) / allowable,
    modulus: allowable === null ? null : moment / allowable,
    used:
      allowable === null
        ? null
        : Math.max(...ends.map((one) => stressAt(section, one))) / allowable,
    aside: Math.max(
      0,
      ...bars.map(
        ({ length, ends: [one] }) => -(one as EndForces).axial / eulerLoad(section, length),
      ),
    ),
  };
}
