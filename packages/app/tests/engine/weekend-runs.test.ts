import type { Read, Weekend } from '@shellraise/core';
import { expect, it } from 'vitest';
import type { EngineBridge } from '../../src/engine/bridge.ts';
import { FIRST_ODDS, type WeekendAsked } from '../../src/engine/weekend.ts';
import { createWeekendRuns } from '../../src/engine/weekend-runs.ts';

const question = { plan: { stages: [] } } as unknown as WeekendAsked;
const weekend = (runs: number): Read<Weekend> => ({ ok: true, value: { runs } as Weekend });

/** Runs with a bridge whose answers are given by hand. */
function byHand() {
  const asked: { runs: number | undefined; give: (read: Read<Weekend>) => void }[] = [];
  const ask = ((_: 'weekend', one: WeekendAsked) => {
    let give: (read: Read<Weekend>) => void = () => undefined;
    const answer = new Promise<Read<Weekend>>((resolve) => {
      give = resolve;
    });
    asked.push({ runs: one.how?.runs, give });
    return { answer, cancel: () => undefined };
  }) as unknown as EngineBridge['ask'];
  const runs = createWeekendRuns({ ask }, () => 0);
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
  return { asked, runs, settled };
}

it('shows first odds of a few hundred runs while all of them are reckoned', async () => {
  const { asked, runs, settled } = byHand();
  runs.start(question);
  expect(asked.map((one) => one.runs)).toEqual([FIRST_ODDS.runs]);
  asked[0]?.give(weekend(FIRST_ODDS.runs));
  await settled();
  expect(runs.store.getState()).toMatchObject({
    status: 'running',
    value: { runs: FIRST_ODDS.runs },
  });
  expect(asked.map((one) => one.runs)).toEqual([FIRST_ODDS.runs, undefined]);
  asked[1]?.give(weekend(10_000));
  await settled();
  expect(runs.store.getState()).toMatchObject({ status: 'done', value: { runs: 10_000 } });
});

it('asks no further for a question that another one took the place of', async () => {
  const { asked, runs, settled } = byHand();
  runs.start(question);
  runs.start({ ...question });
  asked[0]?.give(weekend(1));
  await settled();
  expect(asked.length).toBe(2);
  expect(runs.store.getState().value).toBeNull();
});

it('tells faults once, from the whole question', async () => {
  const { asked, runs, settled } = byHand();
  runs.start(question);
  const fault = { path: 'crew.dates', found: 'none', expected: 'a day' };
  asked[0]?.give({ ok: false, faults: [fault] });
  await settled();
  asked[1]?.give({ ok: false, faults: [fault] });
  await settled();
  expect(runs.store.getState()).toMatchObject({ status: 'done', value: null, faults: [fault] });
});
