// The papers in the engine's thread: every set made once for a question, told by its pages, its drawings
// handed out set by set, and sets as one PDF. By the same makers as the command's; the order of work is the one
// that the Raising sheet found.

import {
  type Drawing,
  type MadeSheets,
  makeSheets,
  type NamedFile,
  type PaperQuestion,
  type SheetJob,
  type SheetMaker,
  sheetJob,
  sheetMakers,
  svgFiles,
  toPdf,
  zipOf,
} from '@shellraise/core';
import { keepLast } from './keep-last.ts';
import { pdfTools } from './pdf-tools.ts';

/** A set by its name, before it is made. */
export interface SetNamed {
  readonly name: string;
  /** What it is, a few words. */
  readonly what: string;
  /** Whether it takes an order of work. */
  readonly ordered: boolean;
}

/** What came of a set. */
export interface SetTold extends SetNamed {
  /** 0 where the project has nothing for it, or it was not made. */
  readonly pages: number;
  /** Width and height of its first page, millimetres; null without pages. */
  readonly size: readonly [number, number] | null;
  /** Why it was not made; null where it was. */
  readonly why: readonly string[] | null;
}

/** Sets as one file. */
export interface PapersPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Letters that no typeface of the file has: they stand as their numbers. */
  readonly missing: readonly string[];
}

/** Every set, in the order in which they are told. */
export const paperList = (): SetNamed[] => sheetMakers.map(named);

const named = ({ name, what, ordered = false }: SheetMaker): SetNamed => ({ name, what, ordered });

/** Makes the sets of these names. */
export function paperSets(question: PaperQuestion, names: readonly string[]): SetTold[] {
  const made = setsOf(question);
  return names.map((name) => toldOf(makerOf(name), made(name)));
}

function toldOf(maker: SheetMaker, set: MadeSheets): SetTold {
  const drawings = set.made ? set.drawings : [];
  const [first] = drawings;
  return {
    ...named(maker),
    pages: drawings.length,
    size: first ? [first.width, first.height] : null,
    why: set.made ? null : set.lines,
  };
}

/** The pages of a set; none where it was not made. */
export const paperPages = (question: PaperQuestion, name: string): readonly Drawing[] => {
  const set = setsOf(question)(name);
  return set.made ? set.drawings : [];
};

/** Every page of these sets as SVG: the file where it is one, else all as one zip. */
export function papersSvg(question: PaperQuestion, names: readonly string[]): NamedFile {
  const files = names.flatMap((name) => svgFiles(name, paperPages(question, name)));
  const [only] = files;
  if (only && files.length === 1) return only;
  return { name: `${names.length === 1 ? names[0] : 'papers'}.zip`, text: zipOf(files) };
}

/** Sets as one PDF, a page each; `onProgress` is told 0 … 1. */
export async function papersPdf(
  question: PaperQuestion,
  names: readonly string[],
  onProgress?: (done: number) => void,
): Promise<PapersPdf> {
  const drawings = names.flatMap((name, i) => {
    const pages = paperPages(question, name);
    onProgress?.((0.5 * (i + 1)) / names.length);
    return pages;
  });
  const { Maker, faces } = await pdfTools();
  const title = `${question.title}: ${names.map((name) => name.replaceAll('-', ' ')).join(', ')}`;
  const onPage = (page: number): void => onProgress?.(0.5 + (0.5 * page) / drawings.length);
  const facts = { title, date: question.date, faces, onPage };
  const { bytes, missing } = await toPdf(drawings, facts, Maker);
  return { bytes, missing, pages: drawings.length };
}

function makerOf(name: string): SheetMaker {
  const maker = sheetMakers.find((one) => one.name === name);
  if (!maker) throw new RangeError(`no set is called ${name}`);
  return maker;
}

/** An order is only sought where none is handed in. */
const SEARCH = { tries: 200, seed: 1 };

/** The sets of a question, each made when it is first asked for. */
const setsOf = keepLast(keyOf, (question: PaperQuestion): ((name: string) => MadeSheets) => {
  const job: SheetJob = sheetJob(question, SEARCH);
  const made = new Map<string, MadeSheets>();
  return (name) => {
    const before = made.get(name);
    if (before !== undefined) return before;
    const set = makeSheets(makerOf(name), job);
    made.set(name, set);
    return set;
  };
});

function keyOf(question: PaperQuestion): string {
  return JSON.stringify(question, (_, value) =>
    ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : value,
  );
}
