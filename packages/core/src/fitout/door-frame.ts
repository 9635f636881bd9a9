// What a door costs the frame: stiffness, how far the edge sags under the shell's own weight, and how much
// of the load at which a perfect shell would buckle is lost. No frame round the door is counted: it gives
// some of it back. Every seam snug, a plate on every hub, the base ring held.

import { openingStiffness, type StiffnessKept } from '../arrange/openings/stiffness.ts';
import { bucklingFactors } from '../frame/buckling.ts';
import { GRAVITY } from '../frame/frame-loads.ts';
import { frameOf } from '../frame/from-shell.ts';
import { type FrameMesh, meshOf } from '../frame/mesh.ts';
import type { FrameParts } from '../frame/parts.ts';
import { type AtRest, type Prepared, prepare, statics } from '../frame/statics.ts';
import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { endHubAt } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubAt, hubCount, hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import type { DoorPlaces } from './door.ts';

/** What a door costs. */
export interface DoorFrame {
  readonly stiffness: StiffnessKept;
  /** Greatest fall of a hub of the edge under the shell's own weight, metres: whole, and with the door
   * open; null where it does not stand. */
  readonly sag: { readonly whole: number; readonly open: number } | null;
  /** Load factor of the own weight at which a perfect shell buckles, whole and open; null where none was
   * found. Real shells buckle at a third or a fifth of it. */
  readonly buckling: { readonly whole: number; readonly open: number } | null;
  /** What was supposed because nobody said: of the parts, and of panels' masses. */
  readonly supposed: readonly string[];
  readonly sources: readonly Provenance[];
}

/** Supposed of every panel where nobody weighed any, kilograms: common practice, no source. */
export const PANEL_SUPPOSED = 9;

/** The cost of a door. `massOf`: a place's panel, kilograms; null where nobody weighed it, then the mean
 * of the others or `PANEL_SUPPOSED`. */
export function doorFrame(
  shell: Shell,
  door: DoorPlaces,
  parts: FrameParts,
  massOf: (place: number) => number | null,
  onProgress: (part: number) => void = () => undefined,
): DoorFrame {
  const all = [...Array(placeCount(shell)).keys()];
  const known = all.map(massOf).filter((mass) => mass !== null);
  const mean =
    known.length === 0 ? PANEL_SUPPOSED : known.reduce((sum, one) => sum + one, 0) / known.length;
  const masses = supposedMasses(all.length, known.length, mean);
  const out = new Set(door.places);
  const whole = rest(shell, parts, all, (place) => massOf(place) ?? mean);
  onProgress(0.2);
  const open = rest(
    shell,
    parts,
    all.filter((place) => !out.has(place)),
    (place) => massOf(place) ?? mean,
  );
  onProgress(0.4);
  const edge = new Set(
    door.reveal.flatMap(({ side }): number[] => [hubAt(shell, side), endHubAt(shell, side)]),
  );
  const stiffness = openingStiffness(shell, parts)(door.places);
  onProgress(0.6);
  const buckling = bucklingOf(whole, open, onProgress);
  return {
    stiffness,
    sag:
      whole === null || open === null
        ? null
        : { whole: fallOf(whole, edge), open: fallOf(open, edge) },
    buckling,
    supposed: [...parts.supposed, ...masses],
    sources: [...parts.sources, ...masses.map((words) => commonPractice(`${words} supposed`))],
  };
}

/** What is supposed of masses, in words; nothing where every panel was weighed. */
function supposedMasses(panels: number, weighed: number, mean: number): string[] {
  if (weighed === panels) return [];
  return [
    weighed === 0
      ? `panels of ${PANEL_SUPPOSED} kg each`
      : `the mean of the others, ${mean.toFixed(1)} kg, of ${panels - weighed} ${panels - weighed === 1 ? 'panel' : 'panels'}`,
  ];
}

interface Rested {
  readonly mesh: FrameMesh;
  readonly prepared: Prepared;
  readonly at: AtRest;
}

function rest(
  shell: Shell,
  parts: FrameParts,
  placed: readonly number[],
  massOf: (place: number) => number,
): Rested | null {
  const plates = [...Array(hubCount(shell)).keys()];
  const mesh = meshOf(frameOf(shell, { placed, plates, pass: () => 'snug' }), parts);
  const prepared = prepare(mesh.structure);
  const load = new Float64Array(2 * mesh.structure.nodes.length);
  for (const place of placed) {
    const hubs = hubsOf(shell, place as PlaceId);
    for (const hub of hubs) {
      const node = mesh.hubOfNode.indexOf(hub);
      if (node >= 0) load[6 * node + 2] -= (massOf(place) * GRAVITY) / hubs.length;
    }
  }
  const at = statics(prepared, load);
  return at.status === 'stands' ? { mesh, prepared, at } : null;
}

function fallOf({ mesh, at }: Rested, hubs: ReadonlySet<number>): number {
  let most = 0;
  mesh.hubOfNode.forEach((hub, node) => {
    if (hubs.has(hub)) most = Math.max(most, -(at.moved[6 * node + 2] as number));
  });
  return most;
}

function bucklingOf(
  whole: Rested | null,
  open: Rested | null,
  onProgress: (part: number) => void,
): DoorFrame['buckling'] {
  if (whole === null || open === null) return null;
  const first = (one: Rested): number | undefined =>
    bucklingFactors(one.prepared, one.at, 1).values[0];
  const a = first(whole);
  onProgress(0.8);
  const b = first(open);
  onProgress(1);
  return a === undefined || b === undefined ? null : { whole: a, open: b };
}
