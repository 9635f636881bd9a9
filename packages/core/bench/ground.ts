// How long the ground takes: `npm run bench -- ground`. A ball of 500 places cut to 325 on its base ring: the
// whole shell in the wind of every law from every side with its anchors; the stakes; shims over uneven ground,
// beside HiGHS on the same linear program; a survey of the base with the misfit of every seam.

import highsLoader from 'highs';
import type { Line } from '../../../scripts/bench-line.d.ts';
import { type Base, baseOf } from '../src/ground/base.ts';
import { tapeOptions } from '../src/ground/from-settings.ts';
import { defaultGround, groundSection } from '../src/ground/schema.ts';
import { shims } from '../src/ground/shims.ts';
import type { SurveyReading } from '../src/ground/survey/readings.ts';
import { surveyAnswer } from '../src/ground/survey/verdict.ts';
import { tapePlan } from '../src/ground/tape-plan.ts';
import { loadsSection } from '../src/loads/schema.ts';
import { caseTotals } from '../src/loads/stage-totals.ts';
import { stageWind } from '../src/loads/wind-cases.ts';
import { seededRandom } from '../src/math/random.ts';
import { coursesOf } from '../src/shell/courses.ts';
import type { Shell } from '../src/shell/shell.ts';
import { siteOfFacts } from '../src/stages/shell-facts.ts';
import { builtShell } from './built-shell.ts';
import { cpuMs } from './clock.ts';
import { shimsProgram } from './ground/shims-program.ts';

/** Wanted, seconds of processor: what a sheet may wait for. */
const WANTED = 1;
/** How far shims may tilt the base and differ, metres a metre and metres. */
const OPTIONS = { tilt: 0.01, neighbour: 0.002, overall: 0.006 };

/** Prints what it finds. */
export async function main(): Promise<readonly Line[]> {
  const shell = builtShell();
  const base = read(baseOf(shell));
  const { numbers } = coursesOf(shell);
  const [wind, sided] = timed(() => windOnAll(shell, numbers));
  const [staked, stakes] = timed(() => tapePlan(base, tapeOptions(defaultGround)));
  const [surveyed, survey] = timed(() => read(surveyAnswer(shell, base, readingsOf(base))));
  const { ours, theirs } = await shimmed(base);
  console.log(`${shell.kind.length} places on ${base.hubs.length} base hubs`);
  console.log(`${sided} cases of wind ${wind.toFixed(2)} s; stakes ${stakes.rounds.length}`);
  console.log(`survey: ${survey.verdict}`);
  console.log(`shims ${(1000 * ours).toFixed(1)} ms, HiGHS ${(1000 * theirs).toFixed(1)} ms`);
  return [
    {
      what: 'whole shell of 325 places: wind of every law and side, anchors',
      found: wind,
      unit: 's',
      wanted: WANTED,
    },
    { what: 'its stakes with check diagonals', found: staked, unit: 's', wanted: WANTED },
    {
      what: 'shims under its base, median of 20',
      found: 1000 * ours,
      unit: 'ms',
      wanted: 1000 * WANTED,
      beside: { library: 'HiGHS', ratio: ours / theirs },
    },
    {
      what: 'survey of its base, misfit of every seam',
      found: surveyed,
      unit: 's',
      wanted: WANTED,
    },
  ];
}

/** The site with its anchors, and how many cases of wind were added up. */
function windOnAll(shell: Shell, numbers: readonly string[]): number {
  const site = read(
    siteOfFacts({
      ...{ shell, numbers, leftOut: [], kinds: [], parts: undefined, stages: undefined },
      loads: loadsSection.parse({ wind: { as: 'gust', speed: 28 }, panelMass: 9 }),
      ground: groundSection.parse({
        anchor: { type: 'lawn stake' },
        soil: { kind: 'loam', firm: true, wet: false },
      }),
    }),
  );
  const all = [...shell.kind.keys()];
  const { cases } = stageWind(site.stages.wind, all);
  const drag = cases.map((one) => caseTotals(site.stages.wind, all, one).drag);
  if (!(Math.max(...drag) > 0)) throw new Error('the wind does not push');
  return cases.length;
}

/** The median time over 20 uneven grounds, seconds of processor, ours and that of HiGHS; sums agree. */
async function shimmed(base: Base): Promise<{ ours: number; theirs: number }> {
  const highs = await (
    highsLoader as unknown as () => Promise<{
      solve(program: string): { readonly ObjectiveValue: number };
    }>
  )();
  const times: { ours: number; theirs: number }[] = [];
  for (let seed = 1; seed <= 20; seed++) {
    const random = seededRandom(seed);
    const heights = base.hubs.map(() => 0.05 * random.uniform());
    const ground = new Map(base.hubs.map(({ number }, i) => [number, heights[i] as number]));
    const start = cpuMs();
    const plan = read(shims(base, ground, OPTIONS));
    const middle = cpuMs();
    const needs = heights.map((height, i) => height - (base.hubs[i]?.rise ?? 0));
    const program = highs.solve(shimsProgram(base, needs, OPTIONS)).ObjectiveValue;
    const end = cpuMs();
    const sum = program - needs.reduce((all, one) => all + one, 0);
    // The square holds the circle and lies in one 1.42 times as wide.
    if (plan.total < sum - 1e-6) throw new Error(`${plan.total} m of shims, at least ${sum}`);
    times.push({ ours: (middle - start) / 1000, theirs: (end - middle) / 1000 });
  }
  const median = (of: 'ours' | 'theirs'): number =>
    times.map((one) => one[of]).sort((a, b) => a - b)[10] as number;
  return { ours: median('ours'), theirs: median('theirs') };
}

/** Every radius, chord and level of the base, each a little off. */
function readingsOf({ hubs }: Base): readonly SurveyReading[] {
  const random = seededRandom(1);
  return hubs.flatMap(({ number, at, rise }, i): SurveyReading[] => {
    const next = hubs[(i + 1) % hubs.length] as (typeof hubs)[number];
    const off = (): number => 0.001 * random.normal();
    const chord = Math.hypot(next.at[0] - at[0], next.at[1] - at[1], next.rise - rise);
    return [
      { what: 'radius', hub: number, length: Math.hypot(...at) + off() },
      { what: 'chord', from: number, to: next.number, length: chord + off() },
      { what: 'level', hub: number, height: rise + off() },
    ];
  });
}

function read<T>(
  found:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly faults: unknown },
): T {
  if (!found.ok) throw new Error(JSON.stringify(found.faults));
  return found.value;
}

/** Seconds of processor, and what came of them. */
function timed<T>(make: () => T): readonly [number, T] {
  const before = process.cpuUsage().user;
  const made = make();
  return [(process.cpuUsage().user - before) / 1e6, made];
}
