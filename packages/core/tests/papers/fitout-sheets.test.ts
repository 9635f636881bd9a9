import { describe, expect, it } from 'vitest';
import { fitOut } from '../../src/fitout/answer.ts';
import { floorOf, mountOf } from '../../src/fitout/brief.ts';
import { doorAdvice, doorOfPlaces } from '../../src/fitout/door.ts';
import { readFitout } from '../../src/fitout/schema.ts';
import { lyingSeams } from '../../src/fitout/seams.ts';
import { airSheets } from '../../src/papers/air-sheet.ts';
import { doorSheets } from '../../src/papers/door-sheet.ts';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { roomSheets } from '../../src/papers/room-sheet.ts';
import { sealRounds, sealSheets } from '../../src/papers/seal-sheet.ts';
import { lossSteps, signalSheets } from '../../src/papers/signal-sheet.ts';
import { sectionOf, swingSheets } from '../../src/papers/swing-sheet.ts';
import { upkeepSheets } from '../../src/papers/upkeep-sheet.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';
import { outside } from './sheet-checks.ts';

const shell = cutBall(3, 75);
const { numbers } = coursesOf(shell);
const facts = { project: 'Try', sheet: '7 Fit-out', date: '1 May 2026', assumes: 'nothing' };
const read = readFitout({
  wall: [{ material: 'glass polyester', thickness: 0.003 }],
  frequencies: [1.42e9],
  dish: {
    diameter: 0.6,
    vertexAhead: 0.05,
    feed: { beyond: 0.02, diameter: 0.1 },
    back: { behind: 0.1, diameter: 0.1 },
  },
  mount: { height: 0.5 },
  seal: { joint: 0.01, tapeRoll: 15 },
  leaks: [{ between: [numbers[0], numbers[1]] }],
  standsFrom: '2026-05-03',
  use: { headroom: 0.5, boxes: [{ name: 'bed', length: 0.6, depth: 0.3, height: 0.2 }] },
  paint: { dryFilm: 1e-4, year: 2026 },
});
if (!read.ok) throw new Error(JSON.stringify(read.faults));
const settings = read.value;
const brief = {
  ...{ shell, numbers, order: inNumberOrder(shell), windFrom: 0.5, snow: 800, stepDeg: 10 },
};
const found = fitOut(brief, settings);
if (!found.ok) throw new Error(JSON.stringify(found.faults));
const answer = found.value;
const [signal] = answer.signal;
const words = (drawing: Drawing): string[] =>
  flatItems(drawing.items).flatMap((item) => (item.type === 'text' ? [item.text] : []));

const swing = swingSheets(
  {
    ...{ shell, numbers, margin: settings.margin, floor: floorOf(shell) },
    dish: settings.dish!,
    mount: mountOf(settings),
    swing: answer.swing!,
  },
  facts,
);
const maps = signalSheets(
  signal!.sky!,
  { frequency: signal!.frequency, stepDeg: 10, horizon: answer.horizon },
  facts,
);
const seal = sealSheets(
  { shell, numbers, leftOut: [3], seal: answer.seal, leaks: answer.leaks },
  facts,
);
const upkeep = upkeepSheets({ shell, leftOut: [3], upkeep: answer.upkeep }, facts);
const door = doorSheets(
  {
    ...{ shell, numbers, frame: null, windFrom: 0.5 },
    advice: doorAdvice(shell, doorOfPlaces(shell, [0, 1]), 0.5),
  },
  facts,
);

const air = airSheets({ shell, floor: floorOf(shell), air: answer.air }, facts);
const room = roomSheets({ shell, settings, floor: floorOf(shell), use: answer.use }, facts);

describe('the sheets of the fit-out', () => {
  it.each([
    ['swing', swing],
    ['signal', maps],
    ['seal', seal],
    ['upkeep', upkeep],
    ['door', door],
    ['air', air],
    ['room', room],
  ])('%s: stay on their paper, say their caution, write no nonsense', (_, sheets) => {
    expect(sheets.length).toBeGreaterThan(0);
    for (const sheet of sheets) {
      expect(outside(sheet)).toEqual([]);
      expect(words(sheet).join(' ')).toMatch(/Caution\./);
      expect(words(sheet).join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('map the sky in steps that hold every pointing and share all of it', () => {
    const sky = signal!.sky!;
    const steps = lossSteps(sky);
    expect(steps.length).toBeLessThanOrEqual(6);
    expect(steps.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(new Set(steps.map(({ fill }) => fill.hatch)).size).toBe(steps.length);
  });

  it('cut the shell along the azimuth from ring to ring', () => {
    const cut = sectionOf(shell, [0, 0, 0], 0.3);
    for (const [x, z] of cut.flat())
      expect(Math.hypot(x, z)).toBeLessThanOrEqual(shell.radius + 1e-9);
    // Each end is shared by two lines but for the two at the ring.
    const ends = new Map<string, number>();
    for (const point of cut.flat()) {
      const key = point.map((x) => x.toFixed(6)).join();
      ends.set(key, (ends.get(key) ?? 0) + 1);
    }
    expect([...ends.values()].filter((count) => count === 1)).toHaveLength(2);
  });

  it('lay strips in rounds from the lowest up, every seam in one', () => {
    const rounds = sealRounds(shell, answer.seal.order);
    expect(rounds.flatMap(({ seams }) => seams)).toEqual(answer.seal.order);
    const lying = lyingSeams(shell);
    const lowest = rounds.map(({ seams }) => Math.min(...seams.map((seam) => lying[seam]!.middle)));
    expect(lowest).toEqual(lowest.toSorted((a, b) => a - b));
    const all = lying.reduce((sum, { length }) => sum + length, 0);
    expect(rounds.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(all, 9);
  });

  it('leave out seams of places that stay open', () => {
    const text = words(seal[0]!);
    expect(text).toContain('open');
    expect(text.filter((one) => one === numbers[3])).toEqual([]);
    expect(words(upkeep[0]!)).toContain(String(answer.upkeep.round.length - 1));
  });
});
