// From the kinds of a pile to every shell they close into: candidate nets, their relatives,
// how probable each is, which readings do not fit, and what would settle it.

import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell, sideCount } from '../shell/shell.ts';
import { cyclicPolygon, describePolygonFault } from '../sphere/cyclic.ts';
import { type Alikeness, alikeness } from './alike.ts';
import {
  type Candidate,
  type Candidates,
  candidatesFor,
  type Effort,
  type Watch,
} from './candidates.ts';
import { type WorkingKinds, workingKinds } from './canonical-kinds.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet } from './fit.ts';
import { misfitGroups, misfitLoose } from './groups.ts';
import { capOf, grownPart, stuckOf, unfoldedPart } from './grown.ts';
import { type OfferedHands, offeredHands, withBothWays } from './hands.ts';
import { settledHands, settledProgress } from './hands-answer.ts';
import { withConflicts } from './joint-conflicts.ts';
import { layShell } from './lay.ts';
import {
  hasMirrorImage,
  imageCode,
  type Mirror,
  mirrorImage,
  workingMirror,
} from './mirror-image.ts';
import { familiesTogether, type Placed } from './placed-net.ts';
import { relativesOf } from './relatives.ts';
import {
  type Identification,
  type IdentifyProgress,
  noAnswer,
  type ShapeQuestion,
} from './shape.ts';
import { sideBelief } from './side-belief.ts';
import { reasonsFor } from './telling.ts';
import { toldShapes } from './told-shapes.ts';
import { type IdentifyOptions, identifyTroubled } from './troubled.ts';
import { withWhatNext } from './what-next.ts';

export type { IdentifyOptions } from './troubled.ts';

/** Sides nearer to each other than this many standard deviations of a reading are alike. */
const ALIKE = 2;
/** Less evidence than the best by more than this (natural logarithm) is not kept. */
const FAINT = 12;
/** Relatives are looked for of nets within this much evidence of the best, and of so many at most. */
const LIKELY = 4;
const MOST_FROM = 4;
/** Most nets that are kept. */
const MOST_SHAPES = 24;
/** Largest difference of a laid seam from its fitted length, in parts of the radius. */
const CLOSED = 1e-6;

/** Every shape that the kinds close into, best first. Deterministic: neither the order of the
 * kinds nor the side that each starts with matters. Throws RangeError for a kind that is no polygon
 * or has a deviation that is no length, and for an allowance's deviation that is none. */
export function identify(question: ShapeQuestion, options: IdentifyOptions = {}): Identification {
  question.kinds.forEach(assertKind);
  assertAllowance(question.allowanceSd ?? 0);
  const found = identifyTroubled(question, options, identifyAsAsked);
  return withWhatNext(question, found, options.shouldStop);
}

/** The answer to a question as it stands. */
function identifyAsAsked(
  question: ShapeQuestion,
  options: IdentifyOptions,
  effort: Effort,
): Identification {
  const hands = offeredHands(question.kinds);
  const { onProgress } = options;
  const watched: IdentifyOptions = onProgress
    ? { ...options, onProgress: (how) => onProgress(settledProgress(how, hands)) }
    : options;
  const found = withConflicts({ ...question, kinds: hands.kinds }, (one) =>
    identifyOffered(one, hands, watched, effort),
  );
  return settledHands(found, hands);
}

/** The answer in kinds that are offered both ways round where their faces are unknown. */
function identifyOffered(
  question: ShapeQuestion,
  hands: OfferedHands,
  options: IdentifyOptions,
  effort: Effort,
): Identification {
  const working = workingKinds(question.kinds);
  const stated = sideBelief(working.kinds, question.allowanceSd ?? 0);
  const readings = withBothWays(stated, working, hands);
  const mirror = workingMirror(hands, working);
  const report = reporter(working, options.onProgress);
  let stopped = false;
  const progress = (step: IdentifyProgress['step'], ...how: Parameters<Watch>): boolean => {
    report(step, ...how);
    stopped ||= options.shouldStop?.() ?? false;
    return !stopped;
  };
  const watch: Watch = (...how) => progress('net', ...how);
  const found = candidatesFor(readings, watch, effort);
  const closed = found.nets.filter(isClosed);
  if (closed.length === 0) {
    const far = howFar(found, working);
    const reasons = reasonsFor(question, found, far);
    return { ...noAnswer, reasons, complete: found.complete, ...far };
  }
  progress('fit', found.deepest, 1);
  const noise = noiseOf(working.kinds);
  const { sides } = best(closed).fit;
  const alike = alikeness(sides, firstSides(sides), noise, readings.joints);
  const { nets, complete: all } = withRelatives(
    merged(closed, alike, mirror),
    alike,
    mirror,
    noise,
    watch,
  );
  const complete = found.complete && all && !stopped;
  const facing = mirror
    ? nets.map((net) => turnedToGroups(net, question, working, alike, mirror))
    : nets;
  const listed = toldShapes(question, working, readings, facing, alike, complete, () =>
    progress('fit', found.deepest, 1),
  );
  return listed.shapes.length > 0
    ? listed
    : { ...listed, reasons: [NONE_FITS], furthest: howFar(found, working).furthest };
}

/** How far the search got: the largest part that does not come to lie over itself, and where it
 * stuck. */
function howFar(
  { ends }: Candidates,
  working: WorkingKinds,
): Pick<Identification, 'furthest' | 'stuck'> {
  for (const { part } of ends) {
    const panels = unfoldedPart(part);
    if (panels)
      return { furthest: grownPart(part, panels, working), stuck: stuckOf(part, panels, working) };
  }
  return { furthest: null, stuck: [] };
}

/** Calls of the search from one report to the next where there is nothing new to tell: a hundredth
 * to a tenth of a second. */
const QUIET = 400;

/** Passes on what is new of the search, and a sign of life now and then. */
function reporter(
  working: WorkingKinds,
  onProgress: IdentifyOptions['onProgress'],
): (step: IdentifyProgress['step'], ...how: Parameters<Watch>) => void {
  if (!onProgress) return () => {};
  let told: IdentifyProgress | null = null;
  let shown: Candidates['grown'] = null;
  let quiet = 0;
  return (step, largest, done, grown) => {
    const placed = Math.max(largest, told?.placed ?? 0);
    const grew = grown && grown !== shown;
    const last = told;
    if (last && !grew && step === last.step && placed === last.placed && done === last.done)
      if (++quiet < QUIET) return;
    quiet = 0;
    if (grown && grew) shown = grown;
    const part =
      grown && grew ? grownPart(grown.part, capOf(grown.part), working) : (last?.part ?? null);
    told = { step, placed, done, part };
    onProgress(told);
  };
}

/** Said where nets close but all are too improbable to be listed. */
const NONE_FITS =
  'some nets close, but none fits the readings: a kind is missing or several sides are misread';

function assertAllowance(sd: number): void {
  if (!(sd >= 0 && sd < Infinity))
    throw new RangeError(`the allowance has the deviation ${sd}, expected 0 metres or more`);
}

function assertKind({ id, sides, sideSds }: Kind): void {
  const polygon = cyclicPolygon(sides);
  if (!polygon.ok)
    throw new RangeError(`kind ${id} is no panel: ${describePolygonFault(polygon.why)}`);
  if (sideSds.length !== sides.length || !sideSds.every((sd) => sd >= 0 && sd < Infinity))
    throw new RangeError(
      `kind ${id} has the deviations ${sideSds.join(', ')}, expected one of 0 metres or more a side`,
    );
}

const evidence = (net: Candidate): number => net.fit.evidence;

const best = (nets: readonly Candidate[]): Candidate =>
  nets.reduce((top, net) => (evidence(net) > evidence(top) ? net : top));

/** What the readings of a side can't tell apart, metres. */
function noiseOf(kinds: readonly Kind[]): number {
  // The median: a side that is taken to be wrong by centimetres says nothing of the rest.
  const sds = kinds.flatMap((kind) => kind.sideSds).sort((a, b) => a - b);
  return ALIKE * (sds[sds.length >> 1] as number);
}

/** One net for each answer: those that differ only by what is alike are one. */
function merged(
  nets: readonly Candidate[],
  alike: Alikeness,
  mirror: Mirror | null,
): Map<string, Placed> {
  const least = evidence(best(nets)) - FAINT;
  const byCode = new Map<string, Placed>();
  for (const candidate of [...nets].sort((a, b) => evidence(b) - evidence(a))) {
    if (evidence(candidate) < least) continue;
    const code = imageCode(candidate.shell, alike, mirror);
    if (!byCode.has(code))
      byCode.set(code, {
        shell: candidate.shell,
        candidate,
        evidence: evidence(candidate),
      });
  }
  return byCode;
}

/** Adds the relatives of each net: those that close as well with fewer rotations. */
function withRelatives(
  byCode: Map<string, Placed>,
  alike: Alikeness,
  mirror: Mirror | null,
  noise: number,
  watch: Watch,
): { readonly nets: Placed[]; readonly complete: boolean } {
  const likely = [...byCode.values()].slice(0, MOST_FROM);
  const least = (likely[0]?.evidence ?? 0) - LIKELY;
  let complete = true;
  for (const from of likely.filter((one) => one.evidence >= least)) {
    if (byCode.size >= MOST_SHAPES) return { nets: [...byCode.values()], complete: false };
    const take = (relative: Candidate): boolean => {
      const code = imageCode(relative.shell, alike, mirror);
      if (byCode.has(code)) return true;
      if (byCode.size >= MOST_SHAPES || !watch(relative.shell.kind.length, 1)) return false;
      const own = fitted(relative, relative.shell);
      if (own)
        byCode.set(code, {
          shell: own.shell,
          candidate: own,
          evidence: evidenceOfRelative(from, own),
        });
      return true;
    };
    complete = relativesOf(from.candidate, noise, alike.label, watch, take) && complete;
  }
  return { nets: [...byCode.values()], complete };
}

/** How probable a relative is against the net it came from. It asks for lengths to be equal that the
 * other left free; being asked for more is no merit here, as both may be built of panels that are so.
 * It only loses by what the readings speak against that. */
function evidenceOfRelative(from: Placed, relative: Candidate): number {
  const [own, other] = [relative.fit, from.candidate.fit];
  const asked = Math.max(0, own.conditions - other.conditions);
  return from.evidence - Math.max(0, own.chi2 - other.chi2 - asked) / 2;
}

/** The net or its mirror image, whichever holds more of the joined groups, which were noted from
 * outside; where they do not tell, both are meant. */
function turnedToGroups(
  net: Placed,
  { groups, looseGroups }: ShapeQuestion,
  { kinds }: WorkingKinds,
  alike: Alikeness,
  mirror: Mirror,
): Placed {
  if (!hasMirrorImage(net.shell, alike, mirror)) return net;
  const family = familiesTogether(alike, net.candidate.readings);
  const familyOf = (id: string): number | undefined =>
    family[kinds.findIndex((kind) => kind.id === id)];
  const misfits = (shell: Shell): number =>
    [
      ...misfitGroups(shell, family, familyOf, groups),
      ...misfitLoose(shell, family, familyOf, looseGroups ?? []),
    ].reduce((sum, { count }) => sum + count, 0);
  const image = mirrorImage(net.shell, mirror);
  const [own, other] = [misfits(net.shell), image ? misfits(image) : Number.POSITIVE_INFINITY];
  if (!image || own < other) return net;
  return own > other ? { ...net, shell: image } : { ...net, hands: 'mirrored' };
}

function fitted(like: Candidate, shell: Shell): Candidate | null {
  const { readings, fit: near } = like;
  const fit = fitNet(readings, conditionsOf(shell, firstSides(readings.sides)), near.radius);
  const laid = fit && layShell(shell, fit.sides, fit.radius);
  if (!fit || !laid) return null;
  const candidate = { ...like, shell: laid, fit };
  return isClosed(candidate) ? candidate : null;
}

/** Whether every side of the laid shell has its fitted length. */
function isClosed({ shell, fit }: Candidate): boolean {
  for (let s = 0; s < sideCount(shell); s++) {
    const side = s as SideId;
    const kind = shell.kind[placeAt(shell, side)] as number;
    const length = (fit.sides[kind] as readonly number[])[kindSide(shell, side)] as number;
    if (Math.abs(sideLength(shell, side) - length) > CLOSED * shell.radius) return false;
  }
  return true;
}
