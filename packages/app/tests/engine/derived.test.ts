import type { Identification, ShapeQuestion } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../src/engine/api.ts';
import type { EngineBridge } from '../../src/engine/bridge.ts';
import { Unanswered } from '../../src/engine/bridge.ts';
import { createDerived } from '../../src/engine/derived.ts';
import { pileOf } from '../state/notation.ts';

interface Call {
  readonly question: keyof Engine;
  readonly args: readonly unknown[];
  readonly answer: (value: unknown) => Promise<void>;
  readonly fail: (why: 'died' | 'failed') => Promise<void>;
  cancelled: boolean;
}

/** An engine that answers when told. */
function engineByHand() {
  const calls: Call[] = [];
  const settle = () => new Promise<void>((done) => setTimeout(done));
  const ask = (question: keyof Engine, ...args: unknown[]) => {
    let resolve: (value: unknown) => void = () => undefined;
    let reject: (error: unknown) => void = () => undefined;
    const answer = new Promise((yes, no) => {
      resolve = yes;
      reject = no;
    });
    const call: Call = {
      question,
      args,
      cancelled: false,
      answer: (value) => {
        resolve(value);
        return settle();
      },
      fail: (why) => {
        reject(new Unanswered(why, 'it stopped'));
        return settle();
      },
    };
    calls.push(call);
    const cancel = (): void => {
      call.cancelled = true;
      reject(new Unanswered('cancelled', 'cancelled'));
    };
    return { answer, cancel };
  };
  const bridge = { ask } as unknown as EngineBridge;
  const derived = createDerived(bridge, bridge, () => 0);
  const last = (): Call => calls.at(-1) as Call;
  return { derived, calls, last };
}

const question = (name: string): ShapeQuestion =>
  ({ kinds: [{ id: name }], groups: [] }) as unknown as ShapeQuestion;
const work = (name: string) => ({ worked: {}, question: question(name), holes: [], next: [] });
const found = (count: number): Identification =>
  ({
    shapes: Array.from({ length: count }, () => ({})),
    reasons: [],
    settle: [],
    complete: true,
  }) as unknown as Identification;

describe('what the engine makes of a project', () => {
  it('is the worked-up pile alone where no more is wanted', async () => {
    const { derived, calls, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    await last().answer(work('a'));
    expect(calls.map((call) => call.question)).toEqual(['work']);
    expect(derived.store.getState().work).toMatchObject({ status: 'done', fresh: true });
  });

  it('goes on to the shapes when they are asked for', async () => {
    const { derived, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    derived.askShapes();
    await last().answer(work('a'));
    expect(last().question).toBe('identify');
    await last().answer(found(2));
    expect(derived.store.getState().shapes.value?.shapes).toHaveLength(2);
  });

  it('goes on to what can stand where the sheet wants that', async () => {
    const { derived, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'standing');
    await last().answer(work('a'));
    await last().answer(found(1));
    expect(last().question).toBe('arrange');
    await last().answer({ list: { arrangements: [{}] }, decisions: [{ cut: 1 }] });
    expect(last().question).toBe('stand');
    expect(last().args[0]).toMatchObject({ decision: { cut: 1 }, prefer: 0 });
  });

  it('asks nothing again for the same kinds: a new title, a reading that changes nothing', async () => {
    const { derived, calls, last } = engineByHand();
    const project = pileOf('a', [1, 1, 1]);
    derived.follow(project, 'standing');
    await last().answer(work('a'));
    await last().answer(found(0));
    const before = calls.length;
    derived.follow({ ...project, title: 'b' }, 'standing');
    expect(calls).toHaveLength(before);
    derived.follow({ ...project, pile: { ...project.pile } }, 'standing');
    await last().answer(work('a'));
    expect(calls.filter((call) => call.question === 'identify')).toHaveLength(1);
  });

  it('lets the pile at hand be worked up, then takes the newest', async () => {
    const { derived, calls } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    derived.follow(pileOf('b', [2, 2, 2]), 'work');
    derived.follow(pileOf('c', [3, 3, 3]), 'work');
    expect(calls).toHaveLength(1);
    await calls[0]?.answer(work('a'));
    expect(calls).toHaveLength(2);
    expect(calls[1]?.args[0]).toMatchObject({ readings: [{ sides: [3, 3, 3] }] });
  });

  it('keeps the last answer in sight while a newer one is on its way', async () => {
    const { derived, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    await last().answer(work('a'));
    derived.follow(pileOf('b', [1, 1, 1]), 'work');
    expect(derived.store.getState().work).toMatchObject({ status: 'running', fresh: false });
    expect(derived.store.getState().work.value).not.toBeNull();
  });

  it('tells that a search was cancelled, and starts it again when asked', async () => {
    const { derived, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    derived.askShapes();
    await last().answer(work('a'));
    derived.cancel('shapes');
    await new Promise((done) => setTimeout(done));
    expect(derived.store.getState().shapes.status).toBe('cancelled');
    derived.askShapes();
    expect(derived.store.getState().shapes.status).toBe('running');
  });

  it('tells that a worker died, without losing the former answer', async () => {
    const { derived, last } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    await last().answer(work('a'));
    derived.follow(pileOf('b', [1, 1, 1]), 'work');
    await last().fail('died');
    expect(derived.store.getState().work).toMatchObject({
      status: 'failed',
      died: true,
      fault: 'it stopped',
    });
    expect(derived.store.getState().work.value).not.toBeNull();
    derived.again('work');
    expect(derived.store.getState().work.status).toBe('running');
  });

  it('forgets everything when another project is opened', async () => {
    const { derived, last, calls } = engineByHand();
    derived.follow(pileOf('a', [1, 1, 1]), 'work');
    await last().answer(work('a'));
    derived.reset();
    expect(derived.store.getState().work.value).toBeNull();
    derived.follow(pileOf('b', [1, 1, 1]), 'work');
    expect(calls).toHaveLength(2);
  });
});
