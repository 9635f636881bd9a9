// `shellraise patterns`: a scale model of this very shell. All files are made before the first is written.

import {
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  modelOf,
  orientShell,
  readLength,
  sidePatterns,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { lengthsIn } from '../lengths.ts';
import { keptOpenings } from '../openings.ts';
import type { PatternsOptions } from '../options.ts';
import { fittedWords } from '../tape.ts';
import { print, printJson } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { numbersText } from './places.ts';

/** Runs the command: all files are written, or none. */
export async function patterns(file: string, options: PatternsOptions): Promise<void> {
  const chosen = await choose(file, options);
  const ground = groundOf(chosen, options);
  const made = madeOrEnd(modelOf(options.as, ground, settingsOf(options)));
  writeAll(options.out, made.files);
  if (options.json)
    printJson({
      folder: options.out,
      as: options.as,
      scale: options.scale,
      leftOut: ground.leftOut.map((p) => chosen.numbers.numbers[p]),
      ...made.told,
      files: made.files.map(({ name }) => name),
    });
  else print(made.words, writtenText(options.out, made.files), numbersText(chosen));
}

/** What was made; ends the command where the core refused. */
function madeOrEnd(made: ModelMade | ModelRefused): ModelMade {
  if (!made.ok) throw badInput(`--${made.setting}: found ${made.found}, ${made.expected}`);
  return made;
}

function settingsOf(options: PatternsOptions): ModelSettings {
  const { scale, paper, joint, snap = false } = options;
  const mm = (option: string, text: string, least?: 'from 0'): number =>
    lengthOf(option, text, least) * 1000;
  const sizes = (option: string, text: string, many: number): number[] =>
    sizesOf(option, text, many).map((metres) => Math.round(metres * 1e6) / 1000);
  return {
    scale,
    paper,
    joint,
    snap,
    sheet: sizes('--sheet', options.sheet, 2) as [number, number],
    thickness: mm('--thickness', options.thickness),
    kerf: mm('--kerf', options.kerf, 'from 0'),
    wall: mm('--wall', options.wall ?? (options.as === 'snap' ? '3 mm' : '1.6 mm')),
    bed: sizes('--bed', options.bed, 3) as [number, number, number],
    clearance: mm('--clearance', options.clearance, 'from 0'),
    peg: mm('--peg', options.peg),
    flange: mm('--flange', options.flange, 'from 0'),
    plate: mm('--plate', options.plate),
    hole: mm('--hole', options.hole),
    floor: mm('--floor', options.floor, 'from 0'),
  };
}

function groundOf(chosen: Chosen, options: PatternsOptions): ModelGround {
  const { standing, loaded, numbers } = chosen;
  const kinds = fittedKinds(chosen);
  const lengths = lengthsIn(options.lengths);
  const leftOut = leftOutOf(chosen, options.open);
  const { pile, takeoff, holes } = loaded;
  const patterns = sidePatterns(kinds, takeoff, holes);
  return {
    making: {
      allowance: pile.measuredAlong === 'hubs' ? 0 : pile.hubAllowance,
      holes: (k) => (patterns[k] ?? []).map((pattern) => pattern?.holes ?? null),
      whole: {
        shell: orientShell(chosen.shape.shell, chosen.way.crown, chosen.datumTurn),
        leftOut: leftOut.map((p) => standing.places[p] as number),
      },
    },
    shell: standing.shell,
    course: standing.courses.course,
    faces: numbers.numbers.map((number, p) => {
      const kind = kinds[standing.shell.kind[p] as number];
      return { number, kind: kind?.id ?? '?', mark: kind?.marks[0] ?? '' };
    }),
    kinds: kinds.map(({ id }) => id),
    leftOut,
    title: loaded.title,
    lengths: options.lengths,
    facts: (sheet) => ({
      project: loaded.title,
      sheet,
      date: dateOf(options),
      assumes: `Arrangement ${chosen.number}. ${fittedWords(loaded.pile, lengths)}`
        .replaceAll('"', '″')
        .replaceAll("'", '′'),
      ...(options.as !== 'full-size' && {
        caution: 'A model shows the shape. It proves nothing about strength.',
      }),
    }),
  };
}

/** Places that stay open: those of the openings that the file keeps, and those asked for. */
function leftOutOf(chosen: Chosen, asked: string | undefined): number[] {
  const { numbers } = chosen;
  const typed = (asked ?? '').split(/[\s,]+/).filter((number) => number !== '');
  const own = typed.map((number) => {
    const p = numbers.numbers.indexOf(number);
    if (p < 0)
      throw badInput(
        `--open: found ${number}, expected places by number, such as ${numbers.numbers[0]}`,
      );
    return p;
  });
  return [...new Set([...keptOpenings(chosen), ...own])].sort((a, b) => a - b);
}

/** A length above 0, metres, to the micrometre; 0 as well where that is told. */
function lengthOf(option: string, text: string, least: 'above 0' | 'from 0' = 'above 0'): number {
  const read = readLength(text.trim());
  if (!read.ok || read.value < 0 || (read.value === 0 && least === 'above 0'))
    throw badInput(
      `${option}: found ${text}, expected a length ${least} with its unit, such as "3 mm"${least === 'from 0' ? '; the nearest that works is "0 mm"' : ''}`,
    );
  return Math.round(read.value * 1e6) / 1e6;
}

/** So many lengths above 0, metres; a unit at the end stands for all. */
function sizesOf(option: string, text: string, count: number): number[] {
  const parts = text.split(/[x×]/i).map((part) => part.trim());
  const unit = /[a-z"'″′]+$/i.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const sizes = parts.map((part) => readLength(/\d$/.test(part) ? `${part} ${unit}` : part));
  const values = sizes.map((read) => (read.ok ? read.value : 0));
  if (values.length !== count || values.some((value) => !(value > 0)))
    throw badInput(
      `${option}: found ${text}, expected ${count} lengths such as "${['600', '400', '250'].slice(0, count).join(' x ')} mm"`,
    );
  return values;
}
