// Bases to try things on: a regular ring with plain numbers, and those of named nets cut near a
// height.

import { type Base, type BaseHub, baseOf, bearingOf, planDistance } from '../../src/ground/base.ts';
import type { HubId } from '../../src/shell/ids.ts';
import type { Shell } from '../../src/shell/shell.ts';
import { crownUp, cutNear, domeOf, icosahedral } from '../shell/fixtures.ts';

/** n hubs on a circle of radius r, hub 1 on the datum; `rises` in turn, metres. */
export function ring(n: number, r: number, rises: readonly number[] = [0]): Base {
  const at = Array.from({ length: n }, (_, k): readonly [number, number] => {
    const turn = (-2 * Math.PI * k) / n;
    return [r * Math.cos(turn), r * Math.sin(turn)];
  });
  const rise = (k: number): number => rises[k % rises.length] as number;
  const hubs = at.map((p, k): BaseHub => {
    const level = planDistance(p, at[(k + 1) % n] as readonly [number, number]);
    return {
      number: k + 1,
      hub: k as HubId,
      at: p,
      rise: rise(k),
      radius: r,
      bearing: bearingOf(p),
      chord: Math.hypot(level, rise((k + 1) % n) - rise(k)),
      levelChord: level,
    };
  });
  return { hubs, level: 0, spread: Math.max(...rises) - Math.min(...rises), sphereRadius: r };
}

/** The dome of a net with b, c, radius metres, cut near `z` radii above the centre. */
export function dome(b: number, c: number, z: number, radius: number): Shell {
  const { shell } = icosahedral(b, c);
  const upright = crownUp(shell);
  const cut = domeOf(upright, cutNear(upright, z));
  return { ...cut, radius, hubs: cut.hubs.map((x) => x * radius) };
}

/** The base of a shell that has one. */
export function baseThere(shell: Shell): Base {
  const base = baseOf(shell);
  if (!base.ok) throw new Error(JSON.stringify(base.faults));
  return base.value;
}
