import { describe, expect, it } from 'vitest';
import { nearTwins, nearTwinsAmong } from '../../src/takeoff/near-twins.ts';
import { readThread, type Thread } from '../../src/takeoff/threads.ts';

const thread = (text: string): Thread => {
  const read = readThread(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const twins = (a: string, b: string) => nearTwins(thread(a), thread(b));

describe('near twins', () => {
  it.each([
    ['5/16-18', 'M8'],
    ['1/4-20', 'M6'],
    ['3/8-16', 'M10'],
    ['1/2-13', 'M12'],
    ['#10-32', 'M5'],
    ['5/16-18', '5/16-24'],
    ['M10', 'M10x1.25'],
  ])('are %s and %s', (a, b) => {
    expect(twins(a, b)?.warning).toContain('counted apart');
    expect(twins(b, a)).toEqual(twins(a, b));
  });

  it.each([
    ['5/16-18', '5/16-18'],
    ['5/16-18', '3/8-16'],
    ['5/16-18', 'M6'],
    ['M8', 'M10'],
    ['1/4-20', '#12-24'],
  ])('are not %s and %s', (a, b) => {
    expect(twins(a, b)).toBeNull();
  });

  it('are found once for each pair, however often the pile names them', () => {
    const all = ['M8', '5/16-18', 'M8', '1/2-13', '5/16-18 UNC'].map(thread);
    expect(nearTwinsAmong(all).map((pair) => pair.threads.map((t) => t.designation))).toEqual([
      ['M8', '5/16-18'],
    ]);
  });
});
