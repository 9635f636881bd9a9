// Case 8: laps. Sides that mate make one net of sorts (kind and side); each part of it that two
// colours do for laps over on one colour and under on the other, the rest is flush; every part has
// its own number of holes. In a third of the piles one lap is noted wrong, so that nothing closes.

import type { Random } from '../../src/math/random.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Lap } from '../../src/pile/kind.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, placeAt, sideCount } from '../../src/shell/shell.ts';
import { randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, type Truth, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf } from './rows.ts';

/** Laps. */
export const laps: HardCase = {
  name: 'laps',
  about: 'laps and hole patterns, a third with a scheme that cannot close',
  make(random, most) {
    const base = randomBase(random, { least: 60, most: Math.min(most, 420) });
    const rows = rowsOf(base, random, maybeCounts(base.net, random));
    const scheme = jointScheme(base.net, random);
    const wrong = random.uniform() < 1 / 3 ? wrongLap(scheme, random) : null;
    const kinds = rows.map((row) => {
      const at = row.sides.map((_, i) => `${row.kind}:${(i + row.from) % row.sides.length}`);
      const lapOf = (key: string): Lap => {
        const lap = scheme.lap.get(key) as Lap;
        return key === wrong ? flipped(lap) : lap;
      };
      return { ...rowOf(row), laps: at.map(lapOf), holes: at.map((key) => scheme.holes.get(key)) };
    });
    const accused = rows.find(({ kind }) => wrong?.startsWith(`${kind}:`));
    const truth: Truth = { net: base.net, rows, sd: base.sd };
    const judgeShape = wholeJudge(truth, (shape): Demand[] => [
      [shape.strangers.length === 0, 'no strangers'],
    ]);
    const label = `${base.name}, ${rows.length} kinds${accused ? `, a lap of ${accused.id} wrong` : ''}`;
    return {
      label,
      pile: pileOf({ readingSd: base.sd, kinds }),
      radius: base.radius,
      judge: (run) => {
        if (!accused) return judgeShape(run);
        const named = run.answer.conflicts.some(({ sides }) =>
          sides.some(({ kind }) => kind === accused.id),
        );
        const shape = judgeShape(run);
        if (shape.outcome === 'wrong' || shape.outcome === 'certain') return shape;
        if (named) return { ...shape, outcome: 'right', lacks: [] };
        return shape.outcome === 'no'
          ? shape
          : { ...shape, outcome: 'short', lacks: [`the conflict of ${accused.id}`] };
      },
    };
  },
};

interface Scheme {
  readonly lap: ReadonlyMap<string, Lap>;
  readonly holes: ReadonlyMap<string, number>;
}

/** Laps and holes of every sort of side. */
export function jointScheme({ shell }: NetShell, random: Random): Scheme {
  const meets = new Map<string, Set<string>>();
  for (let s = 0; s < sideCount(shell); s++) {
    const own = sortOf(shell, s);
    const known = meets.get(own) ?? new Set<string>();
    meets.set(own, known.add(sortOf(shell, shell.mate[s] as number)));
  }
  const lap = new Map<string, Lap>();
  const holes = new Map<string, number>();
  for (const start of meets.keys()) {
    if (lap.has(start)) continue;
    const colour = new Map([[start, random.uniform() < 0.5]]);
    let two = true;
    for (const [sort, over] of colour)
      for (const other of meets.get(sort) as Set<string>) {
        if (colour.get(other) === over) two = false;
        if (!colour.has(other)) colour.set(other, !over);
      }
    const count = 4 + random.below(4);
    for (const [sort, over] of colour) {
      lap.set(sort, two ? (over ? 'over' : 'under') : 'flush');
      holes.set(sort, count);
    }
  }
  return { lap, holes };
}

const sortOf = (shell: NetShell['shell'], side: number): string =>
  `${shell.kind[placeAt(shell, side as SideId)]}:${kindSide(shell, side as SideId)}`;

const flipped = (lap: Lap): Lap => (lap === 'over' ? 'under' : 'over');

/** A sort of side whose lap is noted wrong. */
function wrongLap({ lap }: Scheme, random: Random): string {
  const lapped = [...lap.keys()].filter((key) => lap.get(key) !== 'flush');
  const all = lapped.length > 0 ? lapped : [...lap.keys()];
  return all[random.below(all.length)] as string;
}
