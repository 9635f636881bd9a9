// For paper alone: the page of the day, or the dossier with every panel and every seam.

import { dossier, type Said } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { DayPaper } from './day-tab.tsx';
import type { Noted } from './use-noted.ts';

/** What is printed in place of the sheet. */
export function PrintedRecord({
  what,
  noted,
  stood,
  title,
}: {
  /** A day, `2026-05-01`, or the dossier. */
  what: string;
  noted: Noted;
  stood: Stood;
  title: string;
}) {
  return (
    <div className="print-only printed-record">
      <p className="printed-head">{title}</p>
      {what === 'dossier' ? (
        <PrintedDossier noted={noted} />
      ) : (
        <DayPaper {...{ noted, stood }} day={what} />
      )}
    </div>
  );
}

const timeText = (at: number): string =>
  new Date(at).toLocaleString('sv-SE', { dateStyle: 'short', timeStyle: 'short' });
const whoText = (said: Said | null): string => (said ? `${said.by}, ${timeText(said.at)}` : '');

function PrintedDossier({ noted: { session, plan, bolts, leftOut } }: { noted: Noted }) {
  const { recording, record } = useWords();
  const words = recording.dossier;
  const made = dossier(session.log, plan, { bolts, leftOut });
  return (
    <section>
      <h2>{words.heading}</h2>
      <p>{words.caution}</p>
      <table className="printed-rows">
        <thead>
          <tr>
            {words.panelHeads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {made.panels.map(({ place, tag, turn, said }) => (
            <tr key={place}>
              <th scope="row">{place}</th>
              <td>{said ? (tag ?? words.unread) : words.empty}</td>
              <td>{turn ?? ''}</td>
              <td>{whoText(said)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table className="printed-rows">
        <thead>
          <tr>
            {words.seamHeads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {made.seams.map(({ seam, bolts: of, pass, said, samples, sealed }) => (
            <tr key={seam}>
              <th scope="row">{seam}</th>
              <td>{of ?? ''}</td>
              <td>{record.step[pass]}</td>
              <td>{whoText(said)}</td>
              <td>
                {samples.map((one) => words.sample(one.bolts, one.failed, one.torque)).join('; ')}
              </td>
              <td>{whoText(sealed)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>{words.rest}</h3>
      <ul>
        {made.anchors.map(({ anchor, driven, pulls }) => (
          <li key={anchor}>
            {record.anchor(anchor)}: {whoText(driven)}{' '}
            {pulls
              .map((one) => `${one.pull} N ${one.held ? record.step.held : record.step.notHeld}`)
              .join('; ')}
          </li>
        ))}
        {made.survey.map((one) => (
          <li key={`${one.at} ${JSON.stringify(one.reading)}`}>
            {Object.values(one.reading).join(' ')} m ({whoText(one)})
          </li>
        ))}
        {made.notes.map((one) => (
          <li key={`${one.at} ${one.text}`}>
            {one.about ? `${one.about.name}: ` : ''}
            {one.text} {one.photo ? words.photo(one.photo.hash) : ''} ({whoText(one)})
          </li>
        ))}
        {made.stages.map((one) => (
          <li key={`${one.what} ${one.stage}`}>
            {record.stage(one.stage)}: {words.stage[one.what]} ({whoText(one)})
          </li>
        ))}
        {made.stops.map(({ why, called, lifted }) => (
          <li key={called.at}>
            {record.stop[why]}: {whoText(called)} – {lifted ? whoText(lifted) : words.stillOn}
          </li>
        ))}
      </ul>
      <h3>{words.changes}</h3>
      <ul>
        {made.changes.map((one) => (
          <li key={`${one.change} ${one.at} ${JSON.stringify(one)}`}>
            {words.change(one)} ({whoText(one)})
          </li>
        ))}
      </ul>
    </section>
  );
}
