// Laps, holes and angles of the kinds, from their rows and readings. Panels of equal sides that are
// joined differently are different kinds: such a kind is split. A panel whose sides allow several
// turns is turned until its joints lie on those of the others.

import { turned } from '../math/cyclic.ts';
import { compareText } from '../math/order.ts';
import type { AssignedReading, Assignment, PanelKind } from './assign.ts';
import type { Lap, Measured } from './kind.ts';
import type { KindRow, ReadingRow } from './schema.ts';

/** A kind before its joints are looked at. */
export interface Unjoined {
  readonly id: string;
  readonly sides: readonly number[];
  readonly row: KindRow | null;
}

/** What is known of the joints of a kind's sides; null for a side nobody looked at. */
export interface KindJoints {
  readonly id: string;
  readonly laps: readonly (Lap | null)[];
  readonly holes: readonly (number | null)[];
}

/** The assignment with split kinds told apart, and what each kind was split into (one entry where it
 * was not), the largest part first. */
export interface JoinedKinds {
  readonly assignment: Assignment;
  readonly parts: ReadonlyMap<string, readonly KindJoints[]>;
}

/** Sides nearer than this many deviations of a reading may be taken for each other in turning. */
const SAME_Z = 4;
/** Panels that differ from many others in one side alone were looked at wrongly if they are fewer
 * than this share: our own judgement. */
const STRAY_SHARE = 0.1;

interface Cluster {
  laps: (Lap | null)[];
  holes: (number | null)[];
  panels: number;
  /** Panels (index in the assignment) and the turn each needs. */
  readonly members: { readonly panel: number; readonly turn: number }[];
  readonly isRow: boolean;
}

type Labels = Pick<Cluster, 'laps' | 'holes'>;

/** Splits kinds by their joints. `sd`: noise of one reading, metres. */
export function joinedKinds(
  kinds: readonly Unjoined[],
  assignment: Assignment,
  readings: readonly ReadingRow[],
  sd: number,
): JoinedKinds {
  const taken = new Set(kinds.map((kind) => kind.id));
  const assignedAt = new Map(assignment.readings.map((one) => [one.reading, one]));
  const idOfPanel = new Map<number, string>();
  const turnOfPanel = new Map<number, number>();
  const parts = new Map<string, readonly KindJoints[]>();
  for (const kind of kinds) {
    const clusters = clustersOf(kind, assignment.panels, readings, assignedAt, sd);
    const named = nameClusters(kind, clusters, taken);
    parts.set(
      kind.id,
      named.map(({ id, cluster: { laps, holes } }) => ({ id, laps, holes })),
    );
    for (const { id, cluster } of named)
      for (const { panel, turn } of cluster.members) {
        if (id !== kind.id) idOfPanel.set(panel, id);
        if (turn !== 0) turnOfPanel.set(panel, turn);
      }
  }
  return { assignment: renamed(assignment, idOfPanel, turnOfPanel, parts), parts };
}

function clustersOf(
  kind: Unjoined,
  panels: readonly PanelKind[],
  readings: readonly ReadingRow[],
  assignedAt: ReadonlyMap<number, AssignedReading>,
  sd: number,
): Cluster[] {
  const n = kind.sides.length;
  const turns = kind.sides
    .map((_, turn) => turn)
    .filter((turn) =>
      kind.sides.every(
        (x, i) => Math.abs(x - (kind.sides[(i + turn) % n] as number)) <= SAME_Z * sd,
      ),
    );
  const row = fromRow(kind);
  const clusters: Cluster[] = row ? [row] : [];
  const own = panels.flatMap((panel, at) =>
    panel.kind === kind.id
      ? [{ at, count: panel.panel.count, labels: labelsOf(panel, n, readings, assignedAt) }]
      : [],
  );
  own.sort((a, b) => knownIn(b.labels) - knownIn(a.labels));
  for (const { at, count, labels } of own) {
    if (knownIn(labels) === 0) continue;
    const fit = bestFit(labels, turns, clusters);
    const cluster = fit?.cluster ?? { ...labels, panels: 0, members: [], isRow: false };
    if (!fit) clusters.push(cluster);
    mergeInto(cluster, turnedLabels(labels, fit?.turn ?? 0));
    cluster.panels += count;
    cluster.members.push({ panel: at, turn: fit?.turn ?? 0 });
  }
  return withUnlabelled(withoutStrays(clusters, turns), kind, own);
}

function fromRow({ row, sides }: Unjoined): Cluster | null {
  const labels = {
    laps: sides.map((_, i) => row?.laps?.[i] ?? null),
    holes: sides.map((_, i) => row?.holes?.[i] ?? null),
  };
  return row && knownIn(labels) > 0 ? { ...labels, panels: 0, members: [], isRow: true } : null;
}

/** What a panel's readings say of its sides, in the order of the kind's sides. */
function labelsOf(
  { panel }: PanelKind,
  sides: number,
  readings: readonly ReadingRow[],
  assignedAt: ReadonlyMap<number, AssignedReading>,
): Labels {
  const laps: (Lap | null)[] = new Array(sides).fill(null);
  const holes: (number | null)[] = new Array(sides).fill(null);
  for (const { index } of panel.readings)
    assignedAt.get(index)?.liesOn.forEach((side, written) => {
      laps[side] ??= readings[index]?.laps?.[written] ?? null;
      holes[side] ??= readings[index]?.holes?.[written] ?? null;
    });
  return { laps, holes };
}

const knownIn = ({ laps, holes }: Labels): number =>
  [...laps, ...holes].filter((label) => label !== null).length;

const turnedLabels = ({ laps, holes }: Labels, turn: number): Labels => ({
  laps: turned(laps, turn),
  holes: turned(holes, turn),
});

/** Sides on which two sets of labels agree, and on which they differ. */
function compared(a: Labels, b: Labels): { readonly alike: number; readonly unlike: number } {
  let alike = 0;
  let unlike = 0;
  a.laps.forEach((_, i) => {
    const pairs = [
      [a.laps[i], b.laps[i]],
      [a.holes[i], b.holes[i]],
    ].filter(([x, y]) => x !== null && y !== null);
    if (pairs.some(([x, y]) => x !== y)) unlike++;
    else if (pairs.length > 0) alike++;
  });
  return { alike, unlike };
}

function bestFit(
  labels: Labels,
  turns: readonly number[],
  clusters: readonly Cluster[],
): { readonly cluster: Cluster; readonly turn: number } | null {
  let best: { cluster: Cluster; turn: number; alike: number } | null = null;
  for (const cluster of clusters)
    for (const turn of turns) {
      const { alike, unlike } = compared(turnedLabels(labels, turn), cluster);
      if (unlike === 0 && alike > (best?.alike ?? -1)) best = { cluster, turn, alike };
    }
  return best;
}

function mergeInto(cluster: Cluster, labels: Labels): void {
  cluster.laps = cluster.laps.map((lap, i) => lap ?? labels.laps[i] ?? null);
  cluster.holes = cluster.holes.map((holes, i) => holes ?? labels.holes[i] ?? null);
}

/** Clusters of a few panels that differ from a large one in one side are joined to it. */
function withoutStrays(clusters: readonly Cluster[], turns: readonly number[]): Cluster[] {
  const kept: Cluster[] = [];
  for (const cluster of [...clusters].sort(largerFirst)) {
    const near = kept.flatMap((large) =>
      turns
        .filter((turn) => compared(turnedLabels(cluster, turn), large).unlike <= 1)
        .map((turn) => ({ large, turn })),
    )[0];
    if (near && !cluster.isRow && cluster.panels < STRAY_SHARE * near.large.panels) {
      near.large.panels += cluster.panels;
      for (const { panel, turn } of cluster.members)
        near.large.members.push({ panel, turn: (turn + near.turn) % cluster.laps.length });
    } else kept.push(cluster);
  }
  return kept;
}

/** A kind's own row first, then by number of panels, then by joints. */
const largerFirst = (a: Cluster, b: Cluster): number =>
  Number(b.isRow) - Number(a.isRow) || b.panels - a.panels || compareText(keyOf(a), keyOf(b));

const keyOf = ({ laps, holes }: Labels): string => JSON.stringify([laps, holes]);

/** Panels that nobody looked at are taken for the most common make. */
function withUnlabelled(
  clusters: Cluster[],
  kind: Unjoined,
  own: readonly { readonly at: number; readonly labels: Labels }[],
): Cluster[] {
  const nothing = (): null[] => kind.sides.map(() => null);
  const [first, ...rest] = clusters;
  const largest = first ?? {
    laps: nothing(),
    holes: nothing(),
    panels: 0,
    members: [],
    isRow: false,
  };
  for (const { at, labels } of own)
    if (knownIn(labels) === 0) largest.members.push({ panel: at, turn: 0 });
  return [largest, ...rest];
}

function nameClusters(
  kind: Unjoined,
  clusters: readonly Cluster[],
  taken: Set<string>,
): { readonly id: string; readonly cluster: Cluster }[] {
  if (clusters.length === 1) return [{ id: kind.id, cluster: clusters[0] as Cluster }];
  let letter = 0;
  return clusters.map((cluster, i) => {
    if (i === 0 && kind.row) {
      letter++;
      return { id: kind.id, cluster };
    }
    let id = `${kind.id}${letterOf(letter++)}`;
    while (taken.has(id)) id = `${kind.id}${letterOf(letter++)}`;
    taken.add(id);
    return { id, cluster };
  });
}

const letterOf = (i: number): string =>
  String.fromCharCode(97 + (i % 26)).repeat(1 + Math.floor(i / 26));

function renamed(
  assignment: Assignment,
  idOfPanel: ReadonlyMap<number, string>,
  turnOfPanel: ReadonlyMap<number, number>,
  parts: JoinedKinds['parts'],
): Assignment {
  const wider = (ids: readonly string[], first: string | null): string[] => {
    const all = ids.flatMap((id) => (parts.get(id) ?? [{ id }]).map((part) => part.id));
    return first === null ? all : [first, ...all.filter((id) => id !== first)];
  };
  const idOfReading = new Map<number, { id: string | null; turn: number }>();
  const panels = assignment.panels.map((panel, at): PanelKind => {
    const id = idOfPanel.get(at) ?? panel.kind;
    for (const { index } of panel.panel.readings)
      idOfReading.set(index, { id, turn: turnOfPanel.get(at) ?? 0 });
    return { ...panel, kind: id, candidates: wider(panel.candidates, id) };
  });
  const readings = assignment.readings.map((one): AssignedReading => {
    const { id, turn } = idOfReading.get(one.reading) ?? { id: one.kind, turn: 0 };
    const n = one.liesOn.length;
    return {
      ...one,
      kind: id,
      candidates: wider(one.candidates, id),
      turn: (one.turn + n - turn) % n,
      liesOn: one.liesOn.map((side) => (side + n - turn) % n),
    };
  });
  const tooFew = assignment.tooFew.map((one) => ({ ...one, kinds: wider(one.kinds, null) }));
  return { panels, readings, tooFew };
}

/** Side → mean of the angles read on a kind's row and panels; null where nobody read any. `sd`: of
 * one angle, radians. */
export function dihedralsOf(
  { id, sides, row }: Unjoined,
  assigned: readonly AssignedReading[],
  readings: readonly ReadingRow[],
  sd: number,
): readonly (Measured | null)[] | null {
  const found: number[][] = sides.map((_, i) => {
    const stated = row?.dihedrals?.[i];
    return typeof stated === 'number' ? [stated] : [];
  });
  for (const { reading, kind, liesOn } of assigned)
    if (kind === id)
      liesOn.forEach((side, written) => {
        const angle = readings[reading]?.dihedrals?.[written];
        if (typeof angle === 'number') (found[side] as number[]).push(angle);
      });
  if (found.every((angles) => angles.length === 0)) return null;
  return found.map((angles) =>
    angles.length === 0
      ? null
      : {
          value: angles.reduce((sum, x) => sum + x, 0) / angles.length,
          sd: sd / Math.sqrt(angles.length),
        },
  );
}
