// `shellraise fitout`: what the shell is for once it stands: does a dish swing, what the wall costs its
// signal, how it is sealed and when, air, upkeep, and what else it could be.

import {
  defaultFitout,
  EARTH_PROMPTS,
  type FitOut,
  type FitoutSettings,
  fitOut,
  numberOrder,
  type PlaceId,
  readFitout,
  readLength,
  SNOW_WORDS,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { fitoutReport } from '../fitout-report.ts';
import { orEnd } from '../ground-site.ts';
import { type Chosen, choose } from '../job.ts';
import type { FitoutOptions } from '../options.ts';
import { print, printJson } from '../terminal.ts';

/** What every number of the command must carry. */
export const fitoutCaution =
  'What follows is an estimate and no design approval. Loss is reckoned for even, dry panels and an evenly lit dish: measure one panel before you trust it. Snow, openings, earth and lightning are decided by local codes and a licensed engineer or specialist.';

/** Runs the command; exit code 1 where the dish does not swing. */
export async function fitout(file: string, options: FitoutOptions): Promise<void> {
  const typed = typedIn(options);
  const chosen = await choose(file, options);
  const settings = settingsOf(file, chosen, typed);
  const answer = orEnd(file, fitOut(briefOf(chosen, options), settings));
  if (answer.swing !== null && !answer.swing.swings) process.exitCode = 1;
  if (options.json) printJson(documentOf(chosen, answer, options));
  else print(...fitoutReport(chosen, settings, answer, options, fitoutCaution));
}

function briefOf({ standing, numbers, loaded }: Chosen, { step }: FitoutOptions) {
  return {
    shell: standing.shell,
    numbers: numbers.numbers,
    order: numberOrder(standing.shell),
    windFrom: loaded.project?.wishes?.windFrom ?? 0,
    snow: loaded.project?.loads?.groundSnow ?? null,
    stepDeg: step,
  };
}

/** What the command line says. */
interface Typed {
  readonly wall?: readonly { material: string; thickness: number }[];
  readonly frequencies?: readonly number[];
  readonly diameter?: number;
}

/** Read before the shell is sought, so that a slip is told at once. */
const typedIn = ({ wall, frequency, dish }: FitoutOptions): Typed => ({
  ...(wall !== undefined && { wall: layersOf(wall) }),
  ...(frequency !== undefined && { frequencies: frequency }),
  ...(dish !== undefined && { diameter: diameterOf(dish) }),
});

/** What the file says, with what the command line says in its place. */
function settingsOf(
  file: string,
  { loaded }: Chosen,
  { diameter, ...typed }: Typed,
): FitoutSettings {
  const said = loaded.project?.fitout ?? defaultFitout;
  const dish = diameter === undefined ? said.dish : { ...said.dish, diameter };
  return orEnd(file, readFitout({ ...said, ...typed, dish }));
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
    upkeep: { ...upkeep, round: upkeep.round.map(named), snowWords: SNOW_WORDS },
    earth: EARTH_PROMPTS,
    ...rest,
    cautions: [fitoutCaution],
  };
}
