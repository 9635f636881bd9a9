// One shell that could stand, as a small drawing with what it is and what it lacks.

import type { Arrangement, WayUp } from '@shellraise/core';
import { memo, useEffect, useRef } from 'react';
import type { CandidatePicture } from '../../engine/drawings.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { leftOver } from './candidates.ts';

/** What a candidate shows. */
export interface CandidateProps {
  readonly index: number;
  readonly arrangement: Arrangement;
  readonly way: WayUp;
  /** Null until it is drawn. */
  readonly picture: CandidatePicture | null;
  readonly chosen: boolean;
  /** Called when it comes into sight without a picture. */
  readonly onSight: (index: number) => void;
  readonly onChoose: (index: number) => void;
}

/** The candidate. */
export const Candidate = memo(function Candidate(props: CandidateProps) {
  const { index, arrangement, way, picture, chosen, onSight, onChoose } = props;
  const { places: words } = useWords();
  const lengths = useLengths();
  const host = useRef<HTMLLIElement>(null);
  const wanted = picture === null;
  useEffect(() => {
    if (!wanted || !host.current) return;
    const watch = new IntersectionObserver(
      (seen) => {
        if (seen.some(({ isIntersecting }) => isIntersecting)) onSight(index);
      },
      { rootMargin: '300px' },
    );
    watch.observe(host.current);
    return () => watch.disconnect();
  }, [wanted, index, onSight]);
  const { cut, short } = arrangement;
  const crown = words.chooser.crown[way.at](way.kinds.join(' '));
  return (
    <li ref={host} className="candidate">
      <button
        type="button"
        aria-current={chosen ? 'true' : undefined}
        onClick={() => onChoose(index)}
      >
        <CandidateDrawing picture={picture} />
        <span className="candidate-height">
          {lengths.large(cut.height)}
          {chosen ? <span className="accent"> {words.chooser.chosen}</span> : null}
        </span>
        <span>{words.chooser.floor(lengths.large(2 * cut.floor.mean))}</span>
        <span>
          {words.plural(cut.places.length, 'place')},{' '}
          {cut.flat
            ? words.facts.flat
            : words.facts.uneven(lengths.small(cut.baseZ.max - cut.baseZ.min))}
        </span>
        <span>
          {short > 0 ? (
            <strong className="accent">{words.chooser.short(short)}</strong>
          ) : (
            words.facts.nothingShort
          )}
          , {words.chooser.left(leftOver(arrangement))}
        </span>
        <span className="quiet">{crown}</span>
      </button>
    </li>
  );
});

function CandidateDrawing({ picture }: { picture: CandidatePicture | null }) {
  const size = 52;
  if (!picture) return <svg viewBox={`0 0 ${size} ${size}`} aria-hidden="true" />;
  const { shades, ground, width } = picture;
  // All stand on one line, however tall they are.
  const lift = size - 1.5 - ground;
  return (
    <svg viewBox={`0 0 ${width} ${size}`} aria-hidden="true">
      <g transform={`translate(0 ${lift})`}>
        <path className="shade-0" d={shades[0]} />
        <path className="shade-1" d={shades[1]} />
        <path className="shade-2" d={shades[2]} />
      </g>
      <path className="ground" d={`M0 ${size - 1.5}H${width}`} />
    </svg>
  );
}
