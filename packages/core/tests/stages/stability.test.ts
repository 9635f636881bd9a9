import { describe, expect, it } from 'vitest';
import { prepareFrame } from '../../src/frame/answer.ts';
import type { FrameModel } from '../../src/frame/model.ts';
import { type FrameParts, frameParts } from '../../src/frame/parts.ts';
import { partsSection } from '../../src/frame/schema.ts';
import { snowCases } from '../../src/loads/question.ts';
import { defaultLoads } from '../../src/loads/schema.ts';
import type { Shell } from '../../src/shell/shell.ts';
import { stageAnswer } from '../../src/stages/answer.ts';
import { snapThrough } from '../../src/stages/bar-net.ts';
import { howItStands } from '../../src/stages/how-it-stands.ts';
import { nothingKnown, type StageModel, stageModel } from '../../src/stages/model.ts';
import { numberOrder, stageOf } from '../../src/stages/series.ts';
import { SLOW_SWING, type StageStability, stageStability } from '../../src/stages/stability.ts';
import { frameOfStage } from '../../src/stages/stage.ts';
import { halfBuiltStability, wholeStability } from '../../src/stages/whole-and-half.ts';
import { cutBall, numbersOf } from './fixtures.ts';

const parts = frameParts(
  partsSection.parse({
    panel: { material: 'fibreglass', thickness: 0.003 },
    flange: { depth: 0.05, thickness: 0.005 },
  }),
);
const small = cutBall(2, 30);
const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
const order = numberOrder(shell);

function modelOf(mass: number | null, known: FrameParts | null = parts): StageModel {
  const made = stageModel(shell, numbersOf(shell), {
    loads: defaultLoads,
    massOf: () => (mass === null ? null : { value: mass, sources: [] }),
    bears: { ...nothingKnown, parts: known },
    directions: 2,
  });
  if (!made.ok) throw new Error(made.faults[0]?.found);
  return made.value;
}

/** Stage n with its props, every seam finger-tight. */
function propped(n: number): FrameModel {
  const stage = stageOf(order, n);
  const { props } = howItStands(shell, stage);
  return frameOfStage(shell, { ...stage, props: props ?? [] });
}

const stability = (
  n: number,
  gust: number | null,
  mass: number | null = 9,
  model = modelOf(mass),
): StageStability => stageStability(model, propped(n), 'finger-tight', { gust });

const factorOf = ({ buckling }: StageStability): number => {
  if (buckling.status !== 'reckoned' || buckling.factor === null) throw new Error('it buckles');
  return buckling.factor;
};

describe('buckling of a stage', () => {
  it('comes at half the factor where a weightless stage has twice the pressure', () => {
    const ratio =
      factorOf(stability(12, 10, 1e-9)) / factorOf(stability(12, 10 * Math.SQRT2, 1e-9));
    expect(Math.abs(ratio - 2)).toBeLessThan(1e-6);
    expect(Math.abs(ratio * (1 + 1e-5) - 2)).toBeGreaterThan(1e-6);
  });

  it('is told with what a real shell may bear of it, the load and the hub', () => {
    const found = stability(order.length, 30);
    const factor = factorOf(found);
    expect(found).toMatchObject({ gust: 30, seams: 'finger-tight' });
    expect(found.buckling).toMatchObject({
      real: { least: factor / 5, most: factor / 3 },
      load: expect.stringMatching(/wind from \d+° clockwise of the datum/),
    });
    expect(found.assumed.join()).toMatch(/perfect parts.*a third to a fifth/);
    expect(found.flags.map(({ text }) => text).join()).toMatch(/a perfect frame.*NASA SP-8032/);
    if (found.buckling.status !== 'reckoned' || found.buckling.mode === null) throw new Error();
    const hub = found.buckling.hub as number;
    const size = Math.hypot(...found.buckling.mode.subarray(3 * hub, 3 * hub + 3));
    expect(size).toBeCloseTo(1, 9);
  });

  it('of a whole shell under snow is sought under each case, by its name', () => {
    const snow = snowCases({ ...defaultLoads, groundSnow: 4000 }, modelOf(9).wind.question.form);
    expect(snow.length).toBeGreaterThan(0);
    const done: number[] = [];
    const load = { gust: null, snow };
    const tell = (d: number) => done.push(d);
    const found = stageStability(modelOf(9), propped(order.length), 'snug', load, tell);
    expect(found.buckling).toMatchObject({ load: expect.stringMatching(/^snow: /) });
    expect(done.at(-1)).toBe(1);
    expect(done).toEqual([...done].sort((a, b) => a - b));
  });
});

describe('hubs that snap through', () => {
  // A flat pyramid on six held hubs, its apex pressed down.
  const [reach, rise] = [1, 0.1];
  const rim = Array.from({ length: 6 }, (_, i) => {
    const angle = (i * Math.PI) / 3;
    return [reach * Math.cos(angle), reach * Math.sin(angle), 0];
  });
  const around = Array.from({ length: 6 }, (_, i) => [i, (i + 1) % 6] as const);
  const pyramid: FrameModel = {
    hubs: Float64Array.from([...rim.flat(), 0, 0, rise]),
    panels: around.map(([a, b], place) => ({ place, hubs: [a, b, 6] })),
    seams: around.map(([, b], p) => ({
      panels: [p, (p + 1) % 6],
      hubs: [b, 6],
      pass: 'finger',
    })),
    plates: new Uint8Array(7),
    supports: rim.map((_, hub) => ({ hub, stiffness: null })),
    props: [],
    guys: [],
  };

  it('do so where six bars that meet in a flat pyramid do, by the closed form', () => {
    const bar = Math.hypot(reach, rise);
    const area = 2 * (parts.flangeDepth * parts.flangeThickness + (Math.sqrt(3) / 4) * 0.003 * bar);
    // P = 6 E A z (1/l − 1/L) is largest where l³ = a² L.
    const l = (reach ** 2 * bar) ** (1 / 3);
    const limit = 6 * parts.young * area * Math.sqrt(l ** 2 - reach ** 2) * (1 / l - 1 / bar);
    const load = { weight: 0, hubForces: [[6, [0, 0, -1000]]] as const };
    const found = snapThrough(prepareFrame(pyramid, parts), load);
    if (found.status !== 'snaps') throw new Error(`it ${found.status}`);
    expect(Math.abs((1000 * found.factor) / limit - 1)).toBeLessThan(1e-6);
    expect(Math.abs((1000 * found.factor * (1 + 1e-5)) / limit - 1)).toBeGreaterThan(1e-6);
    expect(found.hub).toBe(6);
    expect(found.mode[3 * 6 + 2]).toBeCloseTo(-1, 9);
  });

  it('do not where the load pulls', () => {
    const load = { weight: 0, hubForces: [[6, [0, 0, 1000]]] as const };
    const { status } = snapThrough(prepareFrame(pyramid, parts), load);
    expect(status).toBe('none');
  });

  it('are not sought among panels with more than three sides', () => {
    const square: FrameModel = {
      ...pyramid,
      panels: [{ place: 0, hubs: [0, 1, 2, 3] }],
      seams: [],
    };
    expect(snapThrough(prepareFrame(square, parts), {})).toMatchObject({
      status: 'not reckoned',
      why: expect.stringMatching(/more than three sides/),
    });
  });
});

describe('the swing of a stage', () => {
  const of = (mass: number, known = parts) => {
    const { swing } = stability(12, null, mass, modelOf(mass, known));
    if (swing.status !== 'reckoned') throw new Error(swing.why);
    return swing;
  };

  it('is half as fast where its panels weigh four times as much', () => {
    const [light, heavy] = [of(9), of(36)];
    expect(light.frequency / heavy.frequency).toBeCloseTo(2, 9);
    expect(light.slow).toBe(false);
  });

  it('is slow below 1 Hz', () => {
    const young = parts.young * (0.99 / of(9).frequency) ** 2;
    expect(of(9, { ...parts, young })).toMatchObject({ slow: true });
    expect(of(9, { ...parts, young: young * 1.1 })).toMatchObject({ slow: false });
    expect(SLOW_SWING).toBe(1);
  });
});

describe('what a stage is held against', () => {
  it('is the gust at which work stops, with its props; nothing where no props can hold it', () => {
    const stage = stageOf(order, 12);
    const answer = stageAnswer(modelOf(9), stage, { strength: false });
    if (!answer.ok || answer.value.bears === null) throw new Error('it can be propped');
    const found = halfBuiltStability(modelOf(9), stage, answer.value);
    expect(found).toMatchObject({
      gust: answer.value.bears.stopWork.gust.value,
      seams: 'finger-tight',
      buckling: { status: 'reckoned' },
    });
    const none = halfBuiltStability(modelOf(9), stage, { bears: null, props: [] });
    expect(none.buckling).toMatchObject({ why: expect.stringMatching(/^no props can hold it/) });
  });

  it('is the design wind where the shell is whole, every seam tight', () => {
    const loads = { ...defaultLoads, wind: { as: 'gust', speed: 24 } } as const;
    const found = wholeStability(modelOf(9), loads, order);
    expect(found.seams).toBe('snug');
    expect(found.gust).toBeGreaterThan(15);
    expect(found.gust).toBeLessThan(30);
    expect(found.swing.status).toBe('reckoned');
    // A cap of a thousandth of its radius bears about a seventh of 2 E t²/(R² √(3 (1 − ν²))).
    const perfect = (2 * parts.young * 1e-6) / Math.sqrt(3 * (1 - parts.poisson ** 2));
    expect((found.cap?.pressure ?? 0) / perfect).toBeCloseTo(found.cap?.part ?? 0, 9);
    expect(found.cap?.part).toBeGreaterThan(0.14);
    expect(found.cap?.part).toBeLessThan(0.15);
  });
});

describe('what can’t be reckoned', () => {
  it('is told with why: parts that nobody knows, and a stage that moves freely', () => {
    const all = (found: StageStability) => [found.buckling, found.snapThrough, found.swing];
    const unknown = stability(12, 12, 9, modelOf(9, null));
    const guessed = stability(12, 12, 9, modelOf(9, frameParts(partsSection.parse({}))));
    const loose = stageStability(
      modelOf(9),
      frameOfStage(shell, stageOf(order, 15)),
      'finger-tight',
      { gust: 12 },
    );
    for (const [found, why] of [
      [unknown, /nobody said what the parts are/],
      [guessed, /nobody said: material of the panels, thickness of the panels/],
      [loose, /moves freely/],
    ] as const)
      for (const one of all(found))
        expect(one).toMatchObject({ status: 'not reckoned', why: expect.stringMatching(why) });
  });
});
