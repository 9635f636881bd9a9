// Words of the printed dossier.

import type { RecordChange } from '@shellraise/core';
import { plural } from './counted.ts';

/** The dossier's words. */
export const dossierWords = {
  heading: 'As built',
  caution:
    'A record of what people said, no proof that it is so, and no design approval. Local codes and a licensed engineer or rigger decide.',
  panelHeads: ['Place', 'Tag', 'Turn', 'Said by'],
  seamHeads: ['Seam', 'Bolts', 'Pass', 'Said by', 'Checked', 'Sealed'],
  unread: 'tag not read',
  empty: 'empty',
  sample: (bolts: number, failed: number, torque: number | null) =>
    `${plural(bolts, 'bolt')}, ${failed} failed${torque === null ? '' : `, ${torque} N·m`}`,
  rest: 'Anchors, survey, notes, stages, stops',
  photo: (hash: string) => `[photo ${hash}]`,
  stage: { done: 'done', 'closed down': 'closed down for the night' },
  stillOn: 'STILL ON',
  changes: 'Changes',
  change: (one: RecordChange): string => {
    const panel = (tag: string | null): string => (tag === null ? 'a panel' : `panel ${tag}`);
    if (one.change === 'taken back') return `taken back: ${one.entry.what.kind}`;
    if (one.change === 'taken out') return `${panel(one.tag)} out of ${one.place}`;
    if (one.change === 'swapped')
      return `${panel(one.to)} in place of ${panel(one.from)} at ${one.place}`;
    if (one.change === 'not good')
      return `panel ${one.tag} ${one.condition === 'scrap' ? 'broken' : 'to be mended'}`;
    return `seam ${one.seam} from ${one.from} to ${one.to}`;
  },
} as const;
