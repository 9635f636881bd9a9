import { defaultGround, defaultLoads } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  type GroundPapersQuestion,
  groundAnswer,
  stageDetail,
  stagesAnswer,
} from '../../src/engine/ground.ts';
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
});
