// What to do when holes will not meet: a drift, then seams round the piece slackened, then a reamer, within
// limits, then stop and survey. Which seams may be slackened comes from the plan's passes. Metres.
//
// Drifts and moderate reaming as a normal part of erection, more than that to be reported: AISC 303, Code of
// Standard Practice, correction of fit-up (from memory).

import { commonPractice, fromMemory, type Provenance } from '../loads/provenance.ts';
import { seamOf } from '../record/names.ts';
import { endHubAt } from '../shell/geometry.ts';
import { hubAt, type Shell } from '../shell/shell.ts';
import { nominalSize, readThread } from '../takeoff/threads.ts';
import { passAfter, type RaisingPlan } from './plan.ts';

/** What is asked. */
export interface HolesOffQuestion {
  readonly shell: Shell;
  /** Numbers of the places. */
  readonly numbers: readonly string[];
  readonly plan: Pick<RaisingPlan, 'stages'>;
  /** Thread of a seam's bolts, such as `5/16-18`; null where nobody knows. */
  readonly threadOf: (seam: number) => string | null;
}

/** What to do, one after the other. */
export interface HolesOff {
  /** Seams that may be slackened, the nearest first; none that have had their final pass. */
  readonly slacken: readonly number[];
  /** Widest hole that is reamed, by thread; metres. */
  readonly ream: readonly { readonly thread: string; readonly hole: number }[];
  /** The four steps in words: drift, slacken, ream, stop and survey. */
  readonly steps: readonly [drift: string, slacken: string, ream: string, stop: string];
  readonly flags: readonly Provenance[];
}

/** Widest clearance hole of a bolt, metres, by nominal size: the coarse series of ISO 273, the free fit of
 * inch clearance drills. */
const WIDEST: Readonly<Record<string, number>> = {
  M5: 0.0058,
  M6: 0.007,
  M8: 0.01,
  M10: 0.012,
  M12: 0.0145,
  M16: 0.0185,
  '1/4': 0.266 * 0.0254,
  '5/16': 0.332 * 0.0254,
  '3/8': 0.397 * 0.0254,
  '1/2': 0.5312 * 0.0254,
};

/** How many seams away is looked. */
const RINGS = 3;

/** Seams named at most in a sentence. */
const NAMED = 6;

/** What to do when the holes of a lift (from 0) of a stage will not meet. RangeError for one that the plan
 * does not have. */
export function holesOff(question: HolesOffQuestion, stage: number, lift: number): HolesOff {
  const { shell, numbers, plan, threadOf } = question;
  const own = plan.stages.find(({ number }) => number === stage)?.lifts[lift];
  if (own === undefined) throw new RangeError(`there is no lift ${lift + 1} in stage ${stage}`);
  const slacken = slackenable(question, stage, lift);
  const threads = new Set(own.seams.flatMap((seam) => threadOf(seam) ?? []));
  const ream = [...threads].flatMap((thread) => {
    const read = readThread(thread);
    const hole = read.ok ? WIDEST[nominalSize(read.value)] : undefined;
    return hole === undefined ? [] : [{ thread, hole }];
  });
  const named = slacken.slice(0, NAMED).map((seam) => seamName(shell, numbers, seam));
  const more = slacken.length - named.length;
  return {
    slacken,
    ream,
    steps: [
      'Drift: a tapered pin in the hole nearest the middle of the seam, then one bolt on each side of it. Never a finger, never pulled in by the bolt.',
      slacken.length === 0
        ? 'Slacken: nothing round it is tight yet; loosen this seam’s own bolts and start from its middle.'
        : `Slacken to finger-tight, the nearest first: ${named.join(', ')}${more > 0 ? ` and ${more} more round it` : ''}; what holds a prop or a load stays. Tighten again from the rim inward once the piece is in.`,
      `Ream: one hole or two of a seam, no wider than ${ream.length === 0 ? 'the free fit of the bolt' : ream.map(({ thread, hole }) => `${(hole * 1000).toFixed(1)} mm for ${thread}`).join(', ')}, with a washer over it, and no nearer to the edge than 1.2 times the hole. Wear eye protection and a mask; know what the panel is made of.`,
      'Stop and survey where that is not enough: piece, number, turn and hand; its sides by tape; the base ring for round and level; the course below for a panel in the wrong place. Somebody who can judge it decides on more.',
    ],
    flags: [
      fromMemory('AISC 303, Code of Standard Practice: drifts and moderate reaming are normal'),
      fromMemory('ISO 273, coarse clearance holes; EN 1993-1-8, table 3.3, edge distance 1.2 d0'),
      commonPractice('a bolt that had its final pass is not slackened to make holes meet'),
    ],
  };
}

/** The lift of a stage whose holes are likeliest to be off, from 0: the one that closes its course, else the
 * last; −1 where there is none. */
export function tightestLift({ lifts }: Pick<RaisingPlan['stages'][number], 'lifts'>): number {
  const closing = lifts.findIndex(({ closes }) => closes);
  return closing < 0 ? lifts.length - 1 : closing;
}

/** Snug seams within a few seams of the lift's own, the nearest first; those that are finger-tight give as
 * they are. */
function slackenable(
  { shell, plan }: HolesOffQuestion,
  stage: number,
  lift: number,
): readonly number[] {
  const now = plan.stages.find(({ number }) => number === stage);
  const seams = now?.lifts[lift]?.seams ?? [];
  const pass = passAfter(plan.stages, stage - 1, shell.seams.length / 2);
  const own = new Set(seams);
  const ends = (seam: number): number[] => {
    const side = shell.seams[2 * seam] as never;
    return [hubAt(shell, side), endHubAt(shell, side)];
  };
  let hubs = new Set(seams.flatMap(ends));
  const found: number[] = [];
  for (let ring = 0; ring < RINGS; ring++) {
    const next = [...pass.keys()].filter(
      (seam) => pass[seam] !== null && !own.has(seam) && ends(seam).some((hub) => hubs.has(hub)),
    );
    found.push(...next.filter((seam) => pass[seam] === 'snug' && !found.includes(seam)));
    hubs = new Set([...hubs, ...next.flatMap(ends)]);
  }
  return found;
}

/** A seam by the numbers of its two places, as the record calls it: `1-05/1-06`. */
export function seamName(
  { seams, sidePlace }: Shell,
  numbers: readonly string[],
  seam: number,
): string {
  const [a, b] = [0, 1].map(
    (k) => numbers[sidePlace[seams[2 * seam + k] as number] as number] ?? '?',
  );
  return seamOf(a as string, b as string);
}
