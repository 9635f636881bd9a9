// A project written to a file: where the browser can write files it writes the same one again,
// whole or not at all; elsewhere the file is downloaded.

import { quickEngine } from '../engine/bridge.ts';
import { type App, docOf } from '../state/app-state.ts';
import type { Words } from '../words/words.ts';

interface WritableFile {
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  readonly name: string;
}

type Picker = (options: {
  suggestedName: string;
  types: { description: string; accept: Record<string, string[]> }[];
}) => Promise<WritableFile>;

/** Project → the file it was last written to. */
const written = new Map<string, WritableFile>();

/** Writes the project: to its file, or with `as` to one that is asked for. */
export async function saveProject(app: App, words: Words['frame'], as: boolean): Promise<void> {
  const { projectId } = app.state.getState();
  const { project, drafts } = docOf(app.state.getState());
  // Without the engine the file has other line breaks, and everything that is in it.
  const text = await quickEngine
    .ask('writeProject', project)
    .answer.catch(() => `${JSON.stringify(project, null, 2)}\n`);
  const name = `${fileName(project.title || words.untitled)}.json`;
  try {
    const file = await target(projectId, name, as);
    if (file) await writeWhole(file, text);
    else download(name, text, 'application/json');
    const left = drafts.length > 0 ? ` ${words.draftsLeft(drafts.length)}` : '';
    app.tell('note', `${words.written(file?.name ?? name)}${left}`);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    download(name, text, 'application/json');
    app.tell('note', words.writtenElsewhere(name));
  }
}

/** Writes the readings as a spreadsheet. */
export async function exportCsv(app: App, words: Words['frame']): Promise<void> {
  const { project } = docOf(app.state.getState());
  const text = await quickEngine.ask('writePileCsv', project.pile).answer.catch(() => null);
  if (text === null) app.tell('fault', words.engineDied);
  else download(`${fileName(project.title || words.untitled)}.csv`, text, 'text/csv');
}

/** Hands a text or bytes to the browser as a file. */
export function download(name: string, data: string | Uint8Array, type: string): void {
  const sort = typeof data === 'string' ? `${type};charset=utf-8` : type;
  const url = URL.createObjectURL(new Blob([data as BlobPart], { type: sort }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

async function target(projectId: string, name: string, as: boolean): Promise<WritableFile | null> {
  const known = written.get(projectId);
  if (known && !as) return known;
  const picker = (globalThis as { showSaveFilePicker?: Picker }).showSaveFilePicker;
  if (!picker || !as) return null;
  const file = await picker({
    suggestedName: name,
    types: [{ description: 'Shellraise project', accept: { 'application/json': ['.json'] } }],
  });
  written.set(projectId, file);
  return file;
}

async function writeWhole(file: WritableFile, text: string): Promise<void> {
  const stream = await file.createWritable();
  await stream.write(text);
  await stream.close();
}

/** A title as a file's name on any system. */
export const fileName = (title: string): string =>
  title
    .trim()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'shell';
