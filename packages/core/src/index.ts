// What the engine offers, named one by one, in the order of the folders.

export { describeFault, type Fault, type Read } from './measure/fault.ts';
export { type LengthStyle, type LengthUnit, readLength, writeLength } from './measure/length.ts';
export type { HubId, PlaceId, SideId } from './shell/ids.ts';
export {
  cornerCount,
  hubCount,
  hubsOf,
  placeCount,
  type Shell,
  seamCount,
  sidesOf,
} from './shell/shell.ts';
export { readPileCsv } from './pile/csv.ts';
export type { JoinedGroup, Kind } from './pile/kind.ts';
export { kindsOfPile, type PileKinds } from './pile/kinds.ts';
export type { HardwareRow, Pile } from './pile/schema.ts';
export { type IdentifyOptions, identify } from './identify/identify.ts';
export type {
  Identification,
  IdentifyProgress,
  Shape,
  ShapeQuestion,
  Subdivision,
  Suspect,
} from './identify/shape.ts';
export type { HardwareLot } from './takeoff/hardware.ts';
export { defaultTakeoff, type TakeoffSettings } from './takeoff/schema.ts';
export type { HoleCounts } from './takeoff/seam-bolts.ts';
export { type BuyLine, type TakeOff, takeOff } from './takeoff/take-off.ts';
export {
  type Arrangement,
  type Arrangements,
  arrangements,
  type Standing,
  standingShell,
} from './arrange/arrangements.ts';
export type { StockRow } from './arrange/stock.ts';
export type { WayUp } from './arrange/ways-up.ts';
export { tableToCsv } from './papers/csv.ts';
export { flatPlanSheet, type SheetFacts } from './papers/flat-plan-sheet.ts';
export { kindCardSheets } from './papers/kind-cards-sheet.ts';
export { toSvg } from './papers/svg.ts';
export {
  buyTable,
  kindsTable,
  placesTable,
  seamsTable,
  sizeWords,
  stockTable,
} from './papers/tables.ts';
export { takeOffNotes, takeOffSheets } from './papers/take-off-sheet.ts';
export { readProject } from './project/project.ts';
export type { Project } from './project/schema.ts';
