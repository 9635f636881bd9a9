// The way through a pile with something wrong in it: as it is; without kinds that are hardly there;
// then one supposition after the other, the likeliest first, until the kinds that are left close well.
// The answer names what was supposed. A pile that nothing explains is answered as it is.

import type { Kind } from '../pile/kind.ts';
import { fromOtherFace, nearestTurn } from '../pile/polygon.ts';
import { linkedLots, withOtherShell } from './apart-heaps.ts';
import type { Effort } from './candidates.ts';
import { closingLots } from './closing-lots.ts';
import { cutLooking, withCutBase } from './cut-base.ts';
import { fewKinds, inUnitOfOthers, type KindSide, lonelySides, rareKinds } from './lonely.ts';
import { withMisreadPanels } from './misread-panels.ts';
import { namedKindsWanted } from './named-kinds.ts';
import { ORDERS, ordersCounted, partAnswer, partShapes } from './part-shape.ts';
import type { Identification, IdentifyProgress, Shape, ShapeQuestion } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';
import { courseLooking, withStraightCourse } from './straight-course.ts';
import {
  asAsked,
  isOff,
  isTooFarOff,
  nothingWrong,
  type Rewritten,
  type Supposition,
  supposed,
} from './suppose.ts';
import { type Wanted, wantedKinds, withWanted } from './wanted.ts';

/** How an identification is watched and stopped. */
export interface IdentifyOptions {
  /** Told whatever is new, and now and then that nothing is. */
  readonly onProgress?: (progress: IdentifyProgress) => void;
  /** Asked often; true stops the search, which then returns what it has. */
  readonly shouldStop?: () => boolean;
}

/** Answers a question as it stands. */
export type Ask = (
  question: ShapeQuestion,
  options: IdentifyOptions,
  effort: Effort,
) => Identification;

/** The listed shapes together must be this probable for a supposition to be believed. */
const BELIEVED = 0.5;
/** Most suppositions that are tried, and how often the search may ask whether to stop (it does at every
 * try) until no further one is begun: some seconds. */
const MOST_TRIED = 40;
/** Most sets of kinds that look cut, or like another shell's, that are left out. */
const MOST_SETS = 16;
/** Most lots of kinds that are tried as one of two shells. */
const MOST_LOTS = 8;
/** Most lots of kinds that are tried as they close without the others. */
const MOST_CLOSING = 3;
const MOST_ASKED = 120_000;
/** Askings of the search for parts from one sign of life to the next. */
const QUIET = 50;
/** Most sides that are doubted together. */
const MOST_DOUBTED = 9;
/** How far each is trusted: of answers that fit, about so many are right in seeded trials. */
const TRUST = { rare: 0.98, mended: 0.96, doubted: 0.88, out: 0.85, wanted: 0.95 };

/** The answer to a question whose pile may have strangers and culprits in it. */
export function identifyTroubled(
  question: ShapeQuestion,
  options: IdentifyOptions,
  ask: Ask,
): Identification {
  const inquiry = new Inquiry(question, options, ask);
  const answer = inquiry.explained(answerOf(question, inquiry));
  inquiry.finish();
  return answer;
}

function answerOf(question: ShapeQuestion, inquiry: Inquiry): Identification {
  const counted = ordersCounted(question.kinds);
  const standing = inquiry.openPart(counted);
  // What closes without wanted kinds is looked at by the plain way, with its twins and its name.
  if (standing?.shapes.some(({ closed, added }) => !closed || added.length > 0)) return standing;
  const rare = new Set(rareKinds(question.kinds));
  const withoutRare = (effort: Effort): Identification | null =>
    rare.size > 0 && rare.size < question.kinds.length
      ? inquiry.try({ ...nothingWrong, leftOut: rare }, TRUST.rare, effort)
      : null;
  const early =
    withoutRare('quick') ??
    inquiry.withoutKinds(apartLooking(question.kinds)) ??
    inquiry.twoShells(true) ??
    inquiry.asItIs() ??
    inquiry.closingLots() ??
    withoutRare('asRead');
  if (early) return early;
  const plain = inquiry.ask(question, 'asRead');
  if (isBelieved(plain) || fitsAll(plain, question.kinds) || inquiry.stopped) return plain;
  const part = standing ?? (counted.length > 0 ? null : inquiry.openPart(ORDERS));
  if (part) return part;
  inquiry.renew();
  const found = inquiry.withKindsWanted() ?? inquiry.twoShells(false) ?? inquiry.supposing();
  if (found || inquiry.stopped) return found ?? { ...plain, complete: false };
  const last = inquiry.ask(question, 'last');
  const complete = plain.complete && last.complete && !inquiry.stopped;
  if (last.shapes.length + plain.shapes.length > 0)
    return { ...(sumOf(last) > sumOf(plain) ? last : plain), complete };
  const far = plain.stuck.length > 0 || !last.furthest ? plain : last;
  return { ...far, complete };
}

const sumOf = ({ shapes }: Identification): number =>
  shapes.reduce((sum, { probability }) => sum + probability, 0);

const isBelieved = (answer: Identification): boolean => sumOf(answer) >= BELIEVED;

/** Whether the best shape has a place for every kind and fits the readings as well as they are, so
 * that what makes it improbable is not that something is wrong with a kind. */
function fitsAll({ shapes }: Identification, kinds: readonly Kind[]): boolean {
  const [best] = shapes;
  if (!best || best.strangers.length > 0) return false;
  const off = kinds.flatMap(({ sides, sideSds }, k) =>
    sides.map((side, i) => {
      const fitted = best.fittedSides[k]?.[i] ?? side;
      return ((fitted - side) / Math.max(sideSds[i] as number, FINEST_SD)) ** 2;
    }),
  );
  return off.reduce((sum, x) => sum + x, 0) <= WELL * off.length;
}

/** Mean square of standardised misfits of sides that true readings stay below. */
const WELL = 1.2;

/** Sets of kinds that may be no panels of the sphere, as they are: cut, or of a straight course. */
function apartLooking(kinds: readonly Kind[]): readonly (readonly number[])[] {
  const course = courseLooking(kinds);
  return [...(course.length > 0 ? [course] : []), ...cutLooking(kinds)];
}

const others = (kinds: readonly Kind[], lot: readonly number[]): number[] =>
  [...kinds.keys()].filter((k) => !lot.includes(k));

/** The suppositions tried on one pile. */
class Inquiry {
  stopped = false;
  private tried = 0;
  private asked = 0;
  private done = 0;
  private told: IdentifyProgress | null = null;
  /** The answer that was explained last. */
  private known: Identification | null = null;

  constructor(
    private readonly question: ShapeQuestion,
    private readonly options: IdentifyOptions,
    private readonly askPlain: Ask,
  ) {}

  /** Asks, with a progress that never goes back however often one asks. */
  ask(question: ShapeQuestion, effort: Effort): Identification {
    const { onProgress, shouldStop } = this.options;
    const from = this.done;
    const watched: IdentifyOptions = {
      ...(onProgress && {
        onProgress: (how: IdentifyProgress) => {
          this.done = Math.max(this.done, from + 0.4 * (1 - from) * how.done);
          this.told = { ...how, done: this.done };
          onProgress(this.told);
        },
      }),
      shouldStop: () => {
        this.asked++;
        this.stopped ||= shouldStop?.() ?? false;
        return this.stopped;
      },
    };
    return this.askPlain(question, watched, effort);
  }

  /** Tells whoever watches that all is done. */
  finish(): void {
    if (this.told && !this.stopped)
      this.options.onProgress?.({ ...this.told, step: 'fit', done: 1 });
  }

  /** From here on there is as much work to do as at the start. */
  renew(): void {
    this.asked = 0;
  }

  /** The answer under a supposition; null where it is not to be believed. */
  try(what: Supposition, trust: number, effort: Effort): Identification | null {
    if (this.isSpent()) return null;
    this.tried++;
    const answer = this.ask(supposed(this.question, what), effort);
    return isBelieved(answer) ? asAsked(answer, this.question, what, trust) : null;
  }

  /** The first of some sets of kinds without which the others close. */
  withoutKinds(sets: readonly (readonly number[])[]): Identification | null {
    for (const set of sets.slice(0, MOST_SETS)) {
      const found = this.try({ ...nothingWrong, leftOut: new Set(set) }, TRUST.out, 'quick');
      if (found || this.stopped) return found;
    }
    return null;
  }

  /** The answer with what the strangers of its shapes are instead. */
  explained(answer: Identification): Identification {
    if (answer === this.known || this.stopped) return answer;
    const { kinds } = this.question;
    // One panel alone can always have been cut somewhere: a slip that says more goes before.
    const read = withMisreadPanels(answer, this.question, 1);
    const standing = withStraightCourse(withCutBase(read, kinds), kinds);
    this.known = withMisreadPanels(this.withOtherShell(standing), this.question, 2);
    return this.known;
  }

  /** The answer to the question as it stands, where it is soon found. */
  asItIs(): Identification | null {
    if (this.stopped) return null;
    const answer = this.ask(this.question, 'soon');
    return isBelieved(answer) ? answer : null;
  }

  /** Some of the kinds close without the others, and what the others are is explained: a mis-measured
   * kind, which is none of that, may be put right. */
  closingLots(): Identification | null {
    const { kinds, allowanceSd } = this.question;
    if (this.stopped) return null;
    const lots = closingLots(kinds, allowanceSd ?? 0, () => {
      this.stopped ||= this.options.shouldStop?.() ?? false;
      return !this.stopped;
    });
    this.renew();
    for (const lot of lots.slice(0, MOST_CLOSING)) {
      const found = this.withoutKinds([others(kinds, lot)]);
      const told = found && this.explained(found);
      if (this.stopped) return told;
      if (told?.shapes[0]?.explained.every(({ as }) => as !== 'nothing')) return told;
    }
    return null;
  }

  /** The answer with what its strangers close into on their own. */
  withOtherShell(answer: Identification): Identification {
    if (this.stopped) return answer;
    return withOtherShell(answer, this.question, (rest) => this.ask(rest, 'quick'));
  }

  /** Two shells whose kinds no lengths link (`first`), or by chance alone. */
  twoShells(first: boolean): Identification | null {
    const { kinds } = this.question;
    for (const lot of linkedLots(kinds, first).slice(0, MOST_LOTS)) {
      const found = this.withoutKinds([others(kinds, lot)]);
      const both = found && this.withOtherShell(found);
      if (both?.besides || this.stopped) return both;
    }
    return null;
  }

  /** All kinds are right, but some are not in the pile. */
  withKindsWanted(): Identification | null {
    const { question } = this;
    const { shouldStop } = this.options;
    const goOn = (): boolean => {
      this.stopped ||= shouldStop?.() ?? false;
      return !this.stopped;
    };
    const isKnown = question.kinds.every(({ faceUnknown }) => !faceUnknown);
    const named = isKnown ? namedKindsWanted(question.kinds, goOn) : null;
    return (
      (named && this.withWantedKinds(named)) ??
      this.withWantedKinds(wantedKinds(question.kinds, question.allowanceSd ?? 0, goOn))
    );
  }

  /** The answer with kinds of which the pile has none. */
  private withWantedKinds(wanted: Wanted | null): Identification | null {
    const { question } = this;
    if (!wanted || this.stopped) return null;
    const added = withWanted(wanted.kinds);
    const unread = added.map(({ kind }) => ({ ...kind, counted: false }));
    const answer = this.ask({ ...question, kinds: [...question.kinds, ...unread] }, 'quick');
    if (!isBelieved(answer)) return null;
    const shapes = answer.shapes.map((shape) => ({
      ...shape,
      probability: shape.probability * wanted.probability * TRUST.wanted,
      added: [...added, ...shape.added],
    }));
    return { ...answer, shapes };
  }

  /** Kinds that lie low are not in the pile: the part of the sphere that the others make about an axis
   * of one of these orders, the likeliest first. */
  openPart(orders: readonly number[]): Identification | null {
    const { shouldStop, onProgress } = this.options;
    if (orders.length === 0) return null;
    let quiet = 0;
    const parts = partShapes(this.question, orders, () => {
      if (onProgress && ++quiet % QUIET === 0)
        onProgress(this.told ?? { step: 'net', placed: 0, done: this.done, part: null });
      this.stopped ||= shouldStop?.() ?? false;
      return !this.stopped;
    });
    return parts.length > 0 && !this.stopped ? partAnswer(parts) : null;
  }

  /** A try takes longer with the square of the unknowns, beyond some sixty (see FoldSearch). */
  private isSpent(): boolean {
    const sides = this.question.kinds.reduce((sum, kind) => sum + kind.sides.length, 0);
    const most = MOST_ASKED / Math.max(1, (sides / 64) ** 2);
    return this.stopped || this.tried >= MOST_TRIED || this.asked > most;
  }

  /** The first supposition that explains the pile. */
  supposing(): Identification | null {
    this.renew();
    const { kinds } = this.question;
    const rewritten = new Map<number, Rewritten>();
    kinds.forEach((_, k) => {
      const sides = inUnitOfOthers(kinds, k);
      if (sides) rewritten.set(k, { slip: 'unit', sides });
    });
    const base: Supposition = { ...nothingWrong, rewritten };
    if (rewritten.size > 0) {
      const found = this.try(base, TRUST.mended, 'quick');
      if (found) return found;
    }
    const lonely = lonelySides(supposed(this.question, base).kinds);
    return (
      this.withoutFew() ??
      this.withSidesDoubted(base, lonely) ??
      this.withFacesDoubted(base, []) ??
      (lonely.length > 0 && lonely.length <= MOST_DOUBTED
        ? this.withFacesDoubted(base, lonely)
        : null) ??
      this.withKindDoubted(base, lonely) ??
      this.withKindsLeftOut(base, lonely)
    );
  }

  /** Kinds of which there are fewer than of the others are slips. */
  private withoutFew(): Identification | null {
    const few = fewKinds(this.question.kinds);
    if (few.length === 0 || 2 * few.length > this.question.kinds.length) return null;
    return this.try({ ...nothingWrong, leftOut: new Set(few) }, TRUST.out, 'quick');
  }

  /** One lonely side is wrong, or all of them. */
  private withSidesDoubted(base: Supposition, lonely: readonly KindSide[]): Identification | null {
    const sets = lonely.map((one) => [one]);
    if (lonely.length > 1 && lonely.length <= MOST_DOUBTED) sets.push([...lonely]);
    return this.firstOf(base, sets);
  }

  /** All lonely sides are wrong, and those of one kind that are as long as others by chance. */
  private withKindDoubted(base: Supposition, lonely: readonly KindSide[]): Identification | null {
    if (lonely.length < 2 || lonely.length > MOST_DOUBTED) return null;
    const sets = [...new Set(lonely.map((one) => one.kind))].map((kind) => [
      ...lonely.filter((one) => one.kind !== kind),
      ...(this.question.kinds[kind] as Kind).sides.map((_, side) => ({ kind, side })),
    ]);
    return this.firstOf(base, sets);
  }

  private firstOf(
    base: Supposition,
    sets: readonly (readonly KindSide[])[],
  ): Identification | null {
    for (const sides of sets) {
      const found = this.narrowed({ ...base, doubted: doubting(sides) });
      if (found) return found;
    }
    return null;
  }

  /** With sides doubted, and then only those that came out wrong. A kind with every side wrong is no
   * slip, but a stranger; so is one with a side that nobody misreads so far. */
  private narrowed(what: Supposition): Identification | null {
    const first = this.try(what, TRUST.doubted, 'quick');
    const best = first?.shapes[0];
    if (!first || !best) return null;
    const { kinds } = supposed(this.question, { ...nothingWrong, rewritten: what.rewritten });
    const wrong = [...what.doubted].flatMap(([kind, sides]) =>
      [...sides]
        .filter((side) => isOff(kinds[kind] as Kind, side, best.fittedSides[kind] as number[]))
        .map((side) => ({ kind, side })),
    );
    const isStranger = (k: number): boolean =>
      wrong.filter(({ kind }) => kind === k).length === kinds[k]?.sides.length;
    const isTooFar = ({ kind, side }: KindSide): boolean =>
      isTooFarOff(kinds[kind] as Kind, side, best.fittedSides[kind] as number[]);
    if ([...what.doubted.keys()].some(isStranger) || wrong.some(isTooFar)) return null;
    const doubted = [...what.doubted.values()].reduce((sum, { size }) => sum + size, 0);
    if (wrong.length === doubted) return first;
    const trust = wrong.length > 0 ? TRUST.doubted : TRUST.mended;
    return this.try({ ...what, doubted: doubting(wrong) }, trust, 'quick');
  }

  /** Some kinds were read from the other face, or had two sides written in each other's place. */
  private withFacesDoubted(base: Supposition, sides: readonly KindSide[]): Identification | null {
    const what = { ...base, doubted: doubting(sides) };
    const asked = supposed(this.question, what);
    const open = { ...asked, groups: [], kinds: asked.kinds.map(openFace) };
    if (this.isSpent()) return null;
    this.tried++;
    const { shapes } = this.ask(open, 'quick');
    for (const shape of shapes.slice(0, 3)) {
      const turnedOver = kindsTurnedOver(shape, asked.kinds);
      if (turnedOver.length === 0) continue;
      const rewritten = new Map(base.rewritten);
      for (const k of turnedOver) rewritten.set(k, fromOther(asked.kinds[k] as Kind));
      const found = this.narrowed({
        ...base,
        rewritten,
        doubted: mirroredSides(what.doubted, rewritten, asked.kinds),
      });
      if (found) return found;
    }
    return null;
  }

  /** Lonely kinds are strangers: those with the most lonely sides together, then one by one. */
  private withKindsLeftOut(base: Supposition, lonely: readonly KindSide[]): Identification | null {
    const { kinds } = this.question;
    const sidesOf = (k: number): number => lonely.filter(({ kind }) => kind === k).length;
    const all = [...new Set(lonely.map(({ kind }) => kind))].sort(
      (a, b) => sidesOf(b) - sidesOf(a),
    );
    const sets: number[][] = [];
    for (let n = 1; n <= all.length; n++)
      if (sidesOf(all[n] ?? -1) < sidesOf(all[n - 1] as number) || n === all.length)
        sets.push(all.slice(0, n));
    for (const k of all) sets.push([k]);
    for (const set of sets) {
      if (set.length * 2 > kinds.length) continue;
      const rewritten = new Map([...base.rewritten].filter(([k]) => !set.includes(k)));
      const found = this.try({ ...base, rewritten, leftOut: new Set(set) }, TRUST.out, 'quick');
      if (found) return found;
    }
    return null;
  }
}

function doubting(sides: readonly KindSide[]): Map<number, Set<number>> {
  const doubted = new Map<number, Set<number>>();
  for (const { kind, side } of sides) doubted.set(kind, (doubted.get(kind) ?? new Set()).add(side));
  return doubted;
}

const openFace = (kind: Kind): Kind => ({ ...kind, faceUnknown: true });

/** A panel's sides from its other face, as nearly in their own order as may be. */
function fromOther(kind: Kind): Rewritten {
  const mirrored = fromOtherFace(kind.sides);
  const { turn } = nearestTurn(mirrored, kind.sides);
  const n = kind.sides.length;
  return { slip: 'face', sides: kind.sides.map((_, i) => mirrored[(i + turn) % n] as number) };
}

/** Doubted sides of kinds that were turned over, where those sides lie then. */
function mirroredSides(
  doubted: Supposition['doubted'],
  rewritten: ReadonlyMap<number, Rewritten>,
  kinds: readonly Kind[],
): Map<number, Set<number>> {
  return new Map(
    [...doubted].map(([k, sides]) => {
      const other = rewritten.get(k);
      if (other?.slip !== 'face') return [k, new Set(sides)];
      const lengths = [...sides].map((side) => (kinds[k] as Kind).sides[side]);
      return [k, new Set(other.sides.flatMap((x, i) => (lengths.includes(x) ? [i] : [])))];
    }),
  );
}

/** The kinds that a shape with all faces open uses mostly the other way round; of the shape and its
 * mirror image the one that turns over fewer. */
function kindsTurnedOver(shape: Shape, kinds: readonly Kind[]): number[] {
  const places = new Array<number>(kinds.length + shape.added.length).fill(0);
  for (const k of shape.shell.kind) places[k] = (places[k] as number) + 1;
  const other = kinds.map((_, k) => {
    const at = shape.added.findIndex((one) => one.why === 'other hand' && one.of === k);
    return at < 0 ? 0 : (places[kinds.length + at] as number);
  });
  const over = kinds.flatMap((_, k) => ((other[k] as number) > (places[k] as number) ? [k] : []));
  const asRead = kinds.flatMap((kind, k) =>
    (other[k] as number) < (places[k] as number) && hasHand(kind) ? [k] : [],
  );
  return over.length <= asRead.length ? over : asRead;
}

/** Whether a panel differs from its mirror image by more than readings do. */
function hasHand(kind: Kind): boolean {
  const { cost } = nearestTurn(fromOtherFace(kind.sides), kind.sides);
  const sd = Math.max(...kind.sideSds);
  return cost > 9 * 2 * sd ** 2;
}
