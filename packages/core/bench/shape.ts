// How fast and how right the identification is. `npm run bench -- shape` prints both tables;
// `-- shape speed` or `-- shape right [piles]` one of them, `-- shape all` all 1,500 piles. Seeds are fixed.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { identify } from '../src/identify/identify.ts';
import { cpuMs } from './clock.ts';
import { judge, namedTrial, randomTrial, type Trial } from './trials.ts';

/** Runs the tables asked for. */
export function main(args: readonly string[]): readonly Line[] {
  const [asked, piles] = args;
  return [
    ...(asked === 'right' ? [] : speed()),
    ...(asked === 'speed' ? [] : right(Number(piles ?? (asked === undefined ? 60 : 500)))),
  ];
}

/** Nets, reading noise (metres), and the targets with counts and with kinds alone, milliseconds. */
const rows: readonly (readonly [number, number, number, number | null, number])[] = [
  [3, 0, 1e-3, 20, 50],
  [4, 0, 1e-3, 100, 300],
  [5, 0, 1e-3, 300, 1000],
  [6, 0, 1e-3, 300, 1000],
  [8, 0, 5e-4, null, 5000],
];

function speed(): readonly Line[] {
  const lines: Line[] = [];
  console.log('Identification, one thread, 20 seeds after five to warm up: milliseconds');
  console.log('net      places  noise    pile         median   worst  right  target');
  for (const [b, c, sd, withCounts, alone] of rows)
    for (const [counted, target] of [
      [true, withCounts],
      [false, alone],
    ] as const) {
      if (target === null) continue;
      const times: number[] = [];
      let rightOnes = 0;
      for (let seed = -4; seed <= 20; seed++) {
        const trial = namedTrial(b, c, sd, counted, seed);
        const { ms, verdict } = timed(trial);
        if (seed <= 0) continue;
        times.push(ms);
        if (verdict.right) rightOnes++;
      }
      times.sort((p, q) => p - q);
      const [median, worst] = [times[10] as number, times[19] as number];
      const places = 20 * (b * b + b * c + c * c);
      console.log(
        `(${b}, ${c})   ${String(places).padStart(6)}  ${(1000 * sd).toFixed(1)} mm   ${counted ? 'counted    ' : 'kinds alone'} ${median.toFixed(0).padStart(7)} ${worst.toFixed(0).padStart(7)}  ${rightOnes}/20  ${target}`,
      );
      lines.push({
        what: `(${b}, ${c}), ${places} places, ${counted ? 'with counts' : 'kinds alone'}, median of 20`,
        found: median,
        unit: 'ms',
        wanted: target,
      });
    }
  console.log(`memory at the end: ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`);
  return lines;
}

function right(piles: number): readonly Line[] {
  const lines: Line[] = [];
  console.log(
    `\n${piles} random piles for each noise (at a radius of 2.7 m, in proportion elsewhere)`,
  );
  console.log(
    'noise    right            wrong but certain  alone, no twins   R within 1.96 sd  time median/worst',
  );
  for (const sd of [5e-4, 1e-3, 1.5e-3]) {
    const times: number[] = [];
    const count = { right: 0, certain: 0, alone: 0, plain: 0, radius: 0 };
    for (let seed = 1; seed <= piles; seed++) {
      const trial = randomTrial(sd, seed);
      const { ms, verdict } = timed(trial);
      times.push(ms);
      if (verdict.right) count.right++;
      else
        console.log(
          `  wrong: seed ${seed} ${trial.name} ${trial.counted ? 'counted' : 'kinds alone'}${verdict.wrongButCertain ? ', but certain' : ''}`,
        );
      if (verdict.wrongButCertain) count.certain++;
      if (verdict.right && !trial.hasTwins) count.plain++;
      if (verdict.alone && !trial.hasTwins) count.alone++;
      if (verdict.radiusOff < 1.96) count.radius++;
    }
    times.sort((p, q) => p - q);
    const share = (part: number, whole: number): string =>
      `${part}/${whole} ${((100 * part) / whole).toFixed(1)} %`;
    console.log(
      `${(1000 * sd).toFixed(1)} mm   ${share(count.right, piles)}   ${count.certain}   ${share(count.alone, count.plain)}   ${share(count.radius, piles)}   ${(times[piles >> 1] as number).toFixed(0)}/${(times[piles - 1] as number).toFixed(0)} ms`,
    );
    const noise = `${piles} piles at ${1000 * sd} mm`;
    lines.push(
      {
        what: `${noise}: true net listed`,
        found: (100 * count.right) / piles,
        unit: '%',
        wanted: 99,
        least: true,
      },
      { what: `${noise}: wrong but certain`, found: count.certain, unit: 'piles', wanted: 0 },
    );
  }
  return lines;
}

function timed(trial: Trial): { ms: number; verdict: ReturnType<typeof judge> } {
  const start = cpuMs();
  const answer = identify({ kinds: trial.kinds, groups: [] });
  const ms = cpuMs() - start;
  return { ms, verdict: judge(trial, answer) };
}
