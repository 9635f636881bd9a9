// Which tagged panel goes where in a standing shell: panels and what their sides are off by from their
// readings, then core's search.

import {
  type Kind,
  type Pile,
  type PileKinds,
  placeSingles,
  type Shell,
  taggedPanels,
} from '@shellraise/core';

/** What is asked. */
export interface SinglesQuestionOfPile {
  readonly shell: Shell;
  /** Kinds with their sides as fitted. */
  readonly kinds: readonly Kind[];
  readonly course: ArrayLike<number>;
  readonly leftOut: readonly number[];
  readonly pile: Pick<Pile, 'readings' | 'hubAllowance'>;
  readonly worked: Pick<PileKinds, 'assigned' | 'people'>;
}

/** Who goes where. */
export interface TaggedPlaces {
  /** Place → tag of its panel; null where any panel of its kind will do. */
  readonly tagAt: readonly (string | null)[];
  /** Place → 1 where its panel is to be mended. */
  readonly weak: Uint8Array;
  /** Tagged panels that have a place, and all that could have one. */
  readonly placed: number;
  readonly panels: number;
  /** Root mean square misfit of seams between tagged panels, metres: as they come, and so. */
  readonly before: number;
  readonly after: number;
  /** Largest sum of misfits round a course, metres. */
  readonly worstCourse: number;
}

/** Tagged panels to places. */
export function taggedPlaces(question: SinglesQuestionOfPile): TaggedPlaces {
  const { shell, kinds, course, leftOut } = question;
  const panels = taggedPanels(question.pile, question.worked, kinds);
  const out = new Set(leftOut);
  const family = Array.from(shell.kind, (kind, place) => (out.has(place) ? -1 : kind));
  const answer = placeSingles({ shell, family, course, panels });
  const panelAt = Array.from(answer.panelAt);
  return {
    tagAt: panelAt.map((panel) => panels[panel]?.tag ?? null),
    weak: Uint8Array.from(panelAt, (panel) => (panels[panel]?.weak ? 1 : 0)),
    placed: panelAt.filter((panel) => panel >= 0).length,
    panels: panels.length,
    before: answer.before,
    after: answer.after,
    worstCourse: answer.worstCourse,
  };
}
