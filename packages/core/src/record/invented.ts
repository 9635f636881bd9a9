// An invented weekend as it would be noted on three phones, by a seed: to try the record with, to show
// it, to test it. Courses count as stages. Two phones are out of reach of each other for hours; one
// clock stands half an hour ahead; somebody taps a wrong panel and takes it back; a panel breaks and is
// swapped; two say different things about one seam, and one who has heard both settles it; work stops
// for lightning; the shell is closed down for the night and finished on the next day.

import { seededRandom } from '../math/random.ts';
import { type Entry, idOf } from './entry.ts';
import { samplesWanted } from './forgotten.ts';
import { RecordLog } from './log.ts';
import type { RecordPlan } from './names.ts';
import type { RecordPass, What } from './what.ts';

/** How the weekend goes. */
export interface InventedWeekend {
  readonly seed: number;
  /** Nine in the morning of the first day, milliseconds since 1970. */
  readonly from: number;
  /** Seam → its bolts, null where nobody knows. */
  readonly bolts: (seam: number) => number | null;
  /** Places that stay open. */
  readonly leftOut?: readonly number[];
}

/** The clock of one of the phones stands so far ahead, milliseconds. */
export const INVENTED_SKEW = 30 * 60_000;

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

interface Phone {
  readonly by: string;
  readonly writer: string;
  readonly skew: number;
  readonly log: RecordLog;
}

/** The entries of the weekend, in their order; the same for the same plan and seed. Needs two courses
 * at the least. */
export function inventedWeekend(plan: RecordPlan, how: InventedWeekend): readonly Entry[] {
  const random = seededRandom(how.seed);
  const out = new Set(how.leftOut);
  const phone = (by: string, skew = 0): Phone => ({
    by,
    writer: `${by.toLowerCase()}0000000000`.slice(0, 10),
    skew,
    log: new RecordLog(),
  });
  const [lead, second, third] = [phone('Maud'), phone('Jory', INVENTED_SKEW), phone('Tamsin')];
  const phones = [lead, second, third];
  let at = how.from;
  const say = (who: Phone, what: What, minutes = 1 + 2 * random.uniform()): Entry => {
    at += Math.round(minutes * MINUTE);
    const entry = who.log.write(what, { writer: who.writer, by: who.by, at: at + who.skew });
    who.log.add(entry);
    return entry;
  };
  const meet = (): void => {
    const all = phones.flatMap(({ log }) => [...log.entries()]);
    for (const { log } of phones) log.addAll(all.filter((one) => log.entry(idOf(one)) === null));
  };
  const seamsOf = (course: number): number[] =>
    plan.seamPlaces.flatMap(([p, q], m) =>
      !out.has(p) && !out.has(q) && Math.max(plan.course[p]!, plan.course[q]!) === course
        ? [m]
        : [],
    );
  const tighten = (who: Phone, seams: readonly number[], pass: RecordPass): void => {
    for (const m of seams)
      say(who, { kind: 'seam pass', seam: plan.seams[m]!, pass, hands: 2 }, 0.5 + random.uniform());
  };
  const tags = plan.places.map((_, p) => String(p + 1).padStart(3, '0'));
  let spare = plan.places.length;
  const raise = (course: number): void => {
    const places = plan.places
      .map((place, p) => ({ place, p }))
      .filter(({ p }) => plan.course[p] === course && !out.has(p))
      .sort((a, b) => (a.place < b.place ? -1 : 1));
    for (const { place, p } of places) {
      const turn = plan.shell.turn[p]!;
      say(lead, { kind: 'panel placed', place, tag: tags[p]!, turn, hands: 4 });
    }
    meet();
    const seams = seamsOf(course);
    tighten(second, seams, 'finger');
    meet();
    tighten(third, seams.slice(-1), 'snug');
    meet();
  };
  const plates = (course: number): void => {
    for (const [h, hub] of plan.hubs.entries()) {
      const around = plan.hubPlaces[h]!.filter((p) => !out.has(p));
      if (around.length > 0 && Math.max(...around.map((p) => plan.course[p]!)) === course)
        say(third, { kind: 'hub plate', hub, on: true, hands: 1 });
    }
  };
  const courses = [...new Set(plan.places.map((_, p) => plan.course[p]!))].sort((a, b) => a - b);
  const evening = Math.ceil(courses.length / 2);

  // The first day: sign in, anchors, survey.
  for (const who of phones) say(who, { kind: 'person', person: who.by, here: true });
  for (let anchor = 1; anchor <= 3; anchor++) {
    say(third, { kind: 'anchor driven', anchor, driven: true }, 8);
    say(third, { kind: 'anchor pulled', anchor, pull: 2500, held: anchor !== 2 }, 4);
  }
  say(lead, { kind: 'surveyed', reading: { what: 'level', hub: 1, height: 0.004 } }, 5);
  say(lead, { kind: 'weather', gust: 4, sky: 'dry' });
  meet();
  for (const course of courses.slice(0, evening)) {
    raise(course);
    if (course === courses[0]) {
      wrongTap();
      broken();
      differ();
    } else tighten(second, seamsOf(course - 1), 'snug');
    plates(course);
    say(lead, { kind: 'stage done', stage: course, done: true });
    meet();
  }
  say(third, { kind: 'stop', why: 'lightning', on: true });
  meet();
  say(lead, { kind: 'stop', why: 'lightning', on: false }, 45);
  say(lead, { kind: 'closed down', stage: courses[evening - 1]!, closed: true });
  for (const who of phones) say(who, { kind: 'person', person: who.by, here: false });
  meet();

  // The second day, from nine: the rest, the last pass, samples, seals.
  at = Math.max(at, how.from + DAY);
  for (const who of phones) say(who, { kind: 'person', person: who.by, here: true });
  for (const course of courses.slice(evening)) {
    raise(course);
    plates(course);
    tighten(second, seamsOf(course - 1), 'snug');
    say(lead, { kind: 'stage done', stage: course, done: true });
    meet();
  }
  tighten(second, seamsOf(courses.at(-1)!), 'snug');
  meet();
  const seams = courses.flatMap(seamsOf);
  tighten(second, seams, 'final');
  meet();
  for (const m of seams) {
    const bolts = samplesWanted(how.bolts(m), 0);
    const seam = plan.seams[m]!;
    say(third, { kind: 'seam sampled', seam, bolts, failed: 0, torque: 20 }, 0.5);
    say(lead, { kind: 'seam sealed', seam, sealed: true }, 0.5);
  }
  for (const who of phones) say(who, { kind: 'person', person: who.by, here: false });
  meet();
  return [...lead.log.entries()];

  /** Maud taps a place of the next course, and takes it back. */
  function wrongTap(): void {
    const next = plan.places.findIndex((_, p) => plan.course[p] === courses[1] && !out.has(p));
    const place = plan.places[next]!;
    const wrong = say(lead, { kind: 'panel placed', place, tag: null, turn: null });
    say(lead, { kind: 'undo', of: idOf(wrong) }, 0.3);
  }

  /** A panel turns out to be cracked: out it comes, a spare goes in, its seams are bolted again. */
  function broken(): void {
    const inFirst = plan.places.flatMap((_, p) =>
      plan.course[p] === courses[0] && !out.has(p) ? [p] : [],
    );
    const p = inFirst[random.below(inFirst.length)]!;
    const place = plan.places[p]!;
    const its = seamsOf(courses[0]!).filter((m) => plan.seamPlaces[m]!.includes(p));
    say(third, { kind: 'panel condition', tag: tags[p]!, condition: 'scrap' });
    const about = { what: 'panel' as const, name: tags[p]! };
    const photo = { hash: hashOf(random.below), type: 'image/jpeg' as const, bytes: 184_320 };
    say(third, { kind: 'note', text: 'Cracked from the corner hole.', photo, about });
    meet();
    for (const m of its) say(second, { kind: 'seam pass', seam: plan.seams[m]!, pass: 'none' });
    say(second, { kind: 'panel taken out', place });
    spare += 1;
    const tag = String(spare).padStart(3, '0');
    const turn = plan.shell.turn[p]!;
    say(second, { kind: 'panel placed', place, tag, turn, hands: 4 }, 6);
    tighten(second, its, 'finger');
    meet();
  }

  /** Out of reach of each other, two say different things of one seam; Maud, who hears both, settles it. */
  function differ(): void {
    const seam = plan.seams[seamsOf(courses[0]!)[0]!]!;
    say(second, { kind: 'seam pass', seam, pass: 'snug', hands: 2 });
    say(third, { kind: 'seam pass', seam, pass: 'final', hands: 2 });
    meet();
    say(lead, { kind: 'seam pass', seam, pass: 'snug', hands: 1 }, 5);
    meet();
  }
}

/** Sixty-four hexadecimal digits, as a hash has them. */
const hashOf = (below: (n: number) => number): string =>
  Array.from({ length: 64 }, () => below(16).toString(16)).join('');
