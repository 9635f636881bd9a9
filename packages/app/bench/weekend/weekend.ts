// A weekend of 48 simulated hours with twenty phones, and one more of comings and goings without an entry:
// `npm run soak -- weekend [seed [phones [hours]]]`. The laptop is the built server over https, each phone
// the app's own code in a process of its own. The laptop is stopped and started once and killed once, a
// phone is emptied and joins again, a record goes by stick to one without network. In the end all have the
// same, nothing is lost that was told as kept, and no heap has grown by more than what it holds.

import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type EntryId, entryIdOf, type RecordLog, seededRandom } from '@shellraise/core';
import {
  charge,
  gather,
  type Hand,
  joinAndOpen,
  nothingYet,
  open,
  STEPS,
  step,
  type Told,
} from './crew.ts';
import type { Look } from './phone.ts';
import { project } from './plan.ts';
import { type Ground, idsOf, type Laptop, makeGround } from './site.ts';
import { type Growth, growthOf, type HourWeight, isFlat, type Weight } from './weight.ts';

/** Hours at which the laptop is stopped and killed, a phone emptied, a stick carried. */
const STOPPED = 7;
const KILLED = 26;
const EMPTIED = 9;
const CARRIED = 30;
/** Hours for which the one who gets the stick had no network. */
const CUT_OFF = 3;

/** Heap that an entry may take, bytes, and the share by which a heap may grow in a weekend by itself. */
const PER_ENTRY = 4000;
const SHARE = 0.03;
/** Hours after its start in which a process is not judged. */
const WARM = 2;

/** Something that must be so. */
interface Condition {
  readonly what: string;
  readonly found: string;
  readonly ok: boolean;
}

/** Runs it; 1 where a condition does not hold. */
export async function main(args: readonly string[]): Promise<number> {
  const [seed = 1, phones = 20, hours = 48] = args.map(Number);
  const ground = await makeGround();
  const hands: Hand[] = [];
  try {
    const conditions = await weekend(ground, hands, { seed, phones, hours });
    console.log('');
    for (const { what, found, ok } of conditions)
      console.log(`${ok ? 'ok  ' : 'NOT '} ${what}: ${found}`);
    return conditions.every(({ ok }) => ok) ? 0 : 1;
  } finally {
    for (const { phone } of hands) await phone.kill().catch(() => undefined);
    ground.end();
  }
}

interface Asked {
  readonly seed: number;
  readonly phones: number;
  readonly hours: number;
}

async function weekend(
  ground: Ground,
  hands: Hand[],
  { seed, phones, hours }: Asked,
): Promise<readonly Condition[]> {
  const random = seededRandom(seed);
  const start = performance.now();
  let laptop = await ground.laptop();
  const codes = await laptop.calls.codes();
  hands.push(...(await gather(ground, codes, phones, random)));
  const [lead] = hands as [Hand];
  await until(async () => (await lead.phone.calls.look()).on, 'the lead is in');
  await lead.phone.calls.put(project());
  const told = nothingYet();
  const [kept, lost] = [new Set<EntryId>(), new Set<EntryId>()];
  /** Entries of the emptied phone: photos of theirs may have been on it alone. */
  const alone = new Set<EntryId>();
  const weights: Weights = new Map();
  const conditions: Condition[] = [];
  const listen = async (): Promise<void> => {
    for (const { phone } of hands.filter(({ is }) => is === 'open'))
      for (const id of await phone.calls.told()) kept.add(id);
  };
  const onDisk = async (when: string): Promise<RecordLog> => {
    const log = await ground.kept();
    const there = idsOf(log);
    const gone = [...kept].filter((id) => !there.has(id)).length;
    const what = `told as kept and not on the laptop's disk ${when}`;
    conditions.push({ what, found: `${gone} of ${kept.size}`, ok: gone === 0 && kept.size > 0 });
    return log;
  };
  console.log(`seed ${seed}: ${phones} phones, ${hours} hours with work and ${hours} without\n`);
  console.log(header);
  for (let now = 0; now < 2 * hours * STEPS; now++) {
    const isIdle = now >= hours * STEPS;
    if (now === hours * STEPS) await settled(ground, hands);
    await step(ground, hands, now, isIdle ? null : worked(now / STEPS), random, told);
    if (now % STEPS !== STEPS - 1) continue;
    const hour = (now + 1) / STEPS;
    await Promise.all(hands.filter(isOnline).map(({ phone }) => phone.calls.photos()));
    await listen();
    await sample(laptop, hands, hour, kept.size, weights);
    if (hour === STOPPED || hour === KILLED) {
      if (hour === STOPPED) await stopped(laptop);
      else await laptop.kill();
      await onDisk(hour === STOPPED ? 'when it was stopped' : 'when it was killed');
      laptop = await ground.laptop();
      weights.delete('laptop');
    }
    if (hour === EMPTIED || (isIdle && hour % EMPTIED === 0)) {
      for (const [id, number] of told.said) if (number === phones - 1) alone.add(id);
      await emptied(ground, hands, codes, told, kept, lost);
    }
    if (hour === CARRIED - CUT_OFF) await cutOff(hands[3] as Hand);
    if (hour === CARRIED) conditions.push(await carried(ground, hands, told));
  }
  const looks = await settled(ground, hands);
  await listen();
  conditions.push(...same(looks));
  await Promise.all(hands.map(({ phone }) => phone.calls.photos()));
  await stopped(laptop);
  const log = await onDisk('in the end');
  conditions.push(missingOf(log, told, kept, lost), allPhotos(ground, log, alone));
  conditions.push({
    what: 'entries on the laptop and on each phone',
    found: `${log.size} and ${looks[0]?.entries}`,
    ok: looks.every(({ entries }) => entries === log.size),
  });
  const counts = Object.entries(told.count);
  console.log(`\n${counts.map(([what, n]) => `${what} ${n}`).join(', ')}`);
  console.log(`${2 * hours} hours in ${((performance.now() - start) / 1000).toFixed(0)} s`);
  const never = counts.filter(([, n]) => n === 0).map(([what]) => what);
  conditions.push({
    what: 'what never happened',
    found: never.join(', ') || 'nothing',
    ok: never.length === 0,
  });
  return [...conditions, ...flatness(weights, hours)];
}

/** How far the shell is after so many hours, 0 to 1: two days of twelve hours' work. */
const worked = (hour: number): number =>
  (12 * Math.floor(hour / 24) + Math.min(12, hour % 24)) / 24;

async function stopped(laptop: Laptop): Promise<void> {
  await laptop.calls.end().catch(() => undefined);
  await laptop.ended;
}

/** What was said and is nowhere: only what an emptied phone had told nobody. */
function missingOf(
  log: RecordLog,
  { said }: Told,
  kept: ReadonlySet<EntryId>,
  lost: ReadonlySet<EntryId>,
): Condition {
  const there = idsOf(log);
  const missing = [...said.keys()].filter((id) => !there.has(id));
  const wrongly = missing.filter((id) => !lost.has(id) || kept.has(id));
  return {
    what: 'said and lost, save what the emptied phone had told nobody',
    found: `${wrongly.length} of ${said.size} (gone with it: ${missing.length - wrongly.length})`,
    ok: wrongly.length === 0 && said.size > 0,
  };
}

const isOnline = ({ is, network }: Hand): boolean => is === 'open' && network;

// --- what befalls them ---

/** A phone is emptied, as by its browser: what it had not told anybody is gone. It joins again. */
async function emptied(
  ground: Ground,
  hands: readonly Hand[],
  codes: Readonly<Record<string, string>>,
  { said }: Told,
  kept: ReadonlySet<EntryId>,
  lost: Set<EntryId>,
): Promise<void> {
  const hand = hands.at(-1) as Hand;
  await hand.phone.kill();
  for (const [id, number] of said) if (number === hand.number && !kept.has(id)) lost.add(id);
  ground.reset(hand.number);
  charge(ground, hand);
  hand.network = true;
  await joinAndOpen(hand, codes);
}

/** Nobody reaches a phone that stays, until well after the stick has come. */
async function cutOff(hand: Hand): Promise<void> {
  await hand.phone.calls.network(false);
  hand.network = false;
  hand.back = CARRIED * STEPS + 12;
}

/** One phone's record and project go by stick to another that has been without network. */
async function carried(ground: Ground, hands: readonly Hand[], { said }: Told): Promise<Condition> {
  // They stay all the time: see `watch`.
  const [from, to] = [hands[2], hands[3]] as [Hand, Hand];
  const text = 'Taken along by stick.';
  for (let i = 0; i < 5; i++)
    said.set(await from.phone.calls.say({ kind: 'note', text }, Date.UTC(2026, 5, 14, 14, i)), 2);
  const stick = join(ground.folder, 'stick');
  await from.phone.calls.toStick(stick);
  const [news, again] = [
    await to.phone.calls.fromStick(stick),
    await to.phone.calls.fromStick(stick),
  ];
  const { entries } = await to.phone.calls.look();
  return {
    what: 'entries that came by stick to a phone without network, and again',
    found: `${news}, then ${again}, of ${entries}`,
    ok: news > 0 && again === 0,
  };
}

// --- the end ---

/** All phones charged, open and online, until all is kept and all have it; what each sees. */
async function settled(ground: Ground, hands: readonly Hand[]): Promise<readonly Look[]> {
  for (const hand of hands) {
    hand.network = true;
    if (hand.is === 'empty') charge(ground, hand);
    if (hand.is === 'open') await hand.phone.calls.network(true);
    else await open(hand);
  }
  let looks: readonly Look[] = [];
  await until(async () => {
    looks = await Promise.all(hands.map(({ phone }) => phone.calls.look()));
    const most = Math.max(...looks.map(({ entries }) => entries));
    return looks.every(
      ({ on, waiting, unsaved, entries }) =>
        on && waiting === 0 && unsaved === 0 && entries === most,
    );
  }, 'all have all');
  return looks;
}

function same(looks: readonly Look[]): readonly Condition[] {
  const kinds = (of: (look: Look) => string): number => new Set(looks.map(of)).size;
  const [one] = looks as [Look];
  return [
    {
      what: 'different records among the phones, with questions and states',
      found: `${kinds(({ record }) => record)} among ${looks.length}, ${one.entries} entries, ${one.questions} questions`,
      ok: kinds(({ record }) => record) === 1 && one.questions > 0,
    },
    {
      what: 'different projects among the phones',
      found: `${kinds(({ project }) => project)} among ${looks.length}`,
      ok: kinds(({ project }) => project) === 1 && one.project.length === 64,
    },
  ];
}

/** Every photo that a note speaks of is on the laptop, whole, save what was on the emptied phone alone: a note
 * goes out at once, its photo when there is time. */
function allPhotos(ground: Ground, log: RecordLog, alone: ReadonlySet<EntryId>): Condition {
  const noted = log.living('note').flatMap((entry) => {
    const { photo } = entry.what;
    return photo ? [{ ...photo, id: entryIdOf(entry) }] : [];
  });
  const folder = join(ground.folder, 'laptop', 'photos');
  const missing = noted.filter(({ hash, bytes }) => {
    const file = join(folder, hash);
    if (!existsSync(file)) return true;
    const found = readFileSync(file);
    return found.length !== bytes || createHash('sha256').update(found).digest('hex') !== hash;
  });
  const wrongly = missing.filter(({ id }) => !alone.has(id));
  return {
    what: 'photos of notes that are not whole on the laptop',
    found: `${wrongly.length} of ${noted.length}, ${mb(noted.reduce((sum, { bytes }) => sum + bytes, 0))} (gone with the emptied phone: ${missing.length - wrongly.length})`,
    ok: noted.length > 0 && wrongly.length === 0,
  };
}

// --- memory ---

/** Hour by hour what each process weighs; a process that was started anew begins anew. */
type Weights = Map<string, HourWeight[]>;

const header =
  ' hour  entries  kept  open  online   laptop heap       rss   phone heap, median      most       rss';

async function sample(
  laptop: Laptop,
  hands: readonly Hand[],
  hour: number,
  kept: number,
  weights: Weights,
): Promise<void> {
  const add = (key: string, weight: Weight): Weight => {
    weights.set(key, [...(weights.get(key) ?? []), { ...weight, hour }]);
    return weight;
  };
  const there = hands.filter(({ is }) => is === 'open');
  const phones: Weight[] = [];
  // Collecting garbage takes time: those who stay, and now and then all.
  const asked = there.filter(({ watch }) => watch || hour % 12 === 0);
  for (const { number, life, phone } of asked)
    phones.push(add(`phone ${number}, ${life}`, await phone.calls.weigh()));
  const entries = Math.max(...phones.map((one) => one.entries));
  const own = add('laptop', await laptop.calls.weigh(entries));
  const heaps = phones.map(({ heap }) => heap).sort((a, b) => a - b);
  const resident = phones.map(({ rss }) => rss).sort((a, b) => a - b);
  const middle = (list: readonly number[]): number => list[list.length >> 1] ?? Number.NaN;
  console.log(
    [
      `${hour}`.padStart(5),
      `${entries}`.padStart(8),
      `${kept}`.padStart(6),
      `${there.length}`.padStart(6),
      `${there.filter(({ network }) => network).length}`.padStart(8),
      mb(own.heap).padStart(14),
      mb(own.rss).padStart(10),
      mb(middle(heaps)).padStart(21),
      mb(heaps.at(-1) ?? Number.NaN).padStart(10),
      mb(middle(resident)).padStart(10),
    ].join(''),
  );
}

/** The laptop, and the phones that were in one process all the time. */
function flatness(weights: Weights, hours: number): readonly Condition[] {
  const rows = [...weights].filter(([key, list]) => key === 'laptop' || list.length > 1.8 * hours);
  return rows.flatMap(([key, list]) => {
    // In their first hours code is still compiled and tables are still filled.
    const [first] = list as [HourWeight];
    const busy = list.filter(({ hour }) => hour >= first.hour + WARM && hour <= hours);
    const idle = list.filter(({ hour }) => hour > hours + WARM);
    const [own, alone] = [growthOf(busy), growthOf(idle)];
    return [
      {
        what: `${key}, heap of the weekend`,
        found: `${(own.perEntry / 1000).toFixed(2)} kB an entry (at most ${PER_ENTRY / 1000}), besides that ${byItself(own)}`,
        ok: own.perEntry <= PER_ENTRY && isFlat(own, hours, SHARE),
      },
      {
        what: `${key}, heap of a weekend without entries`,
        found: `${byItself(alone)}; resident ${mb(idle[0]?.rss ?? Number.NaN)} to ${mb(idle.at(-1)?.rss ?? Number.NaN)}`,
        ok: isFlat(alone, hours, SHARE),
      },
    ];
  });
}

const byItself = ({ perHour, perHourSd, first, last, hours }: Growth): string =>
  `${(perHour / 1000).toFixed(1)} ± ${((2 * perHourSd) / 1000).toFixed(1)} kB an hour over ${hours} hours, ${mb(first)} to ${mb(last)}`;

const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

async function until(is: () => Promise<boolean>, what: string, seconds = 120): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!(await is())) {
    if (performance.now() > end) throw new Error(`waited ${seconds} s until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
