// Mass, force, pressure, speed, angle and temperature: read from text to SI, written back.
// Sizes: pound 0.453 592 37 kg and inch 25.4 mm exactly (1959 agreement), standard gravity
// 9.806 65 m/s² (3rd CGPM, 1901), international knot 1852 m/h; all from memory.

import { type Read, refuse } from './fault.ts';
import { type ReadOptions, readQuantity, type Unit, type Units } from './quantity.ts';

/** Units of mass. */
export type MassUnit = 'kg' | 'g' | 't' | 'lb' | 'oz';
/** Units of force. `lb` and `kg` are masses; a force is written lbf or kgf. */
export type ForceUnit = 'N' | 'daN' | 'kN' | 'lbf' | 'kgf';
/** Units of pressure and of load on an area. */
export type PressureUnit = 'Pa' | 'kPa' | 'psf';
/** Units of speed. */
export type SpeedUnit = 'm/s' | 'km/h' | 'mph' | 'kn';
/** Units of angle. */
export type AngleUnit = 'deg' | 'rad';
/** Units of temperature. */
export type TemperatureUnit = 'C' | 'F';

const MASSES: Units<MassUnit> = {
  kg: { names: ['kg', 'kilo', 'kilos', 'kilogram', 'kilograms'], size: [1, 1] },
  g: { names: ['g', 'gram', 'grams'], size: [1, 1000] },
  t: { names: ['t', 'tonne', 'tonnes'], size: [1000, 1] },
  lb: {
    names: ['lb', 'lbs', 'pound', 'pounds'],
    size: [45359237, 100000000],
    next: ['oz', 16],
  },
  oz: { names: ['oz', 'ounce', 'ounces'], size: [45359237, 1600000000] },
};

/** The unit of mass that a word stands for (`kg`, `lbs` …), or null. */
export function massUnit(word: string): MassUnit | null {
  const plain = word.trim().toLowerCase().replace(/\.$/, '');
  const keys = Object.keys(MASSES) as MassUnit[];
  return keys.find((key) => MASSES[key].names.includes(plain)) ?? null;
}

const FORCES: Units<ForceUnit> = {
  N: { names: ['N', 'n', 'newton', 'newtons'], size: [1, 1] },
  daN: { names: ['daN', 'dan'], size: [10, 1] },
  kN: { names: ['kN', 'kn'], size: [1000, 1] },
  lbf: { names: ['lbf'], size: [8896443230521, 2000000000000] },
  kgf: { names: ['kgf', 'kp'], size: [196133, 20000] },
};

const PRESSURES: Units<PressureUnit> = {
  Pa: { names: ['Pa', 'pa', 'n/m²'], size: [1, 1] },
  kPa: { names: ['kPa', 'kpa', 'kn/m²'], size: [1000, 1] },
  // lbf / ft² = 4.4482216152605 / 0.09290304
  psf: { names: ['psf', 'lbf/ft²', 'lb/ft²'], size: [44482216152605, 929030400000] },
};

const SPEEDS: Units<SpeedUnit> = {
  'm/s': { names: ['m/s', 'mps'], size: [1, 1] },
  'km/h': { names: ['km/h', 'kmh', 'kph'], size: [5, 18] },
  mph: { names: ['mph', 'mi/h'], size: [1397, 3125] },
  kn: { names: ['kn', 'kt', 'kts', 'knot', 'knots'], size: [463, 900] },
};

const ANGLES = {
  deg: { names: ['°', 'deg', 'º', 'degree', 'degrees'], size: [1, 1], next: ['min', 60] },
  min: { names: ["'", '′', '’', 'min'], size: [1, 60], next: ['s', 60] },
  s: { names: ['"', '″', '”', "''", 's'], size: [1, 3600] },
} as const satisfies Units<string>;

const RADIANS: Unit = { names: ['rad', 'radian', 'radians'], size: [1, 1] };

const CELSIUS: Unit = { names: ['°C', '°c', 'c', 'degc', '℃'], size: [1, 1] };
const FAHRENHEIT: Unit = { names: ['°F', '°f', 'f', 'degf', '℉'], size: [1, 1] };

/** Kilograms from `9.6 kg`, `21 lb 3 oz`, `340 g`. Faults as in `readLength`. */
export const readMass = (text: string, options: ReadOptions<MassUnit> = {}): Read<number> =>
  readQuantity(text, MASSES, options);

/** Newtons from `2.5 kN`, `1500 daN`, `560 lbf`. Faults as in `readLength`; kg and lb are refused. */
export const readForce = (text: string, options: ReadOptions<ForceUnit> = {}): Read<number> =>
  readQuantity(text, FORCES, options);

/** Pascals from `0.6 kPa`, `0,6 kN/m2`, `20 psf`. Faults as in `readLength`. */
export const readPressure = (text: string, options: ReadOptions<PressureUnit> = {}): Read<number> =>
  readQuantity(text.replace(/(m|ft)(?:\^?2|\*\*2)\s*$/i, '$1²'), PRESSURES, options);

/** Metres per second from `12 m/s`, `25 mph`, `40 km/h`, `20 kn`. Faults as in `readLength`. */
export const readSpeed = (text: string, options: ReadOptions<SpeedUnit> = {}): Read<number> =>
  readQuantity(text, SPEEDS, options);

/** Radians from `36.5°`, `36° 30'`, `0.637 rad`. Faults as in `readLength`. */
export function readAngle(text: string, options: ReadOptions<AngleUnit> = {}): Read<number> {
  const decimal = options.decimal === undefined ? {} : { decimal: options.decimal };
  const bare = /^[-−–+]?[\d.,\s]+$/.test(text);
  if (bare && options.unit === undefined)
    return readQuantity(text, { deg: ANGLES.deg, rad: RADIANS }, decimal);
  if (/rad/i.test(text) || (bare && options.unit === 'rad'))
    return readQuantity(text, { rad: RADIANS }, { ...decimal, unit: 'rad' });
  const degrees = readQuantity(text, ANGLES, { ...decimal, unit: 'deg' });
  return degrees.ok ? { ok: true, value: (degrees.value * Math.PI) / 180 } : degrees;
}

/** Degrees Celsius from `4 °C`, `-3C`, `41 °F`. Faults as in `readLength`. */
export function readTemperatureC(
  text: string,
  options: ReadOptions<TemperatureUnit> = {},
): Read<number> {
  const joined = text.replace(/([°º])\s+(?=[cf])/gi, '$1').replace('º', '°');
  const scales: Units<TemperatureUnit> = { C: CELSIUS, F: FAHRENHEIT };
  if (/^\s*[-−–+]?[0.,\s]+$/.test(joined) && options.unit === undefined)
    return refuse('', JSON.stringify(text), '°C or °F');
  const read = readQuantity(joined, scales, options);
  if (!read.ok) return read;
  const bare = /[\d.,]\s*$/.test(joined);
  const fahrenheit = bare ? options.unit === 'F' : /f\.?\s*$|℉\s*$/i.test(joined);
  return { ok: true, value: fahrenheit ? ((read.value - 32) * 5) / 9 : read.value };
}

/** Kilograms as text in the unit asked for, `decimals` places (1 if not given). */
export const writeMass = (kilograms: number, unit: MassUnit, decimals = 1): string =>
  writeIn(kilograms, MASSES[unit], decimals);

/** Newtons as text in the unit asked for, `decimals` places (1 if not given). */
export const writeForce = (newtons: number, unit: ForceUnit, decimals = 1): string =>
  writeIn(newtons, FORCES[unit], decimals);

/** Pascals as text in the unit asked for, `decimals` places (2 if not given). */
export const writePressure = (pascals: number, unit: PressureUnit, decimals = 2): string =>
  writeIn(pascals, PRESSURES[unit], decimals);

/** Metres per second as text in the unit asked for, `decimals` places (1 if not given). */
export const writeSpeed = (metresPerSecond: number, unit: SpeedUnit, decimals = 1): string =>
  writeIn(metresPerSecond, SPEEDS[unit], decimals);

/** Radians as text: `36.5°` or `0.637 rad`, `decimals` places (1 if not given). */
export const writeAngle = (radians: number, unit: AngleUnit, decimals = 1): string =>
  unit === 'rad'
    ? writeIn(radians, RADIANS, decimals)
    : `${fixed((radians * 180) / Math.PI, decimals)}°`;

/** Degrees Celsius as text in °C or °F, `decimals` places (0 if not given). */
export const writeTemperatureC = (celsius: number, unit: TemperatureUnit, decimals = 0): string =>
  unit === 'C' ? `${fixed(celsius, decimals)} °C` : `${fixed((celsius * 9) / 5 + 32, decimals)} °F`;

const writeIn = (value: number, unit: Unit, decimals: number): string =>
  `${fixed((value * unit.size[1]) / unit.size[0], decimals)} ${unit.names[0]}`;

/** Fixed decimals without a negative zero. Throws on NaN and infinity. */
function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`a quantity to write must be finite, not ${value}`);
  const text = value.toFixed(decimals);
  return /[1-9]/.test(text) ? text : text.replace('-', '');
}
