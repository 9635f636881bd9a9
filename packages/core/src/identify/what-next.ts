// What is left to do once shapes are found or not: what exchanging kinds costs, what to read or look
// at next, whether enough is known, and the star that proves it on the grass.

import { isEnough } from './enough.ts';
import { familiesOf } from './families.ts';
import { freedomOf } from './freedom.ts';
import { grassTrial } from './grass-trial.ts';
import { hubLooks } from './hub-looks.ts';
import { interchangeCosts } from './interchange-cost.ts';
import { type NetBelief, netBelief, readingSdOf } from './net-belief.ts';
import { nextAlone } from './next-alone.ts';
import { LEAST_BITS, MOST_TOLD, readingsBetween } from './next-between.ts';
import { nextAtPile } from './pile-next.ts';
import type { Identification, NextReading, Shape, ShapeQuestion } from './shape.ts';

/** Most things to do that are told, and most of them that are sides to tell which shape it is. */
const MOST_NEXT = 6;
const MOST_READINGS = 3;
/** How far a bit of each sort weighs: which shape it is comes first; for a look one must still find
 * what nobody may have kept (common practice, no source). */
const WEIGHT = { read: 1, look: 0.5, other: 0.3 };

/** The answer to a question with all that follows from it. `shouldStop`: asked between one thing and the
 * next; once true, the answer is left as it was found. */
export function withWhatNext(
  question: ShapeQuestion,
  found: Identification,
  shouldStop: () => boolean = () => false,
): Identification {
  const shapes: Shape[] = [];
  for (const shape of found.shapes) {
    if (shouldStop()) return found;
    shapes.push({ ...shape, interchangeCosts: interchangeCosts(shape, question.kinds) });
  }
  const [best] = shapes;
  if (!best) return { ...found, next: withoutShapes(question, found) };
  const nets: (NetBelief | null)[] = [];
  for (const shape of shapes.slice(0, MOST_TOLD)) {
    if (shouldStop()) return found;
    nets.push(netBelief(shape, question));
  }
  const freedom = freedomOf(shapes, question, found.complete);
  const [net] = nets;
  const next: NextReading[] = [];
  for (const more of [
    () => readingsBetween(shapes, nets, question).slice(0, MOST_READINGS),
    () => hubLooks(shapes.slice(0, MOST_TOLD), question, familiesOf(best, question)),
    () => (net ? nextAlone(net, question) : []),
  ]) {
    if (shouldStop()) return found;
    next.push(...more().filter(({ bits }) => bits >= LEAST_BITS));
  }
  next.sort((a, b) => weightOf(b) - weightOf(a));
  if (shouldStop()) return found;
  return {
    ...found,
    shapes,
    next: [...handsFirst(found.next, shapes), ...next].slice(0, MOST_NEXT),
    enough: isEnough({ ...found, shapes }, net ?? null, freedom),
    trial: grassTrial(nets, question),
    freedom,
  };
}

/** What to do at a pile whose kinds close into nothing. */
const withoutShapes = (question: ShapeQuestion, { stuck }: Identification): NextReading[] =>
  nextAtPile(
    {
      kinds: question.kinds,
      assigned: [],
      suspects: [],
      slips: [],
      maybeOne: [],
      maybeTwo: [],
      tooFew: [],
      people: [],
      miscounts: [],
      noise: { used: readingSdOf(question) },
    },
    { stuck, allowance: question.allowance ?? 0 },
  ).map(({ act, kinds, side, words, bits }) => ({
    act,
    about: act === 'count' ? 'count' : 'shape',
    kind: kinds[0] ?? null,
    side,
    words,
    bits,
    outcomes: [],
  }));

const weightOf = ({ act, about, bits }: NextReading): number =>
  bits * (about !== 'shape' ? WEIGHT.other : act === 'look' ? WEIGHT.look : WEIGHT.read);

/** The looks that were found on the way, which leave the shapes as probable as they are. */
function handsFirst(next: readonly NextReading[], shapes: readonly Shape[]): NextReading[] {
  const odds = shapes.map(({ probability }) => probability);
  const none = Math.max(0, 1 - odds.reduce((all, p) => all + p, 0));
  return next.map((look) => ({
    ...look,
    about: 'hand',
    outcomes: look.outcomes.map((one) => ({ ...one, shapes: [...odds, none] })),
  }));
}
