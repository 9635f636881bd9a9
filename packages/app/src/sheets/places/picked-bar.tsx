// On a phone: what is selected, at the lower edge while its details are out of sight, and the way to
// them.

import { useRef } from 'react';
import { useWords } from '../../words/words.ts';
import { type Stood, usePicked } from './stood.ts';

/** The bar; nothing where no place is selected. */
export function PickedBar({ stood }: { stood: Stood }) {
  const words = useWords().places.details;
  const bar = useRef<HTMLDivElement>(null);
  const { picked } = usePicked(stood);
  if (picked?.type !== 'place') return null;
  const { standing, kinds } = stood;
  const kind = kinds[standing.standing.shell.kind[picked.place] as number];
  const show = (): void => {
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const below = bar.current?.nextElementSibling;
    below?.scrollIntoView({ behavior: calm ? 'auto' : 'smooth', block: 'start' });
  };
  return (
    <div ref={bar} className="picked-bar screen-only">
      <button type="button" onClick={show}>
        <span className="picked-number">{standing.numbers[picked.place]}</span>
        <span>
          {words.kind(kind?.id ?? '?')}
          {kind?.hand ? `, ${words.hand[kind.hand]}` : ''}
        </span>
        <span className="read-out">{words.toDetails}</span>
        <span aria-hidden="true">▾</span>
      </button>
    </div>
  );
}
