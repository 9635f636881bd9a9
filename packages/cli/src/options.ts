// The options that commands share, as commander hands them over.

import type { ModelSort, OpeningRank, WindUnit } from '@shellraise/core';

/** What `--rank` takes: as core has them, told here again so that help comes without loading core. */
const ranks: Readonly<Record<OpeningRank, true>> = {
  'stock saved': true,
  'least harm': true,
  'away from wind': true,
  'in reach': true,
  'shortest edge': true,
  'fewest panels': true,
};
export const rankNames = Object.keys(ranks);

/** What `--lengths` takes. */
export const lengthSystems = ['metric', 'inch'] as const;

/** The system that lengths are shown in. */
export type LengthSystem = (typeof lengthSystems)[number];

/** What `--unit` takes. */
export const lengthUnits = ['mm', 'cm', 'm', 'in', 'ft'] as const;

/** Options of every command. */
export interface CommonOptions {
  readonly lengths: LengthSystem;
  /** Unit of the lengths of a CSV that have none. */
  readonly unit?: (typeof lengthUnits)[number];
  readonly json?: boolean;
}

/** Options of the commands that go on from a shape to what can stand. Numbers count from 1. */
export interface StandOptions extends CommonOptions {
  readonly shape: number;
  /** Absent: the one that the project file keeps, else the first. */
  readonly arrangement?: number;
  /** Panels to be mended count as stock. */
  readonly repaired?: boolean;
}

/** Options of `shellraise places`. */
export interface PlacesOptions extends StandOptions {
  /** Writes the arrangement into the project file as the lead's decision. */
  readonly keep?: boolean;
  /** As `keep`, and keeps its place numbers whatever is decided later. */
  readonly freeze?: boolean;
  /** Forgets the numbers that are kept. */
  readonly unfreeze?: boolean;
  /** The best shells by the wishes of the file, in place of the list. */
  readonly fit?: boolean;
  /** Place number of a broken panel. */
  readonly broken?: string;
  /** Courses that are up; absent: all. */
  readonly built?: number;
  /** What the leftovers can stand. */
  readonly second?: boolean;
  /** Which tagged panel goes where. */
  readonly singles?: boolean;
  /** Width x height of a door, as typed. */
  readonly door?: string;
  /** Clear diameter of a round hatch, as typed. */
  readonly hatch?: string;
  /** Corners of an object's section, as typed. */
  readonly section?: string;
  /** With these three: what openings are ranked by. */
  readonly rank?: OpeningRank;
  /** Where the wind comes from, degrees clockwise from the datum seen from above. */
  readonly wind?: number;
  /** The count of panels, seams, hubs and bolts. */
  readonly account?: boolean;
  /** The panel of a kind, drawn to be made. */
  readonly make?: string;
  /** Folder that drawings are written to. */
  readonly out?: string;
  readonly date?: string;
}

/** Options of `shellraise ground`. */
export interface GroundOptions extends StandOptions {
  /** The stage: so many panels placed, in number order, from 1. */
  readonly stage?: number;
  /** The gust that is expected tonight, m/s. */
  readonly tonight?: number;
  /** Folder for the sheets; none are written where left out. */
  readonly out?: string;
  readonly date?: string;
}

/** Options of `shellraise raise`. */
export interface RaiseOptions extends StandOptions {
  /** The stage whose card is told, from 1. */
  readonly stage?: number;
  /** Stages in another order, by their numbers; those that are not named follow. */
  readonly order?: string;
  /** Writes the plan's order into the project file as the lead's own. */
  readonly keep?: boolean;
  /** Who of the file's people comes, and who does not: names with commas. */
  readonly people?: string;
  readonly without?: string;
  /** Who is here, the light left, the gusts, as typed; what is done; when. */
  readonly now?: string;
  readonly done: string;
  readonly on?: string;
  /** Hours until a storm and its gusts, as typed. */
  readonly storm?: string;
  /** The stacks; the lifts; way in and way out; bags and kit; what may wait after the stage. */
  readonly yard?: boolean;
  readonly lifts?: boolean;
  readonly inside?: boolean;
  readonly bags?: boolean;
  readonly wait?: boolean;
  /** Sectors of the yard where nothing may lie, as typed. */
  readonly keepClear?: string;
  /** Gust that stacks, lifts and the shell left alone are reckoned for, m/s; days until the next trip. */
  readonly gust?: number;
  readonly days?: number;
  /** What the file's forecast is in; m/s where left out. */
  readonly windUnit?: WindUnit;
  /** The record's file, for rates of this crew. */
  readonly record?: string;
  /** Orders tried, and the seed of every search and run. */
  readonly tries: number;
  readonly seed: number;
  /** Folder for the tables; none are written where left out. */
  readonly out?: string;
}

/** Options of `shellraise fitout`. What is given here goes before what the file says. */
export interface FitoutOptions extends StandOptions {
  /** Diameter of the dish, as typed. */
  readonly dish?: string;
  /** Frequencies, as typed, Hz. */
  readonly frequency?: readonly number[];
  /** Layers of the wall, the outermost first, as typed. */
  readonly wall?: string;
  /** Losses measured square on, as typed. */
  readonly measured?: string;
  /** Elevations of the skyline in even steps, as typed, degrees. */
  readonly skyline?: string;
  /** Degrees between pointings. */
  readonly step: number;
  /** Numbers of the panels of the door. */
  readonly door?: string;
  /** Things of the file by name, or `all`; or an STL file. */
  readonly pass?: string;
  /** Of the STL file. */
  readonly passUnit?: string;
  /** Panels placed, in number order, where things pass the shell while it is built. */
  readonly stage?: number;
  /** The latest moment while the shell is built at which things pass. */
  readonly last?: boolean;
}

/** Options of the commands that write files. */
export interface PapersOptions extends StandOptions {
  readonly out: string;
  readonly date?: string;
}

/** What `shellraise papers --paper` takes. */
export const sheetPapers = ['A4', 'Letter', 'A3'] as const;

/** What `shellraise papers --as` takes. */
export const sheetSorts = ['both', 'pdf', 'svg'] as const;

/** Options of `shellraise papers`. */
export interface SheetOptions extends PapersOptions {
  readonly as: (typeof sheetSorts)[number];
  /** A typeface file for letters that those of the program lack. */
  readonly font?: string;
  readonly paper: (typeof sheetPapers)[number];
  /** Names of sets with commas; every set where left out. */
  readonly only?: string;
}

/** Options of `shellraise dossier`. */
export interface DossierCommandOptions extends StandOptions {
  readonly record?: string;
  /** File that an invented record is written to. */
  readonly invent?: string;
  readonly seed: number;
  /** People by their initials alone. */
  readonly initials?: boolean;
  /** Folder that the dossier is written to as sheets. */
  readonly out?: string;
}

/** Options of `shellraise serve`; the server reads what they hold. */
export interface ServeOptions {
  readonly port?: string;
  readonly data?: string;
  readonly lan?: boolean;
  readonly https?: boolean;
  readonly httpsPort?: string;
  readonly newRoot?: boolean;
  readonly postgres?: string;
  readonly redis?: string;
  readonly name: readonly string[];
  readonly proxy: readonly string[];
  readonly codes?: boolean;
  readonly open: boolean;
}

const sorts: Readonly<Record<ModelSort, true>> = {
  net: true,
  strips: true,
  cut: true,
  print: true,
  snap: true,
  'full-size': true,
};
/** What `patterns --as` takes: as core has them, told here again for the same reason. */
export const patternSorts = Object.keys(sorts) as readonly ModelSort[];

/** What `--paper` takes. */
export const papersTaken = ['A4', 'A3', 'Letter'] as const;

/** Options of `shellraise patterns`. */
export interface PatternsOptions extends PapersOptions {
  readonly as: ModelSort;
  /** 1 : scale. */
  readonly scale: number;
  readonly paper: (typeof papersTaken)[number];
  /** Places that stay open, by number, besides those of the openings that the file keeps. */
  readonly open?: string;
  /** Sheet, thickness of it and kerf for parts to be cut, as typed. */
  readonly sheet: string;
  readonly thickness: string;
  readonly kerf: string;
  readonly joint: 'butt' | 'bevel' | 'slot';
  /** Outlines are scored and snapped. */
  readonly snap?: boolean;
  /** Least thickness of a printed wall, as typed; else what goes with the sort. */
  readonly wall?: string;
  /** Between pegs and sockets, and the diameter of a peg, as typed. */
  readonly clearance: string;
  readonly peg: string;
  /** Depth of a flange, across a hub plate, of a hole, and the floor over the base ring, as typed. */
  readonly flange: string;
  readonly plate: string;
  readonly hole: string;
  readonly floor: string;
  /** What the printer can hold, as typed. */
  readonly bed: string;
}
