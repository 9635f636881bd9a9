// What the record says of every place, seam and hub of the standing shell. Where claims differ the
// state is the one that supposes least, and the subject is among the questions.

import type { Entry } from './entry.ts';
import type { RecordLog } from './log.ts';
import { compareNumbers, type RecordPlan } from './names.ts';
import type { RecordPass, What } from './what.ts';

/** A panel in its place. */
export interface PlacedPanel {
  /** Null: nobody read it. */
  readonly tag: string | null;
  readonly turn: number | null;
}

/** A question that people must settle. `claims`: two or more who differ. `two places`: one tag is said
 * to sit in several. `not in the plan`: entries about places, seams or hubs that the shell does not
 * have, as after a replanning. */
export interface RecordQuestion {
  readonly what: 'claims' | 'two places' | 'not in the plan';
  /** Subject, tag, or name not in the plan. */
  readonly about: string;
  readonly entries: readonly Entry[];
}

/** The state of the build. Indices are the shell's. */
export interface RecordState {
  /** Place → its panel, null where it is empty. */
  readonly placed: readonly (PlacedPanel | null)[];
  /** Seam → its pass; → whether it is sealed. */
  readonly passes: readonly RecordPass[];
  readonly sealed: readonly boolean[];
  /** Hub → plate on; → pass of its bolt; → prop under it. */
  readonly plates: readonly boolean[];
  readonly hubBolts: readonly RecordPass[];
  readonly props: readonly boolean[];
  /** People on the site, in the order of their names. */
  readonly people: readonly string[];
  /** Stops called and not lifted. */
  readonly stops: readonly ('lightning' | 'wind')[];
  /** Stages done, and stop points closed down, by number. */
  readonly done: readonly number[];
  readonly closed: readonly number[];
  readonly questions: readonly RecordQuestion[];
}

/** The state of a record over a plan. Costs by the size of the shell and of what was spoken of, not by
 * the number of entries. */
export function recordState(log: RecordLog, plan: RecordPlan): RecordState {
  const said = <K extends What['kind']>(subject: string, kind: K) => {
    const what = log.stands(subject)?.entry.what;
    return what?.kind === kind ? (what as Extract<What, { kind: K }>) : null;
  };
  const byHub = <T>(read: (hub: string) => T): T[] => plan.hubs.map(read);
  const after = (prefix: string): string[] =>
    [...log.subjects()]
      .filter((subject) => subject.startsWith(prefix))
      .map((subject) => subject.slice(prefix.length));
  const stages = (prefix: string, holds: (number: string) => boolean | undefined): number[] =>
    after(prefix)
      .filter(holds)
      .map(Number)
      .sort((a, b) => a - b);
  return {
    placed: plan.places.map((place) => {
      const what = said(`place ${place}`, 'panel placed');
      return what && { tag: what.tag, turn: what.turn };
    }),
    passes: plan.seams.map((seam) => said(`seam ${seam}`, 'seam pass')?.pass ?? 'none'),
    sealed: plan.seams.map((seam) => said(`seal ${seam}`, 'seam sealed')?.sealed ?? false),
    plates: byHub((hub) => said(`plate ${hub}`, 'hub plate')?.on ?? false),
    hubBolts: byHub((hub) => said(`hub bolt ${hub}`, 'hub bolt')?.pass ?? 'none'),
    props: byHub((hub) => said(`prop ${hub}`, 'prop')?.set ?? false),
    people: after('person ')
      .filter((person) => said(`person ${person}`, 'person')?.here)
      .sort(),
    stops: (['lightning', 'wind'] as const).filter((why) => said(`stop ${why}`, 'stop')?.on),
    done: stages('stage ', (number) => said(`stage ${number}`, 'stage done')?.done),
    closed: stages(
      'closed down ',
      (number) => said(`closed down ${number}`, 'closed down')?.closed,
    ),
    questions: [...differing(log), ...twoPlaces(log, plan), ...notInPlan(log, plan)],
  };
}

const differing = (log: RecordLog): RecordQuestion[] =>
  log
    .questions()
    .map((about) => ({ what: 'claims', about, entries: log.stands(about)?.claims ?? [] }));

function twoPlaces(log: RecordLog, plan: RecordPlan): RecordQuestion[] {
  const byTag = new Map<string, Entry[]>();
  for (const place of [...plan.places].sort(compareNumbers))
    for (const entry of log.stands(`place ${place}`)?.claims ?? [])
      if (entry.what.kind === 'panel placed' && entry.what.tag !== null)
        byTag.set(entry.what.tag, [...(byTag.get(entry.what.tag) ?? []), entry]);
  return [...byTag]
    .filter(([, entries]) => new Set(entries.map(placeOf)).size > 1)
    .map(([about, entries]) => ({ what: 'two places', about, entries }));
}

const placeOf = ({ what }: Entry): string => ('place' in what ? what.place : '');

function notInPlan(log: RecordLog, plan: RecordPlan): RecordQuestion[] {
  const known: Readonly<Record<string, ReadonlyMap<string, number>>> = {
    place: plan.placeIndex,
    seam: plan.seamIndex,
    seal: plan.seamIndex,
    plate: plan.hubIndex,
    'hub bolt': plan.hubIndex,
    prop: plan.hubIndex,
  };
  return [...log.subjects()].sort().flatMap((subject): RecordQuestion[] => {
    const sort = Object.keys(known).find((prefix) => subject.startsWith(`${prefix} `));
    if (sort === undefined || known[sort]?.has(subject.slice(sort.length + 1))) return [];
    const entries = log.stands(subject)?.claims ?? [];
    return entries.length === 0 ? [] : [{ what: 'not in the plan', about: subject, entries }];
  });
}
