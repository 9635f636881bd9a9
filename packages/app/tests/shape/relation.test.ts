// The four-frequency ball: the same panels also close into nets with one half turned.

import { identify } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { relate } from '../../src/engine/relate.ts';
import { signsOf } from '../../src/sheets/shape/sign.ts';
import { ball } from './notation.ts';

const { kinds } = ball(4);
const exact = kinds.map((kind) => ({ ...kind, sideSds: kind.sides.map(() => 0.0003), good: 60 }));
const { shapes } = identify({ kinds: exact, groups: [] });

describe('nets that fit the same panels', () => {
  it('the four-frequency ball has four, and their halves are alike', () => {
    expect(shapes.length).toBe(4);
    const question = { shapes, prefer: 0, kinds: exact, decision: null };
    const relation = relate(question, () => ({ panels: 160, sameIn: [0, 1, 2, 3] }));
    expect(relation.halves).toBe(true);
    expect(relation.stands).toEqual({ decided: false, panels: 160, sameIn: [0, 1, 2, 3] });
  });

  it('nets whose halves differ are not called so', () => {
    const other = ball(2);
    const all = [...exact, ...other.kinds.map((kind) => ({ ...kind, id: `o${kind.id}` }))];
    const shifted = {
      ...other.shell,
      kind: other.shell.kind.map((k) => k + exact.length),
    };
    const odd = [shapes[0], { ...shapes[0], shell: shifted }] as typeof shapes;
    const question = { shapes: odd, prefer: 0, kinds: all, decision: null };
    expect(relate(question, () => null)).toEqual({ halves: false, stands: null });
  });

  it('a hub tells each net that has a run of its own, and its places carry that run', () => {
    const signs = signsOf(shapes, exact);
    shapes.forEach(({ apart }, i) => {
      expect(signs[i] !== null).toBe(apart.startsWith('only here'));
    });
    const told = signs.findIndex((sign) => sign !== null);
    const { places, hub } = signs[told] ?? { places: [], hub: -1 };
    const { shell } = shapes[told] as (typeof shapes)[number];
    for (const place of places) {
      const hubs = shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]);
      expect([...hubs]).toContain(hub);
    }
    expect(places.length).toBeGreaterThan(4);
  });

  it('one net alone needs no sign', () => {
    expect(signsOf(shapes.slice(0, 1), exact)).toEqual([null]);
  });
});
