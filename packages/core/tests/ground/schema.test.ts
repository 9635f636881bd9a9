import { expect, test } from 'vitest';
import { defaultGround, groundSection } from '../../src/ground/schema.ts';
import { projectFrom, writeProject } from '../../src/project/project.ts';

const faultsOf = (ground: unknown): string[] => {
  const read = projectFrom({ shellraise: 1, pile: {}, ground });
  return read.ok ? [] : read.faults.map(({ path }) => path);
};

test('a project that says nothing of the ground has no soil, no anchor and no readings', () => {
  expect(defaultGround.soil).toBeNull();
  expect(defaultGround.anchor).toBeNull();
  expect(defaultGround.levels).toEqual([]);
  expect(defaultGround.survey).toEqual([]);
  expect(defaultGround.tape).toEqual({ sd: 0.002, length: 30, datum: null });
  expect(defaultGround.tolerances.radiusStop).toBe(0.01);
});

test('what was entered is written and read back', () => {
  const ground = {
    site: { name: 'Lower paddock' },
    soil: { kind: 'loam', firm: true, wet: true },
    levels: [
      {
        method: 'laser',
        readings: [
          { at: 1, reading: 1.312 },
          { at: 'gatepost', reading: 0.9 },
        ],
      },
    ],
    anchor: { type: 'wood pickets', combination: '3-2-1' },
    guy: { elevation: 0.6, height: 0.4 },
    pullTests: [{ pull: 2400, held: true }],
    survey: [
      { what: 'radius', hub: 1, length: 3.601 },
      { what: 'chord', from: 1, to: 2, length: 1.126 },
      { what: 'level', hub: 1, height: 0.011 },
    ],
  };
  const read = projectFrom({ shellraise: 1, pile: {}, ground });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const again = projectFrom(JSON.parse(writeProject(read.value)));
  expect(again).toEqual(read);
  expect(read.value.ground).toEqual(groundSection.parse(ground));
});

test('every fault is told with its place', () => {
  expect(faultsOf({ soil: { kind: 'mud', firm: true, wet: false } })).toEqual(['ground.soil.kind']);
  expect(faultsOf({ anchor: { type: 'lawn stake', length: 2 } })).toEqual(['ground.anchor.length']);
  expect(faultsOf({ anchor: { type: 'bar', diameter: 25, depth: 0.8 } })).toEqual([
    'ground.anchor.diameter',
  ]);
  expect(faultsOf({ survey: [{ what: 'radius', hub: 0, length: 3 }] })).toEqual([
    'ground.survey[0].hub',
  ]);
  expect(faultsOf({ survey: [{ what: 'chord', from: 1, to: 2, length: -3 }] })).toEqual([
    'ground.survey[0].length',
  ]);
  expect(faultsOf({ levels: [{ method: 'laser', readings: [{ at: 1, reading: 1312 }] }] })).toEqual(
    ['ground.levels[0].readings[0].reading'],
  );
  expect(faultsOf({ pullTests: [{ pull: 0, held: true }] })).toEqual(['ground.pullTests[0].pull']);
  expect(faultsOf({ pegs: 3 })).toEqual(['ground.pegs']);
});
