// Case 4: mis-measured. One to three culprits in a pile: one or two sides wrong by 8 to 30 mm, two
// sides swapped, an inch taken for a centimetre, a panel read from the wrong face; in a third of the
// piles the tape of one of three people was broken at the hook and reads 25 mm long or short.

import type { Shape } from '../../src/identify/shape.ts';
import { turned } from '../../src/math/cyclic.ts';
import type { Random } from '../../src/math/random.ts';
import { nearestTurn } from '../../src/pile/polygon.ts';
import { type Base, randomBase } from './bases.ts';
import type { HardCase, Run } from './heap.ts';
import { type Demand, type Truth, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf, type Written, written } from './rows.ts';

/** Mis-measured. */
export const culprits: HardCase = {
  name: 'culprits',
  about: 'one to three mis-measured kinds, or a whole tape',
  make(random, most) {
    const base = randomBase(random, {
      least: 100,
      most: Math.min(most, 320),
      solids: ['icosahedron', 'octahedron'],
      moved: 0.4,
    });
    const sort = random.uniform();
    if (sort < 0.3 && base.net.kinds.length > 2) return shortTape(base, random);
    return sort < 0.6 ? slipsAmongMany(base, random) : slips(base, random);
  },
};

type Slip = 'length' | 'two lengths' | 'swapped' | 'unit' | 'face';

const allSlips: readonly Slip[] = ['length', 'two lengths', 'swapped', 'unit', 'face'];

function slips(base: Base, random: Random) {
  const rows = rowsOf(base, random, maybeCounts(base.net, random));
  const guilty = random
    .shuffle(rows.map((_, i) => i))
    .slice(0, Math.min(1 + random.below(3), rows.length >> 1));
  const done = new Map<string, Slip>();
  const all = rows.map((row, i) => {
    if (!guilty.includes(i)) return row;
    const slip = slipFor(row, random);
    done.set(row.id, slip);
    return slipped(row, slip, random);
  });
  return {
    label: `${base.name}, ${rows.length} kinds, ${[...done].map(([id, slip]) => `${id} ${slip}`).join(', ')}`,
    pile: pileOf({ readingSd: base.sd, kinds: all.map(rowOf) }),
    radius: base.radius,
    judge: wholeJudge({ net: base.net, rows: all, sd: base.sd }, (shape, run): Demand[] =>
      [...done.keys()].map((id) => [
        isNamed(all.find((row) => row.id === id) as Written, shape, run),
        `${id} (${done.get(id)}) with what it should read`,
      ]),
    ),
  };
}

/** A slip that this panel can suffer so that it shows. */
function slipFor({ truth }: Written, random: Random): Slip {
  const slip = allSlips[random.below(allSlips.length)] as Slip;
  const gap = Math.min(...truth.map((x, i) => Math.abs(x - (truth[(i + 1) % 3] as number))));
  return (slip === 'swapped' || slip === 'face') && gap < 0.008 ? 'length' : slip;
}

function slipped(row: Written, slip: Slip, random: Random): Written {
  const sides = [...row.sides];
  const off = (): number => (random.uniform() < 0.5 ? -1 : 1) * (0.008 + 0.022 * random.uniform());
  const add = (i: number): void => {
    sides[i] = written((sides[i] as number) + off());
  };
  const first = random.below(sides.length);
  const second = (first + 1) % sides.length;
  if (slip === 'length' || slip === 'two lengths') add(first);
  if (slip === 'two lengths') add(second);
  if (slip === 'swapped')
    [sides[first], sides[second]] = [sides[second] as number, sides[first] as number];
  // Read in inches and written down as centimetres: all sides of the row.
  if (slip === 'unit') return { ...row, sides: sides.map((x) => written(x / 2.54)) };
  return { ...row, sides: slip === 'face' ? sides.reverse() : sides };
}

/** Whether the shape mends a kind to what is true, or the pile's own findings name it. */
function isNamed(row: Written, shape: Shape, { worked }: Run): boolean {
  const near = (expected: readonly number[]): boolean =>
    row.truth.some((_, by) =>
      turned(row.truth, by).every((x, i) => Math.abs(x - (expected[i] ?? 0)) < 0.006),
    );
  const mend = shape.mends.find(({ kind }) => kind === row.id);
  if (mend && near(mend.expected)) return true;
  const said = [...shape.suspects, ...worked.suspects].filter(({ kind }) => kind === row.id);
  const wrong = row.truth.flatMap((x, i) =>
    Math.abs(x - (row.sides[i] as number)) > 0.006 ? [i] : [],
  );
  return (
    wrong.length > 0 &&
    wrong.every((i) =>
      said.some(
        ({ side, expected }) => side === i && Math.abs(expected - (row.truth[i] as number)) < 0.006,
      ),
    )
  );
}

/** Three panels of every kind read; up to three of the readings are wrong, no two of one kind. */
function slipsAmongMany(base: Base, random: Random) {
  const rows = rowsOf(base, random, null);
  const panels = random.shuffle(
    rows.flatMap((row) =>
      [1, 2, 3].map((n): Written => {
        const from = random.below(row.truth.length);
        const truth = turned(row.truth, from);
        const sides = truth.map((x) => written(x + base.sd * random.normal()));
        return { ...row, id: `${row.id}-${n}`, truth, sides };
      }),
    ),
  );
  const firsts = panels.filter((row, i) => panels.findIndex(({ kind }) => kind === row.kind) === i);
  const wrong = firsts.slice(0, Math.min(1 + random.below(3), firsts.length >> 1));
  const guilty = new Map(
    wrong.map((row) => {
      const slip = slipFor(row, random);
      const other = slip === 'face' || slip === 'swapped';
      return [row.id, other && hasOtherHand(row, base.net.kinds) ? 'length' : slip];
    }),
  );
  const all = random.shuffle(
    panels.map((row) => {
      const slip = guilty.get(row.id);
      return slip ? slipped(row, slip, random) : row;
    }),
  );
  return {
    label: `${base.name}, ${panels.length} readings, ${[...guilty.values()].join(', ')}`,
    pile: pileOf({
      readingSd: base.sd,
      readings: all.map(({ id, sides }) => ({ tag: id, sides: [...sides], seenFrom: 'outside' })),
    }),
    radius: base.radius,
    judge: wholeJudge({ net: base.net, rows: [], sd: base.sd }, (shape, run): Demand[] =>
      [...guilty].map(([id, slip]) => [
        isReadingNamed(all.find((row) => row.id === id) as Written, shape, run),
        `${slip} of panel ${id} with what it should read`,
      ]),
    ),
  };
}

/** Whether the mirror image of a panel is a kind of the net as well: a reading from the other face is
 * then one of that kind, and nobody could tell. */
const hasOtherHand = ({ truth, kind }: Written, kinds: readonly { sides: readonly number[] }[]) =>
  kinds.some(
    ({ sides }, k) =>
      k !== kind &&
      sides.length === truth.length &&
      nearestTurn([...truth].reverse(), sides).cost < 0.002 ** 2,
  );

/** Whether the pile names a panel's reading and what it should read, or the shape mends its kind. */
function isReadingNamed(row: Written, shape: Shape, { worked, pile }: Run): boolean {
  const near = (expected: readonly number[]): boolean =>
    row.truth.some((_, by) =>
      turned(row.truth, by).every((x, i) => Math.abs(x - (expected[i] ?? 0)) < 0.006),
    );
  const index = pile.readings.findIndex(({ tag }) => tag === row.id);
  if (worked.slips.some(({ reading, expected }) => reading === index && near(expected)))
    return true;
  const suspect = worked.suspects.filter(({ reading }) => reading === index);
  const kind = worked.assigned[index]?.candidates[0];
  return (
    shape.mends.some((mend) => mend.kind === kind && near(mend.expected)) ||
    shape.explained.some(
      (one) => one.as === 'misread' && one.kind === kind && near(one.expected),
    ) ||
    (suspect.length > 0 &&
      suspect.every(({ side, expected }) => Math.abs(expected - (row.truth[side] ?? 0)) < 0.006))
  );
}

const people = ['Anouk', 'Bram', 'Cem'] as const;

/** Every kind read by one or two of three people, one panel each; one tape is off by 25 mm. */
function shortTape(base: Base, random: Random) {
  const { net, sd } = base;
  const guilty = people[random.below(3)] as string;
  const shift = random.uniform() < 0.5 ? -0.025 : 0.025;
  const rows = rowsOf(base, random, null);
  const readings = rows.flatMap(({ truth, id }, i) => {
    // Each two of the three have read one panel both, so that two tapes agree against the third.
    const pair = i < 3 || random.uniform() < 0.3;
    const by =
      i < 3 ? people.filter((_, n) => n !== i) : random.shuffle(people).slice(0, pair ? 2 : 1);
    return by.map((who) => ({
      tag: `panel ${id}`,
      by: who,
      seenFrom: 'outside',
      sides: turned(truth, random.below(truth.length)).map((x) =>
        written(x + sd * random.normal() + (who === guilty ? shift : 0)),
      ),
    }));
  });
  const truth: Truth = { net, rows: [], sd };
  return {
    label: `${base.name}, ${rows.length} kinds, ${guilty}'s tape ${(1000 * shift).toFixed(0)} mm`,
    pile: pileOf({ readingSd: sd, readings: random.shuffle(readings) }),
    radius: base.radius,
    judge: wholeJudge(truth, (shape, run): Demand[] => [
      [tapeNamed(shape, run, guilty, shift), `${guilty}'s tape`],
    ]),
  };
}

/** The pile says that the tape is off, or the shape mends the kinds that it alone read. */
function tapeNamed(shape: Shape, { pile, worked }: Run, guilty: string, shift: number): boolean {
  const said = worked.people.find(({ by }) => by === guilty);
  if (said && Math.abs(said.bias - shift) < 0.006) return true;
  const shifted = shape.mends.filter(({ slip }) => slip === 'shift').map(({ kind }) => kind);
  const his = worked.assigned.filter(({ reading }) => pile.readings[reading]?.by === guilty);
  return (
    shifted.length > 0 &&
    shifted.every((kind) => his.some(({ candidates }) => candidates[0] === kind))
  );
}
