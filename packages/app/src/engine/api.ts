// What the engine's worker does, as the screens see it. Everything is plain data that can be
// copied between threads; same question, same answer: what is kept saves time alone.

import type {
  Arrangements,
  Drawing,
  Fault,
  FlatPlan,
  HoleCounts,
  Identification,
  IdentifyProgress,
  Kind,
  LengthUnit,
  MarkAccount,
  NamedFile,
  NowAnswer,
  Opening,
  OrderBreak,
  PaperQuestion,
  PartsKnown,
  Pile,
  PileKinds,
  PileNext,
  PlacesDecision,
  Project,
  RaisingPlan,
  Read,
  Shape,
  ShapeQuestion,
  Shell,
  Standing,
  StandingOpening,
  StiffnessKept,
  StockRow,
  StormAnswer,
  TakeoffSettings,
  ThingShape,
  Weekend,
} from '@shellraise/core';
import type { FitQuestion, FitShown, ShownFit } from './best-fits.ts';
import type { BrokenAnswer, BrokenQuestion } from './broken.ts';
import type {
  CandidatePicture,
  CandidateQuestion,
  PlanPicture,
  PlanQuestion,
  PrintQuestion,
  Quantities,
} from './drawings.ts';
import type {
  FitoutCarryQuestion,
  FitoutCarryTold,
  FitoutDoorQuestion,
  FitoutDoorTold,
  FitoutQuestion,
  FitoutTold,
  SignalTold,
} from './fitout.ts';
import type { GroundAnswer, GroundPapersQuestion, GroundQuestion } from './ground.ts';
import type { LeftoverAnswer, LeftoverQuestion } from './leftovers.ts';
import type { OpeningAsked } from './openings.ts';
import type { PapersPdf, SetNamed, SetTold } from './papers.ts';
import type { PatternQuestion, PatternTold } from './patterns.ts';
import type {
  RaisedQuestion,
  WaitAskedOf,
  WaitTold,
  WayTold,
  YardAndKit,
  YardAsked,
} from './raised.ts';
import type {
  RaisingCheckQuestion,
  RaisingProgress,
  RaisingQuestion,
  RaisingStageDetail,
  RaisingStageQuestion,
} from './raising.ts';
import type { Relation, RelationQuestion } from './relate.ts';
import type { SinglesQuestionOfPile, TaggedPlaces } from './singles.ts';
import type { StabilityDetail } from './stability.ts';
import type { StageDetail, StageQuestion, StageRow, StagesAnswer } from './stages.ts';
import type { NowAsked, StormAsked, WeekendAsked } from './weekend.ts';

/** A file as read: a whole project, or the pile of a spreadsheet. */
export type FileRead =
  | { readonly ok: true; readonly project: Project; readonly from: 'project' | 'spreadsheet' }
  | {
      readonly ok: false;
      readonly faults: readonly Fault[];
      readonly newer: boolean;
      readonly unitless: boolean;
    };

/** A pile worked up, with the question it asks. */
export interface PileWork {
  readonly worked: PileKinds;
  readonly question: ShapeQuestion;
  readonly holes: HoleCounts;
  /** What to do at the pile next. */
  readonly next: readonly PileNext[];
}

/** What the Places sheet asks for. */
export interface StandingQuestion {
  /** All that fit; the decision is sought in `prefer` first, then in the others in their order. */
  readonly shapes: readonly Shape[];
  readonly prefer: number;
  readonly kinds: readonly Kind[];
  readonly decision: PlacesDecision;
}

/** Everything that a shape can stand as, each with the decision that chooses it. */
export interface ArrangeAnswer {
  readonly list: Arrangements;
  /** One for each arrangement of the list. */
  readonly decisions: readonly PlacesDecision[];
}

/** A shell as it stands, with its numbers and drawings. */
export interface StandingShell {
  /** Index of its shape. */
  readonly shape: number;
  /** Indices of all shapes in which this shell is the same. */
  readonly sameIn: readonly number[];
  readonly standing: Standing;
  /** Place → its number: as painted where frozen. */
  readonly numbers: readonly string[];
  /** Why frozen numbers could not be kept; null where they were, or none are frozen. */
  readonly frozenFault: string | null;
  /** Place → 1 where it bears a painted number. */
  readonly painted: Uint8Array;
  /** Painted numbers of places that do not stand now. */
  readonly idle: readonly string[];
  readonly decision: PlacesDecision;
  /** Place → its number with the datum not turned on: decisions name places so. */
  readonly plain: readonly string[];
  /** What is left out on purpose, and all its places, ascending. */
  readonly openings: readonly StandingOpening[];
  readonly leftOut: readonly number[];
  /** One row a family of kinds, with all that was decided. */
  readonly stock: readonly StockRow[];
  readonly height: number;
  readonly floorMean: number;
  readonly flat: boolean;
  readonly baseUnevenness: number;
  readonly plan: FlatPlan;
  readonly planFromBelow: FlatPlan;
}

/** What the marks of a pile mean in a shape. */
export interface MarkQuestion {
  readonly shape: Shape;
  /** Kinds of the question that the shape answers. */
  readonly kinds: readonly Kind[];
  readonly pile: Pile;
  readonly worked: PileKinds;
}

/** A standing shell, or why this decision has none. */
export type StandAnswer =
  | { readonly found: true; readonly shell: StandingShell }
  | { readonly found: false; readonly reason: string };

/** Progress of a long task; false from the callback has no meaning: cancelling ends the worker. */
export type OnProgress = (progress: IdentifyProgress) => void;

/** The engine. */
export interface Engine {
  readFile(name: string, text: string, unit?: LengthUnit): FileRead;
  /** A project that came from storage or a message, through the versioned parser. */
  checkProject(raw: unknown): FileRead;
  writeProject(project: Project): string;
  writePileCsv(pile: Pile): string;
  work(pile: Pile): PileWork;
  identify(question: ShapeQuestion, onProgress?: OnProgress): Identification;
  arrange(shape: Shape, kinds: readonly Kind[], repaired: boolean): ArrangeAnswer;
  stand(question: StandingQuestion): StandAnswer;
  /** How several shapes are related, and whether it matters for what stands. */
  relate(question: RelationQuestion): Relation;
  marks(question: MarkQuestion): MarkAccount;
  /** The best shells for the stock; `onProgress` is told 0 … 1, `onBetter` of each better one. */
  fit(
    question: FitQuestion,
    onProgress?: (done: number) => void,
    onBetter?: (fit: ShownFit) => void,
  ): Promise<FitShown>;
  waysOut(question: BrokenQuestion): BrokenAnswer;
  /** Where a door, a round hatch or a thing's way through may be in a standing shell. */
  doors(shell: Shell, asked: OpeningAsked): readonly Opening[];
  /** What is left of a standing shell's stiffness with each of these sets of places left out. */
  openingsLeave(
    shell: Shell,
    parts: PartsKnown | undefined,
    openings: readonly (readonly number[])[],
  ): readonly StiffnessKept[];
  leftovers(question: LeftoverQuestion): LeftoverAnswer;
  /** Which tagged panel goes where. */
  singles(question: SinglesQuestionOfPile): TaggedPlaces;
  planPicture(question: PlanQuestion): PlanPicture;
  candidatePictures(
    shell: Shell,
    candidates: readonly CandidateQuestion[],
  ): readonly CandidatePicture[];
  printedPlans(question: PrintQuestion): readonly Drawing[];
  quantities(
    shell: Shell,
    kinds: readonly Kind[],
    hardware: Pile['hardware'],
    settings: TakeoffSettings | undefined,
    holes: HoleCounts,
    leftOut: readonly number[],
  ): Quantities;
  /** The base of a standing shell with all that is made of it. */
  ground(question: GroundPapersQuestion): Read<GroundAnswer>;
  /** Every stage of the build; `onRows` is told of new ones, and of how far it is, 0 … 1. */
  stages(
    question: GroundQuestion,
    onRows?: (rows: readonly StageRow[], done: number) => void,
  ): Read<StagesAnswer>;
  /** One stage in full. */
  stage(question: StageQuestion): Read<StageDetail>;
  /** Buckling, snap-through and swing of a stage; `onProgress` is told 0 … 1. */
  stability(question: StageQuestion, onProgress?: (done: number) => void): Read<StabilityDetail>;
  /** An order of work in which every stage stands; `onPlan` is told of the first. */
  raisingPlan(
    question: RaisingQuestion,
    onProgress?: (progress: RaisingProgress) => void,
    onPlan?: (plan: RaisingPlan) => void,
  ): Read<RaisingPlan>;
  /** One stage of a plan in full. */
  raisingStage(question: RaisingStageQuestion): Read<RaisingStageDetail>;
  /** What an order changed by hand breaks first. */
  raisingCheck(question: RaisingCheckQuestion): Read<readonly OrderBreak[]>;
  /** Where the stacks of a plan lie, its bags and tools. */
  yardAndKit(question: YardAsked): Read<YardAndKit>;
  /** What stands inside, until when it passes; `onProgress` is told 0 … 1. */
  ways(question: RaisedQuestion, onProgress?: (part: number) => void): Read<WayTold>;
  /** What may wait for the next trip; `onProgress` is told 0 … 1. */
  mayWait(question: WaitAskedOf, onProgress?: (part: number) => void): Read<WaitTold>;
  /** The days of a plan with their odds; `onProgress` is told 0 … 1. */
  weekend(question: WeekendAsked, onProgress?: (done: number) => void): Read<Weekend>;
  /** What to do now. */
  now(question: NowAsked): Read<NowAnswer>;
  /** How to meet a storm. */
  storm(question: StormAsked): Read<StormAnswer>;
  /** What the shell is for: swing, seal, air, upkeep, room. */
  fitout(question: FitoutQuestion): Read<FitoutTold>;
  /** What the shell costs the signal; `onProgress` is told 0 … 1. */
  fitoutSignal(
    question: FitoutQuestion,
    onProgress?: (done: number) => void,
  ): Read<readonly SignalTold[]>;
  /** What a door asks for; `onProgress` is told 0 … 1. */
  fitoutDoor(
    question: FitoutDoorQuestion,
    onProgress?: (done: number) => void,
  ): Read<FitoutDoorTold>;
  /** How a thing passes; `onProgress` is told 0 … 1. */
  fitoutCarry(
    question: FitoutCarryQuestion,
    onProgress?: (done: number) => void,
  ): Read<FitoutCarryTold>;
  /** A scale model's files; `onProgress` is told 0 … 1. */
  patterns(question: PatternQuestion, onProgress?: (done: number) => void): Read<PatternTold>;
  /** Every set of papers there can be. */
  paperList(): readonly SetNamed[];
  /** Makes sets of papers. */
  paperSets(question: PaperQuestion, names: readonly string[]): readonly SetTold[];
  /** The pages of a set. */
  paperPages(question: PaperQuestion, name: string): readonly Drawing[];
  /** Every page of sets as SVG: the file where it is one, else all as one zip. */
  papersSvg(question: PaperQuestion, names: readonly string[]): NamedFile;
  /** Sets as one PDF; `onProgress` is told 0 … 1. */
  papersPdf(
    question: PaperQuestion,
    names: readonly string[],
    onProgress?: (done: number) => void,
  ): Promise<PapersPdf>;
  /** The shape of an STL file; the unit is told by the lead. */
  stlShape(
    bytes: Uint8Array,
    unit: LengthUnit | null,
  ): Read<{ readonly shape: ThingShape; readonly roughly: boolean }>;
}
