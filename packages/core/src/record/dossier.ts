// The as-built dossier out of the record: where every panel is, torque and seal of every seam, anchors
// and their pulls, survey, photos by their hashes, stages, stops, changes, and what is still open. What
// people said, no proof that it is so: local codes and a licensed engineer or rigger decide. Metres,
// newtons, newton-metres; times in milliseconds since 1970, clocks put right.

import { type RecordChange, recordChanges } from './changes.ts';
import { clockOffsets, timeOf } from './clocks.ts';
import type { Entry } from './entry.ts';
import { type Forgotten, forgotten } from './forgotten.ts';
import type { RecordLog } from './log.ts';
import { compareNumbers, type RecordPlan } from './names.ts';
import { type RecordQuestion, recordState } from './state.ts';
import type { RecordPass, What } from './what.ts';

/** Who said it, and when. */
export interface Said {
  readonly by: string;
  readonly at: number;
}

/** A place with its panel; `said` null: empty. */
export interface DossierPanel {
  readonly place: string;
  readonly course: number;
  readonly tag: string | null;
  readonly turn: number | null;
  readonly said: Said | null;
}

/** Bolts of a seam that were checked; `torque` N·m. */
export interface DossierSample extends Said {
  readonly bolts: number;
  readonly failed: number;
  readonly torque: number | null;
}

/** A seam as it was left. `bolts`: that go through it; null: nobody knows. */
export interface DossierSeam {
  readonly seam: string;
  readonly bolts: number | null;
  readonly pass: RecordPass;
  readonly said: Said | null;
  readonly samples: readonly DossierSample[];
  readonly sealed: Said | null;
}

/** An anchor by the number of its hub, with its test pulls (newtons). */
export interface DossierAnchor {
  readonly anchor: number;
  readonly driven: Said | null;
  readonly pulls: readonly (Said & { readonly pull: number; readonly held: boolean })[];
}

/** A stop from when it was called until it was lifted; null: it is still on. */
export interface DossierStop {
  readonly why: 'lightning' | 'wind';
  readonly called: Said;
  readonly lifted: Said | null;
}

/** An entry of a kind as the dossier has it: what it said, by whom, when. */
export type DossierEvent<K extends What['kind']> = Said & Omit<Extract<What, { kind: K }>, 'kind'>;

/** The dossier. Openings are left out of panels and seams. */
export interface Dossier {
  readonly panels: readonly DossierPanel[];
  readonly seams: readonly DossierSeam[];
  /** Hubs with their plates and bolts; those with no place standing around them are left out. */
  readonly hubs: readonly {
    readonly hub: string;
    readonly plate: Said | null;
    readonly bolt: RecordPass;
  }[];
  readonly anchors: readonly DossierAnchor[];
  readonly survey: readonly DossierEvent<'surveyed'>[];
  readonly notes: readonly DossierEvent<'note'>[];
  readonly weather: readonly DossierEvent<'weather'>[];
  readonly conditions: readonly DossierEvent<'panel condition'>[];
  readonly stages: readonly (Said & {
    readonly stage: number;
    readonly what: 'done' | 'closed down';
  })[];
  readonly stops: readonly DossierStop[];
  readonly changes: readonly RecordChange[];
  readonly forgotten: readonly Forgotten[];
  readonly questions: readonly RecordQuestion[];
  /** Writer → how far its clock was off at the least, milliseconds: times are shifted by as much. */
  readonly clocks: ReadonlyMap<string, number>;
  readonly entries: number;
}

/** What the dossier is made with. `bolts`: seam → its bolts, null where nobody knows; `leftOut`: places
 * of openings; `nameOf`: a person's name as the dossier gives it, as they are where left out. */
export interface DossierOptions {
  readonly bolts: (seam: number) => number | null;
  readonly leftOut?: readonly number[];
  readonly nameOf?: (name: string) => string;
}

/** A name by its first letters: `Ada Lum` is `A. L.`. */
export const initialsOf = (name: string): string =>
  name
    .split(/[\s-]+/)
    .filter((part) => part !== '')
    .map((part) => `${[...part][0]?.toUpperCase()}.`)
    .join(' ');

/** The dossier of a record. */
export function dossier(log: RecordLog, plan: RecordPlan, options: DossierOptions): Dossier {
  const { bolts, leftOut = [], nameOf = (name: string) => name } = options;
  const out = new Set(leftOut);
  const state = recordState(log, plan);
  const clocks = clockOffsets(log.entries());
  const said = (entry: Entry): Said => ({ by: nameOf(entry.by), at: timeOf(entry, clocks) });
  const stands = (subject: string): Said | null => {
    const entry = log.stands(subject)?.entry;
    return entry ? said(entry) : null;
  };
  const events = <K extends What['kind']>(kind: K): DossierEvent<K>[] =>
    log.living(kind).map((entry) => {
      const { kind: _, ...what } = entry.what as Extract<What, { kind: K }> & { kind: K };
      return { ...said(entry), ...what } as unknown as DossierEvent<K>;
    });
  const samples = bySeam(log, said);
  return {
    panels: plan.places
      .flatMap((place, p): DossierPanel[] => {
        const panel = state.placed[p];
        const where = { place, course: plan.course[p]! };
        if (out.has(p)) return [];
        if (!panel) return [{ ...where, tag: null, turn: null, said: null }];
        return [{ ...where, ...panel, said: stands(`place ${place}`) }];
      })
      .sort((a, b) => compareNumbers(a.place, b.place)),
    seams: plan.seams.flatMap((seam, m): DossierSeam[] => {
      const [p, q] = plan.seamPlaces[m]!;
      if (out.has(p) || out.has(q)) return [];
      return [
        {
          seam,
          bolts: bolts(m),
          pass: state.passes[m]!,
          said: state.passes[m] === 'none' ? null : stands(`seam ${seam}`),
          samples: samples.get(seam) ?? [],
          sealed: state.sealed[m] ? stands(`seal ${seam}`) : null,
        },
      ];
    }),
    hubs: plan.hubs.flatMap((hub, h) =>
      plan.hubPlaces[h]!.every((place) => out.has(place))
        ? []
        : [
            {
              hub,
              plate: state.plates[h] ? stands(`plate ${hub}`) : null,
              bolt: state.hubBolts[h]!,
            },
          ],
    ),
    anchors: anchorsOf(log, said),
    survey: events('surveyed'),
    notes: events('note'),
    weather: events('weather'),
    conditions: events('panel condition'),
    stages: stagesOf(log, said),
    stops: stopsOf(log, said),
    changes: recordChanges(log, clocks).map((one) => ({ ...one, by: nameOf(one.by) })),
    forgotten: forgotten(log, plan, state, bolts).filter(
      ({ what, index }) =>
        what === 'missing plate' || !plan.seamPlaces[index]!.some((place) => out.has(place)),
    ),
    questions: state.questions,
    clocks,
    entries: log.size,
  };
}

type Sayer = (entry: Entry) => Said;

function bySeam(log: RecordLog, said: Sayer): Map<string, DossierSample[]> {
  const found = new Map<string, DossierSample[]>();
  for (const entry of log.living('seam sampled')) {
    const { seam, bolts, failed, torque } = entry.what;
    const one = { ...said(entry), bolts, failed, torque: torque ?? null };
    found.set(seam, [...(found.get(seam) ?? []), one]);
  }
  return found;
}

function anchorsOf(log: RecordLog, said: Sayer): DossierAnchor[] {
  const pulls = log.living('anchor pulled');
  const numbers = new Set([
    ...log.living('anchor driven').map(({ what }) => what.anchor),
    ...pulls.map(({ what }) => what.anchor),
  ]);
  return [...numbers]
    .sort((a, b) => Number(a) - Number(b))
    .map((anchor) => {
      const entry = log.stands(`anchor ${anchor}`)?.entry;
      const isDriven = entry?.what.kind === 'anchor driven' && entry.what.driven;
      return {
        anchor,
        driven: entry && isDriven ? said(entry) : null,
        pulls: pulls
          .filter(({ what }) => what.anchor === anchor)
          .map((one) => ({ ...said(one), pull: one.what.pull, held: one.what.held })),
      };
    });
}

function stagesOf(log: RecordLog, said: Sayer): Dossier['stages'] {
  return [...log.living('stage done'), ...log.living('closed down')]
    .flatMap((entry) => {
      const { what } = entry;
      const holds = what.kind === 'stage done' ? what.done : what.closed;
      const name = what.kind === 'stage done' ? 'stage' : 'closed down';
      const stands = log.stands(`${name} ${what.stage}`)?.entry === entry;
      const kind = what.kind === 'stage done' ? ('done' as const) : ('closed down' as const);
      return holds && stands ? [{ ...said(entry), stage: what.stage, what: kind }] : [];
    })
    .sort((a, b) => a.at - b.at || a.stage - b.stage);
}

/** Stops one after another: a call while one is on changes nothing. */
function stopsOf(log: RecordLog, said: Sayer): DossierStop[] {
  const stops: { why: DossierStop['why']; called: Said; lifted: Said | null }[] = [];
  const on = new Map<string, (typeof stops)[number]>();
  for (const entry of log.living('stop')) {
    const { why, on: calls } = entry.what;
    const open = on.get(why);
    if (calls && !open) {
      const stop = { why, called: said(entry), lifted: null };
      stops.push(stop);
      on.set(why, stop);
    } else if (!calls && open) {
      open.lifted = said(entry);
      on.delete(why);
    }
  }
  return stops;
}
