// The close-down card of an evening: what is done, in which order, before a stage is left for the night.
// Common practice; an estimate and no word on safety.

import { commonPractice, type Provenance } from '../loads/provenance.ts';
import type { RaisingStage } from '../raise/plan.ts';

/** A close-down card. */
export interface CloseDownCard {
  readonly title: string;
  /** Begins so long before dark, seconds, with so many hands. */
  readonly seconds: number;
  readonly hands: number;
  /** In order. */
  readonly steps: readonly string[];
  /** Gust over which nobody stays near, m/s; null: nobody knows. */
  readonly leave: number | null;
  readonly cautions: readonly string[];
}

/** Where the steps come from. */
export const CLOSE_DOWN_STEPS: Provenance = commonPractice(
  'what is closed, tied and laid down before a half-built shell is left for the night',
);

/** The card of a stage that is left for the night. `leave`: gust that it stands in, m/s. */
export function closeDownCard(
  stage: RaisingStage,
  leave: number | null,
  { seconds, hands }: { readonly seconds: number; readonly hands: number },
): CloseDownCard {
  const seams = stage.pass.finger.length;
  const props = stage.props.length;
  return {
    title: `Leave stage ${stage.number} for the night: ${stage.placed.length} panels up`,
    seconds,
    hands,
    steps: [
      'Nothing hangs, nothing is held: the last piece is bolted, or back on the ground.',
      seams > 0
        ? `Every hole of the ${seams === 1 ? 'seam' : `${seams} seams`} bolted in this stage has its bolt, finger-tight at least.`
        : 'Every seam has all its bolts.',
      ...(props > 0
        ? [
            `${props === 1 ? 'The prop stands' : `All ${props} props stand`} plumb, wedged, tied at head and foot.`,
          ]
        : []),
      'Every base hub is tied to its anchor; each anchor is looked at and pulled by hand.',
      'Stacks of panels lie flat, strapped and weighted; nothing light lies loose.',
      'Ladders lie on the ground, the tower is lowered or tied; tools and bolts under cover.',
      'Openings are closed or all left open, as the wind limit supposes; nobody sleeps inside.',
      'Rope off the fall range; write the stage, the hour and the gust limit on the board.',
    ],
    leave,
    cautions: [
      leave === null
        ? 'Nobody knows the wind that this stage stands in: somebody looks at it whenever the wind rises.'
        : `If gusts over ${leave.toFixed(1)} m/s come, everybody stays away from it and its fall range.`,
      'An estimate and no design approval: local codes and a licensed engineer or rigger decide.',
    ],
  };
}
