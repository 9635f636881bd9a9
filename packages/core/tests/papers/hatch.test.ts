import { describe, expect, it } from 'vitest';
import { hatchNamed, hatchNames, kindFills, tints } from '../../src/papers/hatch.ts';
import type { Hand } from '../../src/pile/kind.ts';
import { kindOf } from '../takeoff/ball.ts';

const kind = (id: string, hand: Hand = null) => kindOf(id, [1, 1, 1], 1, hand);
const pairs = (n: number) =>
  Array.from({ length: n }, (_, i) => [kind(`${i + 1}L`, 'L'), kind(`${i + 1}R`, 'R')]).flat();

/** Relative luminance of an sRGB colour, WCAG 2.2. */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

describe('hatches', () => {
  it('tell 70 kinds without a hand apart, the first left white', () => {
    const fills = kindFills(Array.from({ length: 70 }, (_, i) => kind(String(i + 1))));
    expect(new Set(fills.map((fill) => `${fill.hatch} ${fill.tint}`)).size).toBe(70);
    expect(fills[0]).toEqual({ tint: null, hatch: null });
  });

  it('tell 42 pairs apart', () => {
    const fills = kindFills(pairs(42));
    expect(new Set(fills.map((fill) => `${fill.hatch} ${fill.tint}`)).size).toBe(84);
  });

  it('differ in hatch alone, without any tint, for the first 11 kinds and 7 pairs', () => {
    const lone = kindFills(Array.from({ length: 11 }, (_, i) => kind(String(i + 1))));
    const handed = kindFills(pairs(7));
    expect(new Set([...lone, ...handed].map((fill) => fill.hatch)).size).toBe(25);
  });

  it('of a left and a right kind are mirror images with one tint; the left leans left', () => {
    const [left, right] = kindFills([kind('3L', 'L'), kind('3R', 'R')]);
    expect([left?.hatch, right?.hatch]).toEqual(['slant-left', 'slant-right']);
    expect(left?.tint).toBe(right?.tint);
    for (const name of hatchNames.filter((one) => one.endsWith('-left'))) {
      const mirror = name.replace(/left$/, 'right') as typeof name;
      expect(hatchNamed(mirror)).toEqual({ ...hatchNamed(name), angle: -hatchNamed(name).angle });
      expect(hatchNamed(name).angle).toBeGreaterThan(0);
      expect(hatchNamed(name).angle).toBeLessThan(90);
    }
  });

  it('of a kind without a hand are their own mirror image', () => {
    for (const { hatch } of kindFills(Array.from({ length: 11 }, (_, i) => kind(String(i))))) {
      if (hatch === null) continue;
      const { angle, crossed } = hatchNamed(hatch);
      expect(angle % 90 === 0 || (angle === 45 && crossed)).toBe(true);
    }
  });

  it('stay with the kind when its pair stands apart in the list', () => {
    const fills = kindFills([kind('3L', 'L'), kind('4'), kind('5L', 'L'), kind('3R', 'R')]);
    expect(fills.map((fill) => fill.hatch)).toEqual([
      'slant-left',
      null,
      'slant-pairs-left',
      'slant-right',
    ]);
  });

  it('lie on tints so pale that ink keeps a contrast of 12 : 1', () => {
    const ink = luminance('#15171c');
    for (const tint of Object.values(tints))
      expect((luminance(tint) + 0.05) / (ink + 0.05)).toBeGreaterThan(12);
  });
});
