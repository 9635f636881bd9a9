// `shellraise fitout`: what the shell is for once it stands: its door, what passes it, does a dish swing,
// what the wall costs its signal, how it is sealed and when, air, upkeep, and what else it could be.

import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import {
  type Carry,
  carryTold,
  EARTH_PROMPTS,
  type FitOut,
  type FitoutSettings,
  fitOut,
  isFrequency,
  type LengthUnit,
  type PlaceId,
  readLength,
  readStl,
  SNOW_WORDS,
  shapeOfStl,
  TAKING_DOWN,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { doorOf, fitoutBrief, fitoutSettings, lastOf, openOf } from '../fitout-job.ts';
import { type Carried, fitoutReport } from '../fitout-report.ts';
import { orEnd } from '../ground-site.ts';
import { type Chosen, choose } from '../job.ts';
import type { FitoutOptions } from '../options.ts';
import { startProgress } from '../progress.ts';
import { print, printJson } from '../terminal.ts';

/** What every number of the command must carry. */
const fitoutCaution =
  'What follows is an estimate and no design approval. Loss is reckoned for even, dry panels and an evenly lit dish: measure one panel before you trust it. Snow, openings, earth and lightning are decided by local codes and a licensed engineer or specialist.';

/** Runs the command; exit code 1 where the dish does not swing, or a thing asked about does not pass. */
export async function fitout(file: string, options: FitoutOptions): Promise<void> {
  const typed = typedIn(options);
  const body = stlOf(options);
  const chosen = await choose(file, options);
  const settings = fitoutSettings(file, chosen, typed);
  const answer = orEnd(file, fitOut(fitoutBrief(chosen, options.step), settings));
  const open = openOf(file, chosen, settings);
  const progress = startProgress();
  try {
    const door = doorOf(chosen, open, true, (part) => progress.update(part, 'frame of the door'));
    const passed = { leftOut: open, placed: options.stage ?? null };
    const things = thingsOf(settings, options, body);
    const report = (part: number, { name }: Carry): void =>
      progress.update(part, `a way for ${name}`);
    const last = options.last
      ? things.map((thing) => lastOf(chosen, settings, open, thing, (part) => report(part, thing)))
      : [];
    const carried = (options.last ? [] : things).map((thing) =>
      carryTold(chosen.standing.shell, settings, passed, thing, (part) => report(part, thing)),
    );
    const passes =
      carried.every((one) => one.answer.status === 'passes') &&
      last.every((one) => one.last !== null);
    if (!passes || (answer.swing !== null && !answer.swing.swings)) process.exitCode = 1;
    progress.stop();
    if (options.json) printJson(documentOf(chosen, answer, { door, carried, last }, options));
    else
      print(
        ...fitoutReport(chosen, settings, answer, { door, carried, last }, options, fitoutCaution),
      );
  } finally {
    progress.stop();
  }
}

/** The body of an STL file that was named; null where none was. */
function stlOf({ pass, passUnit }: FitoutOptions): Carry | null {
  if (pass === undefined || !/\.stl$/i.test(pass)) {
    if (passUnit !== undefined) throw badInput('--pass-unit: only with --pass and an STL file');
    return null;
  }
  const read = readStl(bytesOf(pass), (passUnit ?? null) as LengthUnit | null);
  if (!read.ok)
    throw badInput(
      ...read.faults.map(({ path, found, expected }) =>
        path === 'unit'
          ? `--pass-unit: found none for ${pass}, expected ${expected}`
          : `${pass}: found ${found}, expected ${expected}`,
      ),
    );
  const { shape, roughly } = shapeOfStl(read.value);
  return { name: basename(pass), shape: shape as Carry['shape'], roughly };
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    throw badInput(
      `--pass: cannot read ${path}: ${error instanceof Error ? error.message : error}`,
    );
  }
}

function thingsOf(
  { carry }: FitoutSettings,
  { pass, stage, last }: FitoutOptions,
  body: Carry | null,
): readonly Carry[] {
  if (last && pass === undefined) throw badInput('--last: only with --pass');
  if (last && stage !== undefined) throw badInput('--last: not with --stage');
  if (body !== null) return [body];
  if (pass === undefined) {
    if (stage !== undefined) throw badInput('--stage: only with --pass');
    return [];
  }
  if (pass.trim() === 'all') return carry;
  return pass.split(',').map((part) => {
    const found = carry.find(({ name }) => name === part.trim());
    if (found === undefined)
      throw badInput(
        `--pass: found "${part.trim()}", expected "all", an STL file, or names of "fitout", "carry": ${carry.map(({ name }) => name).join(', ') || 'none'}`,
      );
    return found;
  });
}

/** What the command line says. */
interface Typed {
  readonly wall?: FitoutSettings['wall'];
  readonly frequencies?: number[];
  readonly diameter?: number;
  readonly door?: string[];
  readonly measured?: FitoutSettings['measured'];
  readonly skylineDeg?: number[];
}

/** Read before the shell is sought, so that a slip is told at once. */
const typedIn = ({ wall, frequency, dish, door, measured, skyline }: FitoutOptions): Typed => ({
  ...(measured !== undefined && { measured: measuredOf(measured) }),
  ...(skyline !== undefined && { skylineDeg: skylineOf(skyline) }),
  ...(wall !== undefined && { wall: layersOf(wall) }),
  ...(frequency !== undefined && { frequencies: [...frequency] }),
  ...(dish !== undefined && { diameter: diameterOf(dish) }),
  ...(door !== undefined && {
    door: door
      .split(',')
      .map((number) => number.trim())
      .filter((number) => number !== ''),
  }),
});

function measuredOf(text: string): FitoutSettings['measured'] {
  return text.split(',').map((part) => {
    const match = /^\s*([\d.]+)\s*([kMG])Hz\s+([\d.]+)\s*dB\s*$/i.exec(part);
    const unit = { k: 1e3, m: 1e6, g: 1e9 }[String(match?.[2]).toLowerCase()] ?? Number.NaN;
    const frequency = Math.round(Number(match?.[1]) * unit);
    const lossDb = Number(match?.[3]);
    if (!isFrequency(frequency) || !(lossDb >= 0 && lossDb <= 40))
      throw badInput(
        `--measured: found "${part.trim()}", expected a frequency of 30 MHz to 100 GHz and 0 to 40 dB, such as "1420.4 MHz 0.35 dB"`,
      );
    return { frequency, lossDb };
  });
}

function skylineOf(text: string): number[] {
  const degrees = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (degrees.length > 360 || !degrees.every((one) => one >= 0 && one <= 89))
    throw badInput(
      `--skyline: found "${text}", expected 1 to 360 numbers of 0 to 89° with commas between, in even steps from the datum`,
    );
  return degrees;
}

function diameterOf(text: string): number {
  const read = readLength(text.trim());
  if (!read.ok || read.value <= 0)
    throw badInput(`--dish: found ${text}, expected a diameter with its unit, such as "2.4 m"`);
  return read.value;
}

function layersOf(text: string): { material: string; thickness: number }[] {
  return text.split(';').map((part) => {
    const match = /^\s*([a-z][a-z -]*?)\s+([\d.]+.*)$/i.exec(part);
    const thickness = match === null ? null : readLength(String(match[2]).trim());
    if (match === null || !thickness?.ok || thickness.value <= 0)
      throw badInput(
        `--wall: found "${part.trim()}", expected a material and its thickness with its unit, such as "glass polyester 3 mm"`,
      );
    return { material: String(match[1]).toLowerCase(), thickness: thickness.value };
  });
}

function documentOf(
  { found, numbers, number, list, shape }: Chosen,
  answer: FitOut,
  { door, carried, last }: Carried,
  options: FitoutOptions,
): object {
  const named = (place: number): string | null => numbers.numbers[place as PlaceId] ?? null;
  const { swing, signal, seal, upkeep, ...rest } = answer;
  return {
    shape: { number: options.shape, of: found.shapes.length, radius: shape.radius },
    arrangement: { number, of: list.arrangements.length },
    swing: swing && { ...swing, nearest: { ...swing.nearest, place: named(swing.nearest.place) } },
    signal,
    seal: {
      ...seal,
      closing: seal.closing.map(({ step, place, seams }) => ({
        step: step + 1,
        place: named(place),
        seams,
      })),
    },
    door: door && {
      ...door,
      advice: { ...door.advice, cutOrder: door.advice.cutOrder.map(named) },
    },
    passes: carried.map(({ name, answer: found, roughly, placed }) => ({
      name,
      ...found,
      roughly,
      placed: placed.length,
    })),
    last: last.map((one) => ({
      ...one,
      last: one.last && {
        placed: one.last.placed,
        newest: named(one.last.carried.placed.at(-1) ?? -1),
        ...one.last.carried.answer,
      },
    })),
    upkeep: {
      ...upkeep,
      round: upkeep.round.map(named),
      down: upkeep.down.map(named),
      takingDown: TAKING_DOWN,
      snowWords: SNOW_WORDS,
    },
    earth: EARTH_PROMPTS,
    ...rest,
    cautions: [fitoutCaution],
  };
}
