import { expect, test } from 'vitest';
import { type Candidate, candidatesFor, fitsWell } from '../../src/identify/candidates.ts';
import { sideBelief } from '../../src/identify/side-belief.ts';
import { checkShell } from '../../src/shell/check.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { kindWith, RADIUS, readKinds, readSides, truthOf } from './piles.ts';

const best = (nets: readonly Candidate[]): Candidate =>
  nets.reduce((top, net) => (net.fit.evidence > top.fit.evidence ? net : top));
const always = (): boolean => true;

test('no kinds have no candidates', () => {
  expect(candidatesFor({ sides: [], variances: [], sharedVariance: 0 }, always).nets).toEqual([]);
});

test('the largest group of rotations that closes is enough: 60, 24 and 12 for the three solids', () => {
  for (const [solid, order] of [
    ['icosahedron', 60],
    ['octahedron', 24],
    ['tetrahedron', 12],
  ] as const) {
    const truth = truthOf(3, 0, solid);
    const { nets, complete } = candidatesFor(readSides(truth, 5e-4, 2), always);
    const top = best(nets);
    expect(complete).toBe(true);
    expect(top.fold.order).toBe(order);
    expect(placeCount(top.shell)).toBe(placeCount(truth.shell));
    expect(fitsWell(top)).toBe(true);
    expect(checkShell(top.shell).sound).toBe(true);
    expect(top.unused).toEqual([]);
  }
});

test('the candidates do not come with readings altered unless a side is doubted', () => {
  const kinds = readKinds(truthOf(4, 0), 5e-4, 6);
  const stated = sideBelief(kinds, 0);
  for (const net of candidatesFor(stated, always).nets) expect(net.readings).toBe(stated);
  const spoilt = kinds.map((kind, k) =>
    k === 4 ? { ...kind, sides: kind.sides.map((s, i) => (i === 2 ? s - 0.01 : s)) } : kind,
  );
  const readings = sideBelief(spoilt, 0);
  const fitting = candidatesFor(readings, always).nets.filter(fitsWell);
  expect(fitting.length).toBeGreaterThan(0);
  for (const net of fitting) {
    const freed = net.readings.variances
      .flat()
      .filter((v, s) => v !== readings.variances.flat()[s]);
    expect(freed).toEqual([0.03 ** 2]);
  }
});

test('a kind that belongs to another ball is left out and the rest still closes', () => {
  const stranger = kindWith('stranger', [0.5, 0.62, 0.71], 5e-4);
  const kinds = [...readKinds(truthOf(3, 0), 5e-4, 2), stranger];
  const fitting = candidatesFor(sideBelief(kinds, 0), always).nets.filter(fitsWell);
  const whole = fitting.find(({ shell }) => placeCount(shell) === 180);
  expect(whole?.unused).toHaveLength(1);
  expect(whole?.shell.kind).not.toContain(2);
  expect(Math.abs((whole?.fit.radius ?? 0) - RADIUS)).toBeLessThan(0.01);
});

test('the watch hears of growing parts and of work done from 0 to 1, and stops the search', () => {
  const readings = readSides(truthOf(5, 0), 1e-3, 3);
  const heard: [number, number][] = [];
  candidatesFor(readings, (placed, done) => {
    heard.push([placed, done]);
    return true;
  });
  expect(heard.length).toBeGreaterThan(10);
  heard.forEach(([placed, done], i) => {
    const [before, doneBefore] = heard[i - 1] ?? [0, 0];
    expect(placed).toBeGreaterThanOrEqual(before);
    expect(done).toBeGreaterThanOrEqual(doneBefore);
    expect(done).toBeLessThanOrEqual(1);
  });
  let calls = 0;
  const stopped = candidatesFor(readings, () => ++calls < 20);
  expect(stopped.complete).toBe(false);
  expect(calls).toBeLessThan(40);
});

test('a fit that true readings would hardly ever give does not fit well', () => {
  const net = best(candidatesFor(readSides(truthOf(3, 0), 5e-4, 2), always).nets);
  const with_ = (chi2: number): Candidate => ({
    ...net,
    fit: { ...net.fit, chi2, conditions: 10 },
  });
  // Chi-square of 10 degrees: 18.307 is exceeded in 5 of 100, 35.56 in 1 of 10 000 (from memory).
  expect(fitsWell(with_(18.307))).toBe(true);
  expect(fitsWell(with_(35))).toBe(true);
  expect(fitsWell(with_(36.2))).toBe(false);
});
