// The weekend replayed: three phones that meet now and then, a wrong tap taken back, a broken panel
// swapped, a stop and a night, then the page of each day and the dossier.

import { describe, expect, it } from 'vitest';
import { recordChanges } from '../../src/record/changes.ts';
import { clockOffsets } from '../../src/record/clocks.ts';
import { dayPage } from '../../src/record/day.ts';
import { dossier, initialsOf } from '../../src/record/dossier.ts';
import { entryText, readEntry } from '../../src/record/entry.ts';
import { INVENTED_SKEW, inventedWeekend } from '../../src/record/invented.ts';
import { RecordLog } from '../../src/record/log.ts';
import { recordState } from '../../src/record/state.ts';
import { NINE, phone, placed, plan, seam } from './fixtures.ts';

const site = plan();
const DAY = 24 * 3600_000;
const bolts = (): number => 12;
const weekend = inventedWeekend(site, { seed: 1, from: NINE, bolts });
const logOf = (entries = weekend): RecordLog => {
  const log = new RecordLog();
  log.addAll(entries);
  return log;
};
const made = dossier(logOf(), site, { bolts });
const outlook = { odds: null, tonightGust: null, tomorrow: null };
const page = (day: number) =>
  dayPage(logOf(), site, { from: NINE + day * DAY, to: NINE + (day + 1) * DAY }, bolts, outlook);

describe('the invented weekend of three phones', () => {
  it('is the same for the same seed, another for another, and every entry can be read', () => {
    const text = (seed: number) =>
      inventedWeekend(site, { seed, from: NINE, bolts }).map(entryText).join('\n');
    expect(text(1)).toBe(weekend.map(entryText).join('\n'));
    expect(text(2)).not.toBe(text(1));
    expect(weekend.every((entry) => readEntry(entry).ok)).toBe(true);
    expect(new Set(weekend.map(({ writer }) => writer)).size).toBe(3);
  });

  it('ends with every panel in place, every seam final and sealed, nobody up there, no question', () => {
    const state = recordState(logOf(), site);
    expect(state.placed.every((panel) => panel !== null)).toBe(true);
    expect(state.passes.every((pass) => pass === 'final')).toBe(true);
    expect(state.sealed.every(Boolean)).toBe(true);
    expect([state.people, state.stops, state.questions]).toEqual([[], [], []]);
    expect(made.forgotten).toEqual([]);
  });

  it('says the same in whatever order its entries come, twice or not', () => {
    const shuffled = [...weekend].reverse().concat(weekend.slice(100, 200));
    expect(dossier(logOf(shuffled), site, { bolts })).toEqual(made);
  });

  it('keeps openings open', () => {
    const leftOut = [0, 1];
    const open = inventedWeekend(site, { seed: 1, from: NINE, bolts, leftOut });
    const built = dossier(logOf(open), site, { bolts, leftOut });
    expect(built.panels).toHaveLength(site.places.length - 2);
    expect(built.panels.every(({ said }) => said !== null)).toBe(true);
    expect(built.forgotten).toEqual([]);
  });
});

describe('the page of the first evening', () => {
  it('tells what was done, what is left, the stop point closed down, the stop lifted', () => {
    const first = page(0);
    const upper = site.places.filter((_, p) => site.course[p]! > 2).length;
    expect(first.left.panels).toBe(0);
    // The page tells the state of now; what was done is of the day alone.
    expect(first.done.panels).toBe(site.places.length - upper);
    expect(first.done.snug).toBeGreaterThan(5);
    expect([first.done.final, first.done.sealed]).toEqual([1, 0]);
    expect(first.stagesDone).toEqual([1, 2]);
    expect(first.closedDown).toEqual([2]);
    expect([first.stops, first.stillHere]).toEqual([[], []]);
    expect(first.notes.map(({ what }) => what.kind)).toEqual(['note']);
  });

  it('puts the clock right that stood ahead, so that nothing falls into another day', () => {
    const [[writer, off] = ['', 0]] = [...page(1).clocks];
    expect(writer).toBe('jory000000');
    expect(off).toBeGreaterThan(INVENTED_SKEW / 2);
    expect(off).toBeLessThanOrEqual(INVENTED_SKEW);
    expect(page(0).done.panels + page(1).done.panels).toBe(site.places.length);
    expect(page(1).done).toMatchObject({ final: site.seams.length, sealed: site.seams.length });
  });
});

describe('the dossier', () => {
  it('has every panel with its tag, place and turn, and who put it there', () => {
    expect(made.panels.map(({ place }) => place)).toEqual([...site.places].sort());
    expect(new Set(made.panels.map(({ tag }) => tag)).size).toBe(site.places.length);
    for (const { place, turn } of made.panels)
      expect(turn).toBe(site.shell.turn[site.placeIndex.get(place)!]);
    expect(new Set(made.panels.map(({ said }) => said?.by))).toEqual(new Set(['Maud', 'Jory']));
  });

  it('has torque and seal of every seam, a tenth of its bolts checked', () => {
    expect(made.seams).toHaveLength(site.seams.length);
    for (const one of made.seams) {
      expect(one).toMatchObject({ bolts: 12, pass: 'final', said: { by: 'Jory' } });
      expect(one.samples).toMatchObject([{ by: 'Tamsin', bolts: 2, failed: 0, torque: 20 }]);
      expect(one.sealed?.by).toBe('Maud');
    }
  });

  it('has anchors with their pulls, survey, photo, stages and the stop with its end', () => {
    expect(made.anchors.map(({ anchor, pulls }) => [anchor, pulls[0]?.held])).toEqual([
      [1, true],
      [2, false],
      [3, true],
    ]);
    expect(made.survey).toMatchObject([{ reading: { what: 'level', hub: 1 }, by: 'Maud' }]);
    expect(made.notes[0]?.photo?.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(made.stages.map(({ stage, what }) => `${stage} ${what}`)).toEqual([
      '1 done',
      '2 done',
      '2 closed down',
      '3 done',
    ]);
    expect(made.stops).toMatchObject([{ why: 'lightning', lifted: { by: 'Maud' } }]);
    const [stop] = made.stops;
    expect((stop?.lifted?.at ?? 0) - (stop?.called.at ?? 0)).toBe(45 * 60_000);
  });

  it('tells the wrong tap, and the broken panel with the one that came for it', () => {
    const changes = made.changes.map(({ change }) => change);
    const times = (what: string): number => changes.filter((one) => one === what).length;
    for (const one of ['taken back', 'not good', 'taken out', 'swapped'])
      expect(times(one)).toBe(1);
    // Its seams were unbolted to take it out.
    expect(times('loosened')).toBeGreaterThan(0);
    expect(changes).toHaveLength(4 + times('loosened'));
    const broken = made.changes.find((one) => one.change === 'not good');
    const swap = made.changes.find((one) => one.change === 'swapped');
    expect(broken?.change === 'not good' && broken.condition).toBe('scrap');
    expect(swap?.change === 'swapped' && swap.from).toBe(
      broken?.change === 'not good' && broken.tag,
    );
    expect(made.panels.map(({ tag }) => tag)).toContain(swap?.change === 'swapped' && swap.to);
  });

  it('gives people by their initials where that is asked', () => {
    expect([initialsOf('Ada Lum'), initialsOf('bo'), initialsOf('Anne-Lise')]).toEqual([
      'A. L.',
      'B.',
      'A. L.',
    ]);
    const short = dossier(logOf(), site, { bolts, nameOf: initialsOf });
    expect(JSON.stringify(short.panels)).not.toContain('Maud');
    expect(JSON.stringify(short.changes.map(({ by }) => by))).not.toContain('Maud');
  });

  it('shows what is empty, in question, forgotten, and a stop that is still on', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    for (const place of ['1-01', '1-02', '2-01']) ada.say(placed(place));
    bob.log.addAll(ada.log.entries());
    ada.say(seam('1-01/1-02', 'snug'));
    bob.say(seam('1-01/1-02', 'finger'));
    ada.say({ kind: 'stop', why: 'wind', on: true });
    ada.log.addAll(bob.log.entries());
    const open = dossier(ada.log, site, { bolts });
    expect(open.panels.filter(({ said }) => said === null)).toHaveLength(site.places.length - 3);
    expect(open.questions).toHaveLength(1);
    expect(open.forgotten.map(({ name }) => name)).toEqual(['1-01/1-02']);
    expect(open.stops).toMatchObject([{ why: 'wind', lifted: null }]);
  });
});

describe('changes', () => {
  it('are none where all went straight, nor where an undo was undone', () => {
    const ada = phone('Ada');
    ada.say(placed('1-01', '017'));
    ada.say(seam('1-01/1-02', 'finger'));
    const tap = ada.say(seam('1-01/1-02', 'snug'));
    const undo = ada.undo(tap);
    expect(recordChanges(ada.log, new Map())).toMatchObject([{ change: 'taken back', by: 'Ada' }]);
    ada.undo(undo);
    expect(recordChanges(ada.log, clockOffsets(ada.log.entries()))).toEqual([]);
  });

  it('tell a panel put over another without taking it out', () => {
    const ada = phone('Ada');
    ada.say(placed('1-01', '017'));
    ada.say(placed('1-01', '031'));
    expect(recordChanges(ada.log, new Map())).toMatchObject([
      { change: 'swapped', place: '1-01', from: '017', to: '031' },
    ]);
  });
});
