// The chosen shell on the site of its project file: what the ground command reckons from.

import {
  defaultGround,
  defaultLoads,
  frameParts,
  type GroundSettings,
  groundLevels,
  type LoadsSettings,
  placeMasses,
  type Read,
  type ShellSite,
  type ShimPlan,
  seamBolts,
  shims,
  siteOf,
  unknownStages,
} from '@shellraise/core';
import { badInput } from './ending.ts';
import { type Chosen, fittedKinds } from './job.ts';

/** A shell on its site, with what was entered about it. */
export interface ChosenSite {
  readonly site: ShellSite;
  readonly loads: LoadsSettings;
  readonly ground: GroundSettings;
  /** Null where no levels are entered, or not those of every base hub yet. */
  readonly shims: ShimPlan | null;
  /** Base hubs whose level is still to be read; all where none is. */
  readonly unread: readonly number[];
}

/** The chosen shell on its site. Ends the command where the file's site can't be reckoned with. */
export function siteOfChosen(file: string, chosen: Chosen): ChosenSite {
  const { project } = chosen.loaded;
  const loads = project?.loads ?? defaultLoads;
  const ground = project?.ground ?? defaultGround;
  const { shell } = chosen.standing;
  const read = siteOf(shell, chosen.numbers.numbers, {
    loads,
    ground,
    parts: project?.parts ? frameParts(project.parts) : null,
    stages: project?.stages ?? unknownStages,
    massOf: placeMasses(shell, chosen.kinds, loads.panelMass),
    seamBolts: boltCounts(chosen),
  });
  const site = orEnd(file, read);
  return { site, loads, ground, ...shimsOf(file, site, ground) };
}

function boltCounts(chosen: Chosen): (seam: number) => number | null {
  const { takeoff, holes } = chosen.loaded;
  const seams = seamBolts(chosen.standing.shell, fittedKinds(chosen), takeoff, holes);
  return (seam) => {
    const one = seams[seam];
    return one?.status === 'known' ? one.pattern.holes : null;
  };
}

function shimsOf(
  file: string,
  { base }: ShellSite,
  ground: GroundSettings,
): Pick<ChosenSite, 'shims' | 'unread'> {
  const hubs = base.hubs.map(({ number }) => number);
  const strange = ground.levels.flatMap(({ readings }, s) =>
    readings.flatMap(({ at }, r) =>
      typeof at === 'number' && !hubs.includes(at)
        ? [
            `${file}: ground.levels[${s}].readings[${r}].at: found base hub ${at}, expected 1 to ${hubs.length}, or the name of a benchmark`,
          ]
        : [],
    ),
  );
  if (strange.length > 0) throw badInput(...strange);
  if (ground.levels.length === 0) return { shims: null, unread: hubs };
  const { heights } = orEnd(file, groundLevels(ground.levels));
  const unread = hubs.filter((hub) => !heights.has(hub));
  const plan = unread.length > 0 ? null : orEnd(file, shims(base, heights, ground.shims));
  return { shims: plan, unread };
}

/** What was read, or the end of the command with every fault. */
export function orEnd<T>(file: string, read: Read<T>): T {
  if (read.ok) return read.value;
  throw badInput(
    ...read.faults.map(
      ({ path, found, expected }) => `${file}: ${path}: found ${found}, expected ${expected}`,
    ),
  );
}
