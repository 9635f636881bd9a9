import { describe, expect, it } from 'vitest';
import { doorOfPlaces, propHubs } from '../../src/fitout/door.ts';
import { type DoorBracing, doorBracing } from '../../src/fitout/door-bracing.ts';
import { eulerLoad, SECTION_SUPPOSED } from '../../src/fitout/door-section.ts';
import { readFitout } from '../../src/fitout/schema.ts';
import { GRAVITY } from '../../src/frame/frame-loads.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';

const unit = cutBall(2, 40);
const shell = { ...unit, radius: 2, hubs: unit.hubs.map((x) => 2 * x) };
const parts = frameParts(unknownParts);
const order = inNumberOrder(shell);
const door = doorOfPlaces(shell, order.slice(0, 3));
const mass = 12;
const braced = (part: Partial<Parameters<typeof doorBracing>[0]> = {}): DoorBracing => {
  const told = doorBracing({
    ...{ shell, parts, door, massOf: () => mass, snow: 0, section: SECTION_SUPPOSED },
    ...part,
  });
  if (told === null) throw new Error('it does not stand');
  return told;
};
const plain = braced();
const bars = ({ bears }: DoorBracing, what: 'axial' | 'moment'): number[] =>
  bears.map((one) => Math.abs(one[what]));

describe('what holds a door', () => {
  it('is a prop under each free hub of the edge; they push up, with less than the panels weigh', () => {
    expect(plain.props.map(({ hub }) => hub)).toEqual(propHubs(shell, door));
    const all = plain.props.reduce((sum, { push }) => sum + push, 0);
    const weight = (placeCount(shell) - 3) * mass * GRAVITY;
    expect(plain.props.every(({ push }) => push >= 0)).toBe(true);
    expect(all).toBeGreaterThan(0.01 * weight);
    expect(all).toBeLessThan(weight);
  });

  it('goes with the weight: twice the mass pushes, pulls and bends twice as much', () => {
    const heavy = braced({ massOf: () => 2 * mass });
    for (const [i, { push }] of plain.props.entries())
      expect(heavy.props[i]!.push).toBeCloseTo(2 * push, 6);
    for (const what of ['axial', 'moment'] as const) {
      const twice = bars(plain, what).map((x) => 2 * x);
      bars(heavy, what).forEach((x, i) => {
        expect(x).toBeCloseTo(twice[i]!, 6);
        // The twin: a hundredth off is seen.
        expect(x).not.toBeCloseTo(1.01 * twice[i]!, 6);
      });
    }
  });

  it('counts snow for the frame and not for the props', () => {
    const snowed = braced({ snow: 500 });
    expect(snowed.props).toEqual(plain.props);
    expect(snowed.sag).toBe(plain.sag);
    for (const what of ['axial', 'moment'] as const)
      expect(Math.max(...bars(snowed, what))).toBeGreaterThan(Math.max(...bars(plain, what)));
  });

  it('tells what area, modulus and share of the allowed stress that asks for, and null where none is told', () => {
    const [first] = plain.bears;
    expect(first).toMatchObject({ area: null, modulus: null, used: null });
    const told = braced({ section: { ...SECTION_SUPPOSED, allowable: 5e6 } }).bears[0]!;
    expect(told.area).toBeCloseTo(Math.abs(told.axial) / 5e6, 15);
    expect(told.modulus).toBeCloseTo(told.moment / 5e6, 15);
    const half = braced({ section: { ...SECTION_SUPPOSED, allowable: 2.5e6 } }).bears[0]!;
    expect(half.used).toBeCloseTo(2 * told.used!, 12);
    expect(told.used).toBeGreaterThan(Math.abs(told.axial) / 5e6 / (0.045 * 0.095) - 1e-12);
  });

  it('sags less behind a stiff frame than behind a soft one, and a longer bar bends aside sooner', () => {
    const stiff = braced({ section: { ...SECTION_SUPPOSED, young: 2e11 } });
    const soft = braced({ section: { ...SECTION_SUPPOSED, young: 1e8 } });
    expect(stiff.sag).toBeLessThan(plain.sag);
    expect(plain.sag).toBeLessThan(soft.sag);
    expect(eulerLoad(SECTION_SUPPOSED, 2) / eulerLoad(SECTION_SUPPOSED, 1)).toBeCloseTo(0.25, 12);
  });

  it('refuses a bar without size and a wall that leaves no hollow', () => {
    const of = (part: object) => braced({ section: { ...SECTION_SUPPOSED, ...part } });
    expect(() => of({ width: 0 })).toThrow(/section is 0 by 0.095 m, expected both over 0/);
    expect(() => of({ wall: 0.03 })).toThrow(/wall is 0.03 m, expected over 0 and under 0.0225 m/);
  });

  it('is refused in a file by what is wrong with the bar', () => {
    const bar = { width: 0.04, depth: 0.04, young: 8e9 };
    const faults = (doorFrame: object): string[] => {
      const read = readFitout({ doorFrame });
      return read.ok ? [] : read.faults.map(({ path }) => path);
    };
    expect(faults(bar)).toEqual([]);
    expect(faults({ ...bar, wall: 0.02 })).toEqual(['fitout.doorFrame.wall']);
    expect(faults({ ...bar, depth: 40, young: 8 })).toEqual([
      'fitout.doorFrame.depth',
      'fitout.doorFrame.young',
    ]);
  });
});
