// Files dropped anywhere on the page are opened; while one is held over it the page says so.

import { useEffect, useState } from 'react';
import { hearDrops } from '../files/choose-file.ts';
import { openFile } from '../files/open-file.ts';
import { useWords } from '../words/words.ts';
import { useApp } from './app-context.tsx';

/** Hears drops for the whole page. */
export function DropZone() {
  const words = useWords().frame;
  const app = useApp();
  const [held, setHeld] = useState(false);
  useEffect(
    () =>
      hearDrops(setHeld, async (files) => {
        for (const file of files) await openFile(app, words, file);
      }),
    [app, words],
  );
  return held ? <div className="drop">{words.drop}</div> : null;
}
