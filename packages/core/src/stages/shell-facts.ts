// A standing shell with what its project says of parts, loads and ground, as plain data that can be copied
// between threads; and the site that all of it makes.

import { frameParts } from '../frame/parts.ts';
import type { PartsKnown } from '../frame/schema.ts';
import { defaultGround, type GroundSettings } from '../ground/schema.ts';
import { defaultLoads, type LoadsSettings } from '../loads/schema.ts';
import { placeMasses } from '../loads/weight/weight.ts';
import type { Read } from '../measure/fault.ts';
import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import { defaultTakeoff, type TakeoffSettings } from '../takeoff/schema.ts';
import { type HoleCounts, type SeamBolts, seamBolts } from '../takeoff/seam-bolts.ts';
import { type StagesKnown, unknownStages } from './schema.ts';
import { type Site, siteOf } from './site.ts';

/** A standing shell and what was said of it; what is left out, or undefined, nobody said. */
export interface ShellFacts {
  /** Crown up, whole: places left open are places of it. */
  readonly shell: Shell;
  /** Place → its number. */
  readonly numbers: readonly string[];
  /** Places left open on purpose, by index. */
  readonly leftOut: readonly number[];
  /** Kind (index) of the shell. */
  readonly kinds: readonly Kind[];
  readonly loads: LoadsSettings | undefined;
  readonly ground: GroundSettings | undefined;
  readonly parts: PartsKnown | undefined;
  readonly stages: StagesKnown | undefined;
  /** Holes counted on sides, and what seams are bolted with. */
  readonly holes?: HoleCounts;
  readonly takeoff?: TakeoffSettings | undefined;
}

/** The shell on its site; faults where it has no base ring, or what was said can't be. */
export function siteOfFacts(facts: ShellFacts): Read<Site> {
  const { shell, numbers, kinds, loads = defaultLoads, ground = defaultGround } = facts;
  return siteOf(shell, numbers, {
    loads,
    ground,
    parts: facts.parts ? frameParts(facts.parts) : null,
    stages: facts.stages ?? unknownStages,
    massOf: placeMasses(shell, kinds, loads.panelMass),
    seamBolts: seamFacts(facts).bolts,
  });
}

/** What the seams of a shell are bolted with, by their index; null where nobody counted. */
export interface SeamFacts {
  readonly bolts: (seam: number) => number | null;
  readonly thread: (seam: number) => string | null;
}

/** The bolts of a shell's seams. */
export function seamFacts({
  shell,
  kinds,
  holes,
  takeoff = defaultTakeoff,
}: Pick<ShellFacts, 'shell' | 'kinds' | 'holes' | 'takeoff'>): SeamFacts {
  const seams: readonly SeamBolts[] =
    holes === undefined ? [] : seamBolts(shell, kinds, takeoff, holes);
  const pattern = (seam: number) => {
    const one = seams[seam];
    return one?.status === 'known' ? one.pattern : null;
  };
  return {
    bolts: (seam) => pattern(seam)?.holes ?? null,
    thread: (seam) => pattern(seam)?.thread ?? null,
  };
}
