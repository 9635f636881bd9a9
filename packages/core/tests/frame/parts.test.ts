import { describe, expect, it } from 'vitest';
import { BOLT_GRADES, proofLoad, stressArea } from '../../src/frame/bolts.ts';
import { boltName, frameParts } from '../../src/frame/parts.ts';
import { partsSection, unknownParts } from '../../src/frame/schema.ts';
import { readThread, type Thread } from '../../src/takeoff/threads.ts';

const thread = (text: string): Thread => {
  const read = readThread(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

describe('what a bolt bears', () => {
  // Shigley's table 8-2 of inch threads (square inches); ISO 898-1 tables 3 to 7 (square
  // millimetres and newtons).
  for (const [name, area] of [
    ['1/4-20', 0.0318],
    ['5/16-18', 0.0524],
    ['3/8-16', 0.0775],
    ['1/2-13', 0.1419],
  ] as const)
    it(`has the stress area of ${name}`, () => {
      const found = stressArea(thread(name)) / 0.0254 ** 2;
      expect(Math.abs(found / area - 1)).toBeLessThan(1e-3);
      expect(Math.abs((found * 1.01) / area - 1)).toBeGreaterThan(1e-3);
    });

  for (const [name, grade, load] of [
    ['M6', '8.8', 11600],
    ['M8', '8.8', 21200],
    ['M8', '4.6', 8240],
    ['M10', '10.9', 48100],
    ['M12', '5.8', 32000],
  ] as const)
    it(`has the proof load of ${name} ${grade}`, () => {
      const found = proofLoad(thread(name), grade) as number;
      expect(Math.abs(found / load - 1)).toBeLessThan(7e-3);
    });

  it('is unknown for a grade of no table', () => {
    expect(proofLoad(thread('M8'), 'stamped X')).toBeNull();
    expect(Object.values(BOLT_GRADES).every((stress) => stress > 1e8)).toBe(true);
  });
});

describe('the parts', () => {
  it('take entered numbers before those of the material', () => {
    const parts = frameParts(
      partsSection.parse({
        panel: { material: 'steel', young: 1.9e11, thickness: 0.001, bendingThickness: 0.02 },
        flange: { depth: 0.04, thickness: 0.002 },
      }),
    );
    expect(parts.young).toBe(1.9e11);
    expect(parts.density).toBe(7850);
    expect(parts.bendingThickness).toBe(0.02);
    expect(parts.flangeThickness).toBe(0.002);
    expect(parts.supposed).toEqual([]);
    expect(parts.sources).toEqual([
      { text: 'handbook value of the material', confirmation: 'from memory' },
    ]);
  });

  it('know no strength and no proof load unless told', () => {
    const parts = frameParts(unknownParts);
    expect(parts.strength).toBeNull();
    expect(parts.boltProof).toBeNull();
    const half = partsSection.parse({ bolt: { thread: 'M8' } });
    expect(frameParts(half).boltProof).toBeNull();
    expect(boltName(half.bolt)).toBe('M8 × 1.25');
    expect(boltName({ thread: 'M8', grade: '8.8' })).toBe('M8 × 1.25 8.8');
    expect(boltName(unknownParts.bolt)).toBeNull();
  });

  it('need no material where all three numbers are entered', () => {
    const panel = { young: 1e10, poisson: 0.3, density: 1500, thickness: 0.004 };
    const parts = frameParts(partsSection.parse({ panel, flange: { depth: 0.05 } }));
    expect(parts.supposed).toEqual([]);
    expect(parts.sources).toEqual([]);
  });

  it('are refused where a number cannot be or a thread is none', () => {
    for (const bad of [
      { panel: { thickness: -1 } },
      { panel: { poisson: 0.6 } },
      { panel: { young: 0 } },
      { flange: { depth: 3 } },
      { bolt: { thread: '5/16-19' } },
      { bolt: { grade: 'strong' } },
      { panel: { colour: 'red' } },
    ])
      expect(partsSection.safeParse(bad).success).toBe(false);
  });
});
