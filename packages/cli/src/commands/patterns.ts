// `shellraise patterns`: a scale model of this very shell. Each sort of pattern is a maker of files; they
// are all made before the first is written.

import {
  type FaceWords,
  netRoom,
  netScales,
  netSheets,
  paperNet,
  type SheetFacts,
  toSvg,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { lengthsIn } from '../lengths.ts';
import { keptOpenings } from '../openings.ts';
import type { PatternsOptions } from '../options.ts';
import { fittedWords } from '../tape.ts';
import { count, print, printJson } from '../terminal.ts';
import { type OutFile, writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { cutOf } from './patterns-cut.ts';
import { printOf } from './patterns-print.ts';
import { numbersText } from './places.ts';

/** What is made: its files and a line that tells how it came out. */
export interface Made {
  readonly files: readonly OutFile[];
  readonly words: string;
  /** The same as plain data. */
  readonly told: object;
}

/** What every maker goes by. */
export interface PatternJob {
  readonly chosen: Chosen;
  readonly options: PatternsOptions;
  /** Place → what stands on its face. */
  readonly faces: readonly FaceWords[];
  /** Places that stay open, by index. */
  readonly leftOut: readonly number[];
  readonly facts: (sheet: string) => SheetFacts;
}

/** Height of a tab, millimetres. */
const TAB = 5;

/** Runs the command: all files are written, or none. */
export async function patterns(file: string, options: PatternsOptions): Promise<void> {
  const chosen = await choose(file, options);
  const job = jobOf(chosen, options);
  const made = madeAs(job);
  writeAll(options.out, made.files);
  if (options.json)
    printJson({
      folder: options.out,
      as: options.as,
      scale: options.scale,
      leftOut: job.leftOut.map((p) => chosen.numbers.numbers[p]),
      ...made.told,
      files: made.files.map(({ name }) => name),
    });
  else print(made.words, writtenText(options.out, made.files), numbersText(chosen));
}

function madeAs(job: PatternJob): Made {
  switch (job.options.as) {
    case 'net':
      return netOf(job, false);
    case 'strips':
      return netOf(job, true);
    case 'print':
      return printOf(job);
    case 'cut':
      return cutOf(job);
  }
}

function jobOf(chosen: Chosen, options: PatternsOptions): PatternJob {
  const { standing, loaded, numbers } = chosen;
  const kinds = fittedKinds(chosen);
  const lengths = lengthsIn(options.lengths);
  return {
    chosen,
    options,
    faces: numbers.numbers.map((number, p) => {
      const kind = kinds[standing.shell.kind[p] as number];
      return { number, kind: kind?.id ?? '?', mark: kind?.marks[0] ?? '' };
    }),
    leftOut: leftOutOf(chosen, options.open),
    facts: (sheet) => ({
      project: loaded.title,
      sheet,
      date: dateOf(options),
      assumes: `Arrangement ${chosen.number}. ${fittedWords(loaded.pile, lengths)}`
        .replaceAll('"', '″')
        .replaceAll("'", '′'),
      caution: 'A model shows the shape. It proves nothing about strength.',
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

/** The paper net, in the fewest pieces or course by course. */
function netOf(job: PatternJob, strips: boolean): Made {
  const { chosen, options, faces, leftOut } = job;
  const { shell, courses } = chosen.standing;
  const { scale, paper } = options;
  const facts = job.facts(strips ? 'Paper net by courses' : 'Paper net');
  const sheetOptions = { paper, lengths: options.lengths };
  const room = netRoom(facts, sheetOptions);
  const { least, most } = netScales(shell, faces, room, TAB);
  if (least > most)
    throw badInput(
      `--scale: on ${paper} no scale both holds the largest panel and lets the numbers be read; a larger --paper may`,
    );
  if (scale < least || scale > most)
    throw badInput(
      scale < least
        ? `--scale: found ${scale}, at which a panel is larger than the room on ${paper}; the nearest that works is ${least}`
        : `--scale: found ${scale}, at which the place numbers can't be read; the nearest that works is ${most}`,
    );
  const net = paperNet(shell, {
    scale,
    room,
    tab: TAB,
    leftOut,
    ...(strips && { courses: courses.course }),
  });
  if (!net.ok) throw badInput(`--open: found every place left out, expected some to stay`);
  const pieces = net.pieces.length;
  const proof =
    pieces === net.leastPieces
      ? 'shown to be the fewest'
      : `no fewer than ${net.leastPieces} are possible`;
  const name = strips ? 'strips' : 'net';
  return {
    files: numbered(
      name,
      netSheets(shell, net, faces, facts, sheetOptions).map((sheet) => toSvg(sheet)),
    ),
    words: `Net at 1 : ${scale}: ${count(pieces, 'piece')} on ${count(net.sheets, 'sheet')} of ${paper}; ${proof}. ${count(net.taped.length, 'seam')} to tape, where a slit leaves no room for a tab.`,
    told: {
      pieces,
      leastPieces: net.leastPieces,
      sheets: net.sheets,
      taped: net.taped.length,
    },
  };
}

/** Sheets as files, numbered where there are several. */
const numbered = (name: string, texts: readonly string[]): OutFile[] =>
  texts.map((text, i) => ({ name: `${name}${texts.length > 1 ? `-${i + 1}` : ''}.svg`, text }));
