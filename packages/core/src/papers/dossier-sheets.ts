// The as-built dossier as sheets: where every panel is, how far every seam is tightened and sealed, anchors,
// survey, notes, weather, stages, stops, changes, and what is still open.

import type { RecordChange } from '../record/changes.ts';
import type { Dossier, Said } from '../record/dossier.ts';
import type { Drawing } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, words } from './flow-blocks.ts';
import type { Paper } from './page.ts';

/** Options of `dossierSheets`. */
export interface DossierSheetOptions {
  readonly paper?: Paper;
  /** A time (milliseconds since 1970) as the reader's clock shows it: nothing here knows a time zone. */
  readonly timeText: (at: number) => string;
}

const CAUTION =
  'A record of what people said, no proof that it is so, and no design approval. Local codes and a licensed engineer or rigger decide.';

/** The sheets. */
export function dossierSheets(
  made: Dossier,
  facts: SheetFacts,
  options: DossierSheetOptions,
): Drawing[] {
  const who = ({ by, at }: Said): string => `${by}, ${options.timeText(at)}`;
  const whoOrNot = (said: Said | null): string => (said === null ? '–' : who(said));
  const part = (name: string, rows: readonly string[]): FlowBlock[] =>
    rows.length === 0 ? [] : [heading(name), list('dash', rows, 3)];
  return flowSheets(
    [
      words(summary(made), { bold: true }),
      ...part(
        'Still open',
        made.forgotten.map(({ what, name, bolts }) =>
          bolts === null || !Number.isFinite(bolts)
            ? `${what}: ${name}`
            : `${what}: ${name}, ${bolts} bolts`,
        ),
      ),
      ...part(
        'To be asked: people say different things',
        made.questions.map(
          ({ about, entries }) =>
            `${about}: ${[...new Set(entries.map(({ by }) => by))].join(' and ')}`,
        ),
      ),
      heading('Panels'),
      {
        block: 'table',
        size: 2.9,
        columns: [
          { name: 'place', share: 0.14, bold: true },
          { name: 'tag', share: 0.24 },
          { name: 'turn', share: 0.1, align: 'end' },
          { name: 'said by, when', share: 0.52 },
        ],
        rows: made.panels.map(({ place, tag, turn, said }) => [
          place,
          said === null ? 'empty' : (tag ?? 'not read'),
          turn === null ? '' : String(turn + 1),
          whoOrNot(said),
        ]),
      },
      words('Turn: its side, from 1, that lies on the place’s first side.', {
        quiet: true,
        size: 2.6,
      }),
      heading('Seams'),
      {
        block: 'table',
        size: 2.9,
        columns: [
          { name: 'seam', share: 0.16, bold: true },
          { name: 'bolts', share: 0.07, align: 'end' },
          { name: 'pass', share: 0.09 },
          { name: 'said by, when', share: 0.26 },
          { name: 'checked, failed', share: 0.12, align: 'end' },
          { name: 'N·m', share: 0.08, align: 'end' },
          { name: 'sealed', share: 0.22 },
        ],
        rows: made.seams.map(({ seam, bolts, pass, said, samples, sealed }) => [
          seam,
          bolts === null ? '?' : String(bolts),
          pass,
          whoOrNot(said),
          samples.length === 0
            ? ''
            : `${samples.reduce((sum, one) => sum + one.bolts, 0)}, ${samples.reduce((sum, one) => sum + one.failed, 0)}`,
          [...new Set(samples.flatMap(({ torque }) => (torque === null ? [] : [torque])))].join(
            ', ',
          ),
          whoOrNot(sealed),
        ]),
      },
      heading('Hubs'),
      {
        block: 'table',
        size: 2.9,
        columns: [
          { name: 'hub, by the panels around it', share: 0.5, bold: true },
          { name: 'bolts', share: 0.12 },
          { name: 'plate', share: 0.38 },
        ],
        rows: made.hubs.map(({ hub, plate, bolt }) => [hub, bolt, whoOrNot(plate)]),
      },
      ...part(
        'Anchors',
        made.anchors.map(
          ({ anchor, driven, pulls }) =>
            `anchor ${anchor}: ${driven === null ? 'not driven' : `driven (${who(driven)})`}${pulls.map((one) => `; pulled ${one.pull} N, ${one.held ? 'held' : 'DID NOT HOLD'} (${who(one)})`).join('')}`,
        ),
      ),
      ...part(
        'Survey',
        made.survey.map((one) => `${readingWords(one.reading)} (${who(one)})`),
      ),
      ...part(
        'Photos and notes',
        made.notes.map((note) => {
          const of = note.about ? `${note.about.what} ${note.about.name}: ` : '';
          return `${of}${note.text}${note.photo ? ` [photo ${note.photo.hash.slice(0, 16)}]` : ''} (${who(note)})`;
        }),
      ),
      ...part(
        'Weather',
        made.weather.map((one) => `${weatherWords(one)} (${who(one)})`),
      ),
      ...part(
        'Panels found not good',
        made.conditions.map((one) => `panel ${one.tag}: ${one.condition} (${who(one)})`),
      ),
      ...part(
        'Stages',
        made.stages.map((one) => `stage ${one.stage} ${one.what} (${who(one)})`),
      ),
      ...part(
        'Stops',
        made.stops.map(
          ({ why, called, lifted }) =>
            `${why}: called by ${who(called)}, ${lifted ? `lifted by ${who(lifted)}` : 'STILL ON'}`,
        ),
      ),
      ...part(
        'Changes',
        made.changes.map((one) => `${changeWords(one)} (${who(one)})`),
      ),
      ...part(
        'Clocks put right',
        [...made.clocks].map(
          ([writer, off]) =>
            `phone ${writer} stood ${Math.round(Math.abs(off) / 60_000)} min ${off > 0 ? 'ahead' : 'behind'} at the least`,
        ),
      ),
      {
        block: 'blanks',
        names: ['Handed over by (name, day, signature)', 'Taken over by (name, day, signature)'],
      },
    ],
    facts,
    {
      ...(options.paper && { paper: options.paper }),
      heading: 'As built',
      remark: 'what the record says of every panel, seam, hub and anchor',
      lengths: 'metres, newtons',
      caution: CAUTION,
    },
  );
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

function summary({ panels, seams, hubs, entries, forgotten }: Dossier): string {
  const standing = panels.filter(({ said }) => said !== null);
  const samples = seams.flatMap((one) => one.samples);
  const sum = (key: 'bolts' | 'failed'): number => samples.reduce((all, one) => all + one[key], 0);
  return [
    `${standing.length} of ${count(panels.length, 'panel')} in place, ${standing.filter(({ tag }) => tag !== null).length} with their tag.`,
    `${seams.filter(({ pass }) => pass === 'final').length} of ${count(seams.length, 'seam')} final, ${seams.filter(({ sealed }) => sealed).length} sealed.`,
    `${count(sum('bolts'), 'bolt')} checked, ${sum('failed')} failed.`,
    `${hubs.filter(({ plate }) => plate).length} of ${count(hubs.length, 'plate')} on.`,
    `${forgotten.length === 0 ? 'Nothing' : count(forgotten.length, 'thing')} forgotten.`,
    `${count(entries, 'entry').replace(/entrys$/, 'entries')}.`,
  ].join(' ');
}

function readingWords(reading: Dossier['survey'][number]['reading']): string {
  if (reading.what === 'chord')
    return `chord ${reading.from} to ${reading.to}: ${reading.length} m`;
  if (reading.what === 'radius') return `radius to hub ${reading.hub}: ${reading.length} m`;
  if (reading.what === 'level') return `level of hub ${reading.hub}: ${reading.height} m`;
  return `height of ring ${reading.ring}, hub ${reading.number}: ${reading.height} m`;
}

function weatherWords({ gust, mean, temperatureC, sky, text }: Dossier['weather'][number]): string {
  return [
    gust === undefined ? '' : `gusts ${gust} m/s`,
    mean === undefined ? '' : `wind ${mean} m/s`,
    temperatureC === undefined ? '' : `${temperatureC} °C`,
    sky ?? '',
    text ?? '',
  ]
    .filter((said) => said !== '')
    .join(', ');
}

function changeWords(one: RecordChange): string {
  const panel = (tag: string | null): string => (tag === null ? 'a panel' : `panel ${tag}`);
  switch (one.change) {
    case 'taken back':
      return `taken back: ${one.entry.what.kind}${'place' in one.entry.what ? ` ${one.entry.what.place}` : ''}, said by ${one.entry.by}`;
    case 'taken out':
      return `${panel(one.tag)} taken out of ${one.place}`;
    case 'swapped':
      return `${panel(one.to)} in place of ${panel(one.from)} at ${one.place}`;
    case 'not good':
      return `panel ${one.tag} found ${one.condition === 'scrap' ? 'broken' : 'to be mended'}`;
    case 'loosened':
      return `seam ${one.seam} loosened from ${one.from} to ${one.to}`;
  }
}
