// The record on paper: one line for each place, seam and hub, numbered through, with a lettered box for
// each state; and what was ticked there, typed as `17a 20-24c 31a=0143`. The lines hang on the plan
// alone, so the same plan prints and reads the same; its check word tells sheets of another plan.

import type { Fault } from '../measure/fault.ts';
import { compareNumbers, type RecordPlan } from './names.ts';
import type { RecordState } from './state.ts';
import { LONGEST_RECORD_NAME } from './tolerances.ts';
import { RECORD_PASSES, type What } from './what.ts';

/** A box to tick. */
export interface TwinBox {
  readonly letter: string;
  readonly what: What;
}

/** A line of the paper. */
export interface TwinLine {
  /** From 1, through all sheets. */
  readonly number: number;
  readonly sort: 'place' | 'seam' | 'hub';
  /** In the shell. */
  readonly index: number;
  readonly name: string;
  /** Where the line stands: of a seam or a hub the highest course at it. */
  readonly course: number;
  readonly boxes: readonly TwinBox[];
}

/** The lines, course by course from the ground: places, then seams, then hubs. What belongs to an
 * opening has none. */
export function twinLines(plan: RecordPlan, leftOut: readonly number[] = []): readonly TwinLine[] {
  const out = new Set(leftOut);
  const course = (places: readonly number[]): number =>
    Math.max(...places.map((place) => plan.course[place] as number));
  const lines: Omit<TwinLine, 'number'>[] = [];
  plan.places.forEach((name, index) => {
    if (out.has(index)) return;
    const what: What = { kind: 'panel placed', place: name, tag: null, turn: null };
    lines.push({ sort: 'place', index, name, course: course([index]), boxes: lettered([what]) });
  });
  plan.seams.forEach((name, index) => {
    const places = plan.seamPlaces[index] as readonly [number, number];
    if (places.some((place) => out.has(place))) return;
    const passes = RECORD_PASSES.slice(1).map(
      (pass): What => ({ kind: 'seam pass', seam: name, pass }),
    );
    const sealed: What = { kind: 'seam sealed', seam: name, sealed: true };
    const boxes = lettered([...passes, sealed]);
    lines.push({ sort: 'seam', index, name, course: course(places), boxes });
  });
  plan.hubs.forEach((name, index) => {
    const places = (plan.hubPlaces[index] as readonly number[]).filter((place) => !out.has(place));
    if (places.length === 0) return;
    const boxes = lettered([
      { kind: 'hub plate', hub: name, on: true },
      { kind: 'prop', hub: name, set: true },
      { kind: 'prop', hub: name, set: false },
    ]);
    lines.push({ sort: 'hub', index, name, course: course(places), boxes });
  });
  const sorts = ['place', 'seam', 'hub'];
  return lines
    .sort(
      (a, b) =>
        a.course - b.course ||
        sorts.indexOf(a.sort) - sorts.indexOf(b.sort) ||
        byNames(a.name, b.name),
    )
    .map((line, i) => ({ ...line, number: i + 1 }));
}

const lettered = (whats: readonly What[]): readonly TwinBox[] =>
  whats.map((what, i) => ({ letter: 'abcdefgh'.charAt(i), what }));

/** Orders names of places, seams and hubs by the places in them. */
function byNames(a: string, b: string): number {
  const [as, bs] = [a, b].map((name) => name.split(/[/ ]/).filter((part) => part.includes('-')));
  for (const [i, one] of (as as string[]).entries()) {
    const other = (bs as string[])[i];
    if (other === undefined) return 1;
    const order = compareNumbers(one, other);
    if (order !== 0) return order;
  }
  return (as as string[]).length - (bs as string[]).length || (a < b ? -1 : a > b ? 1 : 0);
}

/** Four characters that stand on every sheet: those of another plan differ, save one time in some
 * 60,000. */
export function twinCheck(lines: readonly TwinLine[]): string {
  // FNV-1a, folded to 16 bits.
  let hash = 0x811c9dc5;
  for (const { sort, name } of lines)
    for (const char of `${sort} ${name}\n`)
      hash = Math.imul(hash ^ (char.codePointAt(0) as number), 0x01000193);
  return (((hash >>> 16) ^ hash) & 0xffff).toString(16).toUpperCase().padStart(4, '0');
}

/** What was typed off the paper. */
export interface TwinRead {
  readonly says: readonly What[];
  /** Ticks that the record has already. */
  readonly known: number;
  /** `path` is what was typed. */
  readonly faults: readonly Fault[];
}

/** Reads what was typed: numbers or ranges of lines with the letters of their boxes, and for a place
 * the tag of its panel behind `=`. Of several passes of a seam the furthest counts. Nothing that is
 * faulty is guessed at. */
export function readTwin(text: string, lines: readonly TwinLine[], state: RecordState): TwinRead {
  const says: What[] = [];
  const faults: Fault[] = [];
  const met = new Set<string>();
  let known = 0;
  for (const typed of text.split(/[\s,;]+/).filter((one) => one !== '')) {
    const read = readTyped(typed, lines);
    if ('expected' in read) faults.push(read);
    else
      for (const { line, what } of read.ticks)
        if (isSo(line, what, state)) known++;
        else if (!met.has(JSON.stringify(what))) {
          met.add(JSON.stringify(what));
          says.push(what);
        }
  }
  return { says, known, faults };
}

interface Tick {
  readonly line: TwinLine;
  readonly what: What;
}

function readTyped(
  typed: string,
  lines: readonly TwinLine[],
): { readonly ticks: readonly Tick[] } | Fault {
  const fault = (expected: string): Fault => ({ path: typed, found: typed, expected });
  const match = /^(\d{1,5})(?:-(\d{1,5}))?([a-z]+)(?:=(.+))?$/i.exec(typed);
  if (!match) return fault('a line and its box, such as 17a, 20-24c or 31a=0143');
  const [from, to] = [Number(match[1]), Number(match[2] ?? match[1])];
  const letters = [...(match[3] as string).toLowerCase()];
  const tag = match[4];
  if (from < 1 || to > lines.length || to < from)
    return fault(`lines from 1 to ${lines.length}, the lower first`);
  const chosen = lines.slice(from - 1, to);
  if (tag !== undefined && (chosen.length > 1 || chosen[0]?.sort !== 'place'))
    return fault('a tag for the line of one panel');
  if (tag !== undefined && tag.length > LONGEST_RECORD_NAME)
    return fault(`a tag of at most ${LONGEST_RECORD_NAME} characters`);
  const ticks: Tick[] = [];
  for (const line of chosen) {
    const ticked = letters.map((letter) => line.boxes.find((box) => box.letter === letter));
    if (ticked.includes(undefined))
      return fault(
        `for line ${line.number} (${line.name}) a box from a to ${line.boxes.at(-1)?.letter}`,
      );
    const whats = (ticked as TwinBox[]).map(({ what }) => what);
    if (whats.filter(({ kind }) => kind === 'prop').length > 1)
      return fault(`for line ${line.number} (${line.name}) a prop that is set or gone, not both`);
    for (const what of furthest(whats))
      ticks.push({
        line,
        what: what.kind === 'panel placed' ? { ...what, tag: tag ?? null } : what,
      });
  }
  return { ticks };
}

/** Without the passes that a further one holds in it. */
function furthest(whats: readonly What[]): readonly What[] {
  const ranks = whats.map((what) =>
    what.kind === 'seam pass' ? RECORD_PASSES.indexOf(what.pass) : Number.POSITIVE_INFINITY,
  );
  const most = Math.max(...ranks.filter(Number.isFinite));
  return whats.filter((_, i) => ranks[i] === Number.POSITIVE_INFINITY || ranks[i] === most);
}

/** Whether the record says so already, or more. */
function isSo({ index }: TwinLine, what: What, state: RecordState): boolean {
  switch (what.kind) {
    case 'panel placed': {
      const there = state.placed[index];
      return there != null && (what.tag === null || there.tag === what.tag);
    }
    case 'seam pass':
      return (
        RECORD_PASSES.indexOf(state.passes[index] ?? 'none') >= RECORD_PASSES.indexOf(what.pass)
      );
    case 'seam sealed':
      return state.sealed[index] === true;
    case 'hub plate':
      return state.plates[index] === true;
    case 'prop':
      return (state.props[index] === true) === what.set;
    default:
      return false;
  }
}
