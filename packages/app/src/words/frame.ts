// Words of the frame: phases, title block, menus, saving, messages.

/** Words of the frame. */
export const frameWords = {
  product: 'Shellraise',
  sheets: {
    pile: 'Pile',
    shape: 'Shape',
    places: 'Places',
    ground: 'Ground',
    raising: 'Raising',
    record: 'Record',
    fitout: 'Fit-out',
    papers: 'Papers',
  },
  phases: 'Phases',
  untitled: 'A pile without a name',
  opening: 'opening …',
  skip: 'Skip to the sheet',
  block: {
    project: 'project',
    sheet: 'sheet',
    scale: 'scale',
    lengths: 'lengths',
    assumes: 'assumes',
    radius: 'radius',
    date: 'date',
    saved: 'saved',
  },
  lengths: { metric: 'millimetres and metres', inch: 'feet and inches' },
  saving: {
    demo: 'the demo, nothing to save',
    saving: 'saving …',
    saved: 'on this device',
    refused: 'NOT SAVED',
  },
  savingRefused: {
    full: 'This browser has no room left: nothing you change is kept. Save the project as a file now, then remove projects that you no longer need.',
    unavailable:
      'This browser keeps nothing for this page (a private window does that): save the project as a file before you close it.',
    fault: 'This browser could not keep the change: save the project as a file now.',
  },
  pocketSaved: (name: string) =>
    `${name} is saved. It opens in a phone’s browser from its own files, with no server and no network, and carries the project and the record up to now. What is noted in it comes back from its Record sheet, as a file or as codes.`,
  noPocket:
    'The pocket copy was not made: its page comes from the laptop that serves Shellraise, and it could not be reached.',
  pocketUnread:
    'The project that this pocket copy carries could not be read. Ask for another copy.',
  pocketChanged:
    'You changed this project in this browser: your own stays open. The one that came with this copy was left out; its record was added to yours.',
  undo: 'Undo',
  redo: 'Redo',
  undoOf: (what: string) => `Undo: ${what}`,
  redoOf: (what: string) => `Redo: ${what}`,
  menu: 'Project',
  menuItems: {
    open: 'Open a file …',
    save: 'Save as a file',
    saveAs: 'Save a copy as …',
    csv: 'Save the tally (CSV)',
    pocket: 'Save a pocket copy (app and project in one file)',
    empty: 'Start an empty pile',
    demo: 'Open the demo',
    projects: 'Projects on this device …',
    print: 'Print this sheet',
    shortcuts: 'Keys',
  },
  view: 'View',
  schemes: { system: 'as the device', light: 'light', dark: 'dark', outdoor: 'outdoors' },
  scheme: 'Look',
  lengthSystem: 'Lengths',
  metric: 'metric',
  inch: 'inch',
  drop: 'Drop a project file or a spreadsheet (CSV) to open it',
  close: 'Close',
  cancel: 'Cancel',
  again: 'Try again',
  offlineReady: 'Ready to work offline: this page now opens without a network.',
  updateReady: 'A newer version is here. It is used once every page of Shellraise is closed.',
  demoIntro:
    'This is the demo: 205 panels of an orchard shell that never was. Look round, change what you like, and start your own pile when you are ready.',
  startOwn: 'Start my own pile',
  readFault: (name: string, count: number) =>
    `${name} was not opened: ${count === 1 ? 'it has a fault' : `it has ${count} faults`}. Nothing was changed.`,
  newerFile: (name: string) =>
    `${name} comes from a newer Shellraise. It was left untouched; open it with that version, or reload this page to get it.`,
  notText: (name: string) =>
    `${name} is neither a project file nor a spreadsheet saved as CSV. Nothing was changed.`,
  tooLarge: (name: string) =>
    `${name} is larger than 20 MB: too large for a project. Nothing was changed.`,
  whichUnit: 'One unit for all lengths of this file that have none?',
  opened: (name: string) => `${name} is open.`,
  openedAddition: (name: string, count: number) =>
    `${count} readings of ${name} were added to this pile.`,
  addOf: (name: string) => `add ${name}`,
  moreFaults: (count: number) => `… and ${count} more`,
  written: (name: string) => `Written to ${name}.`,
  writtenElsewhere: (name: string) =>
    `That file cannot be written to. ${name} went to your downloads instead.`,
  draftsLeft: (count: number) =>
    count === 1
      ? 'One row of the tally is not whole yet and is not in the file.'
      : `${count} rows of the tally are not whole yet and are not in the file.`,
  toSheet: (sheet: string) => `To the ${sheet} sheet`,
  openIt: 'Open',
  keptAt: (when: string) => `kept ${when}`,
  find: 'Find a place, a mark or a tag',
  sheetKeys: [
    { label: 'In a drawing: to the neighbour', keys: '← ↑ → ↓' },
    { label: 'In a drawing: nearer, farther', keys: '+ −' },
    { label: 'In the tally: next cell, next row', keys: 'Enter' },
    { label: 'Leave a cell as it was; close what lies on top', keys: 'Esc' },
  ],
  keysNote: 'On a Mac, ⌘ stands for Ctrl.',
  storedNewer: 'A newer Shellraise kept that project: it was left untouched.',
  storedDamaged: (detail: string) => `That project cannot be read any more: ${detail}`,
  storedMissing: 'That project is no longer on this device.',
  projectsTitle: 'Projects on this device',
  projectsEmpty:
    'Nothing is kept yet. The demo becomes a project of its own with your first change.',
  panels: (count: number) => (count === 1 ? '1 panel' : `${count} panels`),
  remove: 'Remove',
  removed: (title: string) => `${title} was removed.`,
  keys: 'Keys',
  sheetFault:
    'This sheet could not be shown: a fault of ours. Your project is safe; save it as a file if you like, and try again.',
  engineDied: 'The reckoning stopped unexpectedly. Nothing of yours is lost.',
  caution:
    'Estimates, no design approval. People get hurt putting domes up: local codes and a licensed engineer or rigger decide.',
};
