// What a door costs the frame: stiffness, how far the edge sags under the shell's own weight, and how much
// of the load at which a perfect shell would buckle is lost. No frame round the door is counted in these: it
// gives some of it back. Beside them what its props and its frame bear. Every seam snug, a plate on every
// hub, the base ring held.

import {
  openingStiffness,
  type StiffnessKept,
  stiffnessKept,
} from '../arrange/openings/stiffness.ts';
import { bucklingFactors } from '../frame/buckling.ts';
import type { FrameParts } from '../frame/parts.ts';
import { commonPractice, type Provenance } from '../loads/provenance.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import type { DoorPlaces } from './door.ts';
import { type DoorBracing, doorBracing, edgeHubs } from './door-bracing.ts';
import { fallOf, type Rested, restOf } from './door-rest.ts';
import {
  type DoorSection,
  SECTION_SOURCE,
  SECTION_SUPPOSED,
  SECTION_WORDS,
} from './door-section.ts';

/** What a door costs. */
export interface DoorFrame {
  readonly stiffness: StiffnessKept;
  /** Greatest fall of a hub of the edge under the shell's own weight, metres: whole, and with the door
   * open; null where it does not stand. */
  readonly sag: { readonly whole: number; readonly open: number } | null;
  /** Load factor of the own weight at which a perfect shell buckles, whole and open; null where none was
   * found. Real shells buckle at a third or a fifth of it. */
  readonly buckling: { readonly whole: number; readonly open: number } | null;
  /** What props, header and jambs bear; null where it does not stand. */
  readonly bracing: DoorBracing | null;
  /** What was supposed because nobody said: of the parts, of panels' masses, of the door's frame. */
  readonly supposed: readonly string[];
  readonly sources: readonly Provenance[];
}

/** Supposed of every panel where nobody weighed any, kilograms: common practice, no source. */
export const PANEL_SUPPOSED = 9;

/** What a door bears. */
export interface DoorLoad {
  /** A place's panel, kilograms; null where nobody weighed it, then the mean of the others or
   * `PANEL_SUPPOSED`. */
  readonly massOf: (place: number) => number | null;
  /** Snow, pascals on the plan; none where null or left out. */
  readonly snow?: number | null;
  /** What header and jambs are made of; `SECTION_SUPPOSED` where null or left out. */
  readonly section?: DoorSection | null;
}

/** The cost of a door; `onProgress` is told 0 … 1. */
export function doorFrame(
  shell: Shell,
  door: DoorPlaces,
  parts: FrameParts,
  { massOf, snow = null, section = null }: DoorLoad,
  onProgress: (part: number) => void = () => undefined,
): DoorFrame {
  const all = [...Array(placeCount(shell)).keys()];
  const known = all.map(massOf).filter((mass) => mass !== null);
  const mean =
    known.length === 0 ? PANEL_SUPPOSED : known.reduce((sum, one) => sum + one, 0) / known.length;
  const masses = supposedMasses(all.length, known.length, mean);
  const out = new Set(door.places);
  const asked = { shell, parts, massOf: (place: number) => massOf(place) ?? mean };
  const whole = restOf({ ...asked, placed: all });
  onProgress(0.15);
  const open = restOf({ ...asked, placed: all.filter((place) => !out.has(place)) });
  onProgress(0.3);
  const edge = edgeHubs(shell, door);
  // Both frames are factored already; only one that does not stand is asked anew.
  const stiffness =
    whole !== null && open !== null
      ? stiffnessKept(whole, open)
      : openingStiffness(shell, parts)(door.places);
  onProgress(0.5);
  const bracing = doorBracing({
    ...{ ...asked, door, snow: snow ?? 0 },
    section: section ?? SECTION_SUPPOSED,
  });
  onProgress(0.7);
  const buckling = bucklingOf(whole, open, onProgress);
  return {
    stiffness,
    sag:
      whole === null || open === null
        ? null
        : { whole: fallOf(whole, edge), open: fallOf(open, edge) },
    buckling,
    bracing,
    supposed: [...parts.supposed, ...masses, ...(section === null ? [SECTION_WORDS] : [])],
    sources: [
      ...parts.sources,
      ...masses.map((words) => commonPractice(`${words} supposed`)),
      ...(section === null ? [SECTION_SOURCE] : []),
    ],
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

function bucklingOf(
  whole: Rested | null,
  open: Rested | null,
  onProgress: (part: number) => void,
): DoorFrame['buckling'] {
  if (whole === null || open === null) return null;
  const first = (one: Rested): number | undefined =>
    bucklingFactors(one.prepared, one.at, 1).values[0];
  const a = first(whole);
  onProgress(0.85);
  const b = first(open);
  onProgress(1);
  return a === undefined || b === undefined ? null : { whole: a, open: b };
}
