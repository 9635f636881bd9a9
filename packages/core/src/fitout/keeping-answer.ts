// What the fit-out answers of air and wet, of keeping the shell, and of what else it could be.

import { hubPoint, sideLength } from '../shell/geometry.ts';
import type { HubId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubCount, type Shell } from '../shell/shell.ts';
import type { FitoutBrief } from './brief.ts';
import { boxRoom, floorWithHeadroom, outlineArea, roomInside } from './room.ts';
import type { FitoutSettings } from './schema.ts';
import {
  absorbingWanted,
  coverForEcho,
  daylightFactor,
  sabine,
  soundFocus,
} from './sound-and-light.ts';
import {
  type InspectionDay,
  inspectionCalendar,
  repaintYears,
  type SnowTrigger,
  snowTriggers,
  stormRound,
} from './upkeep.ts';
import { baseDrain, condensation, ventArea } from './vents.ts';

/** Air and wet: areas in square metres, flows in litres a second. */
export interface AirAnswer {
  readonly ventArea: number | null;
  readonly between: number;
  readonly drips: { readonly hours: number; readonly of: number; readonly worst: number } | null;
  readonly drain: { readonly all: number; readonly perMetre: number } | null;
}

/** How the shell is kept. */
export interface UpkeepAnswer {
  readonly calendar: readonly InspectionDay[];
  /** Places in the order of the round. */
  readonly round: readonly number[];
  readonly snow: readonly SnowTrigger[];
  readonly repaint: readonly number[];
  /** Places in the order in which panels come down: the last put up first. */
  readonly down: readonly number[];
}

/** What else the shell could be; square and cubic metres. */
export interface UseAnswer {
  readonly floorArea: number;
  readonly headroomArea: number;
  readonly volume: number;
  readonly panelArea: number;
  /** Seconds bare, and absorbing area that would bring it to half a second, m². */
  readonly echo: number;
  readonly absorbing: number;
  /** Share of the wall to cover for 6 dB less at the centre. */
  readonly cover: number;
  /** Where the wall gathers the sound of somebody `soundOff` from the centre: metres beyond it. */
  readonly focus: number;
  readonly daylight: number;
  readonly boxes: readonly {
    readonly name: string;
    readonly room: { readonly azimuth: number; readonly out: number } | null;
  }[];
}

/** Air and wet of one shell. */
export function airOf(shell: Shell, { air, rainMmHour }: FitoutSettings, floor: number): AirAnswer {
  const between = crownOf(shell) - floor;
  const { volume } = roomInside(shell, floor);
  const area = ventArea({ ...air, volume, between });
  const ring = baseRing(shell);
  const round =
    ring === null ? 0 : ring.sides.reduce((sum, side) => sum + sideLength(shell, side), 0);
  const widest = floor < 0 ? shell.radius : Math.sqrt(Math.max(0, shell.radius ** 2 - floor ** 2));
  return {
    ventArea: Number.isFinite(area) ? area : null,
    between,
    drips: air.readings.length === 0 ? null : condensation(air.readings),
    drain: round === 0 ? null : baseDrain(widest, round, rainMmHour),
  };
}

function crownOf(shell: Shell): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let h = 0; h < hubCount(shell); h++) most = Math.max(most, hubPoint(shell, h as HubId)[2]);
  return most;
}

/** Days of the calendar told, and years of coats. */
const YEARS_TOLD = { calendar: 730, coats: 30 } as const;

/** How one shell is kept. */
export const upkeepOf = (
  { shell, order, windFrom, snow }: FitoutBrief,
  { standsFrom, paint }: FitoutSettings,
): UpkeepAnswer => ({
  calendar: standsFrom === null ? [] : inspectionCalendar(standsFrom, YEARS_TOLD.calendar),
  round: stormRound(shell, windFrom),
  snow: snow === null || snow < 1 ? [] : snowTriggers(snow),
  down: [...order].reverse(),
  repaint:
    paint === null || paint.year === null
      ? []
      : repaintYears(paint.year, paint.everyYears, paint.year + YEARS_TOLD.coats),
});

/** Light that a clear panel lets by, sky that a panel of a dome sees in degrees, and what the inside
 * throws back: common practice. */
const CLEAR = { through: 0.7, skyDeg: 120, bright: 0.5 } as const;

/** What else one shell could be. */
export function useOf(shell: Shell, { use, seams }: FitoutSettings, floor: number): UseAnswer {
  const { volume, panels } = roomInside(shell, floor);
  const ground = outlineArea(floorWithHeadroom(shell, floor, 0));
  const bare = Math.max(1e-3, panels * use.bareAbsorption);
  const surface = panels + ground;
  return {
    floorArea: ground,
    headroomArea: outlineArea(floorWithHeadroom(shell, floor, use.headroom, seams.depth)),
    volume,
    panelArea: panels,
    echo: sabine(volume, bare),
    absorbing: absorbingWanted(volume, bare, 0.5),
    cover: coverForEcho(6, use.bareAbsorption, use.coverAbsorption),
    focus: soundFocus(shell.radius, Math.min(use.soundOff, shell.radius)),
    daylight: daylightFactor({ clear: Math.min(use.clearArea, surface), surface, ...CLEAR }),
    boxes: use.boxes.map(({ name, ...box }) => ({
      name,
      room: boxRoom(shell, floor, box, seams.depth),
    })),
  };
}
