// Case 7: marks as evidence. Every lot of panels is read once with its mark. One kind has two marks
// (panels above and below one level), two kinds share one, half of one lot lost its mark, one in
// ten of another has a wrong one; groups still joined are noted by their marks.

import { turned } from '../../src/math/cyclic.ts';
import type { Random } from '../../src/math/random.ts';
import { pointAt } from '../../src/math/vector.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeAt, placeCount } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { type Base, randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, wholeJudge } from './judging.ts';
import { pileOf, written } from './rows.ts';

/** Marks as evidence. */
export const marks: HardCase = {
  name: 'marks',
  about: 'marks finer and coarser than shape, wrong, missing; groups by marks',
  make(random, most) {
    const given = randomBase(random, {
      least: 80,
      most: Math.min(most, 320),
      moved: 0,
    });
    const base = { ...given, sd: Math.min(given.sd, 0.0012) };
    const painted = paint(base, random);
    return {
      label: `${base.name}, ${base.net.kinds.length} kinds, ${new Set(painted.marks).size} marks`,
      pile: pileOf({
        readingSd: base.sd,
        readings: readingsOf(base, painted, random),
        groups: groupsOf(base, painted, random),
      }),
      radius: base.radius,
      judge: wholeJudge({ net: base.net, rows: [], sd: base.sd }, (shape): Demand[] => [
        [shape.misfitGroups.length === 0, 'a place for every group'],
      ]),
    };
  },
};

/** Place → its mark, and the mark of which half is gone. */
interface Painted {
  readonly marks: readonly string[];
  readonly bare: string | null;
}

/** Marks by kind, one kind's split at a level, two kinds' in common. */
function paint({ net }: Base, random: Random): Painted {
  const names = net.kinds.map((_, k) => `${k + 1}`);
  const [split, shared, with_] = random.shuffle(names.map((_, k) => k)) as [number, number, number];
  const common = names.length > 4 && random.uniform() < 0.5;
  const marks = Array.from({ length: placeCount(net.shell) }, (_, p) => {
    const kind = net.shell.kind[p] as number;
    const heights = hubsOf(net.shell, p as PlaceId).map((hub) => pointAt(net.shell.hubs, hub)[2]);
    const level = heights.reduce((sum, z) => sum + z, 0) / heights.length;
    if (kind === split)
      return level > 0.4 * net.shell.radius ? `${names[kind]}a` : `${names[kind]}b`;
    return common && kind === shared ? (names[with_] as string) : (names[kind] as string);
  });
  const all = [...new Set(marks)];
  const bare = random.uniform() < 0.6 ? (all[random.below(all.length)] as string) : null;
  return { marks, bare };
}

function readingsOf({ net, sd }: Base, { marks, bare }: Painted, random: Random) {
  const lots = new Map<string, { kind: number; mark: string; count: number }>();
  marks.forEach((mark, p) => {
    const kind = net.shell.kind[p] as number;
    const key = `${kind} ${mark}`;
    const lot = lots.get(key);
    if (lot) lot.count++;
    else lots.set(key, { kind, mark, count: 1 });
  });
  const [wrong, other] = random.shuffle([...new Set(marks)]);
  const rows = [...lots.values()].flatMap(({ kind, mark, count }) => {
    const sides = net.kinds[kind]?.sides ?? [];
    const read = () =>
      turned(sides, random.below(sides.length)).map((x) => written(x + sd * random.normal()));
    const lost = mark === bare ? Math.ceil(count / 2) : 0;
    // One panel in ten of a large lot was painted with another lot's mark.
    const amiss = mark === wrong && count > 20 ? Math.round(count / 10) : 0;
    return [
      ...(amiss > 0 ? [{ mark: other, count: amiss, seenFrom: 'outside', sides: read() }] : []),
      ...(count > lost + amiss
        ? [{ mark, count: count - lost - amiss, seenFrom: 'outside', sides: read() }]
        : []),
      ...(lost > 0 ? [{ count: lost, seenFrom: 'outside', sides: read() }] : []),
    ];
  });
  return random.shuffle(rows);
}

/** Three or four stars of the shell, as their marks read. */
function groupsOf({ net }: Base, { marks }: Painted, random: Random) {
  return random
    .shuffle(starsOf(net.shell))
    .slice(0, 3 + random.below(2))
    .map(({ corners }) => ({
      around: corners.map((side) => marks[placeAt(net.shell, side)] as string),
      closed: true,
    }));
}
