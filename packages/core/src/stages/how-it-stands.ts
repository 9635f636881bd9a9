// Whether a stage stands: what moves freely in it, and the fewest hubs to prop so that nothing does.

import type { FrameModel } from '../frame/model.ts';
import type { Shell } from '../shell/shell.ts';
import { fewestProps, type HubShare } from './fewest-props.ts';
import { frameOfStage, type Stage } from './stage.ts';
import { freeMovements, type Tied, tiedFrame } from './tied.ts';

/** How a stage stands. */
export interface HowItStands {
  /** Independent movements that nothing resists, its own props in place; 0: it stands. */
  readonly movements: number;
  /** The hub that they move most, and the places whose panels they move; null and none where it
   * stands. */
  readonly at: number | null;
  readonly moving: readonly number[];
  /** Hubs to prop besides, the most helpful first; none where it stands. */
  readonly props: readonly number[];
  /** Whether fewer were shown not to be enough. */
  readonly proved: boolean;
  /** The ties of the stage with all those props in place. */
  readonly propped: Tied;
}

/** Options of the search for props. */
export interface PropOptions {
  /** Which hubs may be propped; all of placed panels where left out. */
  readonly mayProp?: (hub: number) => boolean;
  /** Sets of props looked at before the search for fewer gives up. */
  readonly sets?: number;
}

/** How a stage stands where too few hubs may be propped. */
export type CannotBePropped = Omit<HowItStands, 'props' | 'propped'> & { readonly props: null };

/** How a stage stands that has no faults. Any hub of a placed panel may be propped unless `mayProp`
 * says no; `props` is then null where the allowed ones are not enough. */
export function howItStands(
  shell: Shell,
  stage: Stage,
  options: PropOptions = {},
): HowItStands | CannotBePropped {
  const own = stage.props ?? [];
  return howFrameStands(
    (props) => frameOfStage(shell, { ...stage, props: [...own, ...props] }),
    options,
  );
}

/** How a frame stands: `frameAt` makes it with its own props and those told held too. */
export function howFrameStands(
  frameAt: (props: readonly number[]) => FrameModel,
  { mayProp = () => true, sets }: PropOptions = {},
): HowItStands | CannotBePropped {
  const tied = tiedFrame(frameAt([]));
  const space = freeMovements(tied);
  if (space.length === 0)
    return { movements: 0, at: null, moving: [], props: [], proved: true, propped: tied };
  const shares = sharesOf(tied, space);
  const told = { movements: space.length, ...whereOf(tied.model, shares) };
  const tried = new Map<string, { readonly tied: Tied; readonly left: Float64Array[] }>();
  const proppedAt = (props: readonly number[]): { tied: Tied; left: Float64Array[] } => {
    const key = props.join();
    const known = tried.get(key);
    if (known) return known;
    const tied = tiedFrame(frameAt(props));
    const now = { tied, left: freeMovements(tied) };
    tried.set(key, now);
    return now;
  };
  let [left, own, proved] = [space, shares, true];
  const props: number[] = [];
  for (;;) {
    const found = fewestProps(
      left.length,
      own.filter(({ hub }) => mayProp(hub)),
      (hubs) => proppedAt([...props, ...hubs]).left.length === 0,
      sets,
    );
    if (found === null) return { ...told, props: null, proved: true };
    // A set that leaves a movement all but free is filled up, and no longer shown to be the fewest.
    proved = proved && found.proved && props.length === 0;
    props.push(...found.hubs);
    const propped = proppedAt(props);
    left = propped.left;
    if (left.length === 0) return { ...told, props, proved, propped: propped.tied };
    own = sharesOf(propped.tied, left);
  }
}

/** What each hub that is free shares in the movements, in ascending order of hub. */
function sharesOf({ joints, unknown }: Tied, space: readonly Float64Array[]): HubShare[] {
  const rows = new Map<number, Float64Array[]>();
  joints.hub.forEach((hub, joint) => {
    for (let x = 0; x < 3; x++) {
      const i = unknown[3 * joint + x];
      if (i < 0) continue;
      const list = rows.get(hub) ?? [];
      rows.set(hub, list);
      list.push(Float64Array.from(space, (v) => v[i]));
    }
  });
  return [...rows].sort(([a], [b]) => a - b).map(([hub, list]) => ({ hub, rows: list }));
}

/** The hub with the largest share, and the places with a corner at a hub that has one. */
function whereOf(
  { panels }: FrameModel,
  shares: readonly HubShare[],
): { readonly at: number; readonly moving: number[] } {
  const size = ({ rows }: HubShare): number =>
    rows.reduce((sum, row) => sum + row.reduce((s, x) => s + x * x, 0), 0);
  const sizes = new Map(shares.map((share) => [share.hub, size(share)]));
  let at = -1;
  let most = 0;
  for (const [hub, own] of sizes)
    if (own > most * (1 + 1e-6)) {
      at = hub;
      most = own;
    }
  const moves = (hub: number): boolean => (sizes.get(hub) ?? 0) > 1e-6 * most;
  return { at, moving: panels.flatMap(({ place, hubs }) => (hubs.some(moves) ? [place] : [])) };
}
