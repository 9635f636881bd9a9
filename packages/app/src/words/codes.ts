// Words of a record that goes from screen to camera, as codes.

import { plural } from './counted.ts';

/** Words of the codes. */
export const codesWords = {
  show: 'Show as codes',
  read: 'Read codes',
  title: 'The record as codes',
  part: (part: number, of: number) => `Code ${part} of ${of}`,
  picture: (part: number, of: number) => `QR code ${part} of ${of}`,
  how: 'Hold the other device’s camera on this screen. The codes go round by themselves until it has them all; their order does not matter.',
  none: 'Nothing new to show: all that is noted came with this copy.',
  tooMany: 'The record is too long for codes. Save it as a file.',
  pause: 'Stop going round',
  go: 'Go round by themselves',
  back: 'Back',
  next: 'Next',
  readTitle: 'Codes from another device',
  readHow:
    'Hold the other device’s screen in front of the camera, or take photos of its codes and choose them here.',
  noCamera:
    'There is no camera for this page: the browser gives one only over https or on this computer itself, and only when allowed. Photos of the codes can be chosen.',
  choose: 'Choose photos',
  waiting: 'No code seen yet.',
  have: (have: number, of: number) => `${have} of ${plural(of, 'code')} read.`,
  missing: (parts: string) => `Missing: ${parts}.`,
  broken: 'These codes do not fit together. Read them once more.',
  unread: (count: number) => `${plural(count, 'photo')} without a code that could be read.`,
  brought: (count: number) =>
    count === 0
      ? 'All read: nothing new in it.'
      : `All read: ${plural(count, 'new entry', 'new entries')}.`,
} as const;
