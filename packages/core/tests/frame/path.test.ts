import { describe, expect, it } from 'vitest';
import { barPath } from '../../src/frame/path.ts';
import type { Structure } from '../../src/frame/structure.ts';

describe('the path of a stiff truss', () => {
  // Three bars that meet in a flat, crooked pyramid.
  const bar = { kind: 'bar', area: 0.003, young: 1e10 } as const;
  const pyramid: Structure = {
    nodes: Float64Array.from([-1.1, 0.1, 0, 0.7, -0.9, 0.03, 0.6, 1.3, 0, 0.07, 0.11, 0.2]),
    elements: [0, 1, 2].map((foot) => ({ ...bar, nodes: [foot, 3] })),
    held: [0, 1, 2].map((node) => ({ node, directions: null })),
  };
  const load = new Float64Array(24);
  load[20] = -100;

  it('is found in steps that strain its bars by a billionth', () => {
    const path = barPath(pyramid, load, { step: 1e-9, steps: 3 });
    expect(path.status).toBe('goes on');
    expect(path.points).toHaveLength(4);
    const [, one, two] = path.points.map(({ factor }) => factor);
    expect(two / one).toBeCloseTo(2, 6);
  });
});
