// What is most worth measuring next: at most three things, the surest gain first. Each names the
// row or kind it is about; the words are the message table's.

import type { PileKinds, ReadingRow } from '@shellraise/core';

/** One thing worth doing at the pile. Rows are indices of readings; lengths in metres. */
export type NextThing =
  | {
      readonly why: 'suspect';
      readonly row: number;
      readonly kind: string;
      readonly side: number;
      readonly measured: number;
      readonly expected: number;
    }
  | {
      readonly why: 'suspect kind';
      readonly kind: string;
      readonly side: number;
      readonly measured: number;
      readonly expected: number;
    }
  | { readonly why: 'face'; readonly row: number; readonly kinds: readonly string[] }
  | { readonly why: 'two fit'; readonly row: number; readonly kinds: readonly string[] }
  | { readonly why: 'one reading'; readonly kind: string; readonly row: number | null }
  | {
      readonly why: 'maybe one';
      readonly kinds: readonly [string, string];
      readonly side: number;
      readonly difference: number;
    }
  | { readonly why: 'maybe two'; readonly kind: string; readonly spread: number }
  | {
      readonly why: 'miscount';
      readonly kind: string;
      readonly counted: number;
      readonly found: number;
    }
  | { readonly why: 'tapes'; readonly people: readonly string[] }
  | { readonly why: 'loosest'; readonly kind: string; readonly sd: number };

/** Things shown at once, at most. */
export const MOST_THINGS = 3;
/** A kind known worse than this is worth another reading, metres. */
const LOOSE = 0.0005;

/** The most useful next readings of a worked-up pile. */
export function measureNext(
  worked: PileKinds,
  readings: readonly ReadingRow[],
  most = MOST_THINGS,
): readonly NextThing[] {
  const things = [
    ...suspectThings(worked),
    ...fewThings(worked),
    ...kindThings(worked),
    ...tapeThings(worked, readings),
    ...loosest(worked),
  ];
  const told = new Set<string>();
  return things
    .filter((thing) => {
      const about = aboutOf(thing);
      const again = about.some((one) => told.has(one));
      for (const one of about) told.add(one);
      return !again;
    })
    .slice(0, most);
}

/** What a thing is about, so that nothing is told twice. */
function aboutOf(thing: NextThing): string[] {
  if ('row' in thing && thing.row !== null) return [`row ${thing.row}`];
  if ('kind' in thing) return [`kind ${thing.kind}`];
  if ('kinds' in thing) return thing.kinds.map((kind) => `kind ${kind}`);
  return [thing.why];
}

/** A reading with a slip is told by that. */
function suspectThings({ suspects, slips }: PileKinds): NextThing[] {
  const slipped = new Set(slips.map(({ reading }) => reading));
  const left = suspects.filter(({ reading }) => reading === null || !slipped.has(reading));
  return left.map(({ reading, kind, side, measured, expected }) =>
    reading === null
      ? { why: 'suspect kind', kind, side, measured, expected }
      : { why: 'suspect', row: reading, kind, side, measured, expected },
  );
}

function fewThings({ tooFew, assigned }: PileKinds): NextThing[] {
  return tooFew.flatMap(({ path, kinds, why }): NextThing[] => {
    const row = rowIn(path);
    if (why === 'face unknown') return row === null ? [] : [{ why: 'face', row, kinds }];
    if (why === 'two kinds fit') return row === null ? [] : [{ why: 'two fit', row, kinds }];
    const kind = kinds[0];
    if (kind === undefined) return [];
    const own = assigned.find((one) => one.kind === kind || one.candidates[0] === kind);
    return [{ why: 'one reading', kind, row: own?.reading ?? null }];
  });
}

function kindThings({ maybeOne, maybeTwo, miscounts, kinds }: PileKinds): NextThing[] {
  return [
    ...maybeOne.map((pair): NextThing => {
      const [a, b] = pair.kinds.map((id) => kinds.find((kind) => kind.id === id)?.sides ?? []);
      const off = (b ?? []).map((side, i) => Math.abs(side - (a?.[i] ?? side)));
      const side = off.indexOf(Math.max(...off));
      return { why: 'maybe one', kinds: pair.kinds, side, difference: pair.difference };
    }),
    ...maybeTwo.map(({ kind, spread }): NextThing => ({ why: 'maybe two', kind, spread })),
    ...miscounts.map((one): NextThing => ({ why: 'miscount', ...one })),
  ];
}

/** People of whose tape nothing is known, while somebody else measured too. */
function tapeThings({ people }: PileKinds, readings: readonly ReadingRow[]): NextThing[] {
  const unknown = people.filter(({ basis }) => basis === 'nothing').map(({ by }) => by);
  const all = new Set(readings.flatMap(({ by }) => by ?? []));
  if (unknown.length === 0 || all.size < 2) return [];
  const others = [...all].filter((by) => !unknown.includes(by));
  return [{ why: 'tapes', people: [...unknown, ...others].slice(0, 3) }];
}

function loosest({ kinds }: PileKinds): NextThing[] {
  const known = kinds.map(({ id, sideSds }) => ({ kind: id, sd: Math.max(...sideSds) }));
  return known
    .filter(({ sd }) => sd > LOOSE)
    .sort((a, b) => b.sd - a.sd)
    .map(({ kind, sd }) => ({ why: 'loosest', kind, sd }));
}

const rowIn = (path: string): number | null => {
  const match = /^pile\.readings\[(\d+)\]/.exec(path);
  return match ? Number(match[1]) : null;
};
