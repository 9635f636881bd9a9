import { describe, expect, it } from 'vitest';
import { RecordLog } from '../../src/record/log.ts';
import { recordState } from '../../src/record/state.ts';
import { readTwin, twinCheck, twinLines } from '../../src/record/twin.ts';
import type { What } from '../../src/record/what.ts';
import { phone, placed, plan, seam } from './fixtures.ts';

const shell = plan();
const lines = twinLines(shell);
const empty = recordState(new RecordLog(), shell);
const read = (text: string, state = empty) => readTwin(text, lines, state);
const numberOf = (name: string): number => lines.find((line) => line.name === name)?.number ?? 0;

describe('the paper', () => {
  it('has a line for each place, seam and hub, numbered through, course by course', () => {
    const hubs = shell.hubs.filter((name) => name !== '').length;
    expect(lines.length).toBe(shell.places.length + shell.seams.length + hubs);
    expect(lines.map(({ number }) => number)).toEqual(lines.map((_, i) => i + 1));
    const courses = lines.map(({ course }) => course);
    expect(courses).toEqual([...courses].sort((a, b) => a - b));
    expect(lines[0]?.name).toBe('1-01');
  });

  it('leaves out what belongs to an opening alone', () => {
    const door = [shell.placeIndex.get('1-01') as number];
    const names = twinLines(shell, door).map(({ name }) => name);
    expect(names).not.toContain('1-01');
    expect(names.filter((name) => name.includes('/') && name.split('/').includes('1-01'))).toEqual(
      [],
    );
    // The hubs around it stand still.
    expect(names.filter((name) => name.split(' ').includes('1-01')).length).toBe(3);
  });

  it('bears the same check word for the same plan, another for another', () => {
    expect(twinCheck(twinLines(plan()))).toBe(twinCheck(lines));
    expect(twinCheck(twinLines(shell, [0]))).not.toBe(twinCheck(lines));
    expect(twinCheck(twinLines(plan(3)))).not.toBe(twinCheck(lines));
    expect(twinCheck(lines)).toMatch(/^[0-9A-F]{4}$/);
  });
});

describe('what was ticked', () => {
  const joint = lines.find(({ sort }) => sort === 'seam');
  const hub = lines.find(({ sort }) => sort === 'hub');

  it('is read as entries say it', () => {
    const { says, faults } = read(`${numberOf('1-02')}a=0143, ${joint?.number}B ${hub?.number}ab`);
    const name = hub?.name as string;
    const wanted: What[] = [
      { kind: 'panel placed', place: '1-02', tag: '0143', turn: null },
      { kind: 'seam pass', seam: joint?.name as string, pass: 'snug' },
      { kind: 'hub plate', hub: name, on: true },
      { kind: 'prop', hub: name, set: true },
    ];
    expect(says).toEqual(wanted);
    expect(faults).toEqual([]);
  });

  it('takes ranges of lines, and of several passes the furthest', () => {
    expect(read('1-3a').says.map((what) => 'place' in what && what.place)).toEqual([
      '1-01',
      '1-02',
      '1-03',
    ]);
    expect(read(`${joint?.number}abcd`).says).toEqual([
      { kind: 'seam pass', seam: joint?.name, pass: 'final' },
      { kind: 'seam sealed', seam: joint?.name, sealed: true },
    ]);
  });

  it('says nothing twice, and nothing that the record has already', () => {
    const ada = phone('Ada');
    ada.say(placed('1-01', '7'));
    ada.say(seam(joint?.name as string, 'snug'));
    const state = recordState(ada.log, shell);
    expect(read(`1a 1a=7 ${joint?.number}a`, state)).toEqual({ says: [], known: 3, faults: [] });
    expect(read('2a 2a', state).says.length).toBe(1);
    // Another tag is news, and so is a further pass.
    expect(read('1a=8', state).says).toEqual([
      { kind: 'panel placed', place: '1-01', tag: '8', turn: null },
    ]);
    expect(read(`${joint?.number}c`, state).says.length).toBe(1);
  });

  it.each([
    ['17', 'a line and its box'],
    ['a17', 'a line and its box'],
    ['0a', 'lines from 1 to'],
    ['9999a', 'lines from 1 to'],
    ['5-3a', 'the lower first'],
    ['1z', 'a box from a to a'],
    ['1-2a=12', 'a tag for the line of one panel'],
    [`${joint?.number}a=12`, 'a tag for the line of one panel'],
    [`${hub?.number}bc`, 'set or gone, not both'],
  ])('refuses %s, and takes what stands beside it', (typed, expected) => {
    const { says, faults } = read(`${typed} 2a`);
    expect(says.length).toBe(1);
    expect(faults.map(({ path }) => path)).toEqual([typed]);
    expect(faults[0]?.expected).toContain(expected);
  });
});
