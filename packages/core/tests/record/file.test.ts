import { describe, expect, it } from 'vitest';
import { readRecordFile, writeRecordFile } from '../../src/record/file.ts';
import { RecordLog } from '../../src/record/log.ts';
import { meet, phone, placed, seam } from './fixtures.ts';

function record(): RecordLog {
  const [ada, bob] = [phone('Ada'), phone('Bob')];
  ada.say(placed('1-01', 'né 7'));
  bob.say(seam('1-01/1-02', 'finger'));
  meet(ada, bob);
  ada.undo(ada.say(seam('1-01/1-02', 'snug')));
  return ada.log;
}

describe('a record’s file', () => {
  it('gives back every entry, whatever order they were written in', () => {
    const { entries } = { entries: record().entries() };
    const text = writeRecordFile([...entries].reverse());
    expect(text).toBe(writeRecordFile(entries));
    expect(readRecordFile(text)).toEqual({ entries, faults: [] });
    expect(readRecordFile(`\ufeff${text.replaceAll('\n', '\r\n')}`)).toEqual({
      entries,
      faults: [],
    });
  });

  it('can be brought twice without doubles', () => {
    const log = record();
    const { entries } = readRecordFile(writeRecordFile(log.entries()));
    expect(log.addAll(entries)).toBe(0);
    expect(new RecordLog().addAll([...entries, ...entries])).toBe(log.size);
  });

  it('gives what can be read of one that was cut off or spoilt, and says which lines cannot', () => {
    const entries = record().entries();
    const text = writeRecordFile(entries);
    for (let cut = 30; cut < text.length; cut += 7) {
      const read = readRecordFile(text.slice(0, cut));
      expect(entries.slice(0, read.entries.length)).toEqual(read.entries);
      expect(read.faults.length).toBeLessThanOrEqual(1);
    }
    const lines = text.split('\n');
    lines[2] = '{"writer":"x"}';
    const read = readRecordFile(lines.join('\n'));
    expect(read.entries).toHaveLength(entries.length - 1);
    expect(read.faults).toMatchObject([{ path: 'line 3', expected: 'an entry' }]);
  });

  it('is refused where it is none, or newer', () => {
    for (const text of ['', '{}', '[]', 'x', '{"shellraise":1}', '{"shellraiseRecord":0.5}'])
      expect(readRecordFile(text), text).toMatchObject({
        entries: [],
        faults: [{ path: 'line 1' }],
      });
    expect(readRecordFile('{"shellraiseRecord":2}\n{}').faults).toEqual([
      { path: 'line 1', found: 'version 2', expected: 'a record of version 1 or older' },
    ]);
  });
});
