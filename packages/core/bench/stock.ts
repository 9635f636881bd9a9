// How fast the best shell for a stock is found and proved: `npm run bench -- stock`, and of 720 places too,
// which takes minutes: `-- stock all`. Seeds are fixed; stocks are 50 to 90 % of the whole ball, some panels to
// be mended, eight places may be left open. The time is that of the processor, so that what else runs does
// not count.

import highsLoader from 'highs';
import type { Line } from '../../../scripts/bench-line.d.ts';
import { fitStock } from '../src/arrange/fit/fit-stock.ts';
import { defaultWishes } from '../src/arrange/fit/wishes.ts';
import { type HighsRuntime, highsSolver } from '../src/arrange/program/highs-solver.ts';
import type { ProgramSolver } from '../src/arrange/program/solve.ts';
import { seededRandom } from '../src/math/random.ts';
import { type NetShell, netShell } from '../src/nets/kinds.ts';
import type { Kind } from '../src/pile/kind.ts';

/** Steps along a side, and the targets for the first answer and the proof, seconds. */
const rows = [
  [4, 1, 20],
  [6, Number.NaN, 60],
] as const;

/** Prints the table. */
export async function main([asked]: readonly string[]): Promise<readonly Line[]> {
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  const solver = highsSolver(await load());
  console.log('Fitting a stock, one thread, four seeds: seconds');
  console.log(
    'net     places  first answer        proof               all        proved  alternatives',
  );
  const lines: Line[] = [];
  for (const [b, first, proof] of asked === 'all' ? rows : rows.slice(0, 1)) {
    const net = netShell({ solid: 'icosahedron', b, c: 0, division: 'equal chords' }, 2.7);
    const runs = [1, 2, 3, 4].map((seed) => run(net, solver, seed));
    const most = (of: (one: (typeof runs)[number]) => number): number => Math.max(...runs.map(of));
    const worst = (of: (one: (typeof runs)[number]) => number): string =>
      most(of).toFixed(2).padStart(6);
    const target = (value: number): string =>
      (Number.isNaN(value) ? '' : ` (≤ ${value})`).padEnd(9);
    const proved = runs.filter((one) => one.proved).length;
    console.log(
      `(${b}, 0)  ${String(20 * b * b).padStart(6)}  ${worst((one) => one.first)}${target(first)}     ${worst((one) => one.proof)}${target(proof)}     ${worst((one) => one.all)}     ${proved}/4     ${runs.map((one) => one.fits).join(' ')}`,
    );
    const of = `of ${20 * b * b} places, worst of four`;
    lines.push(
      {
        what: `first fit ${of}`,
        found: most((one) => one.first),
        unit: 's',
        ...(Number.isNaN(first) ? {} : { wanted: first }),
      },
      { what: `proved best ${of}`, found: most((one) => one.proof), unit: 's', wanted: proof },
      { what: `all alternatives ${of}`, found: most((one) => one.all), unit: 's' },
    );
  }
  return lines;
}

function run(
  net: NetShell,
  solver: ProgramSolver,
  seed: number,
): { first: number; proof: number; all: number; proved: boolean; fits: number } {
  const random = seededRandom(seed);
  const kinds = net.kinds.map((kind, k): Kind => {
    return {
      id: `${k + 1}`,
      marks: [],
      sides: kind.sides,
      sideSds: kind.sides.map(() => 1e-3),
      hand: null,
      good: Math.floor(kind.count * (0.5 + 0.4 * random.uniform())),
      repair: random.below(6),
      scrap: 0,
      counted: true,
      mass: null,
    };
  });
  const start = process.cpuUsage();
  const since = (): number => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  };
  let first = Number.POSITIVE_INFINITY;
  let proof = Number.POSITIVE_INFINITY;
  const answer = fitStock(net.shell, kinds, { ...defaultWishes, mostGaps: 8 }, solver, {
    now: since,
    seconds: 60,
    onBetter: () => {
      first = Math.min(first, since());
    },
    onProved: () => {
      proof = since();
    },
  });
  return { first, proof, all: since(), proved: answer.proved, fits: answer.fits.length };
}
