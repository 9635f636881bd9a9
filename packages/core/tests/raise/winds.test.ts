import { describe, expect, it } from 'vitest';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import { stageWinds } from '../../src/raise/winds.ts';
import { raised } from './raised/fixture.ts';

const { model, plan } = raised;
const end = plan.stages.length;
const weak = frameParts({
  ...unknownParts,
  panel: { ...unknownParts.panel, material: 'fibreglass', thickness: 0.002, strength: 2e6 },
  bolt: { thread: '5/16-18', grade: 'SAE J429 Gr 5' },
});
const known = { ...model, bears: { ...model.bears, parts: weak, seamBolts: () => 8 } };
const windsOf = (of: typeof model, strength: boolean) => {
  const read = stageWinds(of, plan, [end], { strength });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value[0];
};

describe('the winds of a stage', () => {
  it('leave seams and panels out unless they are asked for, and then name what nobody knows', () => {
    const out = windsOf(model, false)?.unknown;
    expect(out).not.toContain('seam');
    expect(windsOf(model, true)?.unknown).toEqual([...(out ?? []), 'seam', 'panel']);
  });
  it('are lower where weak panels give way first, and the same where these are left out', () => {
    const [without, full] = [windsOf(known, false), windsOf(known, true)];
    expect(without).toEqual(windsOf(model, false));
    expect(full?.unknown).toEqual(without?.unknown);
    expect(full?.leave ?? Infinity).toBeLessThan(without?.leave ?? Infinity);
  });
});
