// Guys and chains in the place of props, over the whole order of work. A hub that the order holds from
// one lift to another is held all that time by the same lines where there are such: every state meanwhile
// is asked with all lines rigged in it, under its weight and in every wind case up to the gust at which
// work stops at the latest. A line goes when its hub need not be held any more: every state from there
// on was asked without it. What lines can't hold stays a prop. An estimate and no design approval.

import { stageWind } from '../loads/wind-cases.ts';
import { pressureOf } from '../stages/limits.ts';
import type { StageModel } from '../stages/model.ts';
import { frameOfStage, type Stage } from '../stages/stage.ts';
import { HANDLING_LIMITS, type HandlingLimit } from '../stages/stop-work.ts';
import { lineCarries, linesAssumed, type SupportLine } from '../stages/supports/choose.ts';
import { type Line, linesAt, type SupportGear } from '../stages/supports/gear.ts';
import { choices } from '../stages/supports/sets.ts';
import {
  chainsOf,
  heldAt,
  isOverdone,
  type LinedState,
  loadsOf,
  mastOf,
  type PanelLoad,
  stateOrFall,
} from '../stages/supports/state.ts';

/** A hub that an order holds, from one state to another, both counted from 0; `to` −1: to the end. */
export interface HeldFor {
  readonly hub: number;
  readonly from: number;
  readonly to: number;
}

/** What lines do in an order. */
export interface Rigged {
  /** Gust up to which they hold, m/s: 3-second gust at the shell. */
  readonly gust: number;
  /** By held hub as given: its lines with the most that each carries over all its states; none: a
   * prop stays. */
  readonly lines: readonly (readonly SupportLine[])[];
  /** The most on the head of the mast over all states, N; null where no chain is used. */
  readonly mast: {
    readonly push: number;
    readonly sideways: number;
    readonly use: number | null;
  } | null;
  readonly assumed: readonly string[];
}

/** Lines for the hubs that an order holds. `stages`: its states one after the other, each with its held
 * hubs as props. */
export function rigged(
  model: StageModel,
  gear: SupportGear,
  stages: readonly Stage[],
  held: readonly HeldFor[],
): Rigged {
  const gust = (HANDLING_LIMITS[0] as HandlingLimit).gust;
  const pressure = pressureOf(gust, model.airDensity.value);
  const states = stages.map((stage) => lazily(() => stateAt(model, stage, pressure)));
  const chosen: (readonly Line[])[] = held.map(() => []);
  const until = ({ to }: HeldFor): number => (to < 0 ? stages.length - 1 : to);
  const linesIn = (s: number, own: readonly (readonly Line[])[]): Line[] =>
    held.flatMap((one, i) => (one.from <= s && s <= until(one) ? (own[i] ?? []) : []));
  const under = (
    s: number,
    own: readonly (readonly Line[])[],
    only?: number,
  ): LinedState | number => {
    const { frame, hubs, loads } = (states[s] as () => State)();
    const lines = linesIn(s, own);
    if (chainsOf(lines) > (gear.mast?.chains ?? 0)) return 0;
    const asked = only === undefined ? loads : [loads[only] as PanelLoad];
    const found = stateOrFall(model, gear, frame, hubs, lines, asked);
    return typeof found !== 'number' && isOverdone(gear, found) ? 0 : found;
  };
  const falls = new Falls();
  const holds = (own: readonly (readonly Line[])[], from: number, to: number): boolean => {
    for (const [s, load] of falls.within(from, to))
      if (typeof under(s, own, load) === 'number') return falls.again(s, load);
    for (let s = from; s <= to; s++) {
      const found = under(s, own);
      if (typeof found === 'number') return falls.again(s, found);
    }
    return true;
  };
  const guyed = gear.mast === null || gear.mast.guyed;
  if (!guyed && gear.mast !== null) {
    const { head: to } = gear.mast;
    for (const group of together(held, until)) {
      const own = [...chosen];
      for (const i of group)
        own[i] = [{ kind: 'chain', hub: (held[i] as HeldFor).hub, anchor: 0, to }];
      const spans = group.map((i) => held[i] as HeldFor);
      const from = Math.min(...spans.map((one) => one.from));
      if (holds(own, from, Math.max(...spans.map(until))))
        for (const i of group) chosen[i] = own[i] as readonly Line[];
    }
  }
  held.forEach((one, i) => {
    if ((chosen[i] as readonly Line[]).length > 0) return;
    const { frame } = (states[one.from] as () => State)();
    const start = under(one.from, chosen, 0);
    if (typeof start === 'number') return;
    const force = heldAt(start.lined, start.forces[0] as LinedState['forces'][number], one.hub);
    const own = linesAt(gear, frame.hubs, one.hub).filter(({ kind }) => kind === 'guy' || guyed);
    const hold = (lines: readonly Line[]): boolean => {
      const tried = [...chosen];
      tried[i] = lines;
      return holds(tried, one.from, until(one));
    };
    const found = choices(frame.hubs, own, force).find(hold);
    if (found) chosen[i] = found;
  });
  return told(model, gear, held, chosen, states, { gust, until, under });
}

/** The most that each line carries over the states of its hub. */
function told(
  model: StageModel,
  gear: SupportGear,
  held: readonly HeldFor[],
  chosen: readonly (readonly Line[])[],
  states: readonly unknown[],
  {
    gust,
    until,
    under,
  }: {
    readonly gust: number;
    readonly until: (one: HeldFor) => number;
    readonly under: (s: number, own: readonly (readonly Line[])[]) => LinedState | number;
  },
): Rigged {
  const lines: (readonly SupportLine[])[] = held.map(() => []);
  let mast: Rigged['mast'] = null;
  states.forEach((_, s) => {
    const here = held.flatMap((one, i) =>
      one.from <= s && s <= until(one) && (chosen[i] as readonly Line[]).length > 0 ? [i] : [],
    );
    if (here.length === 0) return;
    const found = under(s, chosen);
    if (typeof found === 'number') throw new Error('a state that stood with its lines falls');
    for (const i of here) {
      const own = chosen[i] as readonly Line[];
      const first = found.lined.lines.indexOf(own[0] as Line);
      const now = own.map((_line, k) => lineCarries(gear, model.shell.hubs, found, first + k));
      const before = lines[i] as readonly SupportLine[];
      lines[i] = now.map((line, k) => larger(before[k], line));
    }
    mast = largerPush(mast, mastOf(gear.mast, found));
  });
  const used = chosen.flat();
  return { gust, lines, mast, assumed: used.length === 0 ? [] : linesAssumed(used) };
}

const larger = (before: SupportLine | undefined, now: SupportLine): SupportLine =>
  before === undefined || now.most > before.most
    ? { ...now, weight: Math.max(now.weight, before?.weight ?? 0) }
    : { ...before, weight: Math.max(now.weight, before.weight) };

function largerPush(before: Rigged['mast'], now: Rigged['mast']): Rigged['mast'] {
  if (before === null || now === null) return before ?? now;
  return {
    push: Math.max(before.push, now.push),
    sideways: Math.max(before.sideways, now.sideways),
    use: before.use === null || now.use === null ? null : Math.max(before.use, now.use),
  };
}

/** States and loads under which sets of lines fell, the latest first: the next set mostly falls there
 * too. Identity: it learns. */
class Falls {
  private known: (readonly [state: number, load: number])[] = [];

  within(from: number, to: number): (readonly [state: number, load: number])[] {
    return this.known.filter(([s]) => s >= from && s <= to);
  }

  /** Notes a fall; false, for whoever asks whether something holds. */
  again(state: number, load: number): false {
    const others = this.known.filter(([s, l]) => s !== state || l !== load);
    this.known = [[state, load] as const, ...others].slice(0, MOST_FALLS);
    return false;
  }
}

/** Falls remembered. */
const MOST_FALLS = 6;

/** A state without its props, the hubs that they hold, and what it must bear. */
interface State {
  readonly frame: ReturnType<typeof frameOfStage>;
  readonly hubs: readonly number[];
  readonly loads: readonly PanelLoad[];
}

function stateAt(model: StageModel, stage: Stage, pressure: number): State {
  const frame = frameOfStage(model.shell, { ...stage, props: [] });
  const { cases } = stageWind(model.wind, stage.placed);
  return { frame, hubs: stage.props ?? [], loads: loadsOf(model, frame, cases, pressure) };
}

function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Held hubs by the runs of states in which at least one is held. */
function together(held: readonly HeldFor[], until: (one: HeldFor) => number): number[][] {
  const groups: number[][] = [];
  let end = -1;
  for (const i of [...held.keys()].sort(
    (a, b) => (held[a] as HeldFor).from - (held[b] as HeldFor).from,
  )) {
    const one = held[i] as HeldFor;
    if (groups.length === 0 || one.from > end) groups.push([]);
    (groups.at(-1) as number[]).push(i);
    end = Math.max(end, until(one));
  }
  return groups;
}
