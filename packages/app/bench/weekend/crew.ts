// Twenty people with phones on a simulated site: who is there, whose battery is empty, who has no network,
// and what each taps. Ten simulated minutes a step.

import { compareNumbers, type EntryId, type Random, type What } from '@shellraise/core';
import type { Noting } from '../../src/record/next-state.ts';
import { plan as planOf } from './plan.ts';
import type { Ground, PhoneProcess } from './site.ts';

/** Steps of an hour. */
export const STEPS = 6;
const HOUR = 3_600_000;
/** Eight in the morning of the first day. */
const EIGHT = Date.UTC(2026, 5, 13, 8);

/** Somebody with a phone. */
export interface Hand {
  readonly number: number;
  readonly role: 'lead' | 'crew';
  /** By how much the phone's clock is ahead, milliseconds. */
  readonly skew: number;
  /** Stays the nights, phone on and with power. */
  readonly watch: boolean;
  phone: PhoneProcess;
  life: number;
  is: 'open' | 'closed' | 'empty';
  network: boolean;
  /** Steps at which the battery is full and the network back. */
  charged: number;
  back: number;
}

/** What happened. */
export interface Told {
  readonly said: Map<EntryId, number>;
  readonly count: Record<
    | 'said'
    | 'undone'
    | 'settled'
    | 'twoAtOne'
    | 'photos'
    | 'projectChanges'
    | 'reloads'
    | 'batteries'
    | 'nights'
    | 'withoutNetwork',
    number
  >;
}

const plan = planOf();
/** Places from the ground up. */
const places = plan.places
  .map((_, place) => place)
  .sort((a, b) => compareNumbers(plan.places[a] as string, plan.places[b] as string));
const seamsOf = plan.seamPlaces.reduce<number[][]>(
  (all, pair, seam) => {
    for (const place of pair) all[place]?.push(seam);
    return all;
  },
  places.map(() => []),
);
const hubsOf = plan.hubPlaces.reduce<number[][]>(
  (all, around, hub) => {
    for (const place of around) all[place]?.push(hub);
    return all;
  },
  places.map(() => []),
);

/** The crew with their phones, all joined and open. Every third clock is right to the minute, every third
 * off by minutes, every third by hours. */
export async function gather(
  ground: Ground,
  codes: Readonly<Record<string, string>>,
  count: number,
  random: Random,
): Promise<readonly Hand[]> {
  const hands: Hand[] = [];
  for (let number = 0; number < count; number++) {
    const off = [60_000, 40 * 60_000, 9 * HOUR][number % 3] as number;
    const hand: Hand = {
      number,
      role: number < 2 ? 'lead' : 'crew',
      skew: Math.round((2 * random.uniform() - 1) * off),
      watch: number >= 2 && number < 6,
      phone: ground.phone(number, 0),
      ...{ life: 0, is: 'closed', network: true, charged: 0, back: 0 },
    };
    hands.push(hand);
  }
  for (const hand of hands) await joinAndOpen(hand, codes);
  return hands;
}

/** Joins and opens the page. The laptop lets ten of one address join a minute, so some may wait. */
export async function joinAndOpen(
  hand: Hand,
  codes: Readonly<Record<string, string>>,
): Promise<void> {
  const join = (): Promise<string> => hand.phone.calls.join(codes[hand.role] as string);
  let answer = await join();
  for (let tries = 0; answer === 'later' && tries < 20; tries++) {
    await new Promise((resolve) => setTimeout(resolve, 6500));
    answer = await join();
  }
  if (answer !== hand.role) throw new Error(`phone ${hand.number} joined as ${answer}`);
  await open(hand);
}

/** Opens the page, with the network there is. */
export async function open(hand: Hand): Promise<void> {
  await hand.phone.calls.open(hand.network, hand.skew);
  hand.is = 'open';
}

/** Starts the phone's process anew, with what its disk has. */
export function charge(ground: Ground, hand: Hand): void {
  hand.life++;
  hand.phone = ground.phone(hand.number, hand.life);
}

/** Nothing happened yet. */
export const nothingYet = (): Told => ({
  said: new Map(),
  count: {
    ...{ said: 0, undone: 0, settled: 0, twoAtOne: 0, photos: 0, projectChanges: 0 },
    ...{ reloads: 0, batteries: 0, nights: 0, withoutNetwork: 0 },
  },
});

/** One step: comings and goings of all, and what they tap where `work` says how far the shell is, 0 to 1. */
export async function step(
  ground: Ground,
  hands: readonly Hand[],
  now: number,
  work: number | null,
  random: Random,
  told: Told,
): Promise<void> {
  for (const hand of hands) await comeOrGo(ground, hand, now, random, told);
  if (work === null) return;
  const at = EIGHT + (now * HOUR) / STEPS;
  const jobs: Promise<void>[] = [];
  for (const hand of hands.filter(({ is }) => is === 'open')) {
    const taps = isNight(now) ? random.below(2) : random.below(6);
    for (let i = 0; i < taps; i++)
      jobs.push(act(hand, at + Math.floor((i * HOUR) / STEPS / 6), work, random, told));
  }
  jobs.push(...twoAtOne(hands, at, work, random, told));
  await Promise.all(jobs);
}

/** From eight in the evening to eight in the morning. */
export const isNight = (now: number): boolean => Math.floor(now / STEPS) % 24 >= 12;

async function comeOrGo(
  ground: Ground,
  hand: Hand,
  now: number,
  random: Random,
  { count }: Told,
): Promise<void> {
  const dice = random.uniform();
  if (hand.is === 'empty') {
    if (now < hand.charged) return;
    charge(ground, hand);
    return open(hand);
  }
  const away = isNight(now) && !hand.watch;
  if (hand.is === 'closed') return away ? undefined : open(hand);
  if (away) {
    // Not all at the same minute.
    if (dice > 0.4) return;
    await hand.phone.calls.close();
    hand.is = 'closed';
    count.nights++;
    return;
  }
  if (!hand.network && now >= hand.back) {
    hand.network = true;
    await hand.phone.calls.network(true);
  }
  if (dice < 0.006 && !hand.watch) {
    await hand.phone.kill();
    hand.is = 'empty';
    hand.charged = now + 3 + random.below(15);
    count.batteries++;
  } else if (dice < 0.03) {
    await hand.phone.calls.close();
    await open(hand);
    count.reloads++;
  } else if (dice < 0.05 && hand.network) {
    hand.network = false;
    hand.back = now + 2 + random.below(24);
    await hand.phone.calls.network(false);
    count.withoutNetwork++;
  }
}

const note = (id: EntryId | null, hand: Hand, { said, count }: Told): void => {
  if (id === null) return;
  said.set(id, hand.number);
  count.said++;
};

/** One thing that somebody does with the phone. */
async function act(
  hand: Hand,
  at: number,
  work: number,
  random: Random,
  told: Told,
): Promise<void> {
  const { calls } = hand.phone;
  const dice = random.uniform();
  const place = near(work, random);
  const one = (list: readonly number[]): number => list[random.below(list.length)] as number;
  const tap = async (noting: Noting, sort: 'place' | 'seam' | 'hub', index: number) =>
    note(await calls.tap(noting, { sort, index }, at), hand, told);
  const say = async (what: What) => note(await calls.say(what, at), hand, told);
  if (dice < 0.3) return tap('panels', 'place', place);
  if (dice < 0.68) return tap('seams', 'seam', one(seamsOf[place] as number[]));
  if (dice < 0.76) return tap('seal', 'seam', one(seamsOf[place] as number[]));
  if (dice < 0.82) return tap('plates', 'hub', one(hubsOf[place] as number[]));
  if (dice < 0.85) {
    const id = await calls.undo(random.below(100_000), at);
    if (id) told.count.undone++;
    return note(id, hand, told);
  }
  if (dice < 0.88) return say(windOf(random));
  if (dice < 0.9) return say({ kind: 'stop', why: 'wind', on: random.below(2) === 0 });
  if (dice < 0.93) return say({ ...panel(place), sides: sidesOf(random), seenFrom: 'outside' });
  if (dice < 0.95) return say(surveyed(random));
  if (dice < 0.96) return say({ kind: 'person', person: `P${hand.number}`, here: true });
  if (dice < 0.97) {
    const id = await calls.settle(at);
    if (id) told.count.settled++;
    return note(id, hand, told);
  }
  if (dice < 0.985) {
    told.count.photos++;
    return note(
      await calls.photo(random.below(2 ** 30), 150_000 + random.below(200_000), at),
      hand,
      told,
    );
  }
  if (
    hand.role === 'lead' &&
    (await calls.write(random.below(700), tenth(0.4 + 0.05 * random.uniform())))
  )
    told.count.projectChanges++;
}

/** Two at the same panel, who say different things of it, seen by each other or not. */
function twoAtOne(
  hands: readonly Hand[],
  at: number,
  work: number,
  random: Random,
  told: Told,
): readonly Promise<void>[] {
  const there = hands.filter(({ is }) => is === 'open');
  if (there.length < 2 || random.uniform() > 0.5) return [];
  told.count.twoAtOne++;
  const place = plan.places[near(work, random)] as string;
  const first = random.below(there.length);
  const pair = [there[first], there[(first + 1) % there.length]] as [Hand, Hand];
  return pair.map(async (hand, i) =>
    note(
      await hand.phone.calls.say(
        i === 0
          ? { kind: 'panel placed', place, tag: String(random.below(400)), turn: random.below(3) }
          : { kind: 'panel taken out', place },
        at,
      ),
      hand,
      told,
    ),
  );
}

/** A place where the work is, or a little behind. */
const near = (work: number, random: Random): number =>
  places[
    Math.max(
      0,
      Math.min(places.length - 1, Math.floor(work * places.length) - random.below(30) + 3),
    )
  ] as number;

const tenth = (metres: number): number => Math.round(metres * 1e4) / 1e4;
const panel = (place: number) =>
  ({ kind: 'panel measured', tag: String(place + 1).padStart(3, '0') }) as const;
const sidesOf = (random: Random): number[] =>
  [0, 1, 2].map(() => tenth(0.9 + 0.2 * random.uniform()));
const windOf = (random: Random): What => ({
  kind: 'weather',
  gust: Math.round(120 * random.uniform()) / 10,
  text: 'By hand-held meter.',
});
const surveyed = (random: Random): What => ({
  kind: 'surveyed',
  reading: {
    ...{ what: 'chord', from: 1 + random.below(30), to: 31 + random.below(9) },
    length: tenth(1 + random.uniform()),
  },
});
