// The dossier as blocks of text.

import type { Dossier, RecordChange, Said } from '@shellraise/core';
import { bullets, caution, count, right, table, wrap } from './terminal.ts';

/** What the dossier must carry. */
export const dossierCaution =
  'A record of what people said, no proof that it is so, and no design approval. Local codes and a licensed engineer or rigger decide.';

/** A time by this computer's clock, to the minute. */
export const timeText = (at: number): string =>
  new Date(at).toLocaleString('sv-SE', { dateStyle: 'short', timeStyle: 'short' });

/** The blocks. */
export function dossierBlocks(made: Dossier): readonly string[] {
  return [
    summary(made),
    caution(dossierCaution),
    questions(made),
    panelTable(made),
    seamTable(made),
    anchorTable(made),
    bullets(
      'Survey:',
      made.survey.map((one) => `${readingText(one.reading)} (${who(one)})`),
    ),
    bullets('Photos and notes:', made.notes.map(noteText)),
    bullets('Weather:', made.weather.map(weatherText)),
    bullets(
      'Stages:',
      made.stages.map((one) => `stage ${one.stage} ${one.what} (${who(one)})`),
    ),
    bullets(
      'Stops:',
      made.stops.map(
        ({ why, called, lifted }) =>
          `${why}: called by ${who(called)}, ${lifted ? `lifted by ${who(lifted)}` : 'STILL ON'}`,
      ),
    ),
    bullets('Changes:', made.changes.map(changeText)),
    bullets(
      'Clocks put right:',
      [...made.clocks].map(
        ([writer, off]) =>
          `phone ${writer} stood ${Math.round(Math.abs(off) / 60_000)} min ${off > 0 ? 'ahead' : 'behind'} at the least`,
      ),
    ),
  ];
}

const who = ({ by, at }: Said): string => `${by}, ${timeText(at)}`;

function summary({ panels, seams, hubs, entries, forgotten }: Dossier): string {
  const standing = panels.filter(({ said }) => said !== null);
  const known = standing.filter(({ tag }) => tag !== null).length;
  const samples = seams.flatMap((one) => one.samples);
  const failed = samples.reduce((sum, one) => sum + one.failed, 0);
  return wrap(
    [
      `${entries.toLocaleString('en')} entries.`,
      `${standing.length} of ${count(panels.length, 'panel')} in place, ${known} with their tag.`,
      `${seams.filter(({ pass }) => pass === 'final').length} of ${count(seams.length, 'seam')} final, ${seams.filter(({ sealed }) => sealed).length} sealed.`,
      `${count(
        samples.reduce((sum, one) => sum + one.bolts, 0),
        'bolt',
      )} checked, ${failed} failed.`,
      `${hubs.filter(({ plate }) => plate).length} of ${count(hubs.length, 'plate')} on.`,
      `${forgotten.length === 0 ? 'Nothing' : count(forgotten.length, 'thing')} forgotten.`,
    ].join(' '),
    '',
  );
}

const questions = ({ questions: asked }: Dossier): string =>
  bullets(
    'To be asked, people say different things:',
    asked.map(({ about, entries }) => `${about}: ${entries.map(({ by }) => by).join(' and ')}`),
  );

const panelTable = ({ panels }: Dossier): string =>
  table(
    [{ head: 'place' }, { head: 'tag' }, right('turn'), { head: 'by' }, { head: 'when' }],
    panels.map(({ place, tag, turn, said }) => [
      place,
      said === null ? 'empty' : (tag ?? 'not read'),
      turn === null ? '' : String(turn),
      said?.by ?? '',
      said ? timeText(said.at) : '',
    ]),
  );

const seamTable = ({ seams }: Dossier): string =>
  table(
    [
      { head: 'seam' },
      right('bolts'),
      { head: 'pass' },
      { head: 'by' },
      { head: 'when' },
      right('checked'),
      right('failed'),
      right('N·m'),
      { head: 'sealed' },
    ],
    seams.map(({ seam, bolts, pass, said, samples, sealed }) => [
      seam,
      bolts === null ? '' : String(bolts),
      pass,
      said?.by ?? '',
      said ? timeText(said.at) : '',
      samples.length === 0 ? '' : String(samples.reduce((sum, one) => sum + one.bolts, 0)),
      samples.length === 0 ? '' : String(samples.reduce((sum, one) => sum + one.failed, 0)),
      [...new Set(samples.flatMap(({ torque }) => (torque === null ? [] : [torque])))].join(', '),
      sealed ? timeText(sealed.at) : '',
    ]),
  );

const anchorTable = ({ anchors }: Dossier): string =>
  table(
    [right('anchor'), { head: 'driven' }, { head: 'test pulls' }],
    anchors.map(({ anchor, driven, pulls }) => [
      String(anchor),
      driven ? who(driven) : 'no',
      pulls
        .map((one) => `${one.pull} N ${one.held ? 'held' : 'DID NOT HOLD'} (${who(one)})`)
        .join('; '),
    ]),
  );

function readingText(reading: Dossier['survey'][number]['reading']): string {
  if (reading.what === 'chord')
    return `chord ${reading.from} to ${reading.to}: ${reading.length} m`;
  if (reading.what === 'radius') return `radius to hub ${reading.hub}: ${reading.length} m`;
  if (reading.what === 'level') return `level of hub ${reading.hub}: ${reading.height} m`;
  return `height of ring ${reading.ring}, hub ${reading.number}: ${reading.height} m`;
}

function noteText(note: Dossier['notes'][number]): string {
  const { text, photo, about } = note;
  const of = about ? `${about.what} ${about.name}: ` : '';
  return `${of}${text}${photo ? ` [photo ${photo.hash}, ${photo.type}]` : ''} (${who(note)})`;
}

function weatherText(one: Dossier['weather'][number]): string {
  const { gust, mean, temperatureC, sky, text } = one;
  const parts = [
    gust === undefined ? '' : `gusts ${gust} m/s`,
    mean === undefined ? '' : `wind ${mean} m/s`,
    temperatureC === undefined ? '' : `${temperatureC} °C`,
    sky ?? '',
    text ?? '',
  ];
  return `${parts.filter((part) => part !== '').join(', ')} (${who(one)})`;
}

function changeText(one: RecordChange): string {
  const tag = (text: string | null): string => (text === null ? 'a panel' : `panel ${text}`);
  const text =
    one.change === 'taken back'
      ? `taken back: ${one.entry.what.kind}${'place' in one.entry.what ? ` ${one.entry.what.place}` : ''}, said by ${one.entry.by}`
      : one.change === 'taken out'
        ? `${tag(one.tag)} taken out of ${one.place}`
        : one.change === 'swapped'
          ? `${tag(one.to)} in place of ${tag(one.from)} at ${one.place}`
          : one.change === 'not good'
            ? `panel ${one.tag} found ${one.condition === 'scrap' ? 'broken' : 'to be mended'}`
            : `seam ${one.seam} loosened from ${one.from} to ${one.to}`;
  return `${text} (${who(one)})`;
}
