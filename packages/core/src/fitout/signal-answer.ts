// What the fit-out answers of the signal: the dry panel by angle, wet and painted, the sky, the receiver; and
// the horizon that the dish sees.

import type { Shell } from '../shell/shell.ts';
import { type FitoutBrief, mountOf, radians } from './brief.ts';
import { type HorizonPoint, horizonMask } from './horizon.ts';
import { type WallPenalty, wallPenalty } from './receiver.ts';
import type { FitoutSettings } from './schema.ts';
import { type SkyMap, skyMap, worseDb } from './sky.ts';
import { type AngleLoss, angleLosses, painted, type RadioWall, wallTable } from './wall.ts';
import { rainFilm, waterLayer } from './water.ts';
import { halfWaveThicknesses } from './wave.ts';

/** What the shell costs the signal at one frequency. */
export interface SignalAnswer {
  readonly frequency: number;
  /** Decibels at 0, 15 … 75 degrees from square on, dry, without seams. */
  readonly angles: readonly AngleLoss[];
  /** Decibels measured square on through a dry panel, which the sky counts in the place of what is
   * reckoned; null: not measured at this frequency. */
  readonly measured: number | null;
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

/** One frequency. */
export function signalAt(
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
    measured: measured ?? null,
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

/** How low the whole dish looks clear, azimuth by azimuth; none without a dish. */
export const horizonOf = (
  shell: Shell,
  settings: FitoutSettings,
  floor: number,
): HorizonPoint[] => {
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
