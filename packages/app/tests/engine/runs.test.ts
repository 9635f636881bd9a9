import type { Read } from '@shellraise/core';
import { expect, it } from 'vitest';
import { Unanswered } from '../../src/engine/bridge.ts';
import { createAskRuns } from '../../src/engine/runs.ts';

/** Runs whose answers are given by hand, and a clock that stands until it is moved. */
function byHand() {
  const calls: {
    onProgress: (done: number) => void;
    give: (read: Read<string>) => void;
    ended: boolean;
  }[] = [];
  const clock = { now: 0 };
  const runs = createAskRuns<string, string>(
    (_, onProgress) => {
      let [give, fail] = [(_: Read<string>): void => undefined, (_: unknown): void => undefined];
      const answer = new Promise<Read<string>>((resolve, reject) => {
        [give, fail] = [resolve, reject];
      });
      const call = { onProgress, give, ended: false };
      calls.push(call);
      const cancel = (): void => {
        call.ended = true;
        fail(new Unanswered('cancelled', 'cancelled'));
      };
      return { answer, cancel };
    },
    () => clock.now,
  );
  const call = (i: number) => calls[i] as (typeof calls)[number];
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
  return { runs, calls, call, clock, settled };
}

it('tells how far it is, its answer, and the seconds it took', async () => {
  const { runs, call, clock, settled } = byHand();
  runs.start('a');
  call(0).onProgress(0.5);
  expect(runs.store.getState()).toMatchObject({ status: 'running', progress: { done: 0.5 } });
  clock.now = 2000;
  call(0).give({ ok: true, value: 'answer' });
  await settled();
  expect(runs.store.getState()).toMatchObject({ status: 'done', value: 'answer', took: 2 });
});

it('tells why there is no answer', async () => {
  const { runs, call, settled } = byHand();
  const faults = [{ path: 'pile', found: 'none', expected: 'a panel' }];
  runs.start('a');
  call(0).give({ ok: false, faults });
  await settled();
  expect(runs.store.getState()).toMatchObject({ status: 'done', value: null, faults });
});

it('ends the run before, and takes nothing more from it', async () => {
  const { runs, call, settled } = byHand();
  runs.start('a');
  runs.start('b');
  call(0).onProgress(0.9);
  call(0).give({ ok: true, value: 'of a' });
  await settled();
  expect(call(0).ended).toBe(true);
  expect(runs.store.getState()).toMatchObject({ status: 'running', input: 'b', progress: null });
});

it('is left alone where it has ended: its worker may be answering another question', async () => {
  const { runs, call, settled } = byHand();
  runs.start('a');
  call(0).give({ ok: true, value: 'answer' });
  await settled();
  runs.cancel();
  runs.start('b');
  expect(call(0).ended).toBe(false);
});

it('follows a question once, and is started anew by a press', () => {
  const { runs, calls } = byHand();
  runs.follow('a');
  runs.follow('a');
  expect(calls.length).toBe(1);
  runs.start('a');
  runs.follow('b');
  expect(calls.length).toBe(3);
});

it('is forgotten with its project', async () => {
  const { runs, call, settled } = byHand();
  runs.start('a');
  runs.reset();
  call(0).onProgress(0.5);
  await settled();
  expect(runs.store.getState()).toMatchObject({ status: 'idle', input: null, progress: null });
});
