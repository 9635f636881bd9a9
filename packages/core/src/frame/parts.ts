// What the frame reckons with: what the lead knows, and supposed values where it cannot do without.
// A supposed value is named with every result.

import { commonPractice, fromMemory, type Provenance } from '../loads/provenance.ts';
import { readThread, writeThread } from '../takeoff/threads.ts';
import { proofLoad } from './bolts.ts';
import { HUB_PLATES, type StiffHubPlate } from './hub-plate.ts';
import { MATERIAL_SOURCE, MATERIALS } from './materials.ts';
import type { PartsKnown } from './schema.ts';

/** Numbers that the elements are made with, and what is known to hold them against. */
export interface FrameParts {
  readonly young: number;
  readonly poisson: number;
  readonly density: number;
  readonly thickness: number;
  readonly bendingThickness: number;
  readonly flangeDepth: number;
  readonly flangeThickness: number;
  /** Stress that a panel may bear, pascals; null: unknown. */
  readonly strength: number | null;
  /** Proof load of a seam bolt, newtons; null: unknown. */
  readonly boltProof: number | null;
  /** Hub plates, where they are stiff; null: they keep corners together and bend freely. */
  readonly hubPlate: StiffHubPlate | null;
  /** Where the numbers come from that the lead did not enter. */
  readonly sources: readonly Provenance[];
  /** Names of what was supposed because it is unknown: forces are then an estimate, movements a
   * guess. */
  readonly supposed: readonly string[];
}

/** Supposed where unknown: a fibreglass panel 4 mm thick with flanges 50 mm deep. Common practice,
 * no source. */
const SUPPOSED = { material: 'fibreglass', thickness: 0.004, flangeDepth: 0.05 } as const;

/** What the frame reckons with, from what the lead knows. */
export function frameParts(known: PartsKnown): FrameParts {
  const supposed: string[] = [];
  const sources: Provenance[] = [];
  const suppose = <T>(name: string, value: T | null, instead: T): T => {
    if (value !== null) return value;
    supposed.push(name);
    sources.push(commonPractice(`${name} supposed: ${instead}`));
    return instead;
  };
  const { panel, flange, bolt } = known;
  const complete = panel.young !== null && panel.poisson !== null && panel.density !== null;
  const material = complete
    ? null
    : MATERIALS[suppose('material of the panels', panel.material, SUPPOSED.material)];
  if (material) sources.push(fromMemory(MATERIAL_SOURCE));
  const hubPlate = plateOf(known);
  if (hubPlate !== null) sources.push(HUB_PLATES, ...plateSources(known));
  const thickness = suppose('thickness of the panels', panel.thickness, SUPPOSED.thickness);
  return {
    young: panel.young ?? (material?.young as number),
    poisson: panel.poisson ?? (material?.poisson as number),
    density: panel.density ?? (material?.density as number),
    thickness,
    bendingThickness: panel.bendingThickness ?? thickness,
    flangeDepth: suppose('depth of the flanges', flange.depth, SUPPOSED.flangeDepth),
    flangeThickness: flange.thickness ?? thickness,
    strength: panel.strength,
    boltProof: proofOf(bolt),
    hubPlate,
    sources,
    supposed,
  };
}

/** The hub plate as entered; null unless its thickness, bolt circle and stiffness are known. */
function plateOf({ hubPlate }: PartsKnown): StiffHubPlate | null {
  const { thickness, boltCircle, material } = hubPlate;
  const young = hubPlate.young ?? (material === null ? null : MATERIALS[material].young);
  const poisson = hubPlate.poisson ?? (material === null ? null : MATERIALS[material].poisson);
  if (thickness === null || boltCircle === null || young === null || poisson === null) return null;
  return { thickness, boltCircle, young, poisson };
}

const plateSources = ({ hubPlate }: PartsKnown): Provenance[] =>
  hubPlate.young === null || hubPlate.poisson === null ? [fromMemory(MATERIAL_SOURCE)] : [];

function proofOf({ thread, grade }: PartsKnown['bolt']): number | null {
  if (thread === null || grade === null) return null;
  const read = readThread(thread);
  return read.ok ? proofLoad(read.value, grade) : null;
}

/** The thread of the seam bolts spelt out; null where unknown. */
export function boltName({ thread, grade }: PartsKnown['bolt']): string | null {
  if (thread === null) return null;
  const read = readThread(thread);
  return read.ok ? `${writeThread(read.value)}${grade === null ? '' : ` ${grade}`}` : null;
}
