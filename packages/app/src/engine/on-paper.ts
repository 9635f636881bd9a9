// What a question says for the papers of its answer: the words of the title block, the paper, the lengths.

import type { LengthsShown, Paper } from '@shellraise/core';

/** What papers say, and on which paper. */
export interface OnPaper {
  readonly facts: {
    readonly project: string;
    readonly sheet: string;
    readonly date: string;
    readonly assumes: string;
    readonly caution: string;
  };
  readonly paper: Paper;
  readonly lengths: LengthsShown;
}
