// What the Fit-out sheet asks: the swing, seal, air, upkeep and room at once; the sky, a door's frame and a
// thing's way each on its own, for they take longer. The drawings are those of the papers.

import {
  airSheets,
  type CarryAnswer,
  carryThrough,
  type DoorAdvice,
  type DoorFrame,
  type Drawing,
  defaultFitout,
  doorAdvice,
  doorFrame,
  doorOfPlaces,
  doorSheets,
  type FitOut,
  type FitoutSettings,
  type ForecastHour,
  fitOut,
  floorOf,
  frameParts,
  type LastPassing,
  type LengthUnit,
  lastPassing,
  mountOf,
  numberOrder,
  openPlaces,
  placeMasses,
  type Read,
  readStl,
  roomSheets,
  type SignalAnswer,
  sealSheets,
  shapeOfStl,
  signalSheets,
  swingSheets,
  type ThingShape,
  unknownParts,
  upkeepSheets,
  waySheets,
} from '@shellraise/core';
import type { OnPaper } from './on-paper.ts';
import type { ShellParts, StandingShell } from './standing-shell.ts';

/** A shell with what was said of its use, and what its papers say. */
export interface FitoutQuestion extends StandingShell, OnPaper {
  readonly settings: FitoutSettings | undefined;
  /** Radians from the datum; null: not told. */
  readonly windFrom: number | null;
  /** Snow on the ground, pascals; null: not told. */
  readonly snow: number | null;
  readonly forecast: readonly ForecastHour[];
}

/** All but the sky, with the drawings. */
export interface FitoutTold {
  /** Without signal. */
  readonly answer: FitOut;
  readonly swing: readonly Drawing[];
  readonly seal: readonly Drawing[];
  readonly upkeep: readonly Drawing[];
  readonly air: readonly Drawing[];
  readonly room: readonly Drawing[];
}

/** One frequency, without the pointings of its map. */
export type SignalTold = Omit<SignalAnswer, 'sky'> & {
  readonly sky: Omit<NonNullable<SignalAnswer['sky']>, 'points'> | null;
  readonly drawings: readonly Drawing[];
};

/** Degrees between pointings on the screen: 1° is a second or more on a phone. */
const STEP = 2;

const briefOf = (question: FitoutQuestion) => ({
  shell: question.shell,
  numbers: question.numbers,
  order: numberOrder(question.shell),
  windFrom: question.windFrom ?? 0,
  snow: question.snow,
  stepDeg: STEP,
  forecast: question.forecast,
});

const onPaper = ({ paper, lengths }: FitoutQuestion) => ({ paper, lengths });

/** All but the sky; faults where what was said can't be. */
export function fitoutTold(question: FitoutQuestion): Read<FitoutTold> {
  const { shell, numbers, leftOut, facts, settings = defaultFitout } = question;
  const open = openPlaces(numbers, leftOut, settings);
  if (!open.ok) return open;
  const read = fitOut(briefOf(question), { ...settings, frequencies: [] });
  if (!read.ok) return read;
  const answer = read.value;
  const { dish, margin } = settings;
  const floor = floorOf(shell);
  return {
    ok: true,
    value: {
      answer,
      swing:
        dish === null || answer.swing === null
          ? []
          : swingSheets(
              {
                ...{ shell, numbers, dish, margin, floor },
                mount: mountOf(settings),
                swing: answer.swing,
              },
              facts,
              onPaper(question),
            ),
      seal: sealSheets(
        { shell, numbers, leftOut, seal: answer.seal, leaks: answer.leaks },
        facts,
        onPaper(question),
      ),
      upkeep: upkeepSheets({ shell, leftOut, upkeep: answer.upkeep }, facts, onPaper(question)),
      air: airSheets({ shell, floor, air: answer.air }, facts, onPaper(question)),
      room: roomSheets({ shell, floor, settings, use: answer.use }, facts, onPaper(question)),
    },
  };
}

/** What the shell costs the signal, frequency by frequency; `onProgress` is told 0 … 1. */
export function fitoutSignal(
  question: FitoutQuestion,
  onProgress?: (done: number) => void,
): Read<readonly SignalTold[]> {
  const { settings = defaultFitout, facts } = question;
  const told: SignalTold[] = [];
  for (const [i, frequency] of settings.frequencies.entries()) {
    const read = fitOut(briefOf(question), { ...settings, frequencies: [frequency] });
    if (!read.ok) return read;
    onProgress?.((i + 1) / settings.frequencies.length);
    const { signal, horizon } = read.value;
    for (const { sky, ...one } of signal) {
      if (sky === null) {
        told.push({ ...one, sky, drawings: [] });
        continue;
      }
      const { points: _, ...kept } = sky;
      const about = { frequency, stepDeg: STEP, horizon };
      const drawings = signalSheets(sky, about, facts, onPaper(question));
      told.push({ ...one, sky: kept, drawings });
    }
  }
  return { ok: true, value: told };
}

/** A door: its places, and what the frame is made of. */
export interface FitoutDoorQuestion extends FitoutQuestion, ShellParts {
  readonly places: readonly number[];
  /** Whether the frame is reckoned too: seconds. */
  readonly withFrame: boolean;
}

/** A door with its drawing. */
export interface FitoutDoorTold {
  readonly advice: DoorAdvice;
  readonly frame: DoorFrame | null;
  readonly drawings: readonly Drawing[];
}

/** The door; `onProgress` is told 0 … 1. */
export function fitoutDoor(
  question: FitoutDoorQuestion,
  onProgress?: (done: number) => void,
): Read<FitoutDoorTold> {
  const { shell, numbers, kinds, places, windFrom, facts } = question;
  const door = doorOfPlaces(shell, places);
  const advice = doorAdvice(shell, door, windFrom ?? 0);
  const parts = frameParts(question.parts ?? unknownParts);
  const masses = placeMasses(shell, kinds, question.loads?.panelMass ?? null);
  const massOf = (place: number): number | null => masses(place)?.value ?? null;
  const { doorFrame: section } = question.settings ?? defaultFitout;
  const frame = question.withFrame
    ? doorFrame(shell, door, parts, { massOf, section, snow: question.snow }, onProgress)
    : null;
  const drawings = doorSheets(
    { shell, numbers, advice, frame, windFrom },
    facts,
    onPaper(question),
  );
  return { ok: true, value: { advice, frame, drawings } };
}

/** Through what: so many panels placed, the finished shell (null), or the latest moment that is found. */
export type CarryWhen = number | 'last' | null;

/** One thing of the list, and through what it must pass. */
export interface FitoutCarryQuestion extends FitoutQuestion {
  readonly index: number;
  readonly placed: CarryWhen;
}

/** How it passes, with its drawing. */
export interface FitoutCarryTold {
  readonly carried: CarryAnswer | null;
  /** The latest moment, where that was asked: `carried` is then the way of that moment, null where none
   * was found. */
  readonly latest: LastPassing | null;
  readonly drawings: readonly Drawing[];
}

/** A thing's way; `onProgress` is told 0 … 1. */
export function fitoutCarry(
  question: FitoutCarryQuestion,
  onProgress?: (done: number) => void,
): Read<FitoutCarryTold> {
  const { shell, numbers, leftOut, settings = defaultFitout, index, placed, facts } = question;
  const thing = settings.carry[index];
  if (thing === undefined)
    return {
      ok: false,
      faults: [{ path: 'fitout.carry', found: `thing ${index + 1}`, expected: 'one of the list' }],
    };
  const about = {
    ...{ shell, leftOut },
    order: numberOrder(shell),
    flange: Math.max(0.005, settings.seams.depth),
  };
  const look = onProgress ? { onProgress } : {};
  const latest = placed === 'last' ? lastPassing(about, thing, look) : null;
  const carried =
    placed === 'last'
      ? (latest?.last?.carried ?? null)
      : carryThrough({ ...about, placed }, thing, look);
  const floor = floorOf(shell);
  const drawings =
    carried === null
      ? []
      : waySheets({ shell, numbers, leftOut, floor, carried }, facts, onPaper(question));
  return { ok: true, value: { carried, latest, drawings } };
}

/** The shape of a body that comes as an STL file, and whether it only holds it. */
export function stlShape(
  bytes: Uint8Array,
  unit: LengthUnit | null,
): Read<{ readonly shape: ThingShape; readonly roughly: boolean }> {
  const read = readStl(bytes, unit);
  if (!read.ok) return read;
  const { shape, roughly } = shapeOfStl(read.value);
  if (shape.form !== 'hull') return { ok: true, value: { shape: shape as ThingShape, roughly } };
  return {
    ok: true,
    value: {
      shape: { form: 'hull', points: shape.points.map(([x, y, z]) => [x, y, z]) },
      roughly,
    },
  };
}
