// Everything that the fit-out answers of one standing shell from what the project says; parts that
// nothing was said about are null.

import { mergeSources, type Provenance } from '../loads/provenance.ts';
import type { Fault, Read } from '../measure/fault.ts';
import type { Shell } from '../shell/shell.ts';
import { type FitoutBrief, floorOf, mountOf } from './brief.ts';
import type { HorizonPoint } from './horizon.ts';
import {
  type AirAnswer,
  airOf,
  type UpkeepAnswer,
  type UseAnswer,
  upkeepOf,
  useOf,
} from './keeping-answer.ts';
import { type LeakPath, leakPaths } from './leaks.ts';
import type { FitoutSettings } from './schema.ts';
import { leakSeams, type SealAnswer, sealOf } from './seal-answer.ts';
import { SEALANT_SOURCES } from './sealant.ts';
import { horizonOf, type SignalAnswer, signalAt } from './signal-answer.ts';
import { ROOM_SOURCES } from './sound-and-light.ts';
import { type Swing, swing } from './swing.ts';
import { UPKEEP_SOURCES } from './upkeep.ts';
import { AIR_SOURCES } from './vents.ts';
import { radioWall } from './wall.ts';
import { WATER_SOURCES } from './water.ts';
import { SEAL_WEATHER_SOURCES } from './weather.ts';

/** What the fit-out answers. */
export interface FitOut {
  readonly signal: readonly SignalAnswer[];
  readonly swing: Swing | null;
  readonly horizon: readonly HorizonPoint[];
  readonly seal: SealAnswer;
  readonly leaks: readonly LeakPath[];
  readonly air: AirAnswer;
  readonly upkeep: UpkeepAnswer;
  readonly use: UseAnswer;
  readonly sources: readonly Provenance[];
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
        expected: `less than the shell’s ${across.toFixed(3)} m across`,
      },
    ];
  const pivot = Math.hypot(...mount.aside, floorOf(shell) + mount.height);
  if (pivot >= shell.radius)
    return [
      {
        path: 'fitout.mount',
        found: `a pivot ${pivot.toFixed(3)} m from the sphere’s centre`,
        expected: `one within ${shell.radius.toFixed(3)} m`,
      },
    ];
  return [];
}
