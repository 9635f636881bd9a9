// A stage in 3D: the panels that stand, what moves tinted, props as heavy lines, and the movement slowly
// to and fro: the free one, or how the wind bends it. Who wants no motion sees it drawn: arrows from where
// the corners are to where they go.

import { type Fill, hubPoint, type Item, type Shell, tints } from '@shellraise/core';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { PanelsView } from '../../drawing/shell-view/panels-view.tsx';
import { ballRoom, cornerAt, firstView, poseOf, seenAt } from '../../drawing/shell-view/pose.ts';
import { stillItems } from '../../drawing/shell-view/still.ts';
import { SvgItems } from '../../drawing/svg-items.tsx';
import type { Bent } from '../../engine/bent.ts';
import {
  type StabilityDetail,
  type StabilityMode,
  stabilityModes,
} from '../../engine/stability.ts';
import type { StageDetail } from '../../engine/stages.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useMedia } from '../../ui/use-media.ts';
import { useWords } from '../../words/words.ts';
import { clockwise } from '../places/door/doors.ts';
import { movable, movedPanels } from './moved-panels.ts';
import { useQuantities } from './use-ground.ts';

/** Once to and fro, milliseconds. */
const PERIOD = 5000;
/** The movement is drawn so far, parts of the radius. */
const FAR = 0.09;

const moving: Fill = { tint: tints.rose, hatch: null };
const resting: Fill = { tint: null, hatch: null };

/** What is seen of a stage. */
export interface StageSeen extends Pick<StageDetail, 'placed' | 'movement'> {
  /** Bent by its weight and the wind; left out where nobody asked. */
  readonly bent?: StageDetail['bent'];
  readonly answer: Pick<StageDetail['answer'], 'moving' | 'props'>;
  /** How it buckles, snaps through and swings; left out where nobody asked. */
  readonly stability?: StabilityDetail | null;
}

/** A movement that can be shown. */
interface Shown {
  readonly key: 'free' | 'wind' | StabilityMode;
  readonly movement: Float64Array;
}

/** What can be shown of a stage: what was asked for last first. */
function shownOf({ movement, bent, stability }: StageSeen): readonly Shown[] {
  const of = (key: Shown['key'], one: Float64Array | null | undefined): readonly Shown[] =>
    one ? [{ key, movement: one }] : [];
  return [
    ...stabilityModes.flatMap((key) => of(key, stability?.movements[key])),
    ...of('free', movement),
    ...of('wind', bent?.movement),
  ];
}

/** The view. */
export function StageView({
  shell,
  numbers,
  detail,
}: {
  shell: Shell;
  numbers: readonly string[];
  detail: StageSeen;
}) {
  const words = useWords().ground.stages;
  const calm = useMedia('(prefers-reduced-motion: reduce)');
  const [stopped, setStopped] = useState(false);
  const modes = useWords().groundStability;
  // What is chosen counts until buckling is reckoned: then that is shown.
  const [chosen, setShown] = useState<{ key: Shown['key']; of: StabilityDetail | null } | null>(
    null,
  );
  const { stability = null } = detail;
  const { placed, answer, bent = null } = detail;
  const choices = useMemo(() => shownOf(detail), [detail]);
  const { key: shown, movement } = choices.find(
    ({ key }) => chosen?.of === stability && key === chosen.key,
  ) ??
    choices[0] ?? { key: null, movement: null };
  const isFree = shown === 'free' || shown === null;
  const oneWay = shown === 'wind' || shown === 'snapThrough';
  const parts = useMemo(() => movable(shell, placed), [shell, placed]);
  const moves = useMemo(() => new Set(answer.moving), [answer]);
  const props = useMemo(
    () => answer.props.map((hub) => hubPoint(shell, hub as Parameters<typeof hubPoint>[1])),
    [answer, shell],
  );
  const ground = useMemo(
    () => shell.hubs.reduce((low, z, i) => (i % 3 === 2 ? Math.min(low, z) : low), 0),
    [shell],
  );
  const runs = movement !== null && !calm && !stopped;
  const swung = useSwing(runs);
  // A free movement goes either way; what is bent goes from its rest to where the wind has it.
  const swing = oneWay ? (runs ? Math.abs(swung) : 1) : swung;
  const panels = useMemo(() => {
    const moved = movedPanels(parts, movement, swing * FAR * shell.radius, props, ground);
    // What moves freely is shown up as one kind is, from outside and inside.
    const kind = moved.place.map((place) => (isFree && moves.has(numbers[place] ?? '') ? 1 : 0));
    return { ...moved, kind };
  }, [parts, movement, swing, props, ground, shell, moves, numbers, isFree]);
  const fillOf = useCallback(
    (rank: number): Fill =>
      isFree && moves.has(numbers[parts.still.place[rank] as number] ?? '') ? moving : resting,
    [moves, numbers, parts, isFree],
  );
  const label = words.solid(placed.length);
  return (
    <section className="ground-drawing" aria-label={label}>
      <div className="ground-drawing-head">
        <h2>{label}</h2>
        {choices.length > 1 ? (
          <fieldset className="screen-only">
            <legend className="read-out">{words.movementOf}</legend>
            {choices.map(({ key }) => (
              <button
                key={key}
                type="button"
                aria-pressed={shown === key}
                onClick={() => setShown({ key, of: stability })}
              >
                {key === 'free' || key === 'wind' ? words.movementShown[key] : modes.shown[key]}
              </button>
            ))}
          </fieldset>
        ) : null}
        {movement !== null && !calm ? (
          <button type="button" className="screen-only" onClick={() => setStopped(!stopped)}>
            {stopped ? words.play : words.still}
          </button>
        ) : null}
      </div>
      {calm && movement !== null ? (
        <MovementDrawn {...{ shell, parts, movement, fillOf, label }} />
      ) : (
        <PanelsView panels={panels} fillOf={fillOf} label={label} kind={1} steady />
      )}
      {shown === 'wind' && bent !== null ? (
        <BentNote bent={bent} radius={shell.radius} propped={props.length > 0} />
      ) : shown === null || shown === 'wind' ? null : (
        <p className="ground-note quiet">{shown === 'free' ? words.moves : modes.note[shown]}</p>
      )}
    </section>
  );
}

/** How far it bends, in which wind, drawn how much larger, and what was supposed for it. */
function BentNote({ bent, radius, propped }: { bent: Bent; radius: number; propped: boolean }) {
  const words = useWords().ground.stages;
  const forms = useWords().groundForms.parts;
  const lengths = useLengths();
  const { speed } = useQuantities();
  const { most, gust, from, supposed } = bent;
  const times = Math.round((FAR * radius) / most);
  return (
    <p className="ground-note quiet">
      {words.bent(lengths.small(most), speed(gust), clockwise(from), propped)} {words.drawn(times)}{' '}
      {supposed.length > 0 ? forms.supposed(supposed) : ''}
    </p>
  );
}

/** From −1 to 1 and back, slowly; 0 while it does not run. */
function useSwing(runs: boolean): number {
  const [swing, setSwing] = useState(0);
  useEffect(() => {
    if (!runs) {
      setSwing(0);
      return;
    }
    const since = performance.now();
    let frame = 0;
    let last = 0;
    const step = (now: number): void => {
      frame = requestAnimationFrame(step);
      if (now - last < EVERY) return;
      last = now;
      setSwing(Math.sin((2 * Math.PI * (now - since)) / PERIOD));
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [runs]);
  return swing;
}

/** Milliseconds from picture to picture. */
const EVERY = 50;
const WIDTH = 200;
const HEIGHT = 150;

function MovementDrawn({
  shell,
  parts,
  movement,
  fillOf,
  label,
}: {
  shell: Shell;
  parts: ReturnType<typeof movable>;
  movement: Float64Array;
  fillOf: (rank: number) => Fill;
  label: string;
}) {
  const items = useMemo((): readonly Item[] => {
    const pose = poseOf(firstView, ballRoom(shell.radius), WIDTH / HEIGHT, false);
    const at = (point: readonly [number, number, number]): readonly [number, number] => {
      const [x, y] = seenAt(pose, WIDTH / HEIGHT, point);
      return [((1 + x) * WIDTH) / 2, ((1 - y) * HEIGHT) / 2];
    };
    const still = stillItems(parts.still, pose, { width: WIDTH, height: HEIGHT, fillOf });
    const arrows = Array.from(parts.hubs, (corner): readonly Item[] => {
      const from = cornerAt(parts.still, corner);
      const [dx, dy, dz] = [0, 1, 2].map(
        (k) => 2 * FAR * shell.radius * (movement[3 * corner + k] as number),
      ) as [number, number, number];
      if (Math.hypot(dx, dy, dz) < 0.02 * shell.radius) return [];
      return arrow(at(from), at([from[0] + dx, from[1] + dy, from[2] + dz]));
    }).flat();
    return [...still, ...arrows];
  }, [shell, parts, movement, fillOf]);
  return (
    <svg className="ground-still" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <SvgItems items={items} />
    </svg>
  );
}

function arrow(from: readonly [number, number], to: readonly [number, number]): readonly Item[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(dx, dy);
  if (size < 0.5) return [];
  const [ux, uy] = [(dx / size) * 2.6, (dy / size) * 2.6];
  const line = (points: readonly (readonly [number, number])[]): Item => ({
    type: 'path',
    points,
    closed: false,
    stroke: { weight: 'bold', ink: 'accent' },
  });
  return [
    line([from, to]),
    line([
      [to[0] - ux - uy * 0.5, to[1] - uy + ux * 0.5],
      to,
      [to[0] - ux + uy * 0.5, to[1] - uy - ux * 0.5],
    ]),
  ];
}
