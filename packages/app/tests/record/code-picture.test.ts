import { RecordLog, readSeries, readSeriesPart, recordSeries } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  type CodePicture,
  codeIn,
  codePicture,
  type Points,
} from '../../src/record/code-picture.ts';

/** The picture as points, so many to a module, with this much noise. */
function points({ size, path }: CodePicture, scale: number, noise = 0): Points {
  const side = size * scale;
  const data = new Uint8ClampedArray(4 * side * side).fill(255);
  let seed = 1;
  for (const [, x, y, w] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g))
    for (let j = 0; j < scale; j++)
      for (let i = 0; i < Number(w) * scale; i++) {
        const at = 4 * ((Number(y) * scale + j) * side + Number(x) * scale + i);
        data.fill(0, at, at + 3);
      }
  for (let at = 0; at < data.length; at++) {
    seed = (seed * 48271) % 2147483647;
    if (at % 4 < 3 && noise > 0)
      data[at] = (data[at] as number) + ((seed / 2147483647) * 2 - 1) * noise;
  }
  return { data, width: side, height: side };
}

function record(count: number): RecordLog {
  const log = new RecordLog();
  for (let i = 0; i < count; i++) {
    const place = `1-${String(i + 1).padStart(2, '0')}`;
    const what = { kind: 'panel placed', place, tag: null, turn: null } as const;
    log.add(log.write(what, { writer: 'abcdefgh', by: 'Ada', at: 1781254800000 + 61_000 * i }));
  }
  return log;
}

describe('a code', () => {
  it('of each part of a record is read by an independent reader, and gives the record', async () => {
    const parts = [];
    for (const code of recordSeries(record(60).entries())) {
      const text = await codeIn(points(codePicture(code), 3, 60));
      expect(text).toBe(code);
      const part = readSeriesPart(text ?? '');
      if (part) parts.push(part);
    }
    expect(parts.length).toBeGreaterThan(1);
    expect(readSeries(parts)?.entries).toEqual(record(60).entries());
  });

  it('has 73 modules a side at most, and four white ones round it', () => {
    const [code = ''] = recordSeries(record(60).entries());
    const { size, path } = codePicture(code);
    expect(size).toBeLessThanOrEqual(73 + 8);
    expect(path.startsWith('M4 4h7')).toBe(true);
  });

  it('is not seen where there is none', async () => {
    const data = new Uint8ClampedArray(4 * 100 * 100).fill(200);
    expect(await codeIn({ data, width: 100, height: 100 })).toBeNull();
  });
});
