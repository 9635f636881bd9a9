// A stage: which places have their panels, how far each seam is, which hubs are propped. A stage
// with a panel that nothing carries, or a prop under nothing, is refused and reckoned no further.

import { baseSupports, frameOf } from '../frame/from-shell.ts';
import type { FrameModel, SeamPass } from '../frame/model.ts';
import { joinInto, rootInto, singletons } from '../math/sets.ts';
import type { Fault } from '../measure/fault.ts';
import { hubCount, placeCount, type Shell } from '../shell/shell.ts';

/** A state of the half-built shell. */
export interface Stage {
  /** Places that have their panels. */
  readonly placed: readonly number[];
  /** How far the seam with this index is; null: not bolted. Finger-tight where left out. */
  readonly pass?: (seam: number) => SeamPass | null;
  /** Hubs with a hub plate; none where left out. */
  readonly plates?: readonly number[];
  /** Hubs held by a prop, tied at head and foot; none where left out. */
  readonly props?: readonly number[];
}

/** What keeps a stage from being reckoned: no panel at all, an index that is none of the shell's, a
 * prop under a hub that no panel reaches or that stands on the ground, a floating panel by its
 * number. The base ring's hubs are held. */
export function stageFaults(shell: Shell, numbers: readonly string[], stage: Stage): Fault[] {
  const faults = indexFaults(shell, stage);
  if (faults.length > 0) return faults;
  const frame = frameOfStage(shell, stage);
  const base = new Set(baseSupports(shell).map(({ hub }) => hub));
  const reached = new Set(frame.panels.flatMap(({ hubs }) => hubs));
  (stage.props ?? []).forEach((hub, i) => {
    if (!reached.has(hub))
      faults.push({
        path: `props[${i}]`,
        found: `a prop under hub ${hub}, which no panel reaches: it stands on air`,
        expected: 'a hub of a placed panel',
      });
    else if (base.has(hub))
      faults.push({
        path: `props[${i}]`,
        found: `a prop under hub ${hub}, which stands on the ground`,
        expected: 'a hub above the base ring',
      });
  });
  for (const place of floatingPlaces(frame))
    faults.push({
      path: `place ${numbers[place]}`,
      found:
        'a floating panel: no bolted seam, plate or prop joins it to what stands on the ground',
      expected: 'panels placed so that each is joined to the ground by others, or propped',
    });
  return faults;
}

function indexFaults(shell: Shell, { placed, props = [], plates = [] }: Stage): Fault[] {
  const faults: Fault[] = [];
  if (placed.length === 0)
    faults.push({ path: 'placed', found: 'no panel', expected: 'at least one placed panel' });
  const check = (path: string, list: readonly number[], count: number, what: string): void => {
    list.forEach((one, i) => {
      if (!(Number.isInteger(one) && one >= 0 && one < count))
        faults.push({
          path: `${path}[${i}]`,
          found: String(one),
          expected: `a ${what} of the shell, 0 to ${count - 1}`,
        });
    });
  };
  check('placed', placed, placeCount(shell), 'place');
  check('props', props, hubCount(shell), 'hub');
  check('plates', plates, hubCount(shell), 'hub');
  return faults;
}

/** The frame of a stage: base hubs and propped hubs held. */
export function frameOfStage(shell: Shell, stage: Stage): FrameModel {
  const props = [...new Set(stage.props ?? [])].map((hub) => ({ hub, stiffness: null }));
  return frameOf(shell, {
    placed: stage.placed,
    pass: stage.pass ?? (() => 'finger'),
    plates: stage.plates ?? [],
    supports: [...baseSupports(shell), ...props],
  });
}

/** Places of a frame whose panels no seam, plate or held hub joins to a held hub. */
function floatingPlaces(frame: FrameModel): number[] {
  const sets = singletons(frame.panels.length);
  for (const { panels } of frame.seams) joinInto(sets, panels[0], panels[1]);
  const held = new Set(frame.supports.map(({ hub }) => hub));
  const first = new Map<number, number>();
  const carried = new Set<number>();
  frame.panels.forEach(({ hubs }, p) => {
    for (const hub of hubs) {
      if (!frame.plates[hub]) continue;
      const other = first.get(hub);
      if (other === undefined) first.set(hub, p);
      else joinInto(sets, p, other);
    }
  });
  frame.panels.forEach(({ hubs }, p) => {
    if (hubs.some((hub) => held.has(hub))) carried.add(rootInto(sets, p));
  });
  return frame.panels.flatMap(({ place }, p) => (carried.has(rootInto(sets, p)) ? [] : [place]));
}
