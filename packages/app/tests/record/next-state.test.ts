import { type Entry, RecordLog, recordPlan, recordState, type What } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  choicesOf,
  type Noting,
  nextOf,
  type Thing,
  withHands,
} from '../../src/record/next-state.ts';
import { tallyOf } from '../../src/sheets/record/tally.tsx';
import { courses, numbers, placeOf, shell } from '../places/notation.ts';

const plan = recordPlan(shell, { numbers, course: courses.course });

/** A record in which each of these follows on the one before. */
function said(...whats: readonly What[]) {
  const log = new RecordLog();
  const say = (what: What): Entry => {
    const entry = log.write(what, { writer: 'writer0001', by: 'Ada', at: 1_781_254_800_000 });
    log.add(entry);
    return entry;
  };
  for (const what of whats) say(what);
  return { log, say, state: () => recordState(log, plan) };
}

const place = (number: string): Thing => ({ sort: 'place', index: placeOf(number) });
const seam: Thing = { sort: 'seam', index: 0 };
const [one, other] = plan.seamPlaces[0] as readonly [number, number];
const placed = (index: number): What => ({
  kind: 'panel placed',
  place: plan.places[index] as string,
  tag: null,
  turn: null,
});

describe('a tap', () => {
  it('puts a panel in its place once', () => {
    const { say, state } = said();
    const next = nextOf(plan, state(), 'panels', place('1-01'));
    expect(next).toEqual({ kind: 'panel placed', place: '1-01', tag: null, turn: null });
    say(next as What);
    expect(nextOf(plan, state(), 'panels', place('1-01'))).toBe('done');
  });

  it('brings a seam from no bolt to final, and no farther', () => {
    const { say, state } = said(placed(one), placed(other));
    const passes: string[] = [];
    for (;;) {
      const next = nextOf(plan, state(), 'seams', seam);
      if (typeof next === 'string') break;
      if (next.kind === 'seam pass') passes.push(next.pass);
      say(next);
    }
    expect(passes).toEqual(['finger', 'snug', 'final']);
  });

  it('waits for the panels around a seam, a seal or a plate', () => {
    const { state } = said(placed(one));
    const hub = plan.hubPlaces.findIndex((around) => around.includes(one) && around.length > 1);
    for (const [noting, thing] of [
      ['seams', seam],
      ['seal', seam],
      ['plates', { sort: 'hub', index: hub }],
    ] as readonly (readonly [Noting, Thing])[])
      expect(nextOf(plan, state(), noting, thing), noting).toBe('not yet');
  });

  it('seals a seam and puts a plate on once', () => {
    const around = plan.hubPlaces[0] as readonly number[];
    const { say, state } = said(...[...new Set([one, other, ...around])].map(placed));
    for (const [noting, thing] of [
      ['seal', seam],
      ['plates', { sort: 'hub', index: 0 }],
    ] as readonly (readonly [Noting, Thing])[]) {
      say(nextOf(plan, state(), noting, thing) as What);
      expect(nextOf(plan, state(), noting, thing), noting).toBe('done');
    }
  });
});

describe('an opening', () => {
  it('takes no panel and no bolt, and does not hold up the plates around it', () => {
    const hub = plan.hubPlaces.findIndex((around) => around.includes(one) && around.length > 1);
    const around = (plan.hubPlaces[hub] as readonly number[]).filter((place) => place !== one);
    const { state } = said(...around.map(placed));
    const next = (noting: Noting, thing: Thing) => nextOf(plan, state(), noting, thing, [one]);
    expect(next('panels', { sort: 'place', index: one })).toBe('left out');
    expect(next('seams', seam)).toBe('left out');
    expect(next('plates', { sort: 'hub', index: hub })).toMatchObject({
      kind: 'hub plate',
      on: true,
    });
    expect(nextOf(plan, state(), 'plates', { sort: 'hub', index: hub })).toBe('not yet');
  });
});

describe('what else may be said', () => {
  it('marks the one state that is so, of each thing that can be so', () => {
    const { state } = said(placed(one), placed(other), {
      kind: 'seam pass',
      seam: plan.seams[0] as string,
      pass: 'snug',
    });
    const isSo = choicesOf(plan, state(), seam).filter(({ is }) => is);
    expect(isSo.map(({ what }) => what)).toEqual([
      { kind: 'seam pass', seam: plan.seams[0], pass: 'snug' },
      { kind: 'seam sealed', seam: plan.seams[0], sealed: false },
    ]);
    for (const thing of [
      { sort: 'place', index: one },
      { sort: 'hub', index: 0 },
    ] as Thing[])
      expect(choicesOf(plan, state(), thing).filter(({ is }) => is).length).toBe(
        thing.sort === 'hub' ? 3 : 1,
      );
  });
});

describe('done and left', () => {
  it('counts places, seams and hubs that are not left out, each pass with those beyond it', () => {
    const { state } = said(placed(one), placed(other), {
      kind: 'seam pass',
      seam: plan.seams[0] as string,
      pass: 'snug',
    });
    const rows = new Map(tallyOf(state(), plan, []).map((row) => [row.what, row]));
    expect(rows.get('placed')).toEqual({ what: 'placed', done: 2, of: numbers.length });
    expect(rows.get('finger')?.done).toBe(1);
    expect(rows.get('snug')?.done).toBe(1);
    expect(rows.get('final')?.done).toBe(0);
    const without = tallyOf(state(), plan, [one]);
    expect(without[0]).toEqual({ what: 'placed', done: 1, of: numbers.length - 1 });
    expect(without[1]?.done).toBe(0);
    expect(without[1]?.of).toBe(
      plan.seams.length - plan.seamPlaces.filter((two) => two.includes(one)).length,
    );
  });
});

describe('how many people were at it', () => {
  it('goes with work, and with nothing else', () => {
    const seamName = plan.seams[0] as string;
    const work: What[] = [placed(one), { kind: 'seam pass', seam: seamName, pass: 'snug' }];
    for (const what of work) {
      expect(withHands(what, 3)).toEqual({ ...what, hands: 3 });
      expect(withHands(what, null)).toBe(what);
    }
    const rest: What[] = [
      { kind: 'seam pass', seam: seamName, pass: 'none' },
      { kind: 'stop', why: 'wind', on: true },
      { kind: 'panel taken out', place: '1-01' },
    ];
    for (const what of rest) expect(withHands(what, 3)).toBe(what);
  });
});
