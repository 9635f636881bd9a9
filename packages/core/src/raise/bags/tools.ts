// Tools for each stage: what its bolts are turned with, what people stand on, what lifts, what props.

import {
  commonPractice,
  fromMemory,
  mergeSources,
  type Provenance,
} from '../../loads/provenance.ts';
import type { Need } from '../../takeoff/needs.ts';
import { nominalSize, readThread } from '../../takeoff/threads.ts';
import type { HeightsOfStage } from '../lifts/heights-by-stage.ts';
import type { LiftWay } from '../lifts/lift.ts';
import { type HeldHubs, heldWords, type RaisingStage } from '../plan.ts';

/** Width across flats of a hexagon head by the bolt's nominal size, as it is marked on the wrench. */
const WRENCHES: Readonly<Record<string, string>> = {
  '#10': '3/8 in',
  '1/4': '7/16 in',
  '5/16': '1/2 in',
  '3/8': '9/16 in',
  '7/16': '5/8 in',
  '1/2': '3/4 in',
  M5: '8 mm',
  M6: '10 mm',
  M8: '13 mm',
  M10: '16 mm or 17 mm',
  M12: '18 mm or 19 mm',
};
const INCH_HEADS = fromMemory('ASME B18.2.1 and B18.2.2: widths across flats of hexagon heads');
const METRIC_HEADS = fromMemory('ISO 4014 and DIN 931: widths across flats of hexagon heads');

/** Tools of a stage, a line each, and where that comes from. */
export interface StageTools {
  readonly stage: number;
  readonly tools: readonly string[];
  readonly sources: readonly Provenance[];
}

/** The wrench for a thread; null where no table has it. */
export function wrenchFor(thread: string): string | null {
  const read = readThread(thread);
  return WRENCHES[read.ok ? nominalSize(read.value) : thread] ?? null;
}

/** Tools of a stage. `needs`: what it uses up; `threads`: of all seams that it tightens, where it bolts
 * none; `ways`: how its pieces are lifted; `heights`: what hands reach from. */
export function toolsOf(
  stage: RaisingStage,
  needs: readonly Need[],
  given: {
    readonly threads?: readonly string[];
    readonly ways?: readonly Pick<LiftWay, 'by' | 'name' | 'tagLines' | 'people'>[];
    readonly heights?: HeightsOfStage | null;
    /** Props and lines that go in in it; its plan's props where left out. */
    readonly held?: HeldHubs;
    readonly pairs?: number;
  } = {},
): StageTools {
  const { ways = [], heights = null, pairs = 2 } = given;
  const threads = [
    ...new Set([
      ...needs.flatMap(({ item, thread }) => (item === 'bolt' && thread !== null ? [thread] : [])),
      ...(given.threads ?? []),
    ]),
  ];
  const sizes = [
    ...new Set(threads.map((thread) => wrenchFor(thread) ?? `for ${thread}, measure its head`)),
  ];
  const tools = sizes.map((size) => `${2 * pairs} wrenches ${size}`);
  if (stage.lifts.length > 0) tools.push(`${pairs} drift pins`, '1 mallet');
  if (stage.pass.final.length > 0)
    tools.push(...sizes.map((size) => `1 torque wrench with a socket ${size}`));
  if (needs.some(({ item }) => item === 'tape')) tools.push('1 knife and 1 seam roller');
  const { props, lines: held } = given.held ?? { props: stage.propsIn.length, lines: [] };
  if (props > 0) tools.push(`${props} ${props === 1 ? 'prop' : 'props'}, tied at head and foot`);
  if (held.length > 0) tools.push(`${heldWords({ props: 0, lines: held })} with shackles`);
  for (const name of new Set(ways.filter(({ by }) => by !== 'hands').map(({ name }) => name)))
    tools.push(`${name} with sling`);
  const lines = Math.max(0, ...ways.map(({ tagLines }) => tagLines));
  if (lines > 0) tools.push(`${lines} tag lines`);
  const standing = heights?.standing ?? null;
  if (standing !== null && standing.kind !== 'ground') tools.push(standing.name);
  return {
    stage: stage.number,
    tools,
    sources: mergeSources(
      threads.some((thread) => thread.startsWith('M')) ? [METRIC_HEADS] : [],
      threads.some((thread) => !thread.startsWith('M')) ? [INCH_HEADS] : [],
      [commonPractice('two wrenches and a drift pin to each pair of hands, two pairs')],
    ),
  };
}
