// Threads that pass for each other by eye and caliper but must never be counted for one another:
// an inch and a metric size less than 6 % apart in diameter, or two pitches of one diameter.
// Geometry of the 60° basic profile, ASME B1.1 and ISO 724: the nut's minor diameter is
// D − 1.0825 p. Metres.

import { type Thread, writeThread } from './threads.ts';
import { SAME_DIAMETER, TWIN_DIAMETERS } from './tolerances.ts';

/** Two threads that are easily mixed, and what happens when they are. */
export interface NearTwins {
  /** The larger diameter first (of equal diameters, the coarser pitch). */
  readonly threads: readonly [Thread, Thread];
  /** Difference of the major diameters, metres. */
  readonly diameterGap: number;
  /** Turns until the pitches are a quarter of the finer pitch apart: about where it binds. */
  readonly turnsToBind: number;
  /** Share of full thread depth left when the smaller bolt goes into the larger nut, 0 … 1. */
  readonly depthLeft: number;
  /** The warning in plain words, with its source. */
  readonly warning: string;
}

/** The facts of a pair, or null where the two are the same thread or nothing alike. */
export function nearTwins(a: Thread, b: Thread): NearTwins | null {
  if (a.designation === b.designation) return null;
  const [large, small] = inOrder(a, b);
  const diameterGap = large.diameter - small.diameter;
  const alike =
    a.system === b.system
      ? diameterGap < SAME_DIAMETER
      : diameterGap < TWIN_DIAMETERS * large.diameter;
  if (!alike) return null;
  const turnsToBind = Math.min(a.pitch, b.pitch) / 4 / Math.abs(a.pitch - b.pitch);
  const depthLeft = 1 - diameterGap / (1.0825 * large.pitch);
  const facts = { threads: [large, small] as const, diameterGap, turnsToBind, depthLeft };
  return { ...facts, warning: warn(large, small, facts) };
}

/** Every near twin among the threads, each pair once. */
export function nearTwinsAmong(threads: readonly Thread[]): NearTwins[] {
  const distinct = [...new Map(threads.map((t) => [t.designation, t])).values()];
  return distinct.flatMap((a, i) =>
    distinct.slice(i + 1).flatMap((b) => {
      const twins = nearTwins(a, b);
      return twins === null ? [] : [twins];
    }),
  );
}

function inOrder(a: Thread, b: Thread): readonly [Thread, Thread] {
  const aFirst = a.diameter > b.diameter || (a.diameter === b.diameter && a.pitch > b.pitch);
  return aFirst ? [a, b] : [b, a];
}

function warn(
  large: Thread,
  small: Thread,
  facts: { diameterGap: number; turnsToBind: number; depthLeft: number },
): string {
  const gap = (facts.diameterGap * 1000).toFixed(2);
  const turns = facts.turnsToBind.toFixed(1);
  const depth = Math.round(facts.depthLeft * 100);
  const size =
    facts.diameterGap < SAME_DIAMETER ? 'equal in diameter' : `only ${gap} mm apart in diameter`;
  const bind =
    facts.turnsToBind > 10
      ? 'they go together almost as if they matched'
      : `a nut of the one on a bolt of the other binds or strips after about ${turns} turns`;
  const loose =
    facts.depthLeft < 0.9
      ? `; a ${small.designation} bolt in a ${large.designation} nut has ${depth} % of its thread depth and can feel tight and still pull out`
      : '';
  return `${writeThread(large)} and ${writeThread(small)} are ${size}: ${bind}${loose}. Sort them with a thread gauge; they are counted apart (ASME B1.1, ISO 724).`;
}
