// A second shell in the heap, and the way to look at it.

import type { Identification } from '@shellraise/core';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** The note; nothing where what is left over closes into nothing. */
export function BesidesNote({
  besides,
  shown,
  onShow,
}: {
  besides: Identification | null;
  /** Whether the drawing shows it now. */
  shown: boolean;
  onShow: (shown: boolean) => void;
}) {
  const { besides: words } = useWords().hard;
  const lengths = useLengths();
  const shape = besides?.shapes[0];
  if (!shape) return null;
  const says = shape.closed ? words.found : words.part;
  return (
    <section className="findings-list plain-list">
      <h2>{words.heading}</h2>
      <p>{says(lengths.large(2 * shape.radius), shape.shell.kind.length)}</p>
      <div className="presses screen-only">
        <button type="button" aria-pressed={shown} onClick={() => onShow(!shown)}>
          {shown ? words.back : words.show}
        </button>
      </div>
    </section>
  );
}
