// Section through the middle of a ball that the ground cut, or of two halves with a straight course
// between them. Drawn in the ball's radius: x right, y down.

import type { Shape } from '@shellraise/core';
import { useId } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** The ground's cut and the straight course, in words and drawn; nothing where there is neither. */
export function SectionNote({ shape }: { shape: Shape }) {
  const { section: words } = useWords().hard;
  const lengths = useLengths();
  const { cut, course, radius } = shape;
  if (!cut && !course) return null;
  return (
    <figure className="section-note">
      <Section
        cut={cut ? cut.height / radius : null}
        floor={cut ? cut.baseRadius / radius : 0}
        course={course ? course.height / radius : 0}
        label={words.label}
        heightText={cut ? lengths.large(Math.abs(cut.height)) : lengths.large(course?.height ?? 0)}
        floorText={lengths.large(2 * (cut ? cut.baseRadius : radius))}
      />
      <figcaption>
        {cut ? (
          <p>
            {words.cut(
              lengths.large(Math.abs(cut.height)),
              lengths.small(cut.heightSd),
              cut.height < 0,
              lengths.large(2 * cut.baseRadius),
            )}
          </p>
        ) : null}
        {course ? <p>{words.course(lengths.large(course.height), course.panels)}</p> : null}
      </figcaption>
    </figure>
  );
}

const SIZE = 100;

interface SectionProps {
  /** Height of the cut above the middle, in radii, upwards; null where there is none. */
  readonly cut: number | null;
  readonly floor: number;
  /** Height of the straight course, in radii. */
  readonly course: number;
  readonly label: string;
  readonly heightText: string;
  readonly floorText: string;
}

function Section({ cut, floor, course, label, heightText, floorText }: SectionProps) {
  const id = useId();
  const half = (SIZE * course) / 2;
  const low = cut === null ? SIZE + half : -SIZE * cut;
  const ball = `M${-SIZE} ${-half}A${SIZE} ${SIZE} 0 0 1 ${SIZE} ${-half}V${half}A${SIZE} ${SIZE} 0 0 1 ${-SIZE} ${half}Z`;
  const top = -SIZE - half - 8;
  const bottom = Math.max(SIZE + half, low) + 34;
  return (
    <svg
      className="section-drawing"
      viewBox={`-150 ${top} 300 ${bottom - top}`}
      role="img"
      aria-label={label}
    >
      {cut === null ? null : <path className="below" d={ball} />}
      <clipPath id={id}>
        <path d={`M-150 ${top}H150V${cut === null ? bottom : low}H-150Z`} />
      </clipPath>
      <path className="ball" d={ball} clipPath={`url(#${id})`} />
      {course > 0 ? (
        <>
          <path className="ring" d={`M${-SIZE} ${-half}H${SIZE}M${-SIZE} ${half}H${SIZE}`} />
          <Dimension from={-half} to={half} text={heightText} />
        </>
      ) : null}
      {cut === null ? null : (
        <>
          <path className="ground" d={`M-140 ${low}H140`} />
          <path className="middle" d={`M-112 0H112`} />
          {course > 0 ? null : <Dimension from={0} to={low} text={heightText} />}
          <path className="across" d={`M${-SIZE * floor} ${low + 10}H${SIZE * floor}`} />
          <text x="0" y={low + 27} textAnchor="middle">
            {floorText}
          </text>
        </>
      )}
    </svg>
  );
}

function Dimension({ from, to, text }: { from: number; to: number; text: string }) {
  return (
    <>
      <path className="across" d={`M0 ${from}V${to}`} />
      <text x="6" y={(from + to) / 2 + 5}>
        {text}
      </text>
    </>
  );
}
