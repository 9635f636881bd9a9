// One shell that could stand, as a small drawing with what it is and what it lacks.

import type { Arrangement, WayUp } from '@shellraise/core';
import { memo, useEffect, useRef } from 'react';
import type { CandidatePicture } from '../../engine/drawings.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { countedKinds, leftOver } from './candidates.ts';

/** What a candidate shows. */
export interface CandidateProps {
  readonly index: number;
  readonly arrangement: Arrangement;
  readonly way: WayUp;
  /** Null until it is drawn. */
  readonly picture: CandidatePicture | null;
  /** Height of the drawing over its width: room for the tallest. */
  readonly tallness: number;
  readonly chosen: boolean;
  /** Called when it comes into sight without a picture. */
  readonly onSight: (index: number) => void;
  readonly onChoose: (index: number) => void;
}

/** The candidate. */
export const Candidate = memo(function Candidate(props: CandidateProps) {
  const { index, arrangement, way, picture, tallness, chosen, onSight, onChoose } = props;
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
  const crown = words.chooser.crown[way.at](countedKinds(way.kinds));
  return (
    <li ref={host} className="candidate">
      <button
        type="button"
        aria-current={chosen ? 'true' : undefined}
        onClick={() => onChoose(index)}
      >
        <CandidateDrawing picture={picture} tallness={tallness} />
        <span className="candidate-height">
          {lengths.large(cut.height)}
          {chosen ? <span className="accent"> {words.chooser.chosen}</span> : null}
        </span>
        <span>{words.chooser.floor(lengths.large(2 * cut.floor.mean))}</span>
        <span>
          {words.plural(cut.places.length, 'place')},{' '}
          {cut.flat
            ? words.facts.flat
            : words.facts.uneven(lengths.side(cut.baseZ.max - cut.baseZ.min))}
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

/** The drawing of one: all stand on one line, however tall they are. */
export function CandidateDrawing({
  picture,
  tallness,
  across = 1,
}: {
  picture: CandidatePicture | null;
  /** Height of the drawing over its width. */
  tallness: number;
  /** Part of the ball's width that is drawn, in the middle: smaller things larger. */
  across?: number;
}) {
  const whole = picture?.width ?? 52;
  const width = across * whole;
  const left = (whole - width) / 2;
  const height = width * tallness;
  const foot = height - 0.5;
  return (
    <svg viewBox={`${left} 0 ${width} ${height}`} aria-hidden="true">
      {picture ? (
        <g transform={`translate(0 ${foot - picture.ground})`}>
          <path className="shade-0" d={picture.shades[0]} />
          <path className="shade-1" d={picture.shades[1]} />
          <path className="shade-2" d={picture.shades[2]} />
        </g>
      ) : null}
      <path className="ground" d={`M${left} ${foot}h${width}`} />
    </svg>
  );
}
