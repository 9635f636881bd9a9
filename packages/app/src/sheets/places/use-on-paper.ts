// What a sheet says on its papers: the words of the title block, the paper, the lengths.

import { useMemo } from 'react';
import type { OnPaper } from '../../engine/on-paper.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** The words for a sheet's papers; `sheet`: its number and name. */
export function useOnPaper(sheet: string, assumes: string, caution: string): OnPaper {
  const { frame } = useWords();
  const { system } = useLengths();
  const title = useAppState((state) => projectOf(state).title);
  return useMemo(
    (): OnPaper => ({
      facts: {
        project: title || frame.untitled,
        sheet,
        date: new Date().toLocaleDateString('en-GB', { dateStyle: 'medium' }),
        assumes,
        caution,
      },
      paper: system === 'inch' ? 'Letter' : 'A4',
      lengths: system,
    }),
    [title, frame, sheet, assumes, caution, system],
  );
}
