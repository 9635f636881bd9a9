// The flat plan on the screen: the drawing people point at. What is drawn once lies below, what is
// selected above it. Moved by drag, zoomed by wheel, two fingers, keys and buttons; the arrow keys
// go from place to place.

import type { Fill, Item, Shell } from '@shellraise/core';
import { type KeyboardEvent, memo, useId, useMemo, useRef } from 'react';
import type { PlanPicture } from '../../engine/drawings.ts';
import { useWords } from '../../words/words.ts';
import { SvgItems } from '../svg-items.tsx';
import { DatumArrow } from './datum-arrow.tsx';
import { directions, firstPlace, neighbourTowards } from './navigate.ts';
import { type Picked, pickAt, pickNearest, type Spot, spotAt } from './pick.ts';
import { planLayers, recoloured } from './recolour.ts';
import { SelectionLayer } from './selection-layer.tsx';
import { usePlanView } from './use-viewport.ts';

/** What the plan shows. */
export interface PlanViewProps {
  readonly shell: Shell;
  readonly picture: PlanPicture;
  /** Place → its fill. */
  readonly fills: readonly Fill[];
  readonly picked: Picked | null;
  /** Places shown up: all those of a kind. */
  readonly marked: readonly number[];
  readonly onPick: (picked: Picked | null) => void;
  /** A long press, or Enter with Shift. */
  readonly onHold?: (picked: Picked | null) => void;
  /** A key went to a place, where that is to be less than a press; Enter then presses. */
  readonly onGo?: (place: number) => void;
  /** What a tap means; else whatever lies nearest. */
  readonly only?: Picked['type'];
  /** Degrees clockwise by which the picture is turned: the datum's arrow goes along. */
  readonly turned?: number;
  /** Names the drawing. */
  readonly label: string;
  /** What is selected, in words. */
  readonly says: string;
  /** Pixels a millimetre of the drawing. */
  readonly onZoom: (pixels: number) => void;
}

/** Room around the drawing, millimetres; above it stands the datum's arrow. */
const MARGIN = 4;
const ARROW = 12;
const STEP = 1.5;

/** The flat plan. */
export function PlanView(props: PlanViewProps) {
  const { shell, picture, fills, picked, marked, onPick, onHold, onGo, only, label, says, onZoom } =
    props;
  const { turned = 0 } = props;
  const words = useWords().places.plan;
  const id = useId();
  const host = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const layers = useMemo(() => planLayers(picture.items), [picture]);
  const places = useMemo(() => recoloured(layers.places, fills), [layers, fills]);
  // Another drawing in the same box leaves the view where it is.
  const allRound = turned !== 0;
  const box = useMemo(() => roomFor(picture.box, allRound), [picture.box, allRound]);
  const viewBox = `${box.x} ${box.y} ${box.width} ${box.height}`;
  const at = (spot: Spot, reach: number): Picked | null =>
    only ? pickNearest(shell, picture, spot, only) : pickAt(shell, picture, spot, reach);
  const { controls, whole } = usePlanView({
    host,
    sheet,
    box,
    type: picture.type,
    onPick: (spot, reach) => onPick(at(spot, reach)),
    onHold: onHold && ((spot, reach) => onHold(at(spot, reach))),
    onZoom,
  });

  const goTo = (place: number | null): void => {
    if (place === null) return;
    if (onGo) onGo(place);
    else onPick({ type: 'place', place });
    controls.show(spotAt(picture.labels, place));
  };
  const zoom = (factor: number): void =>
    controls.zoom(factor, picked?.type === 'place' ? spotAt(picture.labels, picked.place) : null);
  const press = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const direction: Spot | undefined = directions[event.key];
    if (direction)
      goTo(
        picked?.type === 'place'
          ? neighbourTowards(shell, picture, picked.place, direction)
          : firstPlace(picture),
      );
    else if (event.key === 'Enter' && onGo && picked) {
      if (event.shiftKey) onHold?.(picked);
      else onPick(picked);
    } else if (event.key === '+' || event.key === '=') zoom(STEP);
    else if (event.key === '-') zoom(1 / STEP);
    else if (event.key === '0') controls.reset();
    else if (event.key === 'Escape' && picked) onPick(null);
    else return;
    event.preventDefault();
  };

  return (
    <div className="plan-view">
      <div
        ref={host}
        className={whole ? 'plan-window' : 'plan-window moved'}
        data-pannable
        data-takes-finger={whole ? undefined : true}
        role="application"
        aria-roledescription={words.role}
        aria-label={label}
        aria-describedby={id}
        {...takesKeys}
        onKeyDown={press}
      >
        <div ref={sheet} className="plan-sheet">
          <svg className="plan" viewBox={viewBox} aria-hidden="true">
            <Layer name="places" items={places} />
            <Layer name="lines" items={layers.lines} />
            <Layer name="numbers" items={layers.labels} />
            <DatumArrow top={picture.box[1]} label={words.datum} turned={turned} />
          </svg>
          <svg className="plan plan-over" viewBox={viewBox} aria-hidden="true">
            <SelectionLayer
              shell={shell}
              picture={picture}
              labels={layers.labels}
              picked={picked}
              marked={marked}
            />
          </svg>
        </div>
      </div>
      <span id={id} className="read-out">
        {words.keys}
      </span>
      <p className="read-out" role="status">
        {says}
      </p>
      <div className="plan-zoom screen-only">
        <button
          type="button"
          className="nearer"
          aria-label={words.nearer}
          onClick={() => zoom(STEP)}
        >
          +
        </button>
        <button
          type="button"
          className="farther"
          aria-label={words.farther}
          disabled={whole}
          onClick={() => zoom(1 / STEP)}
        >
          −
        </button>
        {whole ? null : (
          <button type="button" className="all" onClick={controls.reset}>
            {words.whole}
          </button>
        )}
      </div>
    </div>
  );
}

/** A drawing is no control, and yet it takes keys. */
const takesKeys = { tabIndex: 0 };

const Layer = memo(function Layer({ name, items }: { name: string; items: readonly Item[] }) {
  return (
    <g className={`plan-${name}`}>
      <SvgItems items={items} />
    </g>
  );
});

/** Room around the drawing; all round where the arrow may stand anywhere. */
function roomFor([x, y, width, height]: PlanPicture['box'], allRound: boolean) {
  const round = MARGIN + (allRound ? ARROW : 0);
  return {
    x: x - round,
    y: y - MARGIN - ARROW,
    width: width + 2 * round,
    height: height + MARGIN + ARROW + round,
  };
}
