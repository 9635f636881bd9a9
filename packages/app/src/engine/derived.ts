// What the engine makes of the project, step by step: the pile worked up, the shapes, what can
// stand, the standing shell. Nothing here is truth: each answer carries the input it was made
// from, and is asked for again when that changed. How far to go is what the sheet on show wants.

import type { Identification, IdentifyProgress, PlacesDecision, Project } from '@shellraise/core';
import { createStore } from 'zustand/vanilla';
import type { ArrangeAnswer, PileWork, StandAnswer } from './api.ts';
import { type Ask, idle, unanswered } from './ask.ts';
import type { Asked, EngineBridge } from './bridge.ts';

/** How far the sheet on show wants the engine to go. */
export type Want = 'work' | 'shapes' | 'standing';

/** Everything made from the project. */
export interface Derived {
  readonly work: Ask<PileWork>;
  readonly shapes: Ask<Identification>;
  /** Index of the shape that the lists and drawings are of. */
  readonly shape: number;
  readonly list: Ask<ArrangeAnswer>;
  readonly stand: Ask<StandAnswer>;
  /** Counts panels to be mended as stock, in lists made before anything is decided. */
  readonly repaired: boolean;
}

const nothing: Derived = {
  work: idle,
  shapes: idle,
  shape: 0,
  list: idle,
  stand: idle,
  repaired: false,
};

type Step = 'work' | 'shapes' | 'list' | 'stand';

/** Derived results that follow a project. */
export function createDerived(quick: EngineBridge, long: EngineBridge, now: () => number) {
  const store = createStore<Derived>(() => nothing);
  const running = new Map<Step, Asked<unknown>>();
  let project: Project | null = null;
  let want: Want = 'work';
  let shapesWanted = false;

  /** Keeps the present value in sight while `input` is asked about. */
  function begin<T>(
    step: Step,
    input: unknown,
    start: (onProgress: (p: IdentifyProgress) => void) => Asked<T>,
  ): void {
    if (running.has(step)) {
      running.get(step)?.cancel();
      running.delete(step);
    }
    put(step, (ask) => ({
      ...ask,
      status: 'running',
      input,
      fresh: false,
      since: now(),
      progress: null,
      fault: null,
      died: false,
    }));
    const asked = start((progress) => {
      if (running.get(step) === asked) put(step, (ask) => ({ ...ask, progress }));
    });
    running.set(step, asked);
    const ended = (more: Partial<Ask<T>>): void => {
      if (running.get(step) !== asked) return;
      running.delete(step);
      put(step, (ask) => ({ ...ask, ...more }));
      pump();
    };
    asked.answer.then(
      (value) => ended({ status: 'done', value, fresh: true }),
      (error: unknown) => ended(unanswered(error)),
    );
  }

  function put<T>(step: Step, change: (ask: Ask<T>) => Ask<T>): void {
    store.setState((state) => ({ [step]: change(state[step] as Ask<T>) }) as Partial<Derived>);
  }

  /** Asks the next question that is not answered yet for the present project. */
  function pump(): void {
    if (!project) return;
    const { pile } = project;
    const { work } = store.getState();
    if (work.input !== pile) {
      // A worker takes longer to start than to work up a pile: let it finish, then ask again.
      if (running.has('work')) return;
      begin('work', pile, () => quick.ask('work', pile));
      return;
    }
    if (!work.fresh || !work.value) return;
    if (want === 'work' && !shapesWanted) return;
    const { question } = work.value;
    const asked = JSON.stringify(question);
    const { shapes } = store.getState();
    if (shapes.input !== asked) {
      store.setState({ shape: 0 });
      begin('shapes', asked, (onProgress) => long.ask('identify', question, onProgress));
      return;
    }
    if (!shapes.fresh || !shapes.value?.shapes.length || want !== 'standing') return;
    if (project.places) pumpStand(project.places, shapes.value, asked);
    pumpList(shapes.value, asked);
  }

  function pumpStand(decision: PlacesDecision, found: Identification, asked: string): void {
    const { stand, shape, work } = store.getState();
    const input = `${JSON.stringify(decision)} ${shape} ${asked}`;
    if (stand.input === input) return;
    const question = {
      shapes: found.shapes,
      prefer: shape,
      kinds: work.value?.question.kinds ?? [],
      decision,
    };
    begin('stand', input, () => long.ask('stand', question));
  }

  function pumpList(found: Identification, asked: string): void {
    const { list, shape, work, repaired, stand } = store.getState();
    const own = project?.places?.repaired ?? repaired;
    const input = `${own} ${shape} ${asked}`;
    const kinds = work.value?.question.kinds ?? [];
    const one = found.shapes[shape];
    if (!one) return;
    if (list.input !== input) {
      if (running.has('stand')) return;
      begin('list', input, () => long.ask('arrange', one, kinds, own));
      return;
    }
    const first = list.fresh ? list.value?.decisions[0] : undefined;
    if (!project?.places && first && stand.status !== 'running') pumpStand(first, found, asked);
  }

  return {
    store,
    /** Follows the project as it is now. */
    follow(next: Project, wanted: Want): void {
      const other = project !== null && project.pile !== next.pile;
      if (other && want !== 'standing') shapesWanted = false;
      project = next;
      want = wanted;
      pump();
    },
    /** Asks for the shapes although the sheet does not need them yet. */
    askShapes(): void {
      shapesWanted = true;
      const { shapes } = store.getState();
      if (shapes.status === 'cancelled' || shapes.status === 'failed')
        put('shapes', (ask) => ({ ...ask, input: null }));
      pump();
    },
    /** Shows another of the shapes that fit. */
    chooseShape(shape: number): void {
      store.setState({ shape });
      pump();
    },
    /** Counts panels to be mended, or not, as long as nothing is decided. */
    setRepaired(repaired: boolean): void {
      store.setState({ repaired });
      pump();
    },
    /** Asks again what failed or was cancelled. */
    again(step: Step): void {
      put(step, (ask) => ({ ...ask, input: null }));
      pump();
    },
    /** Stops a question under way. */
    cancel(step: Step): void {
      running.get(step)?.cancel();
    },
    /** Forgets everything: another project is opened. */
    reset(): void {
      for (const asked of running.values()) asked.cancel();
      running.clear();
      project = null;
      shapesWanted = false;
      store.setState(nothing, true);
    },
  };
}

/** Derived results with what can be asked of them. */
export type DerivedResults = ReturnType<typeof createDerived>;
