// Marks against kinds: which marks each kind carries, and which mark is on several kinds.

import { compareText } from '../math/order.ts';
import type { PanelKind } from './assign.ts';
import type { MixedMark } from './findings.ts';
import type { KindRow } from './schema.ts';
import { MARK_EVIDENCE_PROBABILITY, STRAY_MARK_SHARE } from './tolerances.ts';
import { readMark } from './written-mark.ts';

/** What the marks of a pile say. */
export interface MarkedKinds {
  /** Kind → its marks: those of its row, and those of its panels that are no strays. */
  readonly ofKind: ReadonlyMap<string, readonly string[]>;
  /** Mark → kinds that carry it, strays left out. */
  readonly kindsOf: ReadonlyMap<string, readonly string[]>;
  readonly mixed: readonly MixedMark[];
}

/** Marks and kinds, from the rows of the file and from panels whose kind is beyond doubt. */
export function markedKinds(panels: readonly PanelKind[], rows: readonly KindRow[]): MarkedKinds {
  const counts = new Map<string, Map<string, number>>();
  const count = (mark: string, kind: string, by: number): void => {
    const kinds = counts.get(mark) ?? new Map<string, number>();
    kinds.set(kind, (kinds.get(kind) ?? 0) + by);
    counts.set(mark, kinds);
  };
  const said = new Set<string>();
  for (const row of rows)
    for (const mark of row.marks.flatMap((written) => readMark(written).marks)) {
      count(mark, row.id, 0);
      said.add(JSON.stringify([mark, row.id]));
    }
  for (const { panel, kind, probability } of panels)
    if (kind !== null && probability >= MARK_EVIDENCE_PROBABILITY)
      for (const mark of panel.marks) count(mark, kind, panel.count);
  for (const { panel, kind, probability } of panels)
    if (kind !== null && probability >= MARK_EVIDENCE_PROBABILITY)
      for (const { marks } of panel.faded) {
        // A faded mark is what others of its kind carry; where none does, it may be any of them.
        const known = marks.filter((mark) => counts.get(mark)?.has(kind));
        const likely = known.length > 0 ? known : marks;
        for (const mark of likely) count(mark, kind, panel.count / likely.length);
      }
  const ofKind = new Map<string, string[]>();
  const kindsOf = new Map<string, string[]>();
  const mixed: MixedMark[] = [];
  for (const mark of [...counts.keys()].sort(compareText)) {
    const kinds = [...(counts.get(mark) as Map<string, number>)];
    const total = kinds.reduce((sum, [, n]) => sum + n, 0);
    const entries = kinds
      .map(([kind, n]) => ({
        kind,
        panels: Math.round(n),
        stray: !said.has(JSON.stringify([mark, kind])) && n < STRAY_MARK_SHARE * total,
      }))
      .sort((a, b) => b.panels - a.panels || compareText(a.kind, b.kind));
    if (entries.length > 1) mixed.push({ mark, kinds: entries });
    const real = entries.filter((entry) => !entry.stray).map((entry) => entry.kind);
    kindsOf.set(mark, real);
    for (const kind of real) ofKind.set(kind, [...(ofKind.get(kind) ?? []), mark]);
  }
  return { ofKind, kindsOf, mixed };
}
