import { expect, test } from 'vitest';
import { trialNets } from '../../bench/trials.ts';
import { cornerModel } from '../../src/identify/corner-model.ts';
import { type FoldedNet, foldedStars, isFoldedSphere } from '../../src/identify/fold.ts';
import { foldStarts, radiusCovering, solidFolds } from '../../src/identify/fold-starts.ts';
import { foldedNets } from '../../src/identify/folded-net.ts';
import { liftNet } from '../../src/identify/lift.ts';
import { priorOf, sideBelief } from '../../src/identify/side-belief.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { checkShell } from '../../src/shell/check.ts';
import { sideLength } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, placeAt, placeCount, type Shell, sideCount } from '../../src/shell/shell.ts';
import { kindWith, RADIUS, truthOf } from './piles.ts';

const [icosahedral] = solidFolds as [(typeof solidFolds)[number]];

/** The folded nets of exact sides at the true radius, by the rotations of the icosahedron. */
function folded({ kinds }: NetShell): FoldedNet[] {
  const readings = sideBelief(
    kinds.map(({ sides }, k) => kindWith(`${k}`, sides, 1e-4)),
    0,
  );
  const starts = foldStarts(readings, icosahedral, 4.5);
  return starts.flatMap(({ seed, model, kappaReach }) => [
    ...foldedNets(model, priorOf(readings, kappaReach), icosahedral, seed, {
      gate: 4.5,
      window: 25,
      spareKinds: 0,
      kappaReach,
      maxTries: 60000,
      periods: readings.sides.map((own) => own.length),
      onTry: () => true,
    }).nets,
  ]);
}

const previousOf = (net: FoldedNet): number[] => {
  const previous: number[] = [];
  net.next.forEach((next, side) => {
    previous[next] = side;
  });
  return previous;
};

/** Largest difference of a side from its kind's length, metres. */
function worstOff(shell: Shell, sides: readonly (readonly number[])[]): number {
  let worst = 0;
  for (let s = 0; s < sideCount(shell); s++) {
    const own = sides[shell.kind[placeAt(shell, s as SideId)] as number];
    const length = own?.[kindSide(shell, s as SideId)] as number;
    worst = Math.max(worst, Math.abs(sideLength(shell, s as SideId) - length));
  }
  return worst;
}

test.each(trialNets)(
  '(%i, %i) at exact sides folds, and unfolds to a sound ball with its kinds’ lengths',
  (b, c) => {
    const truth = truthOf(b, c);
    const sides = truth.kinds.map((kind) => kind.sides);
    // Within tape error some wrong nets fold too; at least one must be exact.
    const lifted = folded(truth).flatMap((net) => liftNet(net, sides, RADIUS) ?? []);
    const whole = lifted.filter((shell) => worstOff(shell, sides) < 1e-7);
    expect(whole.length).toBeGreaterThan(0);
    for (const shell of whole)
      expect(checkShell(shell)).toMatchObject({
        sound: true,
        closed: true,
        eulerCharacteristic: 2,
      });
    expect(placeCount(whole[0] as Shell)).toBe(placeCount(truth.shell));
    const longer = sides.map((own) => own.map((side) => side * (1 + 1e-6)));
    expect(worstOff(whole[0] as Shell, longer)).toBeGreaterThan(1e-7);
    const used = (kind: number): number =>
      [...(whole[0]?.kind ?? [])].filter((k) => k === kind).length;
    expect(truth.kinds.map((_, k) => used(k))).toEqual(truth.kinds.map(({ count }) => count));
  },
);

test('a net folded up by 60 rotations closes, and has each axis once', () => {
  for (const net of folded(truthOf(4, 0))) {
    expect(isFoldedSphere(60, previousOf(net), net.mate, net.hubAxis, net.pieceAxis)).toBe(true);
    expect(isFoldedSphere(24, previousOf(net), net.mate, net.hubAxis, net.pieceAxis)).toBe(false);
    const stars = foldedStars(previousOf(net), net.mate);
    const axes = [
      ...stars.map((star) => net.hubAxis[star[0] as number] as number),
      ...net.pieceAxis,
      ...net.mate.flatMap((mate, side) => (mate === side ? [2] : [])),
    ].filter((axis) => axis > 1);
    expect(axes.sort()).toEqual([2, 3, 5]);
    expect(stars.flat().sort((p, q) => p - q)).toEqual(net.mate.map((_, side) => side));
  }
});

test('with the sides of one kind a twentieth too long the unfolded net does not come together', () => {
  const truth = truthOf(4, 0);
  const longer = truth.kinds.map(({ sides }, k) => sides.map((s) => (k === 2 ? 1.05 * s : s)));
  for (const net of folded(truth)) {
    const shell = liftNet(net, longer, RADIUS);
    expect(shell === null || !checkShell(shell).sound).toBe(true);
  }
});

test('hexagons and pentagons fold with the axes through their middles', () => {
  const truth = shellOfNet(mixedNet('truncated icosahedron'), RADIUS);
  const sides = truth.kinds.map((kind) => kind.sides);
  const lifted = folded(truth).flatMap((net) => liftNet(net, sides, RADIUS) ?? []);
  expect(lifted.length).toBeGreaterThan(0);
  for (const shell of lifted) {
    expect(placeCount(shell)).toBe(32);
    expect(checkShell(shell)).toMatchObject({ sound: true, closed: true });
  }
});

test('the radius that so many panels cover: the ball’s own for the ball’s own counts', () => {
  for (const [b, c] of [
    [2, 0],
    [4, 2],
  ] as const) {
    const { kinds } = truthOf(b, c);
    const counts = kinds.map(({ count }) => count);
    const sides = kinds.map((kind) => kind.sides);
    expect(Math.abs(radiusCovering(sides, counts, 1) - RADIUS)).toBeLessThan(1e-9);
    const half = radiusCovering(sides, counts, 0.5);
    expect(half).toBeGreaterThan(1.3 * RADIUS);
  }
});

test('starts run from the smallest radius on and bracket the true one', () => {
  const { kinds } = truthOf(3, 1);
  const readings = sideBelief(
    kinds.map(({ sides }, k) => kindWith(`${k}`, sides, 1e-3)),
    0,
  );
  for (const fold of solidFolds) {
    const radii = foldStarts(readings, fold, 4.5).map(({ model }) => 1 / Math.sqrt(model.kappa));
    expect(radii).toEqual([...radii].sort((p, q) => p - q));
  }
  const starts = foldStarts(readings, icosahedral, 4.5);
  const spans = starts.map(({ model, kappaReach }) =>
    Math.abs((1 / RADIUS ** 2 - model.kappa) / model.kappa) < kappaReach ? 1 : 0,
  );
  expect(spans.reduce<number>((sum, x) => sum + x, 0)).toBeGreaterThan(0);
  expect(cornerModel(readings.sides, 1 / RADIUS ** 2)).not.toBeNull();
});
