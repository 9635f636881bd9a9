import { describe, expect, test } from 'vitest';
import { namedTrial, type Trial } from '../../bench/trials.ts';
import { workingKinds } from '../../src/identify/canonical-kinds.ts';
import { handTest } from '../../src/identify/hand-test.ts';
import { offeredHands, placesTogether, withBothWays } from '../../src/identify/hands.ts';
import { identify } from '../../src/identify/identify.ts';
import { netCode, sidesCode } from '../../src/identify/net-code.ts';
import { kindsOfShape, type Shape } from '../../src/identify/shape.ts';
import { priorOf, sideBelief } from '../../src/identify/side-belief.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { fromOtherFace } from '../../src/pile/polygon.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, nextSide, placeAt, type Shell } from '../../src/shell/shell.ts';

/** The trial's kinds as they are where nobody notes faces: a left and a right one are one, read from
 * either face; `known` ids keep theirs. */
function facesUnknown(trial: Trial, seed: number, known: readonly string[] = []): Kind[] {
  const random = seededRandom(seed);
  const done = new Set<number>();
  return trial.kinds.flatMap((kind, i) => {
    if (done.has(i)) return [];
    if (known.includes(kind.id)) return [kind];
    const { mirror } = trial.truth.kinds[trial.source[i] as number] as { mirror: number | null };
    const j = mirror === null ? -1 : trial.source.indexOf(mirror);
    const isPair = j > i && !known.includes((trial.kinds[j] as Kind).id);
    if (isPair) done.add(j);
    const good = kind.good + (isPair ? (trial.kinds[j] as Kind).good : 0);
    const sides = random.uniform() < 0.5 ? fromOtherFace(kind.sides) : kind.sides;
    return [{ ...kind, good, sides, faceUnknown: true }];
  });
}

/** Codes of a net by the lengths of its sides, and of its mirror image. */
function codesOf(shell: Shell, length: (kind: number, side: number) => number): string[] {
  const before = new Int32Array(shell.mate.length);
  const labels = Int32Array.from(shell.mate, (_, s) => {
    before[nextSide(shell, s as SideId)] = s;
    const kind = shell.kind[placeAt(shell, s as SideId)] as number;
    return length(kind, kindSide(shell, s as SideId));
  });
  return [netCode(shell, labels).code, sidesCode({ next: before, mate: shell.mate, labels }).code];
}

/** How the shape lies on the truth: as it is, in the mirror, both or neither. */
function against(trial: Trial, shape: Shape): { asIs: boolean; inMirror: boolean } {
  const classes = [...new Set(trial.truth.kinds.flatMap((kind) => kind.sides))];
  const nearest = (x: number): number => {
    const off = classes.map((length) => Math.abs(length - x));
    return off.indexOf(Math.min(...off));
  };
  const side = (sides: readonly (readonly number[])[]) => (k: number, i: number) =>
    nearest((sides[k] as readonly number[])[i] as number);
  const [truth] = codesOf(trial.truth.shell, side(trial.truth.kinds.map((kind) => kind.sides)));
  const [own, image] = codesOf(shape.shell, side(shape.fittedSides));
  return { asIs: own === truth, inMirror: image === truth };
}

const ask = (kinds: readonly Kind[]) => identify({ kinds, groups: [] });

describe('where no face was noted', () => {
  test.each([
    [4, 0],
    [5, 0],
    [3, 3],
  ])(
    'the net (%i, %i), its own mirror image, is found, and its hands are known (seed 3)',
    (b, c) => {
      const trial = namedTrial(b, c, 3e-4, true, 3);
      const kinds = facesUnknown(trial, 3);
      const found = ask(kinds);
      const right = found.shapes.filter((shape) => against(trial, shape).asIs);
      expect(right).toHaveLength(1);
      expect(right[0]?.hands).toBe('known');
      expect(right[0]?.strangers).toEqual([]);
      expect(right[0]?.suspects).toEqual([]);
    },
  );

  test.each([
    [2, 1],
    [3, 1],
    [4, 1],
    [4, 2],
  ])(
    'the chiral net (%i, %i) is found, and its mirror image is not listed beside it (seeds 1 to 3)',
    (b, c) => {
      for (const seed of [1, 2, 3]) {
        const trial = namedTrial(b, c, 3e-4, true, seed);
        const kinds = facesUnknown(trial, seed);
        const found = ask(kinds);
        const [shape] = found.shapes as [Shape];
        const { asIs, inMirror } = against(trial, shape);
        expect(asIs || inMirror).toBe(true);
        expect(asIs && inMirror).toBe(false);
        expect(shape.hands).toBe('mirrored');
        const look = handTest(shape, kinds);
        expect(found.next[0]).toMatchObject({ act: 'look', kind: look?.kind });
        expect(found.next[0]?.outcomes[0]?.shapes).toHaveLength(found.shapes.length + 1);
        expect(found.settle[0]).toBe(look?.next.words);
        // Were both listed, neither could have more than a half.
        expect(shape.probability).toBeGreaterThan(0.9);
        expect(shape.strangers).toEqual([]);
      }
    },
  );

  test('the other hands that a shape uses are added to it, with their part of the count', () => {
    const trial = namedTrial(4, 0, 3e-4, true, 3);
    const kinds = facesUnknown(trial, 3);
    const shape = ask(kinds).shapes.find((one) => against(trial, one).asIs) as Shape;
    const all = kindsOfShape(shape, kinds);
    expect(shape.added).toHaveLength(1);
    const [added] = shape.added;
    expect(added?.why).toBe('other hand');
    const of = kinds[added?.of as number] as Kind;
    expect(added?.kind.sides).toEqual(fromOtherFace(of.sides));
    expect(of.good).toBe(120);
    expect(added?.kind.good).toBe(60);
    expect(shape.fittedSides).toHaveLength(all.length);
    expect(Math.max(...shape.shell.kind)).toBeLessThan(all.length);
    shape.fittedSides.forEach((sides, k) => {
      sides.forEach((x, i) => {
        expect(Math.abs(x - (all[k]?.sides[i] as number))).toBeLessThan(0.002);
      });
    });
  });

  test('one look at one panel settles it: it tells the truth of every panel of its kind', () => {
    for (const [b, c] of [
      [2, 1],
      [3, 1],
      [4, 1],
    ] as const)
      for (const seed of [1, 2]) {
        const trial = namedTrial(b, c, 3e-4, true, seed);
        const kinds = facesUnknown(trial, seed);
        const [shape] = ask(kinds).shapes as [Shape];
        const look = handTest(shape, kinds);
        expect(look?.sure).toBe(1);
        const at = kinds.findIndex((kind) => kind.id === look?.kind);
        // The panel as it really is, seen from outside.
        const source = trial.kinds.findIndex((kind) => kind.id === look?.kind);
        const true_ = trial.truth.kinds[trial.source[source] as number]?.sides as readonly number[];
        const order = look?.order.map((i) => kinds[at]?.sides[i] as number) ?? [];
        const start = true_.indexOf(Math.min(...true_));
        const round = true_.map((_, i) => true_[(start + i) % true_.length] as number);
        const off = Math.max(...round.map((x, i) => Math.abs(x - (order[i] as number))));
        expect(off < 0.002).toBe(against(trial, shape).asIs);
        expect(look?.next.words).toMatch(/smooth face up/);
        expect(look?.next.act).toBe('look');
      }
  });

  test('nothing is asked of a shape that is its own mirror image', () => {
    const trial = namedTrial(4, 0, 3e-4, true, 3);
    const kinds = facesUnknown(trial, 3);
    const shape = ask(kinds).shapes.find((one) => against(trial, one).asIs) as Shape;
    expect(handTest(shape, kinds)).toBeNull();
  });

  test('counts are those of both hands together', () => {
    const trial = namedTrial(4, 0, 3e-4, true, 5);
    const kinds = facesUnknown(trial, 5);
    const halved = kinds.map((kind) => ({ ...kind, good: Math.ceil(kind.good / 8) }));
    const bestOf = (list: readonly Kind[]): number => ask(list).shapes[0]?.probability ?? 0;
    expect(bestOf(kinds)).toBeGreaterThan(0.2);
    expect(placesTogether([1, 2, 3], undefined)).toEqual([1, 2, 3]);
    expect(halved.length).toBe(kinds.length);
    const working = workingKinds(offeredHands(kinds).kinds);
    const { bothWays } = withBothWays(sideBelief(working.kinds, 0), working, offeredHands(kinds));
    const together = placesTogether(
      working.kinds.map(() => 10),
      bothWays,
    );
    expect([...together].sort((a, b) => a - b)).toEqual([0, 10, 10, 10, 10, 20]);
  });
});

describe('where some faces were noted', () => {
  test('they settle the rest, and no shape is in doubt', () => {
    for (const seed of [1, 2, 3, 4]) {
      const trial = namedTrial(3, 1, 3e-4, true, seed);
      const handed = trial.kinds.filter(
        (_, i) => trial.truth.kinds[trial.source[i] as number]?.mirror === null,
      );
      const kinds = facesUnknown(trial, seed, [handed[0]?.id as string]);
      const [shape] = ask(kinds).shapes as [Shape];
      expect(against(trial, shape)).toEqual({ asIs: true, inMirror: false });
      expect(shape.hands).toBe('known');
      expect(handTest(shape, kinds)).toBeNull();
    }
  });

  test('a joined group settles them as well', () => {
    const trial = namedTrial(3, 1, 3e-4, true, 2);
    const kinds = facesUnknown(trial, 2);
    const [plain] = ask(kinds).shapes as [Shape];
    expect(plain.hands).toBe('mirrored');
    const all = kindsOfShape(plain, kinds);
    // A run around a hub of six that reads differently backwards, in base ids.
    const baseOf = (k: number): string => {
      const added = plain.added[k - kinds.length];
      return (added?.of != null ? kinds[added.of] : all[k])?.id as string;
    };
    const runs: string[][] = [];
    for (let s = 0; s < plain.shell.mate.length; s++) {
      const run: string[] = [];
      let side = s;
      do {
        run.push(baseOf(plain.shell.kind[placeAt(plain.shell, side as SideId)] as number));
        const place = placeAt(plain.shell, side as SideId);
        const [first, end] = [
          plain.shell.placeStart[place] as number,
          plain.shell.placeStart[place + 1] as number,
        ];
        const before = side === first ? end - 1 : side - 1;
        side = plain.shell.mate[before] as number;
      } while (side !== s);
      runs.push(run);
    }
    const has = (list: readonly string[]): boolean =>
      runs.some((run) => run.join() === list.join());
    const telling = runs.find((run) => !has([...run].reverse()));
    if (!telling) throw new Error('the net (3, 1) has a run that differs from its mirror image');
    for (const around of [telling, [...telling].reverse()]) {
      const found = identify({ kinds, groups: [{ around, closed: true, count: 1 }] });
      expect(found.shapes[0]?.hands).toBe('known');
      expect(found.shapes[0]?.misfitGroups).toEqual([]);
    }
  });

  test('a kind whose other hand is among the kinds is not offered again', () => {
    const trial = namedTrial(4, 0, 1e-6, true, 3);
    const sharp = (kinds: readonly Kind[]): Kind[] =>
      kinds.map((kind) => ({ ...kind, sideSds: kind.sides.map(() => 1e-3) }));
    const unknown = trial.kinds.map((kind) => ({ ...kind, faceUnknown: true }));
    expect(offeredHands(sharp(unknown)).of).toEqual([]);
    expect(offeredHands(sharp(trial.kinds)).of).toEqual([]);
    expect(offeredHands(sharp(facesUnknown(trial, 1))).of).toHaveLength(1);
  });
});

describe('the two ways round of one reading', () => {
  const kinds: Kind[] = facesUnknown(namedTrial(3, 1, 3e-4, true, 2), 2);
  const hands = offeredHands(kinds);
  const working = workingKinds(hands.kinds);
  const belief = withBothWays(sideBelief(working.kinds, 0), working, hands);

  test('are one unknown: their difference has no variance', () => {
    const prior = priorOf(belief, 0.1);
    const same = belief.bothWays?.same ?? [];
    const pairs = same.flatMap((t, s) => (t === s ? [] : [[s, t]]));
    expect(pairs.length).toBe(3 * hands.of.length);
    const at = (i: number, j: number): number => prior.covariance[i * prior.size + j] as number;
    const sides = belief.sides.flat();
    for (const [s, t] of pairs as [number, number][]) {
      expect(at(s, s) + at(t, t) - at(s, t) - at(t, s)).toBe(0);
      expect(sides[s]).toBe(sides[t]);
    }
  });
});
