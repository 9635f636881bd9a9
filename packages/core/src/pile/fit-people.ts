// Kinds and what each person's tape adds, fitted together: first what the file states, then what
// panels measured by two people tell; then, where kinds of one person stand apart from the others'
// by one length, that as well.

import { fitParts, fitToNoise, type Parts } from './fit-noise.ts';
import { likeliest } from './mixture.ts';
import { type ReadingNoise, readingNoise } from './noise.ts';
import type { Panel, PanelReading } from './panels.ts';
import { biasesOf, type PersonBias } from './people.ts';
import type { KindRow, Pile } from './schema.ts';
import { type KindShift, kindShifts, type ReadKind } from './shifts.ts';

/** Kinds fitted to readings with people's errors taken off. */
export interface FittedPeople {
  readonly parts: Parts;
  readonly noise: ReadingNoise;
  /** Person → what was taken off, metres. */
  readonly biases: ReadonlyMap<string, number>;
  readonly people: readonly PersonBias[];
}

/** The kinds of all panels, and everyone's tape. */
export function fitWithPeople(
  panels: readonly Panel[],
  rows: readonly KindRow[],
  pile: Pile,
): FittedPeople {
  const stated = new Map((pile.people ?? []).map(({ by, shift }) => [by, shift]));
  const direct = biasesOf(sharedReadings(panels, stated), pile.readingSd, 'panels');
  const people = direct.map((one) => ofStated(one, direct, stated));
  const first = fitted(panels, rows, pile, people);
  const judged = people.filter((one) => one.basis === 'nothing' && !one.stated);
  if (people.length < 2 || judged.length === 0) return first;
  const shifts = kindShifts(
    readKinds(first.parts),
    judged.map(({ by }) => by),
    first.noise.used,
  );
  if (shifts.length === 0) return first;
  return fitted(
    panels,
    rows,
    pile,
    people.map((one) => shifted(one, shifts)),
  );
}

function fitted(
  panels: readonly Panel[],
  rows: readonly KindRow[],
  pile: Pile,
  people: readonly PersonBias[],
): FittedPeople {
  const biases = new Map(people.filter((b) => b.applied).map((b) => [b.by, b.bias]));
  const correct = (reading: PanelReading): readonly number[] => {
    const bias = reading.by === null ? 0 : (biases.get(reading.by) ?? 0);
    return bias === 0 ? reading.sides : reading.sides.map((x) => x - bias);
  };
  const { parts, noise } = fitToNoise(
    (sd) => fitParts(panels, rows, sd, correct),
    readingNoise(panels, pile.readingSd, correct),
  );
  return { parts, noise, biases, people };
}

/** Readings by panel, with what the file states taken off. */
function sharedReadings(panels: readonly Panel[], stated: ReadonlyMap<string, number>) {
  return panels.flatMap((panel, p) =>
    panel.readings.flatMap(({ by, sides }) =>
      by === null
        ? []
        : [
            {
              by,
              panel: String(p),
              meanSide: sides.reduce((sum, x) => sum + x, 0) / sides.length - (stated.get(by) ?? 0),
              sideCount: sides.length,
            },
          ],
    ),
  );
}

/** The bias as the file states it; else as found, counted from the people of whom it states it. */
function ofStated(
  one: PersonBias,
  all: readonly PersonBias[],
  stated: ReadonlyMap<string, number>,
): PersonBias {
  const shift = stated.get(one.by);
  if (shift !== undefined)
    return { ...one, bias: shift, sd: null, basis: 'nothing', applied: shift !== 0, stated: true };
  const known = all.filter((other) => stated.has(other.by) && other.basis === 'panels');
  const readings = known.reduce((sum, other) => sum + other.readings, 0);
  if (one.basis !== 'panels' || readings === 0) return one;
  const zero = known.reduce((sum, other) => sum + other.bias * other.readings, 0) / readings;
  return { ...one, bias: one.bias - zero };
}

function shifted(one: PersonBias, shifts: readonly KindShift[]): PersonBias {
  const found = shifts.find(({ by }) => by === one.by);
  if (!found) return one;
  return { ...one, bias: found.shift, sd: found.sd, basis: 'kinds', applied: true };
}

/** The kinds with who read how much of each. */
function readKinds(parts: Parts): ReadKind[] {
  return parts.flatMap(({ kinds, items, mixture }) => {
    const readings = kinds.map(() => new Map<string | null, number>());
    const faceKnown = kinds.map(({ row }) => row !== null && row.seenFrom !== 'unknown');
    items.forEach(({ panel }, p) => {
      const row = mixture.belongs.subarray(p * kinds.length, (p + 1) * kinds.length);
      const k = likeliest(row, kinds.length);
      for (const reading of panel.readings) {
        const own = readings[k] as Map<string | null, number>;
        own.set(reading.by, (own.get(reading.by) ?? 0) + 1);
        if (reading.faceKnown) faceKnown[k] = true;
      }
    });
    return kinds.map(({ sides, sds, freeSides }, k) => ({
      sides,
      sds,
      freeSides,
      readings: readings[k] as Map<string | null, number>,
      faceKnown: faceKnown[k] as boolean,
    }));
  });
}
