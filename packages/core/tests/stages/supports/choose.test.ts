import { describe, expect, it } from 'vitest';
import { baseOf } from '../../../src/ground/base.ts';
import { defaultLoads } from '../../../src/loads/schema.ts';
import { dot, norm, pointAt, scale, subtract, type Vec3 } from '../../../src/math/vector.ts';
import { projectFrom } from '../../../src/project/project.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { type StageAnswer, type StageOptions, stageAnswer } from '../../../src/stages/answer.ts';
import { nothingKnown, stageModel } from '../../../src/stages/model.ts';
import { stagesSection } from '../../../src/stages/schema.ts';
import { gearOf, linesAt, type SupportGear, slopeOf } from '../../../src/stages/supports/gear.ts';
import { cutBall, numbersOf } from '../fixtures.ts';
import { leaves } from './leaves.ts';

const larger = (shell: Shell): Shell => ({
  ...shell,
  radius: 3,
  hubs: shell.hubs.map((x) => 3 * x),
});
const low = larger(cutBall(3, 105));
// Five leaves below the equator, which lean outwards, apart from each other.
const outward = leaves(low)
  .slice(0, 5)
  .map(({ place }) => place);

const guys = { radii: [3.6, 4.5], count: 12 };
const mast = { height: 3.2, chains: 10, guyed: true };

function gear(of: object, shell = low): SupportGear {
  const base = baseOf(shell);
  if (!base.ok) throw new Error('it has a base ring');
  const read = gearOf(stagesSection.parse(of), base.value);
  if (!read.ok || read.value === null) throw new Error('there is gear');
  return read.value;
}

function answerOf(of: object, placed: readonly number[], options: StageOptions = {}): StageAnswer {
  const made = stageModel(low, numbersOf(low), {
    loads: defaultLoads,
    massOf: () => ({ value: 20, sources: [] }),
    bears: nothingKnown,
    directions: 4,
    gear: Object.keys(of).length === 0 ? null : gear(of),
  });
  if (!made.ok) throw new Error(made.faults[0]?.found);
  const answer = stageAnswer(
    made.value,
    { placed },
    {
      strength: false,
      ...options,
    },
  );
  if (!answer.ok) throw new Error(answer.faults[0]?.found);
  return answer.value;
}

describe('the gear of a project', () => {
  it('has its anchor points ring by ring, clockwise from the first bearing', () => {
    const { points } = gear({ guys: { radii: [4, 5], count: 4, bearing: Math.PI / 2 } });
    const level = (points[0] as Vec3)[2];
    expect(points.length).toBe(8);
    [
      [0, -4],
      [-4, 0],
      [0, 4],
      [4, 0],
      [0, -5],
    ].forEach(([x, y], k) => {
      expect(norm(subtract(points[k] as Vec3, [x as number, y as number, level]))).toBeLessThan(
        1e-12,
      );
    });
  });

  it('is none where nobody entered any', () => {
    const base = baseOf(low);
    expect(base.ok && gearOf(stagesSection.parse({}), base.value)).toEqual({
      ok: true,
      value: null,
    });
  });

  it('refuses a mast that would come out at the top, with its height and what is allowed', () => {
    const base = baseOf(low);
    const read =
      base.ok && gearOf(stagesSection.parse({ mast: { height: 9, chains: 6 } }), base.value);
    if (!read || read.ok) throw new Error('it is refused');
    expect(read.faults[0]).toMatchObject({ path: 'stages.mast.height', found: '9 m' });
    expect(read.faults[0]?.expected).toMatch(/^less than 3\.\d\d m/);
  });

  it.each([
    [{ guys: { radii: [], count: 4 } }, 'stages.guys.radii'],
    [{ guys: { radii: [4], count: 0 } }, 'stages.guys.count'],
    [{ guys: { radii: [4], count: 4, least: 1.2, most: 0.4 } }, 'stages.guys.most'],
    [{ guys: { radii: [400], count: 4 } }, 'stages.guys.radii[0]'],
    [{ mast: { height: 0, chains: 4 } }, 'stages.mast.height'],
    [{ mast: { height: 3, chains: 0 } }, 'stages.mast.chains'],
    [{ mast: { height: 3, chains: 4, bears: -1 } }, 'stages.mast.bears'],
  ])('%j is refused by its place', (stages, path) => {
    const read = projectFrom({ shellraise: 1, pile: { kinds: [] }, stages });
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.faults.map((fault) => fault.path)).toContain(path);
  });

  it('reads a file that says nothing of guys and masts as before', () => {
    const read = projectFrom({ shellraise: 1, pile: { kinds: [] }, stages: { propBears: 3000 } });
    expect(read.ok && read.value.stages).toEqual({
      propBears: 3000,
      hubBears: null,
      guys: null,
      mast: null,
    });
  });
});

describe('the lines that may hold a hub', () => {
  const all = gear({ guys: { ...guys, least: 0.4, most: 1.0 }, mast });
  const hubs = [...Array(low.hubs.length / 3).keys()].filter(
    (hub) => (low.hubs[3 * hub + 2] as number) > (all.points[0] as Vec3)[2] + 0.5,
  );

  it('keep to the slopes and never pass through the shell', () => {
    let count = 0;
    for (const hub of hubs)
      for (const { kind, to } of linesAt(all, low.hubs, hub)) {
        if (kind !== 'guy') continue;
        count++;
        const at = pointAt(low.hubs, hub);
        const slope = slopeOf(at, to);
        expect(slope).toBeGreaterThanOrEqual(0.4);
        expect(slope).toBeLessThanOrEqual(1.0);
        const middle = scale([at[0] + to[0], at[1] + to[1], at[2] + to[2]], 0.5);
        expect(norm(middle) > 3).toBe(norm(to) > 3);
      }
    expect(count).toBeGreaterThan(20);
  });

  it('are a chain for every hub where there is a mast', () => {
    expect(
      hubs.every((hub) => linesAt(all, low.hubs, hub).some(({ kind }) => kind === 'chain')),
    ).toBe(true);
  });
});

describe('guys and chains in the place of props', () => {
  const bare = answerOf({}, outward);

  it('are not asked for where there are none: the answer says nothing of them', () => {
    expect(bare.props.length).toBeGreaterThan(0);
    expect(bare.supports).toBeNull();
  });

  it('leave the fewest props and all else of the answer as they were', () => {
    const { supports, assumed, ...rest } = answerOf({ guys, mast }, outward);
    const { supports: none, assumed: before, ...other } = bare;
    expect(rest).toEqual(other);
    expect(assumed).toEqual(expect.arrayContaining([...before]));
    expect(supports).not.toBeNull();
    expect(none).toBeNull();
  });

  it('hold every hub that was to be propped, or leave its prop', () => {
    for (const of of [{ guys }, { mast }, { guys, mast }]) {
      const { props, supports } = answerOf(of, outward);
      const held = new Set([
        ...(supports?.lines ?? []).map(({ hub }) => hub),
        ...(supports?.props ?? []).map(({ hub }) => hub),
      ]);
      expect([...held].sort()).toEqual([...props].sort());
    }
  });

  it('take the place of props in a light wind: chains hold panels that lean outwards', () => {
    const { supports } = answerOf({ mast }, outward, { supportGust: 1 });
    expect(supports?.props).toEqual([]);
    expect(supports?.lines.every(({ kind }) => kind === 'chain')).toBe(true);
    for (const line of supports?.lines ?? []) {
      expect(line.weight).toBeGreaterThan(0);
      expect(line.most).toBeGreaterThanOrEqual(line.weight);
      expect(line.use).toBeNull();
    }
    expect(supports?.mast?.push).toBeGreaterThan(0);
  });

  it('do not where a gust would blow the panels over to the other side', () => {
    const { supports } = answerOf({ mast }, outward, { supportGust: 25 });
    expect(supports?.lines).toEqual([]);
    expect(supports?.mast).toBeNull();
    expect(supports?.props.length).toBe(bare.props.length);
  });

  it('hold from two sides in a gust that one line cannot stand', () => {
    const { supports } = answerOf({ guys, mast }, outward, { supportGust: 25 });
    const byHub = new Map<number, Vec3[]>();
    for (const { hub, to } of supports?.lines ?? []) {
      const way = subtract(to, pointAt(low.hubs, hub));
      byHub.set(hub, [...(byHub.get(hub) ?? []), way]);
    }
    expect(byHub.size).toBeGreaterThan(0);
    for (const [first, second] of byHub.values()) {
      const [a, b] = [first as Vec3, second as Vec3];
      expect(dot([a[0], a[1], 0], [b[0], b[1], 0])).toBeLessThan(0);
    }
  });

  it('are not used beyond what they bear, and tell how much of it they use', () => {
    const light = answerOf({ mast: { ...mast, chainBears: 5000 } }, outward, { supportGust: 1 });
    const use = Math.max(...(light.supports?.lines ?? []).map((line) => line.use as number));
    expect(use).toBeGreaterThan(0);
    const just = { mast: { ...mast, chainBears: 5000 * use * 0.99 } };
    const less = answerOf(just, outward, { supportGust: 1 });
    expect(less.supports?.lines.length).toBeLessThan(light.supports?.lines.length as number);
    expect(less.supports?.lines.every((line) => (line.use as number) <= 1)).toBe(true);
  });

  it('are no more chains than the mast has', () => {
    const one = answerOf({ mast: { ...mast, chains: 1 } }, outward, { supportGust: 1 });
    expect(one.supports?.lines.length).toBe(1);
    expect(one.supports?.props.length).toBe(one.props.length - 1);
  });

  it('are refused a gust that is none', () => {
    expect(() => answerOf({ mast }, outward, { supportGust: -1 })).toThrow(
      'the gust for guys is -1 m/s, expected 0 to 60 m/s',
    );
    expect(() => answerOf({ mast }, outward, { supportGust: 400 })).toThrow('400 m/s');
  });
});
