// For paper alone: the page of the day, or the as-built dossier on core's sheets.

import { dossier, dossierSheets, withPageNumbers } from '@shellraise/core';
import { dayOf, timeOf } from '../../clock.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { PrintedPapers } from '../papers/printed-papers.tsx';
import type { Stood } from '../places/stood.ts';
import { useAssumes } from '../places/use-assumes.ts';
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
  if (what === 'dossier') return <PrintedDossier {...{ noted, title }} />;
  return (
    <div className="print-only printed-record">
      <p className="printed-head">{title}</p>
      <DayPaper {...{ noted, stood }} day={what} />
    </div>
  );
}

function PrintedDossier({
  noted: { session, plan, bolts, leftOut },
  title,
}: {
  noted: Noted;
  title: string;
}) {
  const { system } = useLengths();
  const assumes = useAssumes();
  const drawings = dossierSheets(
    dossier(session.log, plan, { bolts, leftOut }),
    { project: title, sheet: 'As built', date: dayOf(Date.now()), assumes },
    { paper: system === 'inch' ? 'Letter' : 'A4', timeText },
  );
  return <PrintedPapers drawings={withPageNumbers(drawings, `${title}: as built`)} />;
}

const timeText = (at: number): string => `${dayOf(at)} ${timeOf(at)}`;
