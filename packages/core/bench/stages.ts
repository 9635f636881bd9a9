// How long the stages of a build take: `npm run bench -- stages`. A ball of 500 places cut to 325, in
// number order, every seam finger-tight: mechanisms, props, and the limits of anchors and props by
// every law and eight directions; then one whole shell with seams and panels by the frame.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { frameParts } from '../src/frame/parts.ts';
import { unknownParts } from '../src/frame/schema.ts';
import { holdingOf } from '../src/ground/anchors/plan.ts';
import { practices } from '../src/ground/anchors/practice.ts';
import { defaultLoads } from '../src/loads/schema.ts';
import { coursesOf } from '../src/shell/courses.ts';
import { placeCount, type Shell } from '../src/shell/shell.ts';
import { type StageOptions, stageAnswer } from '../src/stages/answer.ts';
import { nothingKnown, type StageModel, stageModel } from '../src/stages/model.ts';
import { numberOrder, stageOf, stageSeries } from '../src/stages/series.ts';
import { builtShell } from './built-shell.ts';
import { cpuMs } from './clock.ts';

/** Wanted, seconds: all stages; and milliseconds: one stage of them. */
const WANTED = { all: 20, one: 30 } as const;

/** Prints what it finds. */
export function main(): readonly Line[] {
  const shell = builtShell();
  const model = modelOf(shell);
  const order = numberOrder(shell);
  const times: number[] = [];
  let [props, unproved, refused] = [0, 0, 0];
  const before = process.cpuUsage().user;
  const start = cpuMs();
  let last = start;
  for (const answer of stageSeries(model, order)) {
    if (!answer.ok) refused++;
    else {
      props += answer.value.props.length;
      if (!answer.value.fewest) unproved++;
    }
    times.push(cpuMs() - last);
    last = cpuMs();
  }
  const all = (last - start) / 1000;
  const sorted = times.toSorted((a, b) => a - b);
  const quantile = (part: number): number =>
    sorted[Math.floor(part * (sorted.length - 1))] as number;
  const at = (part: number): string => quantile(part).toFixed(0);
  console.log(
    `${placeCount(shell)} stages, factored anew, patches of the one before: mechanisms, props, wind limit`,
  );
  const cpu = (process.cpuUsage().user - before) / 1e6;
  console.log(
    `all ${all.toFixed(1)} s, of which at work ${cpu.toFixed(1)} s (wanted ${WANTED.all} or less)`,
  );
  console.log(
    `one: median ${at(0.5)} ms, 90 % ${at(0.9)} ms, most ${at(1)} ms (wanted ${WANTED.one})`,
  );
  console.log(
    `props in all ${props}; not shown to be the fewest in ${unproved} stages; refused ${refused}`,
  );
  whole(model, order, 'fewest props sought to the end', { strength: false }, 200);
  whole(model, order, 'seams and panels too, whole shell', {}, order.length);
  return [
    {
      what: 'all 325 stages: mechanisms, props, limits',
      found: cpu,
      unit: 's',
      wanted: WANTED.all,
    },
    { what: 'one stage, median', found: quantile(0.5), unit: 'ms', wanted: WANTED.one },
    { what: 'one stage, most', found: quantile(1), unit: 'ms' },
  ];
}

function whole(
  model: StageModel,
  order: readonly number[],
  name: string,
  options: StageOptions,
  n: number,
): void {
  const start = cpuMs();
  const answer = stageAnswer(model, stageOf(order, n), options);
  const seconds = ((cpuMs() - start) / 1000).toFixed(2);
  console.log(`stage ${n}, ${name}: ${seconds} s, ${answer.ok ? answer.value.status : 'refused'}`);
}

function modelOf(shell: Shell): StageModel {
  const holding = holdingOf(
    { type: 'lawn stake' },
    {
      soil: { kind: 'loam', firm: true, wet: false },
      tie: { pull: { way: 'up' }, height: 0 },
      tests: [],
    },
  );
  if (!holding.ok) throw new Error('a stake holds in firm loam');
  const parts = frameParts({
    ...unknownParts,
    panel: { ...unknownParts.panel, material: 'fibreglass', thickness: 0.004, strength: 2e7 },
    bolt: { thread: '5/16-18', grade: 'SAE J429 Gr 5' },
  });
  const model = stageModel(shell, coursesOf(shell).numbers, {
    loads: defaultLoads,
    massOf: () => ({ value: 9, sources: [] }),
    bears: {
      ...nothingKnown,
      anchors: {
        words: 'stake',
        holding: holding.value,
        practices: Object.values(practices),
        count: () => 1,
      },
      prop: 3000,
      parts,
      seamBolts: () => 3,
    },
  });
  if (!model.ok) throw new Error('it stands on a base ring');
  return model.value;
}
