// Case 9: the gap between side and hub unknown. Sides are read from corner hole to corner hole, 2 to
// 14 mm short of hub to hub; in some piles distances across a joined group, a hub plate or the
// angles between panels tell how much, in others nothing does.

import type { Random } from '../../src/math/random.ts';
import { distance } from '../../src/math/vector.ts';
import { dihedralAngles } from '../../src/shell/angles.ts';
import { endHubAt, hubPoint } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, placeAt } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { type Base, randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf, type Written, written } from './rows.ts';

/** The hub gap unknown. */
export const gap: HardCase = {
  name: 'gap',
  about: 'sides from hole to hole, the hub allowance unknown',
  make(random, most) {
    const base = randomBase(random, { least: 80, most: Math.min(most, 420) });
    const short = 0.002 + 0.012 * random.uniform();
    const rows = rowsOf(base, random, maybeCounts(base.net, random)).map(
      (row): Written => ({ ...row, sides: row.sides.map((x) => written(x - short)) }),
    );
    const help = (['none', 'rim', 'plate', 'dihedrals'] as const)[random.below(4)] ?? 'none';
    const pile = pileOf({
      readingSd: base.sd,
      measuredAlong: 'holes',
      hubAllowance: null,
      kinds: rows.map((row) => ({
        ...rowOf(row),
        ...(help === 'dihedrals' ? { dihedrals: anglesOf(base, row, random) } : {}),
      })),
      ...(help === 'dihedrals' ? { angleSd: ANGLE_SD } : {}),
      ...(help === 'rim' ? { groups: [rimGroup(base, rows, short, random)] } : {}),
      ...(help === 'plate'
        ? { hubPlates: [{ corners: 6, radius: written(short / 2 + 0.0003 * random.normal()) }] }
        : {}),
    });
    return {
      label: `${base.name}, ${(1000 * short).toFixed(1)} mm short, help: ${help}`,
      pile,
      radius: base.radius,
      judge: wholeJudge(
        { net: base.net, rows, sd: base.sd },
        ({ allowance, ...shape }): Demand[] => [
          [allowance !== null, 'the allowance'],
          [
            allowance === null || Math.abs(allowance.value - short) < 3 * allowance.sd,
            `the allowance within 3 sd (${(1000 * (allowance?.value ?? 0)).toFixed(1)} ± ${(1000 * (allowance?.sd ?? 0)).toFixed(1)} mm)`,
          ],
          [help !== 'plate' || (allowance?.sd ?? 1) < 2.5 * base.sd, 'the allowance, by the plate'],
          [shape.strangers.length + shape.mends.length === 0, 'no strangers, no mends'],
        ],
      ),
    };
  },
};

/** Deviation of an angle, radians: a third of a degree. */
const ANGLE_SD = 0.006;

/** Angles along the sides of a row, each read where its kind lies first. */
function anglesOf({ net }: Base, row: Written, random: Random): number[] {
  const angles = dihedralAngles(net.shell);
  const bySide = new Map<number, number>();
  angles.forEach((angle, m) => {
    for (const side of [net.shell.seams[2 * m], net.shell.seams[2 * m + 1]] as SideId[])
      if (net.shell.kind[placeAt(net.shell, side)] === row.kind)
        bySide.set(kindSide(net.shell, side), angle);
  });
  return row.sides.map((_, i) => {
    const angle = bySide.get((i + row.from) % row.sides.length) as number;
    return Number((angle + ANGLE_SD * random.normal()).toFixed(4));
  });
}

/** A closed group with the distances across it, as read between the same points as the sides. */
function rimGroup({ net, sd }: Base, rows: readonly Written[], short: number, random: Random) {
  const { shell } = net;
  const stars = starsOf(shell);
  const { corners } = stars[random.below(stars.length)] as (typeof stars)[number];
  const ids = new Map(rows.map(({ id, kind }) => [kind, id]));
  const ends = corners.map((side) => hubPoint(shell, endHubAt(shell, side)));
  const across = [0, 1].map((from) => {
    const to = from + Math.floor(corners.length / 2);
    const true_ = distance(ends[from] as (typeof ends)[0], ends[to] as (typeof ends)[0]);
    return { from, to, length: written(true_ - short + sd * random.normal()) };
  });
  return {
    around: corners.map((side) => ids.get(shell.kind[placeAt(shell, side)] as number)),
    closed: true,
    rim: across,
  };
}
