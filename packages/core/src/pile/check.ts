// What the rows of a pile say about each other: ids alike, groups of unknown kinds, lists that do
// not match the sides, one tag on panels of different shape. Works on raw data and looks only at
// what is well formed, so that its faults are told together with those of the schema.

import type { Fault, Read } from '../measure/fault.ts';
import { describeValue, schemaFaults } from '../measure/schemaFaults.ts';
import { type Pile, pileSection } from './schema.ts';
import { readMark } from './written-mark.ts';

/** The pile from raw data (parsed JSON), or every fault at once, with paths that start at `base`. */
export function readPile(raw: unknown, base = 'pile'): Read<Pile> {
  const parsed = pileSection.safeParse(raw);
  const shape = parsed.success ? [] : schemaFaults(parsed.error, raw, pileSection, base);
  const faults = [...shape, ...pileFaults(raw, base)];
  return parsed.success && faults.length === 0
    ? { ok: true, value: parsed.data }
    : { ok: false, faults };
}

/** The faults between rows of a raw pile; empty where there are none. */
export function pileFaults(raw: unknown, base = 'pile'): Fault[] {
  const kinds = rows(raw, 'kinds');
  const readings = rows(raw, 'readings');
  return [
    ...idsAlike(kinds, `${base}.kinds`),
    ...kinds.flatMap((row, i) => listsMatch(row, `${base}.kinds[${i}]`)),
    ...readings.flatMap((row, i) => listsMatch(row, `${base}.readings[${i}]`)),
    ...readings.flatMap((row, i) => tagAndCount(row, `${base}.readings[${i}]`)),
    ...tagsAgree(readings, `${base}.readings`),
    ...groupsKnown(rows(raw, 'groups'), kinds, readings, `${base}.groups`),
    ...rows(raw, 'groups').flatMap((row, g) => rimsMatch(row, `${base}.groups[${g}]`)),
    ...rows(raw, 'hubPlates').flatMap((row, i) => armsMatch(row, `${base}.hubPlates[${i}]`)),
  ];
}

/** Rows that are looked at; a longer list is a fault already. */
const MAX_ROWS = 20_000;

type Row = Readonly<Record<string, unknown>>;

function rows(raw: unknown, key: string): Row[] {
  const list = isRow(raw) ? raw[key] : undefined;
  return Array.isArray(list)
    ? list.slice(0, MAX_ROWS).map((item: unknown) => (isRow(item) ? item : {}))
    : [];
}

const isRow = (value: unknown): value is Row =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const text = (value: unknown): string | null =>
  typeof value === 'string' && value.trim() !== '' ? value.trim() : null;

const texts = (value: unknown): string[] =>
  Array.isArray(value) ? value.map(text).filter((item) => item !== null) : [];

function idsAlike(kinds: readonly Row[], path: string): Fault[] {
  const first = new Map<string, number>();
  return kinds.flatMap((row, i) => {
    const id = text(row.id);
    if (id === null) return [];
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, i);
      return [];
    }
    return [
      {
        path: `${path}[${i}].id`,
        found: JSON.stringify(id),
        expected: `an id unlike that of ${path}[${before}]`,
      },
    ];
  });
}

/** `holes`, `laps` and `dihedrals`, where given, have one entry a side. */
function listsMatch(row: Row, path: string): Fault[] {
  const sides = row.sides;
  if (!Array.isArray(sides)) return [];
  return ['holes', 'laps', 'dihedrals'].flatMap((key) => {
    const list = row[key];
    if (!Array.isArray(list) || list.length === sides.length) return [];
    return [
      {
        path: `${path}.${key}`,
        found: list.length === 1 ? '1 entry' : `${list.length} entries`,
        expected: `one for each of the ${sides.length} sides`,
      },
    ];
  });
}

/** A tag names one panel, so its row cannot stand for several. */
function tagAndCount(row: Row, path: string): Fault[] {
  const tag = text(row.tag);
  if (tag === null || typeof row.count !== 'number' || row.count <= 1) return [];
  return [
    {
      path: `${path}.count`,
      found: describeValue(row.count),
      expected: `1, or no tag: the tag ${JSON.stringify(tag)} names one single panel`,
    },
  ];
}

function tagsAgree(readings: readonly Row[], path: string): Fault[] {
  const first = new Map<string, [number, number]>();
  return readings.flatMap((row, i) => {
    const tag = text(row.tag);
    if (tag === null || !Array.isArray(row.sides)) return [];
    const before = first.get(tag);
    if (!before) {
      first.set(tag, [i, row.sides.length]);
      return [];
    }
    if (before[1] === row.sides.length) return [];
    return [
      {
        path: `${path}[${i}].sides`,
        found: `${row.sides.length} sides`,
        expected: `${before[1]} sides as in ${path}[${before[0]}], which has the same tag ${JSON.stringify(tag)}`,
      },
    ];
  });
}

function groupsKnown(
  groups: readonly Row[],
  kinds: readonly Row[],
  readings: readonly Row[],
  path: string,
): Fault[] {
  const known = new Set([
    ...kinds.flatMap((row) => [...texts([row.id]), ...texts(row.marks)]),
    ...readings.flatMap((row) => texts([row.mark])),
  ]);
  const meant = new Set([...known].flatMap((name) => readMark(name).marks));
  // Kinds made from readings alone get their ids later, so a group can only name their marks.
  const list = [...known].slice(0, 30).join(', ') || 'none: there are no kinds and no marks';
  return groups.flatMap((row, g) => {
    const around: readonly unknown[] = Array.isArray(row.around) ? row.around : [];
    return around.flatMap((item, i) => {
      const id = text(item);
      if (id === null || known.has(id) || readMark(id).marks.every((m) => meant.has(m))) return [];
      return [
        {
          path: `${path}[${g}].around[${i}]`,
          found: JSON.stringify(id),
          expected: `a kind or mark of this pile (${list})`,
        },
      ];
    });
  });
}

/** A rim reading goes from one spoke of its group to another. */
function rimsMatch(row: Row, path: string): Fault[] {
  const { around } = row;
  if (!Array.isArray(around)) return [];
  const last = row.closed === true ? around.length - 1 : around.length;
  return rows(row, 'rim').flatMap((rim, i) => {
    const ends = ['from', 'to'].flatMap((key): Fault[] => {
      const spoke = rim[key];
      if (typeof spoke !== 'number' || spoke <= last) return [];
      return [
        {
          path: `${path}.rim[${i}].${key}`,
          found: describeValue(spoke),
          expected: `a spoke of this group, 0 to ${last}`,
        },
      ];
    });
    if (typeof rim.to !== 'number' || rim.from !== rim.to) return ends;
    const same = { path: `${path}.rim[${i}].to`, found: describeValue(rim.to) };
    return [...ends, { ...same, expected: 'another spoke than `from`' }];
  });
}

/** Arms of a hub plate: an angle for each corner, all the way round. */
function armsMatch(row: Row, path: string): Fault[] {
  const { arms, corners } = row;
  if (!Array.isArray(arms) || typeof corners !== 'number' || arms.length === 0) return [];
  if (arms.length !== corners)
    return [
      {
        path: `${path}.arms`,
        found: arms.length === 1 ? '1 angle' : `${arms.length} angles`,
        expected: `one for each of the ${corners} corners`,
      },
    ];
  const sum = arms.reduce((all: number, arm: unknown) => all + (arm as number), 0);
  if (!Number.isFinite(sum) || Math.abs(sum - 2 * Math.PI) <= ARMS_OFF) return [];
  return [
    {
      path: `${path}.arms`,
      found: `angles that add up to ${sum.toFixed(4)} rad`,
      expected: `${(2 * Math.PI).toFixed(4)} rad, all the way round`,
    },
  ];
}

/** How far measured arms may be from all the way round, radians: some 10 degrees. */
const ARMS_OFF = 0.18;
