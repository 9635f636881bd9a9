// The panel under the tape with the test that tells left from right.

import { type Kind, LEAST_SIDES } from '@shellraise/core';
import { PanelDrawing } from '../../drawing/panel-drawing.tsx';
import { HandDrawing, likeness } from '../../drawing/panel-drawing-hands.tsx';
import { useLengths } from '../../ui/app-context.tsx';
import type { Lengths } from '../../ui/lengths.ts';
import { useWords, type Words } from '../../words/words.ts';
import { readSide } from './cells.ts';
import type { FindingOf } from './findings-of.ts';
import { type HandFound, handUnder } from './hand.ts';
import { sideOf, type TallyRow } from './rows.ts';
import { nameOfRow } from './use-tally.ts';

/** What the drawings need of the row under the tape. */
export interface UnderTape {
  readonly row: TallyRow;
  readonly index: number;
  readonly asked: number | null;
  /** What is being typed for the side asked for. */
  readonly typed?: string | null;
}

/** The row's sides, metres, at least three; null where not measured. */
function sidesUnder({ row, asked, typed }: UnderTape, lengths: Lengths): (number | null)[] {
  const count = Math.max(
    LEAST_SIDES,
    row.reading?.sides.length ?? 0,
    row.draft?.sides.length ?? 0,
    asked === null ? 0 : asked + 1,
  );
  return Array.from({ length: count }, (_, i) => {
    if (i === asked && typed) {
      const read = readSide(typed, lengths.bare);
      if (read.ok) return read.metres;
    }
    return sideOf(row, i, lengths.bare);
  });
}

/** The drawing of the panel under the tape. */
export function PanelUnderTape({
  under,
  findingOf,
  size,
}: {
  under: UnderTape;
  findingOf: FindingOf;
  size: { width: number; height: number };
}) {
  const words = useWords().pile;
  const lengths = useLengths();
  const { row, index, asked } = under;
  const sides = sidesUnder(under, lengths);
  const labels = sides.map((side, i) => {
    const name = `${i + 1}`;
    return side === null
      ? i === asked
        ? words.drawing.asked(i)
        : name
      : `${name} · ${lengths.side(side)}`;
  });
  const finding = row.reading ? findingOf(row.reading) : null;
  return (
    <PanelDrawing
      sides={sides}
      asked={asked}
      seenFrom={row.draft?.of === undefined && row.draft ? row.draft.seenFrom : faceOf(row)}
      labels={labels}
      name={finding?.kinds.length === 1 ? (finding.kinds[0] ?? '') : ''}
      title={words.drawing.read(
        [
          nameOfRow(row, index, words),
          ...sides.map((side, i) => sideWords(side, i, asked, lengths, words)),
        ].join(', '),
      )}
      noShape={words.drawing.noShape}
      size={size}
    />
  );
}

/** The face that the row's sides were read from. */
const faceOf = (row: TallyRow): 'outside' | 'inside' | 'unknown' =>
  row.reading?.seenFrom ?? row.draft?.seenFrom ?? 'unknown';

function sideWords(
  side: number | null,
  i: number,
  asked: number | null,
  lengths: Lengths,
  words: Words['pile'],
): string {
  if (side !== null) return words.drawing.sideAs(i, lengths.side(side));
  return i === asked ? words.drawing.sideAsked(i) : words.drawing.sideNone(i);
}

const SAMPLE = { L: [1, 1.15, 1.08], R: [1, 1.08, 1.15] } as const;

/** The left-or-right test in one picture. A pair of the pile stands for the picture where it has
 * one. */
export function HandTest({ under, kinds }: { under: UnderTape; kinds: readonly Kind[] }) {
  const words = useWords().pile.hands;
  const lengths = useLengths();
  const hand = handUnder(sidesUnder(under, lengths), faceOf(under.row));
  const pair = kinds.filter(({ hand: own, sides }) => own !== null && sides.length === 3);
  const names = { L: idOf(pair, 'L'), R: idOf(pair, 'R') };
  const verdict = verdictOf(hand, under.row, words);
  return (
    <div className="hand-test">
      <h2>{words.title}</h2>
      <div className="hand-pair">
        {(['L', 'R'] as const).map((one) => (
          <figure key={one}>
            <HandDrawing
              sides={likeness(SAMPLE[one])}
              name={names[one]}
              title={one === 'L' ? words.left : words.right}
              chosen={hand === one}
            />
            <figcaption>{one === 'L' ? words.left : words.right}</figcaption>
          </figure>
        ))}
      </div>
      <p className="quiet">{words.test}</p>
      {verdict === null ? null : <p className="verdict">{verdict}</p>}
    </div>
  );
}

const idOf = (kinds: readonly Kind[], hand: 'L' | 'R'): string =>
  kinds.filter((kind) => kind.hand === hand).length === 1
    ? (kinds.find((kind) => kind.hand === hand)?.id ?? hand)
    : hand;

function verdictOf(hand: HandFound, row: TallyRow, words: Words['pile']['hands']): string | null {
  if (hand === null) return null;
  if (hand === 'none') return words.none;
  if (hand === 'face') return words.unknown;
  const name = hand === 'L' ? words.left : words.right;
  return faceOf(row) === 'inside' ? words.flipped(name) : words.this(name);
}
