// Changes to the crew that the lead wants to know the worth of: kept beside the sheet, each once.

import { type CrewChange, type CrewSettings, changeWords } from '@shellraise/core';

/** The changes with one more, the same one never twice. */
export const withChange = (
  changes: readonly CrewChange[],
  change: CrewChange,
): readonly CrewChange[] =>
  changes.some((one) => changeWords(one) === changeWords(change)) ? changes : [...changes, change];

/** Those that can still be asked: of people who come. */
export const askable = (
  changes: readonly CrewChange[],
  { people }: Pick<CrewSettings, 'people'>,
): readonly CrewChange[] =>
  changes.filter(
    (one) => one.what !== 'without' || people.some((person) => person.name === one.name),
  );
