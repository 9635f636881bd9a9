// Who is there when: helpers by hour as pieces of time in which nobody comes or goes. Four numbers tell
// what they can do together: people, climbers, leads, and those who are one or the other, since nobody
// can climb and lead at once (P. Hall, 1935: with these none of the tasks begun lacks a person).

import { DAY, dayNumber, secondsOfDay } from './date.ts';
import { SLOT, type WorkDay } from './hours.ts';
import type { CrewSettings, Person } from './schema.ts';

/** Resources that people are: hands, climbers, leads, climbers or leads. */
export const PEOPLE_RESOURCES = 4;

/** Pieces of a plan's time with the same people. */
export interface Presence {
  /** End of each piece, seconds of the plan; the last is infinite. */
  readonly end: Float64Array;
  /** Slot → its piece. */
  readonly pieceOf: Int32Array;
  /** Person × pieces: 1 where they mean to be there for all of it. */
  readonly there: readonly Uint8Array[];
}

/** The pieces for these people over these days. A slot is worked by who is there for all of it. */
export function presenceOf(
  people: readonly Person[],
  days: readonly WorkDay[],
  slots: number,
): Presence {
  const byDay = new Map(days.map(({ day }, k) => [day, k]));
  const spans = people.map(({ shifts }) =>
    shifts.flatMap(({ date, from, to }) => {
      const k = byDay.get(dayNumber(date) as number);
      if (k === undefined) return [];
      const [a, b] = [secondsOfDay(from) as number, secondsOfDay(to) as number];
      return [[Math.ceil((k * DAY + a) / SLOT), Math.floor((k * DAY + b) / SLOT)] as const];
    }),
  );
  const cuts = new Set([0, slots]);
  for (const [a, b] of spans.flat()) if (a < b) cuts.add(a).add(b);
  const sorted = [...cuts].sort((a, b) => a - b);
  const pieceOf = new Int32Array(slots);
  const count = Math.max(1, sorted.length - 1);
  const end = new Float64Array(count);
  for (let p = 0; p < count; p++) {
    end[p] = p === count - 1 ? Number.POSITIVE_INFINITY : (sorted[p + 1] as number) * SLOT;
    pieceOf.fill(p, sorted[p], sorted[p + 1]);
  }
  const there = spans.map((own) =>
    Uint8Array.from({ length: count }, (_, p) =>
      own.some(([a, b]) => a <= (sorted[p] as number) && (sorted[p + 1] ?? 0) <= b && a < b)
        ? 1
        : 0,
    ),
  );
  return { end, pieceOf, there };
}

/** Writes what those who come can do: piece × resources, the first four of each. */
export function capacityInto(
  capacity: Int32Array,
  resources: number,
  people: readonly Person[],
  { there, end }: Presence,
  comes: ArrayLike<number>,
): void {
  for (let p = 0; p < end.length; p++) {
    let [hands, climbers, leads, either] = [0, 0, 0, 0];
    for (let i = 0; i < people.length; i++) {
      if (there[i][p] === 0 || comes[i] === 0) continue;
      const { climbs, leads: canLead } = people[i];
      hands++;
      if (climbs) climbers++;
      if (canLead) leads++;
      if (climbs || canLead) either++;
    }
    const at = p * resources;
    capacity[at] = hands;
    capacity[at + 1] = climbers;
    capacity[at + 2] = leads;
    capacity[at + 3] = either;
  }
}

/** Writes what is planned with: those who are sure, and of the others the part that comes, rounded. */
export function plannedCapacityInto(
  capacity: Int32Array,
  resources: number,
  { people, noShow }: Pick<CrewSettings, 'people' | 'noShow'>,
  { there, end }: Presence,
): void {
  const sorts: readonly ((person: Person) => boolean)[] = [
    () => true,
    ({ climbs }) => climbs,
    ({ leads }) => leads,
    ({ climbs, leads }) => climbs || leads,
  ];
  for (let p = 0; p < end.length; p++)
    sorts.forEach((is, r) => {
      let [sure, open] = [0, 0];
      people.forEach((person, i) => {
        if (there[i][p] === 0 || !is(person)) return;
        if (person.sure) sure++;
        else open++;
      });
      capacity[p * resources + r] = sure + Math.round((1 - noShow) * open);
    });
}
