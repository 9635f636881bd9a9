import { describe, expect, it } from 'vitest';
import { baseSupports } from '../../src/frame/from-shell.ts';
import { mechanisms } from '../../src/frame/mechanisms.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { baseRing } from '../../src/shell/rims.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { howItStands } from '../../src/stages/how-it-stands.ts';
import { frameOfStage, type Stage, stageFaults } from '../../src/stages/stage.ts';
import { freeMovements, tiedFrame } from '../../src/stages/tied.ts';
import { cutBall, inNumberOrder, numbersOf } from './fixtures.ts';

const all = (shell: Shell): Stage => ({ placed: [...Array(placeCount(shell)).keys()] });
const faultsOf = (shell: Shell, stage: Stage) => stageFaults(shell, numbersOf(shell), stage);
const free = (shell: Shell, stage: Stage): number =>
  freeMovements(tiedFrame(frameOfStage(shell, stage))).length;

describe('a whole shell on held base hubs', () => {
  it.each([
    [2, 40],
    [3, 105],
    [4, 200],
  ])('stands, every seam finger-tight: %i steps a side, about %i places', (b, places) => {
    const shell = cutBall(b, places);
    const how = howItStands(shell, all(shell));
    expect(how).toMatchObject({ movements: 0, at: null, moving: [], props: [], proved: true });
    expect(mechanisms(frameOfStage(shell, all(shell)), { softest: false }).count).toBe(0);
  });
});

describe('a stage is refused', () => {
  const shell = cutBall(3, 105);
  const order = inNumberOrder(shell);
  const numbers = numbersOf(shell);

  it('with a floating panel, by its number', () => {
    const top = order.at(-1) as number;
    expect(faultsOf(shell, { placed: [order[0], order[1], top] })).toEqual([
      expect.objectContaining({
        path: `place ${numbers[top]}`,
        found: expect.stringMatching(/floating/),
      }),
    ]);
    const hub = hubsOf(shell, top as PlaceId)[0] as number;
    expect(faultsOf(shell, { placed: [order[0], order[1], top], props: [hub] })).toEqual([]);
  });

  it('with a panel that touches the others at a hub only, unless a plate joins it there', () => {
    const up = order[0] as number;
    const base = new Set<number>(baseRing(shell)?.hubs);
    const tip = hubsOf(shell, up as PlaceId).find((hub) => !base.has(hub)) as number;
    const touchesGround = (p: number): boolean =>
      hubsOf(shell, p as PlaceId).some((hub) => base.has(hub));
    const touching = order.find((p) => {
      const shared = hubsOf(shell, p as PlaceId).filter((hub) =>
        hubsOf(shell, up as PlaceId).includes(hub),
      );
      return shared.length === 1 && shared[0] === tip && !touchesGround(p);
    }) as number;
    expect(faultsOf(shell, { placed: [up, touching] })).toHaveLength(1);
    expect(faultsOf(shell, { placed: [up, touching], plates: [tip] })).toEqual([]);
  });

  it('with a panel whose seams are not bolted', () => {
    const above = order.find((p) => numbers[p]?.startsWith('2-')) as number;
    const placed = order.filter((p) => numbers[p]?.startsWith('1-'));
    const stage = { placed: [...placed, above] };
    const unbolted = faultsOf(shell, { ...stage, pass: () => null });
    expect(unbolted.map(({ path }) => path)).toContain(`place ${numbers[above]}`);
  });

  it('with a prop on air, or under a hub that stands on the ground', () => {
    const far = hubsOf(shell, order.at(-1) as PlaceId)[0] as number;
    const stage = { placed: order.slice(0, 20) };
    const ground = new Set(baseSupports(shell).map(({ hub }) => hub));
    const base = hubsOf(shell, order[0] as PlaceId).find((hub) => ground.has(hub)) as number;
    expect(faultsOf(shell, { ...stage, props: [far] })[0]?.found).toMatch(/on air/);
    expect(faultsOf(shell, { ...stage, props: [base] })[0]?.found).toMatch(/on the ground/);
  });

  it('with no panel, or with indices that are none of the shell’s', () => {
    expect(faultsOf(shell, { placed: [] })[0]?.found).toBe('no panel');
    expect(faultsOf(shell, { placed: [-1, 1e6], props: [1e6], plates: [0.5] })).toHaveLength(4);
  });
});

describe('the fewest props', () => {
  /** Whether some set of so many hubs leaves nothing free, by trying them all. */
  function someSetHolds(shell: Shell, stage: Stage, size: number): boolean {
    const base = new Set(baseSupports(shell).map(({ hub }) => hub));
    const hubs = [...new Set(stage.placed.flatMap((p) => hubsOf(shell, p as PlaceId)))]
      .filter((hub) => !base.has(hub))
      .map(Number);
    const tryFrom = (from: number, props: readonly number[]): boolean => {
      if (props.length === size) return free(shell, { ...stage, props }) === 0;
      for (let k = from; k < hubs.length; k++)
        if (tryFrom(k + 1, [...props, hubs[k] as number])) return true;
      return false;
    };
    return tryFrom(0, []);
  }

  const shell = cutBall(2, 40);
  const order = inNumberOrder(shell);
  const half = numbersOf(shell).filter((number) => number.startsWith('1-')).length / 2;
  // Begun at one place, or at two sides at once.
  const stages = [1, 3, 6, 9, 14, 19, 22, 24, 27, 30, 33, 36, 39]
    .map((n): Stage => ({ placed: order.slice(0, n) }))
    .concat(
      [1, 2, 3, 5].map((n) => ({
        placed: [...order.slice(0, n), ...order.slice(half, half + n)],
      })),
    )
    .filter((stage) => faultsOf(shell, stage).length === 0);

  it('are as few as an exhaustive search finds, on a small net', () => {
    expect(stages.length).toBeGreaterThan(8);
    let several = 0;
    for (const stage of stages) {
      const { props, proved } = howItStands(shell, stage);
      const few = props?.length as number;
      if (few < 1 || few > 3) continue;
      expect(proved).toBe(true);
      if (few > 1) several++;
      expect(someSetHolds(shell, stage, few - 1)).toBe(false);
    }
    expect(several).toBeGreaterThan(1);
  });

  it('make every stage of a build stand', () => {
    const larger = cutBall(3, 105);
    const places = inNumberOrder(larger);
    for (let n = 4; n < places.length; n += 7) {
      const stage = { placed: places.slice(0, n) };
      if (faultsOf(larger, stage).length > 0) continue;
      const { props, movements } = howItStands(larger, stage);
      expect(free(larger, stage)).toBe(movements);
      expect(free(larger, { ...stage, props: props as number[] })).toBe(0);
      expect(faultsOf(larger, { ...stage, props: props as number[] })).toEqual([]);
    }
  });

  it('are none where those of the stage itself are enough, and one fewer is not enough', () => {
    const stage = stages.find((one) => (howItStands(shell, one).props?.length ?? 0) > 1) as Stage;
    const props = howItStands(shell, stage).props as number[];
    expect(howItStands(shell, { ...stage, props }).props).toEqual([]);
    expect(howItStands(shell, { ...stage, props: props.slice(1) }).props).not.toEqual([]);
  });

  it('can’t be told where too few hubs may be propped', () => {
    const stage = stages.find((one) => howItStands(shell, one).movements > 0) as Stage;
    expect(howItStands(shell, stage, { mayProp: () => false }).props).toBeNull();
  });

  it('are needed wherever something moves, and the place of the movement is told', () => {
    for (const stage of stages) {
      const { movements, at, moving, props } = howItStands(shell, stage);
      expect(props?.length === 0).toBe(movements === 0);
      if (movements === 0) continue;
      expect(moving.length).toBeGreaterThan(0);
      const hubs = new Set(moving.flatMap((p) => hubsOf(shell, p as PlaceId)));
      expect(hubs.has(at as never)).toBe(true);
      for (const p of moving) expect(stage.placed).toContain(p);
    }
  });
});
