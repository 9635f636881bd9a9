import { expose } from 'comlink';
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../src/engine/api.ts';
import { EngineBridge, wholeQuestion } from '../../src/engine/bridge.ts';
import type { AnswerStore } from '../../src/store/answer-store.ts';

/** A bridge to an engine that writes a project after a while, and works out marks after a while. */
function bridged(kept: AnswerStore | null) {
  const counts = { workers: 0, asked: 0 };
  const slowly = async (said: unknown) => {
    counts.asked += 1;
    await new Promise((done) => setTimeout(done, 200));
    return said;
  };
  const start = (): Worker => {
    counts.workers += 1;
    const { port1, port2 } = new MessageChannel();
    expose({ marks: slowly, writeProject: slowly }, port1);
    return Object.assign(port2, {
      terminate: () => port2.close(),
    }) as unknown as Worker;
  };
  return { counts, bridge: new EngineBridge(start, kept) };
}

/** A store in memory; `delay` milliseconds before an answer is found. */
function memory(delay = 0): AnswerStore & { readonly answers: Map<string, unknown> } {
  const answers = new Map<string, unknown>();
  return {
    answers,
    find: async (question) => {
      await new Promise((done) => setTimeout(done, delay));
      return answers.get(question);
    },
    keep: async (question, answer) => void answers.set(question, answer),
    clear: async () => answers.clear(),
  };
}

const marks = (mark: string) => ({ mark }) as unknown as Parameters<Engine['marks']>[0];

describe('a question that was answered before', () => {
  it('is not asked again, by another page neither; another question is', async () => {
    const kept = memory();
    const one = bridged(kept);
    expect(await one.bridge.ask('marks', marks('A')).answer).toEqual({ mark: 'A' });
    expect(await one.bridge.ask('marks', marks('A')).answer).toEqual({ mark: 'A' });
    expect(one.counts.asked).toBe(1);
    const other = bridged(kept);
    expect(await other.bridge.ask('marks', marks('A')).answer).toEqual({ mark: 'A' });
    expect(other.counts).toEqual({ workers: 0, asked: 0 });
    expect(await other.bridge.ask('marks', marks('B')).answer).toEqual({ mark: 'B' });
    expect(other.counts.asked).toBe(1);
  });

  it('is asked again where nothing is kept, or where answering is quick', async () => {
    const kept = memory();
    for (const store of [kept, null]) {
      const { bridge, counts } = bridged(store);
      const project = { title: 'A' } as unknown as Parameters<Engine['writeProject']>[0];
      await bridge.ask('writeProject', project).answer;
      await bridge.ask('writeProject', project).answer;
      expect(counts.asked).toBe(2);
    }
    expect(kept.answers.size).toBe(0);
  });

  it('starts no worker when it is cancelled while it is looked for', async () => {
    const { bridge, counts } = bridged(memory(30));
    const asked = bridge.ask('marks', marks('A'));
    asked.cancel();
    await expect(asked.answer).rejects.toMatchObject({ why: 'cancelled' });
    await new Promise((done) => setTimeout(done, 60));
    expect(counts.workers).toBe(0);
  });
});

describe('the whole of a question', () => {
  it('tells apart all that can be sent to a worker', () => {
    const different = [
      [null],
      [Number.POSITIVE_INFINITY],
      [Number.NaN],
      [{}],
      [new Map([['a', 1]])],
      [new Map([['a', 2]])],
      [new Set(['a'])],
      [new Float64Array([1, 2])],
      [new Float64Array([1, 3])],
      [1, 2],
    ];
    const texts = different.map((args) => wholeQuestion('marks', args));
    expect(new Set(texts).size).toBe(different.length);
    expect(wholeQuestion('marks', [1, () => undefined])).toBe(wholeQuestion('marks', [1]));
  });
});
