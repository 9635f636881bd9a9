import { describe, expect, it } from 'vitest';
import { defaultTakeoff, takeoffSection } from '../../src/takeoff/schema.ts';

const paths = (input: unknown): string[] => {
  const read = takeoffSection.safeParse(input);
  return read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'));
};
const bolt = { thread: '5/16-18', length: 0.0254 };

describe('the take-off section', () => {
  it('fills in what a project does not say', () => {
    expect(defaultTakeoff).toMatchObject({
      nut: 'nylon-insert',
      washersPerBolt: 2,
      spares: { bolts: 0.1, washers: 0.1 },
      usable: ['new', 'used'],
      lockNutsNew: true,
      baseBolt: null,
    });
    expect(takeoffSection.parse({ spares: { bolts: 0.2 } }).spares).toMatchObject({
      bolts: 0.2,
      washers: 0.1,
    });
  });

  it('reads back what it gives', () => {
    expect(takeoffSection.parse(defaultTakeoff)).toEqual(defaultTakeoff);
  });

  it.each([
    [{ sides: [{ ...bolt, holes: 9 }] }, 'sides.0'],
    [{ sides: [{ ...bolt, holes: 9, kind: '1' }] }, 'sides.0'],
    [{ sides: [{ ...bolt, holes: 9, kind: '1', side: 0, sideLength: 0.9 }] }, 'sides.0'],
    [{ sides: [{ ...bolt, holes: 9.5, sideLength: 0.9 }] }, 'sides.0.holes'],
    [{ sides: [{ ...bolt, holes: -1, sideLength: 0.9 }] }, 'sides.0.holes'],
    [{ sides: [{ ...bolt, holes: 9, sideLength: 0 }] }, 'sides.0.sideLength'],
    [{ sides: [{ ...bolt, thread: '5/16', holes: 9, sideLength: 1 }] }, 'sides.0.thread'],
    [{ baseBolt: { thread: 'M8', length: -1 } }, 'baseBolt.length'],
    [{ nut: 'wing' }, 'nut'],
    [{ usable: ['shiny'] }, 'usable.0'],
    [{ spares: { bolts: -0.1 } }, 'spares.bolts'],
    [{ packs: { bolt: 0 } }, 'packs.bolt'],
    [{ washers: 2 }, ''],
    [{ sides: [{ ...bolt, holes: 201, sideLength: 1 }] }, 'sides.0.holes'],
    [{ sides: [{ ...bolt, holes: 9, sideLength: 928 }] }, 'sides.0.sideLength'],
    [{ sides: [{ ...bolt, holes: 9, kind: '1', side: 12 }] }, 'sides.0.side'],
    [{ baseBolt: { thread: 'M8', length: 25 } }, 'baseBolt.length'],
    [{ baseBolt: { thread: 'M8', length: Number.NaN } }, 'baseBolt.length'],
    [{ washersPerBolt: 1e15 }, 'washersPerBolt'],
    [{ packs: { bolt: 1e9 } }, 'packs.bolt'],
    [{ tape: { rollLength: Number.POSITIVE_INFINITY } }, 'tape.rollLength'],
  ])('refuses %j at %s', (input, path) => {
    expect(paths(input)).toEqual([path]);
  });

  it('lists every fault at once', () => {
    expect(
      paths({ nut: 'wing', washersPerBolt: 1.5, baseBolt: { thread: 'x', length: 1 } }),
    ).toEqual(['baseBolt.thread', 'nut', 'washersPerBolt']);
  });
});
