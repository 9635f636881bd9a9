// What a door's bars and props bear, by hand: a pyramid whose stiffness is all in its ridges is a star of
// bars, whose crown falls P L / (E A Σ sin²) and whose ridges bear P / (n sin α) for n ridges at even turns
// (equilibrium; of three ridges Maxwell's count, as many bars as 3 j, leaves no choice); a header on two
// jambs is Kleinlogel's portal with fixed feet (Rahmenformeln, from memory) or, on hinges, a simple beam
// with P L / 4; section moduli b h² / 6 and of the hollow by the difference (strength of materials).

import { describe, expect, it } from 'vitest';
import { doorOfPlaces } from '../../src/fitout/door.ts';
import { endsOf, partBears } from '../../src/fitout/door-bracing.ts';
import { doorFrame } from '../../src/fitout/door-frame.ts';
import {
  barSection,
  type DoorSection,
  eulerLoad,
  moduliOf,
  SECTION_SUPPOSED,
  SHEAR_SHARE,
  stressAt,
} from '../../src/fitout/door-section.ts';
import type { Beam, EndJoint } from '../../src/frame/elements/element.ts';
import { GRAVITY } from '../../src/frame/frame-loads.ts';
import type { FrameParts } from '../../src/frame/parts.ts';
import { type AtRest, prepare, statics } from '../../src/frame/statics.ts';
import { makeShell, type Shell } from '../../src/shell/shell.ts';
import { checked } from './data/checked.ts';

/** A pyramid of so many panels, its crown on top of a sphere of 2 m, its base 0.5 m under its middle. */
function pyramid(panels: number): { shell: Shell; sin: number; length: number } {
  const [radius, low] = [2, -0.5];
  const across = Math.sqrt(radius ** 2 - low ** 2);
  const hubs = [0, 0, radius];
  for (let i = 0; i < panels; i++) {
    const turn = (2 * Math.PI * i) / panels;
    hubs.push(across * Math.cos(turn), across * Math.sin(turn), low);
  }
  const places = Array.from({ length: panels }, (_, i) => ({
    hubs: [0, 1 + i, 1 + ((i + 1) % panels)],
    kind: 0,
    turn: 0,
  }));
  const length = Math.hypot(across, radius - low);
  return {
    shell: makeShell({ radius, hubs: Float64Array.from(hubs), places }),
    ...{ length, sin: (radius - low) / length },
  };
}

/** Panels thin as air with slender flanges: all the stiffness is along the ridges. */
const ridges: FrameParts = {
  ...{ young: 7e10, poisson: 0.3, density: 1 },
  ...{ thickness: 1e-10, bendingThickness: 1e-10, flangeDepth: 0.004, flangeThickness: 0.002 },
  ...{ strength: null, boltProof: null, hubPlate: null, sources: [], supposed: [] },
};
const flange = ridges.young * ridges.flangeDepth * ridges.flangeThickness;
const bar: DoorSection = { width: 0.006, depth: 0.006, wall: null, young: 2.1e11, allowable: 1e8 };
const stiff = bar.young * bar.width * bar.depth;
const mass = 30;
/** Each panel puts a third of its weight on the crown. */
const onCrown = (panels: number): number => (panels * mass * GRAVITY) / 3;
const costOf = (shell: Shell, section = bar) =>
  doorFrame(shell, doorOfPlaces(shell, [0]), ridges, { massOf: () => mass, section });

describe('a door in a star of four ridges', () => {
  const { shell, sin, length } = pyramid(4);
  const told = costOf(shell);
  it('lets the crown down by P L / (Σ E A sin²) whole, and 9/8 of that with one panel of four out', () => {
    const whole = onCrown(4) / ((4 * 2 * flange * sin ** 2) / length);
    checked({ got: told.sag!.whole, expected: whole, ratio: 1e-4 });
    checked({ got: told.sag!.open, expected: (9 / 8) * whole, ratio: 1e-4 });
    expect(Math.abs(told.sag!.open / ((9 / 8) * whole * 1.001) - 1)).toBeGreaterThan(1e-4);
  });
  it('puts P / (4 sin α) on each ridge, of which the jamb takes its share of the stiffness', () => {
    const share = stiff / (stiff + flange);
    const expected = (-onCrown(3) / (4 * sin)) * share;
    const jamb = told.bracing!.bears.find(({ part }) => part === 'jamb')!;
    checked({ got: jamb.axial, expected, ratio: 1e-4 });
    checked({ got: jamb.aside, expected: -expected / eulerLoad(bar, length), ratio: 1e-4 });
    expect(Math.abs(jamb.axial / (expected * 1.001) - 1)).toBeGreaterThan(1e-4);
  });
  it('lets the crown down less with the frame in: P (k₁ + k₂) / (8 k₁ k₂ sin²)', () => {
    const [k1, k2] = [(stiff + flange) / length, (2 * flange) / length];
    const expected = (onCrown(3) * (k1 + k2)) / (8 * k1 * k2 * sin ** 2);
    checked({ got: told.bracing!.sag, expected, ratio: 1e-4 });
  });
  it('stands on the prop under its crown: a thousand times as stiff, it takes all but a thousandth', () => {
    const [prop] = told.bracing!.props;
    checked({ got: prop!.push, expected: onCrown(3), ratio: 1e-3 });
    expect(prop!.push).toBeLessThan(onCrown(3));
  });
});

it('three ridges are as many as Maxwell’s count wants: P / (3 sin α), whatever the bar is made of', () => {
  const { shell, sin } = pyramid(3);
  for (const young of [2.1e11, 2.1e13]) {
    const section = { ...bar, young };
    const share = (stiff * young) / bar.young / ((stiff * young) / bar.young + flange);
    const jamb = costOf(shell, section).bracing!.bears.find(({ part }) => part === 'jamb')!;
    checked({ got: jamb.axial / share, expected: -onCrown(2) / (3 * sin), ratio: 2e-3 });
  }
});

/** Bars between points in the plane of x and z, feet fixed or hinged, and P at a node. */
function frame(
  points: readonly (readonly [number, number])[],
  bars: readonly (readonly [number, number])[],
  held: readonly { readonly node: number; readonly directions: readonly boolean[] }[],
  loaded: readonly [node: number, push: number],
  ends?: readonly [EndJoint, EndJoint],
): AtRest {
  const section = barSection(SECTION_SUPPOSED);
  const young = SECTION_SUPPOSED.young;
  const elements = bars.map(
    (nodes): Beam => ({
      ...{ kind: 'beam', nodes, section, young, shear: SHEAR_SHARE * young },
      axisY: [0, 1, 0],
      ...(ends && { ends }),
    }),
  );
  const nodes = Float64Array.from(points.flatMap(([x, z]) => [x, 0, z]));
  const load = new Float64Array(6 * points.length);
  load[6 * loaded[0] + 2] = -loaded[1];
  const found = statics(prepare({ nodes, elements, held }), load);
  if (found.status !== 'stands') throw new Error(found.status);
  return found;
}
const fixed = [true, true, true, true, true, true];
const bears = (at: AtRest, part: 'header' | 'jamb', which: readonly number[]) =>
  partBears(
    part,
    which.map((e) => ({ length: 1, ends: endsOf(at.forces[e] as Float64Array) })),
    { ...SECTION_SUPPOSED, allowable: 5e6 },
  );

describe('header and jambs', () => {
  const [P, l, h] = [1500, 1.6, 2.1];
  it('as a portal with fixed feet under a load in the middle', () => {
    const at = frame(
      [
        [0, 0],
        [0, h],
        [l / 2, h],
        [l, h],
        [l, 0],
      ],
      [
        [0, 1],
        [1, 2],
        [2, 3],
        [3, 4],
      ],
      [0, 4].map((node) => ({ node, directions: fixed })),
      [2, P],
    );
    const k = h / l;
    const corner = (P * l) / (4 * (k + 2));
    const [header, jamb] = [bears(at, 'header', [1, 2]), bears(at, 'jamb', [0, 3])];
    const standing = 'from memory';
    // Within what the bars' shortening moves, which the formulas leave out.
    checked({ got: header.moment, expected: (P * l) / 4 - corner, ratio: 4e-3, standing });
    checked({ got: jamb.moment, expected: corner, ratio: 4e-3, standing });
    checked({ got: jamb.axial, expected: -P / 2, ratio: 1e-9, standing });
    checked({ got: header.axial, expected: (-1.5 * corner) / h, ratio: 1e-2, standing });
    expect(Math.abs(header.moment / (1.04 * ((P * l) / 4 - corner)) - 1)).toBeGreaterThan(4e-3);
  });
  it('as a simple beam under a load in the middle: P l / 4, at W = b h² / 6 of the section', () => {
    const rest = [true, true, true, true, false, true];
    const at = frame(
      [
        [0, 0],
        [l / 2, 0],
        [l, 0],
      ],
      [
        [0, 1],
        [1, 2],
      ],
      [0, 2].map((node) => ({ node, directions: rest })),
      [1, P],
    );
    const header = bears(at, 'header', [0, 1]);
    checked({ got: header.moment, expected: (P * l) / 4, ratio: 1e-9 });
    checked({ got: header.modulus!, expected: (P * l) / 4 / 5e6, ratio: 1e-9 });
    // Bent across: about y, where 95 mm is its width.
    const across = (0.095 * 0.045 ** 2) / 6;
    checked({ got: header.used!, expected: (P * l) / 4 / across / 5e6, ratio: 1e-9 });
    expect(Math.abs(header.moment / ((P * l) / 4) - 1 - 1e-8)).toBeGreaterThan(1e-9);
  });
});

it('moduli of a solid and a hollow bar, and the stress at a corner', () => {
  const solid = moduliOf(SECTION_SUPPOSED);
  checked({ got: solid.z, expected: (0.045 * 0.095 ** 2) / 6, ratio: 1e-12 });
  const tube: DoorSection = { ...bar, width: 0.04, depth: 0.06, wall: 0.003 };
  const i = (0.04 * 0.06 ** 3 - 0.034 * 0.054 ** 3) / 12;
  checked({ got: moduliOf(tube).z, expected: i / 0.03, ratio: 1e-12 });
  checked({ got: barSection(tube).area, expected: 0.04 * 0.06 - 0.034 * 0.054, ratio: 1e-12 });
  const stress = stressAt(SECTION_SUPPOSED, { axial: -1000, y: 0, z: 50 });
  checked({ got: stress, expected: 1000 / 0.004275 + 50 / solid.z, ratio: 1e-12 });
});
