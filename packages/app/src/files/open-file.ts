// A file that was chosen or dropped, on any sheet: a project opens; a spreadsheet opens as a new
// pile, or adds its readings to the pile at hand. A faulty file changes nothing and says all.

import { describeFault, type LengthUnit, type Project, type ReadingRow } from '@shellraise/core';
import type { FileRead } from '../engine/api.ts';
import { quickEngine } from '../engine/bridge.ts';
import { type App, DEMO } from '../state/app-state.ts';
import type { Words } from '../words/words.ts';
import { chooseFiles } from './choose-file.ts';

/** Largest file that is looked at, bytes. */
const LARGEST = 20 * 1024 * 1024;
/** Faults listed in a message, at most. */
const LISTED = 8;

/** Opens a file; every end is told to the person. Returns whether it was opened. */
export async function openFile(
  app: App,
  words: Words['frame'],
  file: File,
  unit?: LengthUnit,
): Promise<boolean> {
  if (file.size > LARGEST) return told(app, words.tooLarge(file.name));
  const text = await file.text().catch(() => null);
  if (text === null || text.includes('\0') || text.includes('\ufffd'))
    return told(app, words.notText(file.name));
  let read: FileRead;
  try {
    read = await quickEngine.ask('readFile', file.name, text, unit).answer;
  } catch {
    return told(app, words.engineDied);
  }
  if (!read.ok) return refuse(app, words, file, read);
  if (read.from === 'spreadsheet' && app.state.getState().projectId !== DEMO)
    addReadings(app, words, file.name, read.project.pile.readings);
  else {
    await app.openNew(titled(read.project, file.name));
    app.tell('note', words.opened(file.name));
  }
  return true;
}

/** Asks the person for files, and opens them. */
export async function openChosen(app: App, words: Words['frame']): Promise<void> {
  for (const file of await chooseFiles()) await openFile(app, words, file);
}

function told(app: App, text: string): false {
  app.tell('fault', text);
  return false;
}

function refuse(
  app: App,
  words: Words['frame'],
  file: File,
  { faults, newer, unitless }: Extract<FileRead, { ok: false }>,
): false {
  if (newer) return told(app, words.newerFile(file.name));
  const lines = faults.slice(0, LISTED).map(describeFault);
  if (faults.length > LISTED) lines.push(words.moreFaults(faults.length - LISTED));
  const units = unitless ? (['mm', 'cm', 'm', 'in', 'ft'] as const) : [];
  const choices = units.map((unit) => ({
    label: unit,
    act: () => void openFile(app, words, file, unit),
  }));
  const text = words.readFault(file.name, faults.length);
  app.tell('fault', unitless ? `${text} ${words.whichUnit}` : text, lines, choices);
  return false;
}

function addReadings(
  app: App,
  words: Words['frame'],
  name: string,
  readings: readonly ReadingRow[],
): void {
  app.change(
    ({ project }) => {
      project.pile.readings.push(...(readings as ReadingRow[]));
      return undefined;
    },
    { label: words.addOf(name) },
  );
  app.tell('note', words.openedAddition(name, readings.length));
}

const titled = (project: Project, name: string): Project =>
  project.title === '' ? { ...project, title: name.replace(/\.[^.]+$/, '') } : project;
