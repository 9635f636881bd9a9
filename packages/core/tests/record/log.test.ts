import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { type Entry, idOf } from '../../src/record/entry.ts';
import { RecordLog } from '../../src/record/log.ts';
import { saysOf } from '../../src/record/subject.ts';
import { meet, NINE, phone, placed, seam } from './fixtures.ts';

const S = '3-07/3-08';
const subject = `seam ${S}`;

const says = (log: RecordLog): readonly string[] =>
  (log.stands(subject)?.claims ?? []).map(({ what }) => saysOf(what));

describe('the record', () => {
  it('takes what was said in reply in place of what it replies to', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    ada.say(seam(S, 'finger'));
    meet(ada, bob);
    bob.say(seam(S, 'snug'));
    meet(ada, bob);
    expect(says(ada.log)).toEqual(['snug']);
    expect(ada.log.questions()).toEqual([]);
    expect(ada.log.size).toBe(2);
  });

  it('keeps both where two say different things unseen, and asks', () => {
    const [ada, bob, cy] = [phone('Ada'), phone('Bob'), phone('Cy', { skew: 9e6 })];
    ada.say(seam(S, 'snug'));
    bob.say(seam(S, 'finger'));
    meet(ada, bob, cy);
    expect(says(cy.log)).toEqual(['snug', 'finger']);
    expect(cy.log.questions()).toEqual([subject]);
    expect(saysOf(cy.log.stands(subject)!.entry.what)).toBe('finger');
    cy.say(seam(S, 'snug'));
    meet(ada, bob, cy);
    for (const { log } of [ada, bob, cy]) {
      expect(log.questions()).toEqual([]);
      expect(says(log)).toEqual(['snug']);
    }
  });

  it('asks nothing where two say the same unseen', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    ada.say(seam(S, 'finger'));
    bob.say(seam(S, 'finger'));
    meet(ada, bob);
    expect(says(ada.log)).toEqual(['finger', 'finger']);
    expect(ada.log.questions()).toEqual([]);
  });

  it('is put back by an undo, and forth by the undo of it', () => {
    const ada = phone('Ada');
    ada.say(seam(S, 'finger'));
    const tap = ada.say(seam(S, 'final'));
    const undo = ada.undo(tap);
    expect(says(ada.log)).toEqual(['finger']);
    const again = ada.undo(undo);
    expect(says(ada.log)).toEqual(['final']);
    ada.undo(again);
    expect(says(ada.log)).toEqual(['finger']);
    expect(ada.log.size).toBe(5);
  });

  it('asks where somebody built on what another undid', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    ada.say(seam(S, 'finger'));
    const snug = ada.say(seam(S, 'snug'));
    meet(ada, bob);
    bob.say(seam(S, 'final'));
    ada.undo(snug);
    meet(ada, bob);
    expect(says(bob.log)).toEqual(['finger', 'final']);
    expect(bob.log.questions()).toEqual([subject]);
  });

  it('lets no entry undo what comes after it, so none can undo each other', () => {
    const log = new RecordLog();
    const base = { at: NINE, by: 'Eve' };
    const a: Entry = {
      ...base,
      writer: 'eve00000',
      seq: 0,
      order: 1,
      what: { kind: 'undo', of: 'eve00000-1' },
    };
    const b: Entry = {
      ...base,
      writer: 'eve00000',
      seq: 1,
      order: 2,
      what: { kind: 'undo', of: 'eve00000-0' },
    };
    log.addAll([a, b]);
    expect([a, b].map((one) => log.lives(one))).toEqual([false, true]);
    const self: Entry = {
      ...base,
      writer: 'eve00000',
      seq: 2,
      order: 3,
      what: { kind: 'undo', of: 'eve00000-2' },
    };
    log.add(self);
    expect(log.lives(self)).toBe(true);
  });

  it('follows undos of undos as deep as anybody goes, without running out of stack', () => {
    const ada = phone('Ada');
    let last = ada.say(seam(S, 'finger'));
    for (let i = 0; i < 20_001; i++) last = ada.undo(last);
    expect(says(ada.log)).toEqual([]);
    ada.undo(last);
    expect(says(ada.log)).toEqual(['finger']);
  });

  it('takes an entry once, however often it comes', () => {
    const ada = phone('Ada');
    const entry = ada.say(seam(S, 'finger'));
    expect(ada.log.add(entry)).toBe('known');
    expect(ada.log.add(JSON.parse(JSON.stringify(entry)))).toBe('known');
    expect(ada.log.size).toBe(1);
  });

  it('keeps one of two entries with one id, the same on every phone, and shows the other', () => {
    const one = phone('Ada').say(seam(S, 'finger'));
    const other: Entry = { ...one, what: seam(S, 'final') };
    const logs = [
      [one, other],
      [other, one, other],
    ].map((entries) => {
      const log = new RecordLog();
      log.addAll(entries);
      return log;
    });
    const [a, b] = logs as [RecordLog, RecordLog];
    expect(a.entries()).toEqual(b.entries());
    expect(says(a)).toEqual(says(b));
    expect(a.clashes()).toEqual(b.clashes());
    expect(a.clashes()).toHaveLength(1);
  });

  it('numbers on after what it has seen, whatever came in between', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    for (let i = 0; i < 5; i++) ada.say(placed(`1-0${i + 1}`));
    meet(ada, bob);
    expect(bob.say(seam(S, 'finger'))).toMatchObject({ order: 6, seq: 0 });
    expect(bob.say(seam(S, 'snug'))).toMatchObject({
      order: 7,
      seq: 1,
      follows: [expect.stringMatching(/-0$/)],
    });
  });

  it.each([1, 2, 3, 4, 5, 6])(
    'is the same from any order of arrival and any repeats (seed %i)',
    (seed) => {
      const random = seededRandom(seed);
      const phones = ['Ada', 'Bob', 'Cy', 'Di'].map((by, i) => phone(by, { skew: (i - 2) * 4e6 }));
      const said: Entry[] = [];
      for (let i = 0; i < 120; i++) {
        const one = phones[random.below(4)]!;
        const old =
          said.length > 0 && random.uniform() < 0.2 ? said[random.below(said.length)]! : null;
        if (old && one.log.entry(idOf(old))) said.push(one.undo(old));
        else
          said.push(
            one.say(
              seam(
                `1-0${1 + random.below(3)}/2-01`,
                (['finger', 'snug', 'final', 'none'] as const)[random.below(4)]!,
              ),
            ),
          );
        if (random.uniform() < 0.15) meet(one, phones[random.below(4)]!);
      }
      const picture = (log: RecordLog) =>
        [...log.subjects()].sort().map((name) => {
          const stands = log.stands(name);
          return [name, stands?.claims.map(idOf), stands?.question, stands && idOf(stands.entry)];
        });
      meet(...phones);
      const wanted = picture(phones[0]!.log);
      for (let i = 0; i < 5; i++) {
        const log = new RecordLog();
        for (const entry of random.shuffle([...said, ...said.slice(0, 40)])) {
          log.add(entry);
          // Asked while half of it is there: nothing remembered too early may remain.
          if (random.uniform() < 0.3) picture(log);
        }
        expect(picture(log)).toEqual(wanted);
        expect(log.size).toBe(said.length);
      }
    },
  );
});
