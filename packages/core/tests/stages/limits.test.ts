import { describe, expect, it } from 'vitest';
import { defaultLoads } from '../../src/loads/schema.ts';
import type { Bearing } from '../../src/stages/bearing.ts';
import { holdingLimits, type Limit } from '../../src/stages/limits.ts';
import { nothingKnown, stageModel } from '../../src/stages/model.ts';
import { cutBall, numbersOf } from './fixtures.ts';

const shell = cutBall(2, 40);

/** The limit of hubs that bear so much, where one hub bears 1000 N and wind lifts it by m² a pascal. */
function hubLimit(bears: number, lift: number): Limit {
  const model = stageModel(shell, numbersOf(shell), {
    loads: defaultLoads,
    massOf: () => null,
    bears: { ...nothingKnown, hub: bears },
  });
  if (!model.ok) throw new Error(model.faults[0]?.found);
  const coefficient = new Float64Array(numbersOf(shell).length);
  const wind = { name: 'a law', windFrom: 0, coefficient, sources: [] };
  const held = {
    hubs: [0],
    weight: Float64Array.of(0, 0, 1000),
    cases: [{ wind, perPascal: Float64Array.of(0, 0, -lift), drag: 0, lift }],
    totalWeight: 1000,
    wind: { enclosure: 'enclosed', mouth: null, cases: [], assumed: [] },
  } as unknown as Bearing;
  return holdingLimits(model.value, held).find(({ what }) => what === 'hub') as Limit;
}

describe('the limit of a hub that its weight already brings there', () => {
  it('is a calm, though every gust relieves it', () => {
    // At 60 m/s, 2250 Pa, the lift leaves 1000 − 450 N.
    expect(hubLimit(900, 0.2)).toMatchObject({ status: 'known', gust: 0, at: 0 });
    expect(hubLimit(1100, 0.2)).toMatchObject({ status: 'known', gust: null, at: null });
  });

  it('is where the lift, less the weight, reaches it', () => {
    const { gust } = hubLimit(1100, 2);
    // 2 q − 1000 = 1100 at q = 1050 Pa: √(2 · 1050 / 1.25) m/s.
    expect(gust).toBeLessThan(Math.sqrt(1680));
    expect(gust).toBeGreaterThan(Math.sqrt(1680) - 0.01);
  });
});
