// The chosen shell on the site of its project file: what the ground command reckons from.

import {
  type BaseShims,
  baseShims,
  defaultGround,
  defaultLoads,
  describeFault,
  type GroundSettings,
  type LoadsSettings,
  type Read,
  type ShellSite,
  siteOfFacts,
} from '@shellraise/core';
import { badInput } from './ending.ts';
import type { Chosen } from './job.ts';
import { factsOf } from './paper-question.ts';

/** A shell on its site, with what was entered about it. */
export interface ChosenSite extends BaseShims {
  readonly site: ShellSite;
  readonly loads: LoadsSettings;
  readonly ground: GroundSettings;
}

/** The chosen shell on its site. Ends the command where the file's site can't be reckoned with. */
export function siteOfChosen(file: string, chosen: Chosen): ChosenSite {
  const { project } = chosen.loaded;
  const loads = project?.loads ?? defaultLoads;
  const ground = project?.ground ?? defaultGround;
  const site = orEnd(file, siteOfFacts(factsOf(chosen)));
  return { site, loads, ground, ...orEnd(file, baseShims(site.base, ground)) };
}

/** What was read, or the end of the command with every fault. */
export function orEnd<T>(file: string, read: Read<T>): T {
  if (read.ok) return read.value;
  throw badInput(...read.faults.map((fault) => `${file}: ${describeFault(fault)}`));
}
