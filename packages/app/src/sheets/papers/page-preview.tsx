// The pages of a set one by one, the same drawing that is printed.

import type { Drawing } from '@shellraise/core';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { Pager } from '../../ui/pager.tsx';
import { useWords } from '../../words/words.ts';

/** One page with the ways to the others. */
export function PagePreview({
  title,
  drawings,
  page,
  onPage,
}: {
  title: string;
  drawings: readonly Drawing[];
  /** From 0. */
  page: number;
  onPage: (page: number) => void;
}) {
  const words = useWords().papers;
  const drawing = drawings[page];
  if (!drawing) return null;
  const { length } = drawings;
  return (
    <section className="ground-drawing" aria-label={words.preview(title, page + 1, length)}>
      <div className="ground-drawing-head screen-only">
        <h2>{title}</h2>
        <Pager words={words} page={page} count={drawings.length} onPage={onPage} />
      </div>
      <div className="ground-paper paper-page" {...reachable}>
        <svg
          viewBox={`0 0 ${drawing.width} ${drawing.height}`}
          role="img"
          aria-label={drawing.description}
        >
          <SvgItems items={drawing.items} />
        </svg>
      </div>
    </section>
  );
}

/** A box that scrolls must be reachable by keyboard. */
const reachable = { tabIndex: 0 };
