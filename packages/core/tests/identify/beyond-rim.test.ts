import { describe, expect, it } from 'vitest';
import { wholeBeyond } from '../../src/identify/beyond-rim.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { conditionsOf, fitNet } from '../../src/identify/fit.ts';
import { namedBeyond } from '../../src/identify/named-beyond.ts';
import { sideBelief } from '../../src/identify/side-belief.ts';
import { turned } from '../../src/math/cyclic.ts';
import { pointAt } from '../../src/math/vector.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { checkShell } from '../../src/shell/check.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, makeShell, placeCount, type Shell } from '../../src/shell/shell.ts';
import { kindsAtPole, oneAxisBall, readKinds } from './one-axis.ts';

/** A ball without some kinds: what is left of it as it stands, and its kinds as read. */
function partWithout(b: number, c: number, seed: number, gone: (net: NetShell) => Set<number>) {
  const { net, random } = oneAxisBall(b, c, seed);
  const { shell } = net;
  const without = gone(net);
  const left = net.kinds.map((_, k) => k).filter((k) => !without.has(k));
  const places = [...Array(placeCount(shell)).keys()].filter(
    (p) => !without.has(shell.kind[p] as number),
  );
  const all = [...new Set(places.flatMap((p) => hubsOf(shell, p as PlaceId)))];
  const part = makeShell({
    radius: shell.radius,
    hubs: Float64Array.from(all.flatMap((hub) => pointAt(shell.hubs, hub))),
    places: places.map((p) => ({
      hubs: hubsOf(shell, p as PlaceId).map((hub) => all.indexOf(hub)),
      kind: left.indexOf(shell.kind[p] as number),
      turn: shell.turn[p] as number,
    })),
  });
  return { net, part, kinds: readKinds(net, left, random), without };
}

const whole = (part: Shell, kinds: readonly Kind[]) => {
  const readings = sideBelief(kinds, 0);
  const fit = fitNet(readings, conditionsOf(part, firstSides(readings.sides)), part.radius);
  return fit && wholeBeyond(part, fit, readings);
};

/** Whether some turn of the one is the other within a length for each side. */
const isPanel = (a: readonly number[], b: readonly number[], within: readonly number[]): boolean =>
  b.some((_, by) =>
    turned(b, by).every((x, i) => Math.abs(x - (a[i] as number)) < (within[i] as number)),
  );

describe('what lies beyond the rim of a part of a ball of one axis', () => {
  const balls = [
    [2, 0],
    [2, 1],
    [3, 0],
  ] as const;

  it('is the net that the part is a piece of', () => {
    for (const [b, c] of balls) {
      const { part } = partWithout(b, c, 3, (net) => kindsAtPole(net, 2));
      expect(namedBeyond(part)?.spec).toMatchObject({ solid: 'icosahedron', b, c });
    }
  });

  it('is known to some millimetres where the rim’s hubs and the axis tell it', () => {
    for (const [b, c] of balls)
      for (const seed of [1, 2, 3]) {
        const { part, kinds, net, without } = partWithout(b, c, seed, (one) => kindsAtPole(one, 2));
        const found = whole(part, kinds);
        expect(found?.wanted.length).toBe(2);
        expect(placeCount(found?.shell as Shell)).toBe(placeCount(net.shell));
        expect(checkShell(found?.shell as Shell)).toMatchObject({ components: 1, insideOut: [] });
        for (const { sides, sds } of found?.wanted ?? []) {
          expect(Math.max(...sds)).toBeLessThan(0.004);
          const truths = [...without].map((k) => net.kinds[k]?.sides as readonly number[]);
          expect(
            truths.some((truth) =>
              isPanel(
                sides,
                truth,
                sds.map((sd) => 5 * sd),
              ),
            ),
          ).toBe(true);
        }
      }
  });

  it('is left loose where a hub lies on no panel that is there and on no axis', () => {
    const { part, kinds, net, without } = partWithout(3, 0, 1, (one) => {
      const kept = new Set<number>();
      const hub = one.shell.sideHub[100] as number;
      for (let p = 0; p < placeCount(one.shell); p++)
        if (hubsOf(one.shell, p as PlaceId).includes(hub as never))
          kept.add(one.shell.kind[p] as number);
      return kept;
    });
    const found = whole(part, kinds);
    if (!found) throw new Error('not made whole');
    const loose = found.wanted.flatMap(({ sds }) => sds).filter((sd) => sd > 0.01);
    expect(loose.length).toBeGreaterThan(0);
    for (const { sides, sds } of found.wanted) {
      const truths = [...without].map((k) => net.kinds[k]?.sides as readonly number[]);
      expect(
        truths.some((truth) =>
          isPanel(
            sides,
            truth,
            sds.map((sd) => 5 * sd),
          ),
        ),
      ).toBe(true);
    }
  });

  it('is not told where the part’s hubs are those of no named net', () => {
    const { part } = partWithout(2, 1, 1, (net) => kindsAtPole(net, 2));
    const bent = { ...part, hubs: part.hubs.map((x, i) => (i % 3 === 0 ? 1.25 * x : x)) };
    expect(namedBeyond(part)).not.toBeNull();
    expect(namedBeyond(bent)).toBeNull();
  });
});
