// Everything that the fit-out answers of one standing shell from what the project says; parts that
// nothing was said about are null.

import { forecastTime } from '../crew/schema.ts';
import { mergeSources, type Provenance } from '../loads/provenance.ts';
import { type Fault, type Read, refuse } from '../measure/fault.ts';
import { hubPoint, sideLength } from '../shell/geometry.ts';
import type { HubId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubCount, type Shell } from '../shell/shell.ts';
import { rimHubs } from '../takeoff/hubs.ts';
import { type ClosingSeams, sealedBeforeClosing } from './closing-seams.ts';
import type { Mount } from './dish.ts';
import { type HorizonPoint, horizonMask } from './horizon.ts';
import { type LeakPath, leakPaths } from './leaks.ts';
import { type WallPenalty, wallPenalty } from './receiver.ts';
import { boxRoom, floorWithHeadroom, outlineArea, roomInside } from './room.ts';
import type { FitoutSettings } from './schema.ts';
import {
  SEALANT_PACKS,
  SEALANT_SOURCES,
  type SealLine,
  sealantDepth,
  sealLine,
} from './sealant.ts';
import { lyingSeams, shingleOrder } from './seams.ts';
import { type SkyMap, skyMap, worseDb } from './sky.ts';
import {
  absorbingWanted,
  coverForEcho,
  daylightFactor,
  ROOM_SOURCES,
  sabine,
} from './sound-and-light.ts';
import { type Swing, swing } from './swing.ts';
import {
  type InspectionDay,
  inspectionCalendar,
  repaintYears,
  type SnowTrigger,
  snowTriggers,
  stormRound,
  UPKEEP_SOURCES,
} from './upkeep.ts';
import { AIR_SOURCES, baseDrain, condensation, ventArea } from './vents.ts';
import {
  type AngleLoss,
  angleLosses,
  painted,
  type RadioWall,
  radioWall,
  wallTable,
} from './wall.ts';
import { rainFilm, WATER_SOURCES, waterLayer } from './water.ts';
import { halfWaveThicknesses } from './wave.ts';
import { SEAL_WEATHER_SOURCES, sealHours, sealWindows } from './weather.ts';

/** What the shell costs the signal at one frequency. */
export interface SignalAnswer {
  readonly frequency: number;
  /** Decibels at 0, 15 … 75 degrees from square on, dry, without seams. */
  readonly angles: readonly AngleLoss[];
  /** The same square on with the next coat of paint, and behind a whole film of the rain told (an upper
   * bound); paint null where none is told. */
  readonly repainted: number | null;
  readonly wetAtMost: number;
  /** Metres of the film. */
  readonly film: number;
  /** Thicknesses of one wall of the first layer's material that let most through, metres. */
  readonly halfWaves: readonly number[];
  /** Null without a dish. */
  readonly sky: SkyMap | null;
  /** Gain over temperature at the best and worst pointing, with the least and the most of added noise;
   * null without a receiver. */
  readonly best: WallPenalty | null;
  readonly worst: { readonly least: WallPenalty; readonly most: WallPenalty } | null;
}

/** What the fit-out answers. */
export interface FitOut {
  readonly signal: readonly SignalAnswer[];
  readonly swing: Swing | null;
  readonly horizon: readonly HorizonPoint[];
  readonly seal: {
    readonly lines: readonly SealLine[];
    /** Seams in the order in which strips are laid. */
    readonly order: readonly number[];
    readonly closing: readonly ClosingSeams[];
    /** Hours from the first of the weather told, and its time; empty where none can be had. */
    readonly windows: readonly { readonly from: number; readonly to: number }[];
    readonly weatherFrom: string | null;
  };
  readonly leaks: readonly LeakPath[];
  readonly air: {
    readonly ventArea: number | null;
    readonly between: number;
    readonly drips: { readonly hours: number; readonly of: number; readonly worst: number } | null;
    readonly drain: { readonly all: number; readonly perMetre: number } | null;
  };
  readonly upkeep: {
    readonly calendar: readonly InspectionDay[];
    /** Places in the order of the round. */
    readonly round: readonly number[];
    readonly snow: readonly SnowTrigger[];
    readonly repaint: readonly number[];
  };
  readonly use: {
    readonly floorArea: number;
    readonly headroomArea: number;
    readonly volume: number;
    readonly panelArea: number;
    /** Seconds bare, and absorbing area that would bring it to half a second, m². */
    readonly echo: number;
    readonly absorbing: number;
    /** Share of the wall to cover for 6 dB less at the centre. */
    readonly cover: number;
    readonly daylight: number;
    readonly boxes: readonly {
      readonly name: string;
      readonly room: { readonly azimuth: number; readonly out: number } | null;
    }[];
  };
  readonly sources: readonly Provenance[];
}

/** What the answer takes from elsewhere in the project. */
export interface FitoutBrief {
  readonly shell: Shell;
  /** Numbers of the places. */
  readonly numbers: readonly string[];
  /** The order in which places are filled. */
  readonly order: readonly number[];
  /** Where the wind mostly comes from, radians from the datum. */
  readonly windFrom: number;
  /** Snow on the ground that the snow check was made for, pascals; null: none. */
  readonly snow: number | null;
  readonly stepDeg: number;
}

/** The answer, or what is wrong with what was said. */
export function fitOut(brief: FitoutBrief, settings: FitoutSettings): Read<FitOut> {
  const { shell } = brief;
  const floor = floorOf(shell);
  const faults = [...dishFaults(shell, settings)];
  const wall = radioWall(settings.wall);
  if (!wall.ok) faults.push(...wall.faults.map((one) => ({ ...one, path: `fitout.${one.path}` })));
  const leaks = leakSeams(brief, settings);
  if (!leaks.ok) faults.push(...leaks.faults);
  if (faults.length > 0 || !wall.ok || !leaks.ok) return { ok: false, faults };
  const { dish } = settings;
  const at = mountOf(settings);
  const swung =
    dish === null
      ? null
      : swing({
          shell,
          dish,
          mount: at,
          floor,
          flange: settings.seams.depth,
          margin: settings.margin,
          stepDeg: brief.stepDeg,
        });
  return {
    ok: true,
    value: {
      signal:
        settings.wall.length === 0
          ? []
          : settings.frequencies.map((f) => signalAt(brief, settings, wall.value, f, floor)),
      swing: swung,
      horizon: dish === null ? [] : horizonOf(shell, settings, floor),
      seal: sealOf(brief, settings, floor),
      leaks: leakPaths(shell, leaks.value),
      air: airOf(shell, settings, floor),
      upkeep: upkeepOf(brief, settings),
      use: useOf(shell, settings, floor),
      sources: mergeSources(
        wall.value.sources,
        settings.wall.length > 0 ? WATER_SOURCES : [],
        SEALANT_SOURCES,
        settings.weather.length > 0 ? SEAL_WEATHER_SOURCES : [],
        AIR_SOURCES,
        UPKEEP_SOURCES,
        ROOM_SOURCES,
      ),
    },
  };
}

/** Height of the floor: the lowest hub of the base ring, or of all. */
export function floorOf(shell: Shell): number {
  const ring = baseRing(shell);
  if (ring !== null) return ring.z.min;
  let least = Number.POSITIVE_INFINITY;
  for (let h = 0; h < hubCount(shell); h++) least = Math.min(least, hubPoint(shell, h as HubId)[2]);
  return least;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The mount of the settings, in radians. */
export const mountOf = ({ mount }: FitoutSettings): Mount => ({
  kind: mount.kind,
  height: mount.height,
  aside: mount.aside,
  lowest: radians(Math.min(mount.lowestDeg, mount.highestDeg)),
  highest: radians(Math.max(mount.lowestDeg, mount.highestDeg)),
  azimuth: radians(mount.azimuthDeg),
  latitude: radians(mount.latitudeDeg),
  hourAngle: radians(mount.hourAngleDeg),
});

function dishFaults(shell: Shell, { dish, mount }: FitoutSettings): Fault[] {
  if (dish === null) return [];
  const across = 2 * shell.radius;
  const turning =
    2 * Math.hypot(dish.vertexAhead + dish.diameter / (16 * dish.focalRatio), dish.diameter / 2);
  if (dish.diameter >= across || turning >= across)
    return [
      {
        path: 'fitout.dish.diameter',
        found: `${dish.diameter} m, which turns a circle of ${turning.toFixed(3)} m`,
        expected: `less than the shell's ${across.toFixed(3)} m across`,
      },
    ];
  const pivot = Math.hypot(...mount.aside, floorOf(shell) + mount.height);
  if (pivot >= shell.radius)
    return [
      {
        path: 'fitout.mount',
        found: `a pivot ${pivot.toFixed(3)} m from the sphere's centre`,
        expected: `one within ${shell.radius.toFixed(3)} m`,
      },
    ];
  return [];
}

function signalAt(
  { shell, stepDeg }: FitoutBrief,
  settings: FitoutSettings,
  wall: RadioWall,
  frequency: number,
  floor: number,
): SignalAnswer {
  const measured = settings.measured.find((one) => one.frequency === frequency)?.lossDb;
  const dry = coated(settings, wall, 0);
  const straight = (one: RadioWall): number =>
    (angleLosses(one, frequency, [0])[0] as AngleLoss).te;
  const film = rainFilm(settings.rainMmHour / 3.6e6, shell.radius);
  const wet = { ...dry, layers: [waterLayer(film, frequency), ...dry.layers] };
  const sky =
    settings.dish === null
      ? null
      : skyMap({
          shell,
          dish: settings.dish,
          mount: mountOf(settings),
          floor,
          wall: wallTable(dry, frequency, measured),
          seams: {
            seamWidth: settings.seams.width,
            seamDepth: settings.seams.depth,
            plateDiameter: settings.seams.plateDiameter,
            opacity: settings.seams.opacity,
          },
          stepDeg,
        });
  const { systemK } = settings;
  const kept = (point: SkyMap['best']): number => Math.min(1, 10 ** (-worseDb(point) / 10));
  return {
    frequency,
    angles: angleLosses(dry, frequency, [0, 15, 30, 45, 60, 75].map(radians)),
    repainted: settings.paint === null ? null : straight(coated(settings, wall, 1)),
    wetAtMost: straight(wet),
    film,
    halfWaves: halfWaveThicknesses(wall.layers[0].permittivity, frequency, 0.1).slice(0, 3),
    sky,
    best:
      sky === null || systemK === null
        ? null
        : wallPenalty(kept(sky.best), sky.best.noiseLeast, systemK),
    worst:
      sky === null || systemK === null
        ? null
        : {
            least: wallPenalty(kept(sky.worst), sky.worst.noiseLeast, systemK),
            most: wallPenalty(kept(sky.worst), sky.worst.noiseMost, systemK),
          },
  };
}

/** The wall with its coats and `more` of them. */
const coated = ({ paint }: FitoutSettings, wall: RadioWall, more: number): RadioWall =>
  paint === null || paint.coats + more === 0
    ? wall
    : painted(wall, (paint.coats + more) * paint.dryFilm);

const horizonOf = (shell: Shell, settings: FitoutSettings, floor: number): HorizonPoint[] => {
  const { door, ringHeight, skylineDeg } = settings.horizon;
  if (settings.dish === null) return [];
  return horizonMask({
    shell,
    dish: settings.dish,
    mount: mountOf(settings),
    floor,
    ringHeight,
    door: door === null ? null : { ...door, azimuth: radians(door.azimuthDeg) },
    skyline: skylineDeg.map(radians),
  });
};

function sealOf(
  { shell, order }: FitoutBrief,
  settings: FitoutSettings,
  floor: number,
): FitOut['seal'] {
  const { seal, seams, weather } = settings;
  const length = lyingSeams(shell).reduce((sum, one) => sum + one.length, 0);
  const rim = rimHubs(shell);
  const plates = [...rim.keys()].filter((hub) => rim[hub] === 0).length;
  const round = plates * Math.PI * seams.plateDiameter;
  const lines = [
    ...(seal.tapeRoll === null ? [] : [sealLine('tape', length, 1, seal.waste, seal.tapeRoll)]),
    ...(seal.foamRoll === null ? [] : [sealLine('foam', length, 1, seal.waste, seal.foamRoll)]),
    ...(seal.joint === null
      ? []
      : [
          sealLine(
            'sealant',
            length + round,
            seal.joint * sealantDepth(seal.joint),
            seal.waste,
            SEALANT_PACKS[seal.pack],
          ),
          sealLine('backer rod', length, 1, seal.waste, null),
        ]),
  ];
  const times = weather.map(({ at }) => forecastTime(at) as number);
  const first = Math.min(...times);
  const byHour = new Map(
    weather.map((one, i) => [Math.round((times[i] - first) / 3600), one] as const),
  );
  const hours = sealHours(
    [...byHour].map(([hour, { temperatureC, humidity, rainMm }]) => ({
      hour,
      temperatureC,
      humidity,
      rainMm,
    })),
    settings.sealRules,
  );
  return {
    lines,
    order: shingleOrder(shell),
    closing: sealedBeforeClosing(shell, order, seal.side, seal.reach, floor),
    windows: sealWindows(hours),
    weatherFrom: weather[times.indexOf(first)]?.at ?? null,
  };
}

function leakSeams({ shell, numbers }: FitoutBrief, { leaks }: FitoutSettings): Read<number[]> {
  const seams = lyingSeams(shell);
  const found: number[] = [];
  for (const [i, { between }] of leaks.entries()) {
    const seam = seams.find(({ over, under }) => {
      const pair = [numbers[over], numbers[under]];
      return pair.includes(between[0]) && pair.includes(between[1]) && between[0] !== between[1];
    });
    if (seam === undefined)
      return refuse(
        `fitout.leaks[${i}].between`,
        between.join(' and '),
        'numbers of two places that share a seam',
      );
    found.push(seam.seam);
  }
  return { ok: true, value: found };
}

function airOf(shell: Shell, { air, rainMmHour }: FitoutSettings, floor: number): FitOut['air'] {
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

const upkeepOf = (
  { shell, windFrom, snow }: FitoutBrief,
  { standsFrom, paint }: FitoutSettings,
): FitOut['upkeep'] => ({
  calendar: standsFrom === null ? [] : inspectionCalendar(standsFrom, YEARS_TOLD.calendar),
  round: stormRound(shell, windFrom),
  snow: snow === null || snow < 1 ? [] : snowTriggers(snow),
  repaint:
    paint === null || paint.year === null
      ? []
      : repaintYears(paint.year, paint.everyYears, paint.year + YEARS_TOLD.coats),
});

/** Light that a clear panel lets by, sky that a panel of a dome sees in degrees, and what the inside
 * throws back: common practice. */
const CLEAR = { through: 0.7, skyDeg: 120, bright: 0.5 } as const;

function useOf(shell: Shell, { use, seams }: FitoutSettings, floor: number): FitOut['use'] {
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
    daylight: daylightFactor({ clear: Math.min(use.clearArea, surface), surface, ...CLEAR }),
    boxes: use.boxes.map(({ name, ...box }) => ({
      name,
      room: boxRoom(shell, floor, box, seams.depth),
    })),
  };
}
