import { defaultGround, defaultLoads, type PartsKnown, unknownParts } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { type GroundPapersQuestion, groundAnswer } from '../../src/engine/ground.ts';
import { stageDetail, stagesAnswer } from '../../src/engine/stages.ts';
import { movable, movedPanels } from '../../src/sheets/ground/moved-panels.ts';
import { kinds, numbers, shell } from '../places/notation.ts';

const question: GroundPapersQuestion = {
  shell,
  numbers,
  leftOut: [],
  kinds,
  loads: { ...defaultLoads, wind: { as: 'gust', speed: 28 }, panelMass: 8 },
  ground: {
    ...defaultGround,
    soil: { kind: 'loam', firm: true, wet: false },
    anchor: { type: 'ballast', underlay: 'wood', mass: 800 },
  },
  parts: undefined,
  stages: undefined,
  facts: { project: 'P', sheet: 'S', date: 'D', assumes: 'A', caution: 'C' },
  paper: 'A4',
  lengths: 'metric',
};
const value = <T>(read: { ok: true; value: T } | { ok: false }): T => {
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.value;
};

describe('the ground of a shell', () => {
  it('is set out, anchored and pressed on by the wind, with what is not confirmed', () => {
    const answer = value(groundAnswer(question));
    expect(answer.base.hubs.length).toBe(12);
    expect(answer.stakeOut.length).toBeGreaterThan(1);
    expect(value(answer.anchors).plan.hubs.length).toBe(12);
    const worst = answer.wind.from[answer.wind.worst]?.overturning ?? 0;
    expect(Math.max(...answer.wind.from.map((one) => one.overturning))).toBeCloseTo(worst, 9);
    expect(answer.wind.sources.some((one) => one.confirmation === 'from memory')).toBe(true);
    expect(answer.unweighed).toBe(0);
    expect(answer.weight).toBeGreaterThan(1000);
  });

  it('has the survey as a form, a ring beam only where one is asked for, snow where it is given', () => {
    const bare = value(groundAnswer(question));
    expect(bare.beam).toBeNull();
    expect(bare.surveySheets).toHaveLength(1);
    expect(bare.snow.value).toEqual([]);
    expect(bare.wind.enclosure).toBe('closed');
    const loads = { ...defaultLoads, groundSnow: 1000, doorOpen: true };
    const ground = { ...defaultGround, ringBeam: { width: 0.1, outside: 0, stock: null } };
    const full = value(groundAnswer({ ...question, loads, ground }));
    expect(full.beam && value(full.beam).pieces).toHaveLength(12);
    expect(full.snow.value.length).toBeGreaterThan(1);
    expect(full.snow.sources.length).toBeGreaterThan(0);
    expect(full.wind.enclosure).toBe('open door');
    const wide = { ...defaultGround, ringBeam: { width: 9, outside: 0, stock: null } };
    expect(value(groundAnswer({ ...question, ground: wide })).beam?.ok).toBe(false);
  });

  it('says at once all that is missing for anchors', () => {
    const { anchors } = value(groundAnswer({ ...question, loads: undefined, ground: undefined }));
    expect(anchors.ok ? [] : anchors.faults.map(({ path }) => path)).toEqual([
      'wind',
      'anchor',
      'soil',
    ]);
  });
});

describe('the stages', () => {
  it('are told as they come, one for each panel, and the whole shell stands', () => {
    const told: number[] = [];
    let last = 0;
    const { rows, order } = value(
      stagesAnswer(question, (some, done) => {
        told.push(...some.map(({ n }) => n));
        last = done;
      }),
    );
    expect(rows.map(({ n }) => n)).toEqual(order.map((_, i) => i + 1));
    expect(told).toEqual(rows.map(({ n }) => n));
    expect(last).toBe(1);
    expect(rows.at(-1)?.status).toBe('stands');
  });

  it('move where they do not stand: lines and hubs go with their corners', () => {
    const { rows } = value(stagesAnswer(question));
    const loose = rows.find(({ status }) => status !== 'stands');
    if (!loose) throw new Error('every stage stands');
    const detail = value(stageDetail({ ...question, n: loose.n }));
    expect(detail.movement).not.toBeNull();
    const parts = movable(shell, detail.placed);
    const still = movedPanels(parts, detail.movement, 0);
    expect(still.edges.ends).toEqual(parts.still.edges.ends);
    const moved = movedPanels(parts, detail.movement, 0.1, [[0, 0, 1]], -1);
    const most = moved.corners.reduce(
      (all, x, i) => Math.max(all, Math.abs(x - (still.corners[i] as number))),
      0,
    );
    expect(most).toBeGreaterThan(0.03);
    expect(most).toBeLessThanOrEqual(0.1 + 1e-9);
    expect([...moved.edges.ends.subarray(0, 6)]).toEqual([0, 0, 1, 0, 0, -1]);
    expect(moved.hubs.points).not.toEqual(still.hubs.points);
  });

  it('bend in the design wind when they are whole, base hubs at rest, less the stiffer they are', () => {
    const whole = (parts: PartsKnown | undefined) =>
      value(stageDetail({ ...question, parts, n: shell.kind.length })).bent;
    const guessed = whole(undefined);
    if (!guessed) throw new Error('nothing bends');
    const design = value(groundAnswer(question)).wind.design;
    expect(guessed.gust).toBeCloseTo(design?.gust ?? 0, 9);
    expect(guessed.supposed).toContain('material of the panels');
    const longest = Array.from({ length: guessed.movement.length / 3 }, (_, i) =>
      Math.hypot(...guessed.movement.subarray(3 * i, 3 * i + 3)),
    );
    expect(Math.max(...longest)).toBeCloseTo(1, 9);
    const ground = Math.min(...shell.hubs.filter((_, i) => i % 3 === 2));
    const { order } = value(stagesAnswer(question));
    const corners = order.flatMap((place) => [
      ...shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]),
    ]);
    const onGround = longest.filter(
      (_, i) => (shell.hubs[3 * (corners[i] as number) + 2] as number) < ground + 1e-6,
    );
    expect(onGround.length).toBeGreaterThan(0);
    for (const one of onGround) expect(one).toBe(0);
    const stiff = whole({
      ...unknownParts,
      panel: { ...unknownParts.panel, material: 'steel', thickness: 0.004 },
    });
    expect(stiff?.most).toBeLessThan(guessed.most / 5);
    expect(stiff?.supposed).not.toContain('material of the panels');
  });

  it('bend, half built and propped, in the gust at which work stops', () => {
    const { rows } = value(stagesAnswer(question));
    // The first panel alone has all its hubs held: nothing of it bends.
    const loose = rows.find(({ status, n }) => status === 'needs props' && n > 6);
    if (!loose) throw new Error('every stage stands');
    const { bent } = value(stageDetail({ ...question, n: loose.n }));
    expect(bent?.gust).toBe(loose.stop);
    expect(bent?.most).toBeGreaterThan(0);
  });
});
