// What the engine offers, named one by one, in the order of the folders.

export { TAU, toDegrees, toRadians } from './math/angle.ts';
export { compareLists } from './math/order.ts';
export { type Random, seededRandom } from './math/random.ts';
export type { Factor } from './math/sparse/factor.ts';
export type { SymbolicFactor } from './math/sparse/symbolic.ts';
export type { SymmetricMatrix, SymmetricPattern } from './math/sparse/symmetric.ts';
export { chiSquareTail } from './math/statistics.ts';
export {
  type Vec3,
  add,
  subtract,
  scale,
  dot,
  cross,
  norm,
  distance,
  normalize,
  rotateAbout,
  pointAt,
} from './math/vector.ts';
export { describeFault, type Fault, type Read } from './measure/fault.ts';
export {
  INCH,
  type LengthStyle,
  type LengthUnit,
  lengthUnit,
  readLength,
  writeLength,
} from './measure/length.ts';
export type { DecimalMark } from './measure/number.ts';
export type { ReadOptions } from './measure/quantity.ts';
export {
  type AngleUnit,
  type ForceUnit,
  type MassUnit,
  massUnit,
  type PressureUnit,
  type SpeedUnit,
  type TemperatureUnit,
  readAngle,
  readForce,
  readMass,
  readPressure,
  readSpeed,
  readTemperatureC,
  writeAngle,
  writeForce,
  writeMass,
  writePressure,
  writeSpeed,
  writeTemperatureC,
} from './measure/units.ts';
export { arcToChord, axialAngle, chordToArc } from './sphere/chord.ts';
export {
  circumradius,
  type CyclicPolygon,
  cyclicPolygon,
  describePolygonFault,
  type NoPolygon,
  type PolygonFault,
} from './sphere/cyclic.ts';
export { type CornerDerivatives, cornerDerivatives } from './sphere/derivatives.ts';
export { dihedral } from './sphere/dihedral.ts';
export { type PlacedPolygon, placeCorners, placeNextCorner } from './sphere/place.ts';
export { polygonOnSphere, type SpherePolygon } from './sphere/polygon.ts';
export { angularDefects, cornerAngles, dihedralAngles } from './shell/angles.ts';
export { codeFrom, lowestCode } from './shell/canonical.ts';
export { checkShell, componentsOf, type ShellVerdict } from './shell/check.ts';
export { type Courses, coursesOf, layersFrom } from './shell/courses.ts';
export { type Cut, type CutOptions, naturalCuts } from './shell/cuts.ts';
export { occursIn } from './shell/embed.ts';
export { type FlatPlan, type FlatPlanOptions, flatPlan } from './shell/flat-plan.ts';
export {
  endHubAt,
  hubPoint,
  meanSideLength,
  placeCentre,
  placeNormal,
  placeSolidAngle,
  sideLength,
  vectorArea,
} from './shell/geometry.ts';
export type { HubId, PlaceId, SeamId, SideId } from './shell/ids.ts';
export { type Nadir, nadirOf } from './shell/nadir.ts';
export {
  type Crown,
  crownAtHub,
  crownAtPlace,
  crownAtSeam,
  type Lean,
  orientShell,
} from './shell/orient.ts';
export { type Part, partOf } from './shell/part.ts';
export { cutAtPlane, type PlaneCut } from './shell/plane-cut.ts';
export { baseRing, type Rim, rims } from './shell/rims.ts';
export {
  cornerCount,
  hubAt,
  hubCount,
  hubsOf,
  kindSide,
  makeShell,
  mateOf,
  nextSide,
  type PlaceDraft,
  placeAt,
  placeCount,
  placesByKind,
  previousSide,
  seamCount,
  type Shell,
  type ShellDraft,
  sideCount,
  sidesOf,
} from './shell/shell.ts';
export { fansOf, type Star, starsOf } from './shell/stars.ts';
export {
  hubOrbits,
  placeOrbits,
  seamOfSides,
  seamOrbits,
  type Symmetry,
  type SymmetryOptions,
  symmetries,
} from './shell/symmetry.ts';
export { type Division, divisions } from './nets/division.ts';
export {
  kindsOfNet,
  type NetKind,
  type NetKinds,
  type NetShell,
  netShell,
  type SideClass,
  shellOfNet,
} from './nets/kinds.ts';
export { type MixedNetName, mixedNet, mixedNetNames } from './nets/mixed.ts';
export { type Moving, movedNet } from './nets/moved.ts';
export { type NetSpec, namedNet, placesPerFace } from './nets/named.ts';
export type { Net } from './nets/net.ts';
export { type Rotation, rotationsOf } from './nets/rotations.ts';
export { type Solid, type SolidName, solidOf } from './nets/solid.ts';
export {
  type Body,
  type BodyShape,
  bodyOf,
  type HeldByBody,
  placedAt,
  type SimpleBodyShape,
} from './passage/body.ts';
export type { Carried } from './passage/clear.ts';
export type { Impossible } from './passage/impossible.ts';
export { HAND_HEIGHT, type PassAnswer, type PassOptions, passing } from './passage/passing.ts';
export type { Plate } from './passage/plates.ts';
export { between as poseBetween, type Pose, type Turn } from './passage/pose.ts';
export type { PassSearch, PassSearchOptions } from './passage/search.ts';
export { type HeldShape, shapeOfStl } from './passage/round-body.ts';
export { readStl, STL_UNITS, type StlBody } from './passage/stl.ts';
export {
  type Barrier,
  barrierOf,
  type Gap,
  type Triangle,
  type WallSolid,
} from './passage/wall.ts';
export { type ViewAt, type WayView, wayView } from './passage/way-view.ts';
export type { AssignedReading } from './pile/assign.ts';
export { pileFaults, readPile } from './pile/check.ts';
export { type CsvOptions, readPileCsv, writePileCsv } from './pile/csv.ts';
export type { MaybeOne, MaybeTwo, MixedMark, SuspectReading, TooFew } from './pile/findings.ts';
export type { UnsettledGroup } from './pile/groups.ts';
export type { Hand, HubPlate, JoinedGroup, Kind, Lap, Measured, RimLength } from './pile/kind.ts';
export { kindsOfPile, type Miscount, type PileKinds } from './pile/kinds.ts';
export type { ReadingNoise } from './pile/noise.ts';
export type { SharedTag } from './pile/panels.ts';
export type { PersonBias } from './pile/people.ts';
export {
  hardwareItems,
  hardwareStates,
  LEAST_SIDES,
  LONGEST_ITEM,
  LONGEST_NAME,
  MAX_SIDES,
  MOST_COUNTED,
  PLATE_CORNERS,
} from './pile/limits.ts';
export { handOf } from './pile/polygon.ts';
export {
  type Condition,
  type GroupRow,
  type HardwareRow,
  type HubPlateRow,
  type KindRow,
  type PersonRow,
  type Pile,
  pileSection,
  type ReadingRow,
  type RimReading,
} from './pile/schema.ts';
export type { ReadingSlip, Slip } from './pile/slips.ts';
export { SIDE_LENGTHS } from './pile/tolerances.ts';
export { type RecordChange, recordChanges } from './record/changes.ts';
export { clockOffsets, timeOf } from './record/clocks.ts';
export {
  type DayCounts,
  type DayOutlook,
  type DayPage,
  type DaySpan,
  dayPage,
} from './record/day.ts';
export {
  type Dossier,
  type DossierAnchor,
  type DossierEvent,
  type DossierOptions,
  type DossierPanel,
  type DossierSample,
  type DossierSeam,
  type DossierStop,
  dossier,
  initialsOf,
  type Said,
} from './record/dossier.ts';
export {
  compareEntries,
  type Entry,
  type EntryId,
  entrySchema,
  entryText,
  idOf as entryIdOf,
  readEntry,
} from './record/entry.ts';
export {
  MAX_RECORD_CHARACTERS,
  RECORD_VERSION,
  type RecordFile,
  readRecordFile,
  writeRecordFile,
} from './record/file.ts';
export {
  type Forgotten,
  forgotten,
  nearestFirst,
  type SamplesTaken,
  samplesTaken,
  samplesWanted,
  workingCourse,
} from './record/forgotten.ts';
export { INVENTED_SKEW, type InventedWeekend, inventedWeekend } from './record/invented.ts';
export { type Added, type Pen, RecordLog, type SubjectState } from './record/log.ts';
export { compareNumbers, type RecordPlan, recordPlan } from './record/names.ts';
export {
  MOST_SERIES,
  readSeries,
  readSeriesPart,
  recordSeries,
  SERIES_CHARACTERS,
  type SeriesPart,
} from './record/series.ts';
export {
  type PlacedPanel,
  type RecordQuestion,
  type RecordState,
  recordState,
} from './record/state.ts';
export { type Subject, saysOf, subjectOf } from './record/subject.ts';
export { type PlaceForPanel, readTag, type WhereTo, whereTo } from './record/tags.ts';
export { type RingWalk, tighteningWalk } from './record/tightening.ts';
export {
  readTwin,
  type TwinBox,
  type TwinLine,
  type TwinRead,
  twinCheck,
  twinLines,
} from './record/twin.ts';
export {
  RECORD_PASSES,
  type RecordPass,
  type What,
  type WhatKind,
  whatSchema,
} from './record/what.ts';
export { type MeasuredWork, measuredWork, type RecordedWork } from './record/work.ts';
export { handTest as shapeHandTest, type HandTest } from './identify/hand-test.ts';
export { type IdentifyOptions, identify } from './identify/identify.ts';
export type { MarkRule, NetAxis } from './identify/mark-divisions.ts';
export {
  type FinerMarks,
  type GroupMarks,
  type LikelyMark,
  type MarkAccount,
  type MarkStanding,
  marksInNet,
  type PanelMark,
} from './identify/marks-in-net.ts';
export { marksWords } from './identify/marks-words.ts';
export {
  nextAtPile,
  type PileNext,
  type PileNextOptions,
  type PileSoFar,
} from './identify/pile-next.ts';
export { shapeQuestion } from './identify/question.ts';
export {
  type AddedKind,
  type AllowanceFound,
  type CutPlane,
  type Free,
  type Freedom,
  type GrassTrial,
  type GrownPart,
  type Identification,
  type IdentifyProgress,
  type JointConflict,
  kindsOfShape,
  type LooseGroup,
  type Mend,
  type NextOutcome,
  type NextReading,
  type Shape,
  type ShapeQuestion,
  type StraightCourse,
  type Stranger,
  type Stuck,
  type Subdivision,
  type Suspect,
} from './identify/shape.ts';
export { sameKinds, stockOfShape } from './identify/shape-kinds.ts';
export type { BuyLine } from './takeoff/buy-line.ts';
export { type CountAccount, countAccount } from './takeoff/count-account.ts';
export { countProof, type ProofItem, type ProofRow } from './takeoff/count-proof.ts';
export { countedHoles } from './takeoff/counted-holes.ts';
export type { HardwareItem, HardwareLot, ItemSize, LotAside } from './takeoff/hardware.ts';
export { type HubSize, hubSizes } from './takeoff/hubs.ts';
export { type NearTwins, nearTwins, nearTwinsAmong } from './takeoff/near-twins.ts';
export {
  type LocatedNeed,
  type LocatedNeeds,
  locatedNeeds,
  type Need,
  type Needs,
  summedNeeds,
} from './takeoff/needs.ts';
export {
  type BoltSize,
  defaultTakeoff,
  type SideRule,
  type TakeoffSettings,
  takeoffSection,
} from './takeoff/schema.ts';
export {
  type HoleCounts,
  type SeamBolts,
  seamBolts,
  type SidePattern,
  sidePatterns,
} from './takeoff/seam-bolts.ts';
export {
  classOfSide,
  type ShellSideClass,
  type ShellSideClasses,
  sideClasses,
} from './takeoff/side-classes.ts';
export {
  type Disagreement,
  type KindSide,
  type SeamSize,
  type TakeOff,
  takeOff,
  takeOffCautions,
} from './takeoff/take-off.ts';
export {
  commonPacks,
  nextStandardLength,
  nominalSize,
  readNominalSize,
  readThread,
  standardLengths,
  type Thread,
  writeThread,
} from './takeoff/threads.ts';
export { type ThreePointCase, type ThreePoints, threePointLaw } from './loads/asce-7-16/dome.ts';
export { threePoints } from './loads/asce-7-16/dome-values.ts';
export { ENCLOSURES, type Enclosure } from './loads/asce-7-16/internal.ts';
export { BEAUFORT, type BeaufortForce, beaufortForce } from './loads/beaufort/beaufort.ts';
export { designPressure } from './loads/design-pressure.ts';
export { sphereForces } from './loads/en-1991-1-4/sphere.ts';
export { gbDome, gbDomeMirrored } from './loads/gb-50009/dome.ts';
export { enclosureOf, type Mouth, mouthOf } from './loads/half-built/mouth.ts';
export {
  assertForm,
  crownHeight,
  externalPressure,
  inWindFrame,
  type PressureLaw,
  riseRatio,
  type ShellForm,
} from './loads/law.ts';
export {
  type CodeChoice,
  isTruncated,
  LAW_CHOICES,
  type LawChoice,
  lawsFor,
} from './loads/laws.ts';
export {
  LOAD_NUMBER_KEYS,
  LOAD_NUMBERS,
  type LoadNumber,
  type LoadNumberKey,
  numberOf,
  type Override,
} from './loads/numbers.ts';
export { externalCoefficients, facesOf, type PanelFaces } from './loads/panels.ts';
export {
  codeWind,
  type DesignWind,
  peakPressure,
  type Site,
  TERRAIN_WORDS,
  type Terrain,
  WIND_CODES,
  type WindCode,
} from './loads/peak-pressure.ts';
export {
  CONFIRMATIONS,
  type Confirmation,
  flagsOf,
  mergeSources,
  type Provenance,
  type Sourced,
  weakest,
} from './loads/provenance.ts';
export { formOf, settingsPressure, snowCases, windQuestion } from './loads/question.ts';
export {
  gustOf,
  gustOfPressure,
  gustPressure,
  type ReportedWind,
} from './loads/reported-wind/gust.ts';
export { defaultLoads, type LoadsSettings, loadsSection, SNOW_CODES } from './loads/schema.ts';
export {
  planArea,
  type SnowCase,
  type SnowPoint,
  snowForces,
} from './loads/snow/panels.ts';
export { measuredSphereLaw } from './loads/sphere-flow/measured.ts';
export { potentialLaw } from './loads/sphere-flow/potential.ts';
export { type CaseTotals, caseTotals } from './loads/stage-totals.ts';
export {
  addedForces,
  type PanelForces,
  pressureForces,
  scaledForces,
  sphereOverturning,
  type Totals,
  totalsOf,
  windTotals,
} from './loads/totals.ts';
export {
  massByArea,
  personLoad,
  placeMasses,
  selfWeight,
  type Weights,
} from './loads/weight/weight.ts';
export {
  type StageWind,
  stageWind,
  standingHeight,
  type WindCase,
  type WindModel,
  type WindQuestion,
  windDirections,
  windModel,
} from './loads/wind-cases.ts';
export {
  type FrameAnswer,
  type FrameStands,
  type FrameUnsettled,
  type FrameUnstable,
  frameAnswer,
  type PreparedFrame,
  prepareFrame,
  type SeamForces,
  type Utilisation,
} from './frame/answer.ts';
export { BOLT_GRADES } from './frame/bolts.ts';
export type {
  Bar,
  Beam,
  Element,
  EndJoint,
  Facet,
  Joint,
  Membrane,
  Natural,
  Prop,
  Section,
  Six,
  Spring,
} from './frame/elements/element.ts';
export { type FrameLoad, GRAVITY } from './frame/frame-loads.ts';
export { type FrameModes, frameBuckling, frameFrequencies } from './frame/frame-modes.ts';
export { type FrameStage, frameOf } from './frame/from-shell.ts';
export { beginGrowth, type Growing, grow, grownMovements } from './frame/growth.ts';
export { cornerStiffness, type StiffHubPlate } from './frame/hub-plate.ts';
export {
  type Mechanism,
  type MechanismOptions,
  type Mechanisms,
  mechanisms,
} from './frame/mechanisms.ts';
export type { FrameMesh } from './frame/mesh.ts';
export type {
  FrameGuy,
  FrameModel,
  FramePanel,
  FrameProp,
  FrameSeam,
  FrameSupport,
  SeamPass,
} from './frame/model.ts';
export { type Numbering, numberUnknowns } from './frame/numbering.ts';
export { boltName, type FrameParts, frameParts } from './frame/parts.ts';
export { type BarPath, barPath, type PathOptions, type PathPoint } from './frame/path.ts';
export type { RigidityOptions } from './frame/rigidity.ts';
export { type PartsKnown, partsSection, unknownParts } from './frame/schema.ts';
export {
  capKnockdown,
  gridClassicalPressure,
  sphereClassicalPressure,
} from './frame/sphere-buckling.ts';
export {
  type AtRest,
  type Prepared,
  prepare,
  type Statics,
  statics,
  type Unsettled,
  type Unstable,
} from './frame/statics.ts';
export type { Held, Structure } from './frame/structure.ts';
export {
  type ArrangeOptions,
  type Arrangement,
  type Arrangements,
  arrangements,
  type Standing,
  standingShell,
} from './arrange/arrangements.ts';
export {
  type Besides,
  kindsAfter,
  leftAfter,
  leftOutOf,
  needAfter,
  openingsIn,
  type StandingOpening,
  stockAfter,
} from './arrange/decided-stock.ts';
export { type Decided, decidedWay, decisionFor, findDecided } from './arrange/decision.ts';
export {
  type Family,
  familiesOf,
  familyIndex,
  labelsOf,
  type NetLabels,
} from './arrange/families.ts';
export type { Demand, Nearest } from './arrange/fit/conflicts.ts';
export type { Filled, Source } from './arrange/fit/fill.ts';
export {
  type Fit,
  type FitAnswer,
  type FitOptions,
  fitStock,
} from './arrange/fit/fit-stock.ts';
export { fullOrder } from './arrange/fit/outlines.ts';
export { type FamilyGroup, familyGroups, groupsWithin } from './arrange/fit/group-runs.ts';
export { type InfillPanel, infillOf } from './arrange/fit/infill.ts';
export {
  type LoweredShell,
  type SawnBase,
  type SawnPanel,
  sawnBase,
  withoutRagged,
} from './arrange/fit/level-base.ts';
export {
  defaultWishes,
  type Objective,
  objectives,
  type Wishes,
  wishesSection,
} from './arrange/fit/wishes.ts';
export {
  cornersOf,
  type MakeOptions,
  type PanelPoint,
  type PanelToMake,
  panelToMake,
  type SideToMake,
} from './arrange/make/make-panel.ts';
export { type CutDown, cutDown } from './arrange/make/cut-down.ts';
export { type Trim, trims } from './arrange/make/trim.ts';
export { frozenOf, numbersOf, type PlaceNumbers } from './arrange/numbers.ts';
export {
  type HatchQuestion,
  hatchesFor,
  type Opening,
  type OpeningQuestion,
  openingsFor,
} from './arrange/openings/openings.ts';
export { areaOf, convexParts } from './arrange/openings/convex-parts.ts';
export {
  type OpeningFigures,
  type OpeningRank,
  openingFigures,
  openingRanks,
  type RankQuestion,
  rankOpenings,
} from './arrange/openings/rank.ts';
export {
  doorOutline,
  type Passage,
  placesInTheWay,
  roundOutline,
  type ViewPoint,
} from './arrange/openings/passing.ts';
export {
  openingStiffness,
  STIFFNESS_ASKED,
  type StiffnessKept,
  type WithStiffness,
  withStiffness,
} from './arrange/openings/stiffness.ts';
export {
  type HighsEvent,
  type HighsModel,
  type HighsOptions,
  type HighsProgram,
  type HighsRuntime,
  highsSolver,
} from './arrange/program/highs-solver.ts';
export type { IntegerProgram, Row, Terms, Variable } from './arrange/program/integer-program.ts';
export type { ProgramAnswer, ProgramSolver, SolveOptions } from './arrange/program/solve.ts';
export {
  type DecidedBreak,
  type DecidedOpening,
  type DecidedSecond,
  type FrozenDecision,
  type PlacesDecision,
  placesSection,
} from './arrange/schema.ts';
export { shapesHolding } from './arrange/same-in.ts';
export {
  bestSplit,
  type SecondOptions,
  type SecondShell,
  type Split,
  secondShells,
} from './arrange/second/second-shell.ts';
export { type SmallBall, type SmallBallOptions, smallBalls } from './arrange/second/small-balls.ts';
export {
  type RimLevel,
  rimLevels,
  type SecondUse,
  standSecond,
  useOf,
} from './arrange/second/stand-second.ts';
export {
  placeSingles,
  type SinglePanel,
  type SinglesAnswer,
  type SinglesQuestion,
} from './arrange/singles/single-panels.ts';
export { taggedPanels } from './arrange/singles/tagged-panels.ts';
export { needOf, type StockRow, stockRows } from './arrange/stock.ts';
export { HOLE_ROOM, holesTake, type NearFit, nearFit } from './arrange/swaps/near-fit.ts';
export {
  type BuildState,
  type Move,
  type Replacement,
  type ReplacementOptions,
  replacementsFor,
} from './arrange/swaps/replacements.ts';
export { leanedWay, leanedWays } from './arrange/leaned-ways.ts';
export { type CrownAt, type WayUp, type WaysUp, waysUpOf } from './arrange/ways-up.ts';
export {
  ballastWeight,
  type Friction,
  friction,
  type Underlay,
  underlays,
} from './ground/anchors/ballast.ts';
export type { Capacity, CapacityBasis, Pull } from './ground/anchors/capacity.ts';
export {
  type AnchorChoice,
  anchorCapacity,
  anchorWords,
  type PulledAnchor,
  spacingOf,
} from './ground/anchors/choice.ts';
export type { Deadman } from './ground/anchors/deadman.ts';
export {
  type BaseForces,
  type Demand as AnchorDemand,
  type HubForce,
  sharedForces,
  type WholeForces,
} from './ground/anchors/demand.ts';
export { baseForces, type PanelCase } from './ground/anchors/from-loads.ts';
export type { Helical } from './ground/anchors/helical.ts';
export type { AnchorSpot, SpacingFault, Tie } from './ground/anchors/layout.ts';
export type { Combination } from './ground/anchors/pickets.ts';
export {
  type AnchorBrief,
  type AnchorPlan,
  anchorPlan,
  type Holding,
  type HubAnchors,
  holdingOf,
} from './ground/anchors/plan.ts';
export {
  allowedPull,
  type Practice,
  type PracticeName,
  practices,
} from './ground/anchors/practice.ts';
export type { PullTest } from './ground/anchors/pull-test.ts';
export { type Soil, type SoilKind, soilKinds, soilWords } from './ground/anchors/soil.ts';
export { type Base, type BaseHub, baseOf, bearingOf, type PlanPoint } from './ground/base.ts';
export {
  anchorBrief,
  chosenPractices,
  surveyOptions,
  tapeOptions,
  tieOf,
} from './ground/from-settings.ts';
export {
  type GroundLevels,
  groundLevels,
  type LevelMethod,
  type LevelSetUp,
  type LevelSuspect,
} from './ground/levels.ts';
export { atCentre, type PolarStake, polarPlan, type Station } from './ground/polar.ts';
export {
  type BeamCut,
  type BeamPiece,
  beamCuts,
  cutFromStock,
  type RingBeamOptions,
  ringBeam,
  type StockPlan,
} from './ground/ring-beam.ts';
export { defaultGround, type GroundSettings, groundSection } from './ground/schema.ts';
export {
  type Shim,
  type ShimAim,
  type ShimOptions,
  type ShimPlan,
  shims,
} from './ground/shims.ts';
export {
  type AsBuilt,
  asBuilt,
  type DoubtfulReading,
  type StandingHub,
} from './ground/survey/as-built.ts';
export {
  type FittedPlane,
  type FittedSphere,
  fitPlane,
  fitSphere,
} from './ground/survey/best-fit.ts';
export {
  type HubHeight,
  type HubHeights,
  hubHeights,
  hubRings,
} from './ground/survey/hub-heights.ts';
export {
  commonPlay,
  type MisfitOptions,
  type Misfits,
  type SeamMisfit,
  type SeamPlay,
  seamMisfits,
} from './ground/survey/misfit.ts';
export {
  type BaseTolerances,
  commonTolerances,
  type HubOff,
  type OutOfTrue,
  outOfTrue,
} from './ground/survey/out-of-true.ts';
export type { SurveyReading } from './ground/survey/readings.ts';
export {
  type HubMove,
  type SlackSeam,
  type SurveyAnswer,
  type SurveyOptions,
  surveyAnswer,
  type Verdict,
} from './ground/survey/verdict.ts';
export {
  type Peg,
  type TapeCheck,
  type TapeOptions,
  type TapePlan,
  type TapeRound,
  type TapeStake,
  tapePlan,
} from './ground/tape-plan.ts';
export {
  type HeldHub,
  type StageAnswer,
  type StageOptions,
  type StageStrength,
  stageAnswer,
} from './stages/answer.ts';
export type { HubMode, SnapThrough } from './stages/bar-net.ts';
export type { PropOptions } from './stages/fewest-props.ts';
export { LIMIT_KINDS, type Limit, type LimitKind, pressureOf } from './stages/limits.ts';
export {
  nothingKnown,
  type StageAnchors,
  type StageBears,
  type StageBrief,
  type StageModel,
  stageModel,
} from './stages/model.ts';
export type { Patch } from './stages/patches.ts';
export { type StagesKnown, stagesSection, unknownStages } from './stages/schema.ts';
export { numberOrder, stageOf, stageSeries } from './stages/series.ts';
export { type BaseShims, baseShims } from './stages/base-shims.ts';
export { type SeamFacts, type ShellFacts, seamFacts, siteOfFacts } from './stages/shell-facts.ts';
export {
  type DesignLoads,
  type Site as ShellSite,
  type SiteBrief,
  siteOf,
} from './stages/site.ts';
export {
  type NotReckoned,
  REAL_PART,
  type StabilityLoad,
  SLOW_SWING,
  type StageBuckling,
  type StageStability,
  type StageSwing,
  stageStability,
} from './stages/stability.ts';
export { frameOfStage, type Stage, stageFaults } from './stages/stage.ts';
export {
  ACTION_LOAD,
  type ClosedDown,
  closedDown,
  HANDLING_LIMITS,
  type HandlingLimit,
  lowestLimit,
  type StopWork,
  stopWork,
} from './stages/stop-work.ts';
export type { SupportLine, SupportPlan, SupportProp } from './stages/supports/choose.ts';
export { gearOf, type Mast, type SupportGear } from './stages/supports/gear.ts';
export { GUY_SLOPES } from './stages/tolerances.ts';
export { halfBuiltStability, wholeStability } from './stages/whole-and-half.ts';
export {
  type HeldHubs,
  heldAtLift,
  heldWords,
  type LeftOvernight,
  type LiftTime,
  type OrderCost,
  type PassChange,
  type PieceMade,
  type PlannedProp,
  passAfter,
  type RaisingLift,
  type RaisingPlan,
  type RaisingStage,
  type Rigging,
  type SeamPassOrNone,
  type StageSort,
} from './raise/plan.ts';
export { type StageProgress, stageAtWork, stageProgress } from './raise/recorded-stage.ts';
export {
  type CheckOptions,
  checkOrder,
  type FallingWay,
  type OrderBreak,
  type OrderedLift,
  reordered,
} from './raise/order/check-order.ts';
export type { Barred } from './raise/order/entry.ts';
export type { Group, MakeUp } from './raise/order/pieces.ts';
export { type Before, noPins, type Pins } from './raise/order/pins.ts';
export {
  plainBrief,
  planRaising,
  type RaisingBrief,
  type RaisingOptions,
  siteFor,
} from './raise/order/raise.ts';
export type { OrderWeights, RaisingRates } from './raise/order/rates.ts';
export type { Across, OrderSite } from './raise/order/site.ts';
export { hubPlaces, type LeadFixed, leadFixed } from './raise/order/lead.ts';
export { type StageWinds, stageWinds, WINDS_LEAVE_OUT } from './raise/winds.ts';
export { defaultRaising, type RaisingSettings, raisingSection } from './raise/schema.ts';
export { pieceLifter, type RaiseAsked, raisingBrief } from './raise/shell-brief.ts';
export {
  type Gear,
  gearSection,
  noGear,
  type ThingInside,
  type ThingShape,
} from './raise/gear.ts';
export {
  LIFT_WORDS,
  type LiftCard,
  type LiftRole,
  liftCard,
  needsCard,
} from './raise/lifts/card.ts';
export { ginPoleHead } from './raise/lifts/gin-pole.ts';
export { type StageHeights, stageHeights } from './raise/lifts/heights.ts';
export {
  type HeightsOfStage,
  heightsByStage,
  neededUntil,
} from './raise/lifts/heights-by-stage.ts';
export type { Change as LeaveChange } from './raise/inside/change.ts';
export {
  FLANGE_SUPPOSED,
  type InsideAnswer,
  type InsideOptions,
  type InsideQuestion,
  type ThingLeaves,
  thingsInside,
} from './raise/inside/leave.ts';
export {
  hookNeeded,
  type Lift,
  type LiftDay,
  type LiftWay,
  liftOf,
} from './raise/lifts/lift.ts';
export {
  type Coupling,
  liftIndex,
  type LiftConstants,
  type LiftMultipliers,
  liftMultipliers,
  type LiftTask,
  METRIC_LIFT,
  NIOSH_LIMITS,
  recommendedWeight,
} from './raise/lifts/niosh.ts';
export { type Piece, type PieceModel, pieceModel, pieceOf } from './raise/lifts/piece.ts';
export {
  type LadderSet,
  ladderSet,
  type Foothold,
  footholds,
  TOWER_RATIO,
  towerHeight,
} from './raise/lifts/reach.ts';
export { HELD_BY_ONE, HOIST_GUST, sailForce, sailLimit } from './raise/lifts/sail.ts';
export { type Bag, type BagQuestion, type Bags, bagsOf, needsByStage } from './raise/bags/bags.ts';
export { type BuyBefore, buyBefore } from './raise/bags/buy-before.ts';
export {
  type Charge,
  type ChargeQuestion,
  chargeOf,
  type StageCharge,
  USABLE_CHARGE,
} from './raise/bags/charge.ts';
export { type BagCheck, type KitCheck, type KitTick, kitCheck } from './raise/bags/kit-check.ts';
export { type StageTools, toolsOf, wrenchFor } from './raise/bags/tools.ts';
export { needWords } from './raise/bags/words.ts';
export { gustBetween } from './raise/wait/gust-between.ts';
export { itemWords, type WaitItem, type WaitSort } from './raise/wait/items.ts';
export {
  type LeaveCard,
  type LeaveState,
  type Left,
  type WaitAnswer,
  type WaitOptions,
  type WaitQuestion,
  type WaitVerdict,
  whatMayWait,
} from './raise/wait/what-may-wait.ts';
export {
  STACK_DRAG,
  STACK_FRICTION,
  STACK_LIFT,
  type StackBody,
  type StackWind,
  stackWind,
} from './raise/yard/stack-wind.ts';
export {
  type HolesOff,
  type HolesOffQuestion,
  holesOff,
  tightestLift,
} from './raise/holes-off.ts';
export { readSectors, type Sector, sectorsText } from './raise/yard/sectors.ts';
export { type Ground as GroundPoint, walkRound } from './raise/yard/walk.ts';
export {
  type StackedPiece,
  type Yard,
  type YardQuestion,
  type YardStack,
  yardOf,
} from './raise/yard/yard.ts';
export { fewestPeople, MOST_TEAM, teamFactor, teamLifts } from './raise/lifts/team.ts';
export { designGust, RAISED_CAUTION, type RaisedShell } from './raise/raised/raised.ts';
export { type RaisedFacts, raisedShell } from './raise/raised/of-facts.ts';
export { type YardAnswer, type YardWishes, yardAnswer } from './raise/raised/yard.ts';
export { type LiftTold, liftsOfStages, type StageLifts } from './raise/raised/lifts.ts';
export { heightsOf, type WayAnswer, wayAnswer } from './raise/raised/inside.ts';
export { type KitAnswer, type KitFacts, kitAnswer } from './raise/raised/kit.ts';
export {
  DAYS_BETWEEN,
  type LeftAnswer,
  type WaitAsked,
  waitAnswer,
} from './raise/raised/wait.ts';
export { clockTime, dateOf, dayNumber, secondsOfDay, weekday } from './crew/date.ts';
export { type Above, type Light, lightOn, type Site as LightSite } from './crew/light.ts';
export { durationOf, effortOf, paceSd, type WorkAmount } from './crew/durations.ts';
export {
  crawfordTotal,
  crawfordUnit,
  learningFactor,
  wrightTotal,
  wrightUnit,
} from './crew/learning.ts';
export {
  type CriticalPath,
  criticalPath,
  type Network as TaskNetwork,
  networkOf,
  pertMoments,
  pertPath,
  triangleMoments,
} from './crew/network.ts';
export {
  type CrewRates,
  commonRates,
  RATE_SOURCES,
  type Rate,
  updatedRates,
  WORKS,
  type Work,
  type WorkObserved,
} from './crew/rates.ts';
export { crewRates, learntRate, type RecordedRates, recordedRates } from './crew/recorded-rates.ts';
export { type Range, type StopPoint, type Task, taskFaults, taskOf } from './crew/task.ts';
export { type BufferFacts, type BufferJob, bufferJobs, cureHours } from './crew/buffer.ts';
export type { Here } from './crew/here.ts';
export {
  type NowAnswer,
  type NowCard,
  type NowQuestion,
  nowPlan,
  type WaitingCard,
} from './crew/now.ts';
export type { StormChoice, StormQuestion, StormStep } from './crew/storm-steps.ts';
export { type StormAnswer, stormPlan } from './crew/storm.ts';
export { type CloseDownCard, closeDownCard } from './crew/close-down.ts';
export { heavyTroubles } from './crew/heavy-troubles.ts';
export type { Trouble, TroubleSort } from './crew/troubles.ts';
export {
  type CrewChange,
  changedCrew,
  changeWords,
  type EveningGain,
  type WhatIf,
} from './crew/what-if.ts';
export { type CrewedFacts, handsAtPiece, raiseFacts } from './crew/raise-facts.ts';
export type { RaiseFacts, RaiseTask, RaiseTaskSort } from './crew/raise-task.ts';
export { type RaiseTasks, raiseTasks, type TooHeavy } from './crew/raise-tasks.ts';
export {
  FIRST_RUNS,
  usualChanges,
  WEEKEND_CAUTION,
  type Weekend,
  type WeekendDay,
  type WeekendOptions,
  type WeekendQuestion,
  type WeekendTask,
  weekendPlan,
} from './crew/weekend.ts';
export { inUnit, unitDoubt, WIND_UNITS, type WindUnit } from './crew/forecast-doubts.ts';
export { type ForecastRead, MAX_FORECAST_CHARACTERS, readForecast } from './crew/forecast-text.ts';
export {
  type CrewSettings,
  crewSection,
  defaultCrew,
  type ForecastHour,
  type Person,
  ratesOf,
  forecastTime,
} from './crew/schema.ts';
export {
  type FitOut,
  fitOut,
} from './fitout/answer.ts';
export { type SeamBody, type Shadows, shadowsOf } from './fitout/blockage.ts';
export { type FitoutBrief, floorOf, mountOf, openPlaces } from './fitout/brief.ts';
export { type Carry, type CarryAnswer, type CarryQuestion, carryThrough } from './fitout/carry.ts';
export { type LastPassing, lastPassing } from './fitout/carry-last.ts';
export {
  type ClosingSeams,
  type FittedDry,
  fittedDry,
  SEAL_SIDES,
  type SealSide,
  type SeamDone,
  sealedBeforeClosing,
} from './fitout/closing-seams.ts';
export {
  type Dish,
  dishDepth,
  MOUNT_KINDS,
  type Mount,
  mustReach,
  pivotOf,
  pointingAt,
} from './fitout/dish.ts';
export {
  DOOR_SOURCES,
  type DoorAdvice,
  type DoorPlaces,
  doorAdvice,
  doorOfPlaces,
  type RevealPart,
} from './fitout/door.ts';
export type { DoorBracing, DoorProp, PartBears } from './fitout/door-bracing.ts';
export { type DoorFrame, type DoorLoad, doorFrame, PANEL_SUPPOSED } from './fitout/door-frame.ts';
export { type DoorSection, SECTION_SUPPOSED } from './fitout/door-section.ts';
export { carryTold, type DoorAsked, type DoorTold, doorTold } from './fitout/of-shell.ts';
export { type HorizonPoint, type HorizonQuestion, horizonMask } from './fitout/horizon.ts';
export type { AirAnswer, UpkeepAnswer, UseAnswer } from './fitout/keeping-answer.ts';
export { type LeakPath, leakPaths } from './fitout/leaks.ts';
export {
  RADIO_MATERIAL_NAMES,
  RADIO_MATERIALS,
  type RadioMaterial,
  type RadioMaterialName,
} from './fitout/materials.ts';
export {
  attenuatorNoise,
  beamWidthDeg,
  dishGain,
  leastSeen,
  leftBehindBlockage,
  MOST_DISH,
  ruze,
  WARM,
  type WallPenalty,
  wallPenalty,
} from './fitout/receiver.ts';
export { boxRoom, floorWithHeadroom, outlineArea, roomInside } from './fitout/room.ts';
export { defaultFitout, type FitoutSettings, fitoutSection, readFitout } from './fitout/schema.ts';
export {
  type Bead,
  beadArea,
  beadLength,
  coatingVolume,
  isPossibleYield,
  jointWidth,
  SEALANT_PACKS,
  SEALANT_SOURCES,
  type SealantPack,
  type SealLine,
  sealantDepth,
  sealLine,
} from './fitout/sealant.ts';
export type { SealAnswer } from './fitout/seal-answer.ts';
export {
  type LyingSeam,
  lyingSeams,
  shingleOrder,
  type WrongLap,
  wrongLaps,
} from './fitout/seams.ts';
export type { SignalAnswer } from './fitout/signal-answer.ts';
export { type SkyMap, type SkyPoint, type SkyQuestion, skyMap, worseDb } from './fitout/sky.ts';
export {
  absorbingWanted,
  coverForEcho,
  daylightFactor,
  ROOM_SOURCES,
  sabine,
  soundFocus,
} from './fitout/sound-and-light.ts';
export { type NearestWall, type Swing, type SwingQuestion, swing } from './fitout/swing.ts';
export {
  EARTH_PROMPTS,
  INSPECTIONS,
  type InspectionDay,
  inspectionCalendar,
  repaintYears,
  SNOW_DENSITY,
  SNOW_WORDS,
  type SnowTrigger,
  snowTriggers,
  stormRound,
  TAKING_DOWN,
  UPKEEP_SOURCES,
} from './fitout/upkeep.ts';
export {
  AIR_SOURCES,
  type AirReading,
  baseDrain,
  condensation,
  openingsInTurn,
  stackFlow,
  ventArea,
} from './fitout/vents.ts';
export {
  type AngleLoss,
  angleLosses,
  isFrequency,
  type LayerSaid,
  painted,
  type RadioWall,
  radioWall,
  type WallTable,
  wallTable,
} from './fitout/wall.ts';
export { rainFilm, WATER_SOURCES, waterLayer, waterPermittivity } from './fitout/water.ts';
export {
  commonSealRules,
  dewPoint,
  SEAL_WEATHER_SOURCES,
  type SealHour,
  type SealRules,
  saturation,
  sealHours,
  sealWindows,
  type WeatherHour,
} from './fitout/weather.ts';
export {
  FREQUENCIES,
  halfWaveThicknesses,
  type Layer,
  LIGHT_SPEED,
  lossDb,
  MOST_THICKNESS,
  type Polarisation,
  throughLayers,
  type WaveShares,
} from './fitout/wave.ts';
export { type AccountSheetOptions, accountSheet } from './papers/account-sheet.ts';
export { type AnchorPlanSheetOptions, anchorPlanSheets } from './papers/anchor-plan-sheet.ts';
export { crewBook } from './papers/crew-book/book.ts';
export type { CrewBookContent } from './papers/crew-book/content.ts';
export { type JointSheetContent, jointSheets } from './papers/crew-book/joint-sheets.ts';
export type { BookLook } from './papers/crew-book/stage-cards.ts';
export { type CellValue, type Table, tableToCsv } from './papers/csv.ts';
export { airSheets } from './papers/air-sheet.ts';
export { doorSheets } from './papers/door-sheet.ts';
export type { FitoutSheetOptions } from './papers/fitout-plan.ts';
export { roomSheets } from './papers/room-sheet.ts';
export { type SealRound, sealRounds, sealSheets } from './papers/seal-sheet.ts';
export { frequencyName, type LossStep, lossSteps, signalSheets } from './papers/signal-sheet.ts';
export { type SwingDrawn, sectionOf, swingSheets } from './papers/swing-sheet.ts';
export { upkeepSheets } from './papers/upkeep-sheet.ts';
export { waySheets } from './papers/way-sheet.ts';
export { type NamedFile, zipOf } from './papers/zip.ts';
export {
  type MakeSheetContent,
  type MakeSheetOptions,
  makeCaution,
  makeSheet,
} from './papers/make-sheet.ts';
export {
  type Box,
  type CircleItem,
  type Dash,
  type Drawing,
  dashLengths,
  type Fill,
  flatItems,
  type GroupItem,
  type Ink,
  inkColours,
  type Item,
  type LineWeight,
  lineWeights,
  type PathItem,
  type Point,
  type Stroke,
  type TextItem,
} from './papers/drawing.ts';
export { elevationItems } from './papers/elevation.ts';
export {
  type FlatPlanSheetOptions,
  flatPlanSheet,
  type SheetFacts,
} from './papers/flat-plan-sheet.ts';
export {
  type Hatch,
  type HatchName,
  hatchNamed,
  hatchNames,
  kindFills,
  type LeaningHatch,
  tints,
  type UprightHatch,
} from './papers/hatch.ts';
export { type HatchMarks, hatchMarks } from './papers/hatch-marks.ts';
export { type JointContent, type JointPicture, jointPicture } from './papers/joint-picture.ts';
export { type CardStyle, type KindCard, kindCardItems } from './papers/kind-card.ts';
export { type KindCardOptions, kindCardSheets } from './papers/kind-cards-sheet.ts';
export { handTest, handWords, readingWords, stockWords } from './papers/kind-words.ts';
export { bagLabelSheets, hubLabelSheets, matchMarkSheets } from './papers/bag-labels.ts';
export { type LabelStock, labelStock, labelStocks } from './papers/label-stock.ts';
export { type DossierSheetOptions, dossierSheets } from './papers/dossier-sheets.ts';
export { elsewhereSheets } from './papers/elsewhere-sheets.ts';
export {
  kindsIn,
  loadsByHand,
  type PackedPanel,
  type PackedStack,
  packedPanel,
  type StackLimits,
  stacksOf,
} from './papers/packing.ts';
export {
  defaultStorage,
  type StorageSettings,
  storageSection,
  supposedVehicles,
} from './papers/storage-section.ts';
export { type Trip, type Trips, tripsOf, type Vehicle } from './papers/trips.ts';
export type { PermitQuestion } from './papers/permit-question.ts';
export { type PermitOptions, permitSheets } from './papers/permit-sheets.ts';
export type { MeasuredShell } from './papers/shell-measures.ts';
export { netCode, projectCode } from './papers/small-project.ts';
export {
  type StorageOptions,
  type StorageQuestion,
  storageSheets,
} from './papers/storage-sheets.ts';
export { buySheets, type KitSheetOptions, kitSheets } from './papers/kit-sheets.ts';
export { type LiftCardOptions, liftCardSheets } from './papers/lift-card-sheets.ts';
export { type TallyOptions, tallySheets } from './papers/tally-sheets.ts';
export { twinSheets } from './papers/twin-sheets.ts';
export { type PanelLabelOptions, panelLabelSheets } from './papers/panel-labels.ts';
export type { LengthsShown } from './papers/length-text.ts';
export type { Paper, TitleBlock } from './papers/page.ts';
export { withPageNumbers } from './papers/page-numbers.ts';
export { readOr, SheetFault } from './papers/sets/fault.ts';
export { fitoutMakers } from './papers/sets/fitout-sets.ts';
export { surveyOfSite } from './papers/sets/ground-sets.ts';
export {
  type SheetJob,
  type SheetMaker,
  type SheetRaised,
  type SheetSearch,
  type SheetSite,
  sheetJob,
} from './papers/sets/job.ts';
export { sheetMakers } from './papers/sets/list.ts';
export { type MadeSheets, makeSheets } from './papers/sets/make.ts';
export type { PaperQuestion } from './papers/sets/question.ts';
export { STAND_CAUTION, takenFor } from './papers/sets/shell-sets.ts';
export { type PanelShape, panelShape } from './papers/panel-shape.ts';
export {
  type PdfFace,
  type PdfFacts,
  type PdfFile,
  type PdfMaker,
  type PdfPen,
  toPdf,
} from './papers/pdf.ts';
export {
  type Placing,
  type PlanContent,
  type PlanDrawing,
  planDrawing,
} from './papers/plan-drawing.ts';
export { escapeXml, type SvgOptions, svgFiles, toSvg } from './papers/svg.ts';
export { type RingBeamSheetOptions, ringBeamSheets } from './papers/ring-beam-sheet.ts';
export { type ShimSheetOptions, shimSheets } from './papers/shim-sheet.ts';
export { type StakeOutSheetOptions, stakeOutSheets } from './papers/stake-out-sheet.ts';
export {
  type SurveySheetContent,
  type SurveySheetOptions,
  surveySheets,
} from './papers/survey-sheet.ts';
export {
  buyTable,
  kindsTable,
  placesTable,
  seamsTable,
  sizeWords,
  stockTable,
} from './papers/tables.ts';
export { type TakeOffSheetOptions, takeOffNotes, takeOffSheets } from './papers/take-off-sheet.ts';
export type { GridPoint } from './patterns/grid.ts';
export {
  type FaceWords,
  type NetSheetOptions,
  netRoom,
  netScales,
  netSheets,
} from './patterns/net-sheets.ts';
export { cutSvg, toDxf } from './patterns/cut-files.ts';
export {
  type CutJoint,
  type CutPart,
  type CutPartOptions,
  type CutPoint,
  cutParts,
} from './patterns/cut-parts.ts';
export {
  type CutLayer,
  type CutLine,
  type CutSheet,
  type CutSheetOptions,
  type CutSheets,
  type CutWord,
  cutSheets,
} from './patterns/cut-sheets.ts';
export { toGlb } from './patterns/glb.ts';
export {
  type Mesh,
  type MeshFaults,
  meshArea,
  meshBox,
  meshFaults,
  meshVolume,
  movedMesh,
} from './patterns/mesh.ts';
export { modelOf } from './patterns/model.ts';
export {
  defaultModel,
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  type ModelSort,
  modelSorts,
} from './patterns/model-ask.ts';
export {
  type FoldWay,
  type NetEdge,
  type NetFace,
  type NetFold,
  type NetPiece,
  type NoNet,
  type PaperNet,
  type PaperNetOptions,
  paperNet,
} from './patterns/paper-net.ts';
export { PERSON, personMesh } from './patterns/person-mesh.ts';
export { type ShellMeshOptions, shellMesh } from './patterns/shell-mesh.ts';
export { toStl } from './patterns/stl.ts';
export type { NetTab } from './patterns/tabs.ts';
export { type NamedMesh, type PlacedItem, toThreeMf } from './patterns/three-mf.ts';
export { type ProjectNews, type ProjectParts, projectNews } from './project/from-record.ts';
export {
  looksLikeProject,
  MAX_PROJECT_CHARACTERS,
  projectFrom,
  readProject,
  writeProject,
} from './project/project.ts';
export {
  PROJECT_VERSION,
  type Project,
  projectJsonSchema,
  projectSchema,
} from './project/schema.ts';
