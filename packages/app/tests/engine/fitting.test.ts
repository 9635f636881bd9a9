import { describe, expect, it } from 'vitest';
import type { FitQuestion, FitShown, ShownFit } from '../../src/engine/best-fits.ts';
import { type EngineBridge, Unanswered } from '../../src/engine/bridge.ts';
import { createFitting } from '../../src/engine/fitting.ts';

interface Call {
  readonly onProgress: (done: number) => void;
  readonly onBetter: (fit: ShownFit) => void;
  readonly resolve: (answer: FitShown) => void;
  readonly reject: (error: unknown) => void;
}

/** A bridge whose answers are given by hand, and a clock that stands until it is moved. */
function search() {
  const calls: Call[] = [];
  const clock = { now: 1000 };
  const bridge = {
    ask: (_: string, __: unknown, onProgress: Call['onProgress'], onBetter: Call['onBetter']) => {
      let resolve: Call['resolve'] = () => undefined;
      let reject: Call['reject'] = () => undefined;
      const answer = new Promise<FitShown>((done, fail) => {
        [resolve, reject] = [done, fail];
      });
      calls.push({ onProgress, onBetter, resolve, reject });
      return { answer, cancel: () => reject(new Unanswered('cancelled', 'cancelled')) };
    },
  } as unknown as Pick<EngineBridge, 'ask'>;
  const fitting = createFitting(bridge, () => clock.now);
  const call = (i: number): Call => calls[i] as Call;
  return { fitting, calls, call, clock };
}

const question = (seconds: number) => ({ seconds }) as FitQuestion;
const fit = (name: string) => ({ name }) as unknown as ShownFit;
const answer = (...fits: ShownFit[]) => ({ answer: { proved: true }, fits }) as unknown as FitShown;
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the search for fits', () => {
  it('shows each better fit first as it comes, and tells when the first was there', () => {
    const { fitting, call, clock } = search();
    fitting.start(question(1));
    clock.now = 1400;
    call(0).onBetter(fit('a'));
    clock.now = 2000;
    call(0).onBetter(fit('b'));
    call(0).onProgress(0.5);
    const { status, found, firstAfter, progress } = fitting.store.getState();
    expect({ status, firstAfter, done: progress?.done }).toEqual({
      status: 'running',
      firstAfter: 0.4,
      done: 0.5,
    });
    expect(found).toEqual([fit('b'), fit('a')]);
  });

  it('ends with the whole list and the seconds it took', async () => {
    const { fitting, call, clock } = search();
    fitting.start(question(1));
    call(0).onBetter(fit('a'));
    clock.now = 4000;
    call(0).resolve(answer(fit('b'), fit('c')));
    await settled();
    const { status, found, took } = fitting.store.getState();
    expect({ status, found, took }).toEqual({
      status: 'done',
      found: [fit('b'), fit('c')],
      took: 3,
    });
  });

  it('is stopped at once, and keeps what it found', async () => {
    const { fitting, call } = search();
    fitting.start(question(1));
    call(0).onBetter(fit('a'));
    fitting.cancel();
    await settled();
    const { status, found, value } = fitting.store.getState();
    expect({ status, found, value }).toEqual({
      status: 'cancelled',
      found: [fit('a')],
      value: null,
    });
  });

  it('started anew takes nothing more from the search before', async () => {
    const { fitting, call } = search();
    fitting.start(question(1));
    fitting.start(question(2));
    call(0).onBetter(fit('old'));
    await settled();
    call(1).onBetter(fit('new'));
    const { status, found, input } = fitting.store.getState();
    expect({ status, found, input }).toEqual({
      status: 'running',
      found: [fit('new')],
      input: question(2),
    });
  });

  it('says what failed, and whether the worker died', async () => {
    for (const why of ['failed', 'died'] as const) {
      const { fitting, call } = search();
      fitting.start(question(1));
      call(0).reject(new Unanswered(why, 'out of memory'));
      await settled();
      const { status, died, fault } = fitting.store.getState();
      expect({ status, died, fault }).toEqual({
        status: 'failed',
        died: why === 'died',
        fault: 'out of memory',
      });
    }
  });

  it('forgets all when another project is opened', async () => {
    const { fitting, call } = search();
    fitting.start(question(1));
    call(0).onBetter(fit('a'));
    fitting.reset();
    await settled();
    const { status, found, input } = fitting.store.getState();
    expect({ status, found, input }).toEqual({ status: 'idle', found: [], input: null });
  });
});
