// Rates of a crew out of its record's file.

import {
  describeFault,
  type RecordedRates,
  RecordLog,
  readRecordFile,
  recordedRates,
  recordPlan,
} from '@shellraise/core';
import { badInput } from './ending.ts';
import { readText } from './input.ts';
import type { Raised } from './raise-job.ts';

/** What the file shows of the crew. Ends the command where it is no record; lines that give no entry are
 * passed over, as on the phones. */
export async function recordedIn(
  file: string,
  { chosen, question: { crew, shell, holes } }: Raised,
): Promise<RecordedRates> {
  const { entries, faults } = readRecordFile(await readText(file));
  if (entries.length === 0 && faults.length > 0)
    throw badInput(...faults.slice(0, 5).map((fault) => `${file}: ${describeFault(fault)}`));
  const log = new RecordLog();
  for (const entry of entries) log.add(entry);
  return recordedRates(crew, log, recordPlan(shell, chosen.numbers), holes);
}
