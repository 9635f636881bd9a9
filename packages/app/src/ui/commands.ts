// What can be done from anywhere, with its keys: one table for the menu, the keyboard and the sheet
// of keys. Keys need Ctrl (or ⌘) or Alt, so that typing never sets one off.

import { demoProject } from 'virtual:demo';
import { openChosen } from '../files/open-file.ts';
import { exportCsv, saveProject } from '../files/save-file.ts';
import { type App, sheets } from '../state/app-state.ts';
import { emptyProject } from '../state/empty-project.ts';
import type { Words } from '../words/words.ts';

/** A command. */
export interface Command {
  readonly id: string;
  readonly label: string;
  /** As written for a person, `Ctrl+S`; empty where it has none. */
  readonly keys: string;
  readonly run: () => void;
}

/** A page of the frame that lies over the sheet. */
export type Overlay = 'projects' | 'keys' | 'view';

/** The commands of the project menu, in its order. */
export function menuCommands(
  app: App,
  words: Words['frame'],
  show: (overlay: Overlay) => void,
): readonly Command[] {
  const { menuItems } = words;
  return [
    { id: 'open', label: menuItems.open, keys: 'Ctrl+O', run: () => void openChosen(app, words) },
    {
      id: 'save',
      label: menuItems.save,
      keys: 'Ctrl+S',
      run: () => void saveProject(app, words, false),
    },
    {
      id: 'saveAs',
      label: menuItems.saveAs,
      keys: 'Ctrl+Shift+S',
      run: () => void saveProject(app, words, true),
    },
    { id: 'csv', label: menuItems.csv, keys: '', run: () => void exportCsv(app, words) },
    {
      id: 'pocket',
      label: menuItems.pocket,
      keys: '',
      run: () => void savePocket(app, words),
    },
    { id: 'print', label: menuItems.print, keys: 'Ctrl+P', run: () => print() },
    { id: 'projects', label: menuItems.projects, keys: 'Alt+P', run: () => show('projects') },
    {
      id: 'empty',
      label: menuItems.empty,
      keys: '',
      run: () => void app.openNew(emptyProject('')).then(() => app.goTo('pile')),
    },
    { id: 'demo', label: menuItems.demo, keys: '', run: () => void app.openDemo(demoProject()) },
    { id: 'keys', label: menuItems.shortcuts, keys: 'Ctrl+/', run: () => show('keys') },
  ];
}

/** Commands with keys that stand in no menu. */
export function otherCommands(
  app: App,
  words: Words['frame'],
  show: (overlay: Overlay) => void,
): readonly Command[] {
  return [
    { id: 'undo', label: words.undo, keys: 'Ctrl+Z', run: app.undo },
    { id: 'redo', label: words.redo, keys: 'Ctrl+Shift+Z', run: app.redo },
    { id: 'view', label: words.view, keys: 'Alt+V', run: () => show('view') },
    ...sheets.map((sheet, i) => ({
      id: sheet,
      label: words.toSheet(words.sheets[sheet]),
      keys: `Alt+${i + 1}`,
      run: () => app.goTo(sheet),
    })),
  ];
}

async function savePocket(app: App, words: Words['frame']): Promise<void> {
  const { savePocketCopy } = await import('../files/pocket-copy.ts');
  await savePocketCopy(app, words);
}
