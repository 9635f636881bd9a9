// Picket holdfasts: pickets driven leaning away from a guy, alone or lashed head to foot one behind
// the other. They hold a guy's pull, never a straight lift.

import { commonPractice, confirmed, fromMemory } from '../../loads/provenance.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { INCH } from '../../measure/length.ts';
import { type Capacity, KILOGRAM_FORCE, POUND_FORCE, type Pull, STEEPEST_GUY } from './capacity.ts';
import { type Soil, soilWords } from './soil.ts';

/** Pickets in each row of a combination, from the guy outwards. */
export const picketRows = {
  '1': [1],
  '1-1': [1, 1],
  '1-1-1': [1, 1, 1],
  '2-1': [2, 1],
  '3-2-1': [3, 2, 1],
} as const;

/** A combination of wood pickets. */
export type Combination = keyof typeof picketRows;

const seabee = confirmed(
  'NAVEDTRA 14251, Steelworker, vol. 2: picket holdfasts in undisturbed loam',
);
const fieldManual = fromMemory('FM 5-125, Rigging techniques, ch. 4: picket holdfasts');
/** Where the steel pickets' values and their metre apart are from. */
export const STEEL_PICKETS = confirmed(
  'Australian Emergency Manual, Disaster Rescue, 8.3: steel pickets',
);

/** Pounds by combination: the Steelworker manual's, the rest after FM 5-125 from memory. */
const pounds: Readonly<Record<Combination, readonly [number, typeof seabee]>> = {
  '1': [700, seabee],
  '1-1': [1400, fieldManual],
  '1-1-1': [1800, seabee],
  '2-1': [2000, fieldManual],
  '3-2-1': [4000, seabee],
};

/** Distance between the pickets of a combination along the guy's line, metres: 3 to 6 ft
 * (NAVEDTRA 14251), of which the middle. */
export const PICKET_STEP = 54 * INCH;

/** What a combination of wood pickets holds: at least 3 in thick and 5 ft long, driven 3 to 4 ft,
 * leaning 15° from the pull. Refused for a straight lift, a guy steeper than 45°, and ground that is
 * soft, paved or hardpan. The sources call it what the holdfast withstands, so it counts as
 * ultimate. */
export function woodPickets(combination: Combination, soil: Soil, pull: Pull): Read<Capacity> {
  const refused = refuseHoldfast('wood pickets', soil, pull);
  if (refused) return refused;
  const [lb, source] = pounds[combination];
  const { factor, sources } = wetFactor(soil);
  return {
    ok: true,
    value: {
      pull: lb * POUND_FORCE * factor,
      basis: 'ultimate',
      sources: [source, ...sources],
      notes: [
        'Wood pickets at least 75 mm thick and 1.5 m long, 0.9 to 1.2 m in the ground, leaning 15° away from the guy.',
        ...(factor < 1 ? [`Taken ${factor} times for ${soilWords(soil)}.`] : []),
      ],
    },
  };
}

/** Wet-earth factors; sand counts as wet whatever it is. */
function wetFactor({ kind, wet }: Soil) {
  if (kind === 'loam' && !wet) return { factor: 1, sources: [] };
  if (kind === 'sand' || (wet && kind !== 'gravel')) return { factor: 0.5, sources: [fieldManual] };
  return { factor: 0.9, sources: [fieldManual] };
}

const MOST_STEEL = 2000;

/** What `count` steel pickets 1.5 m long and 25 mm thick hold together: safe load 350 kg each, up to
 * about 2 t, two thirds in good ground, leaning 45°, at least 1 m apart. Refused as wood pickets
 * are, and for a count that is no whole number from 1. */
export function steelPickets(count: number, soil: Soil, pull: Pull): Read<Capacity> {
  if (!(Number.isInteger(count) && count >= 1 && count <= 12))
    return refuse('anchor.count', String(count), 'a whole number of pickets from 1 to 12');
  const refused = refuseHoldfast('steel pickets', soil, pull);
  if (refused) return refused;
  const kilograms = Math.min(350 * count, MOST_STEEL);
  return {
    ok: true,
    value: {
      pull: kilograms * KILOGRAM_FORCE * (soil.wet ? 0.5 : 1),
      basis: 'safe',
      sources: [
        STEEL_PICKETS,
        ...(soil.wet ? [commonPractice('driven anchors in saturated ground counted half')] : []),
      ],
      notes: [
        'Steel pickets 1.5 m long and 25 mm thick, two thirds in the ground, leaning about 45°, at least 1 m apart.',
      ],
    },
  };
}

function refuseHoldfast(what: string, soil: Soil, pull: Pull): Read<never> | null {
  if (pull.way === 'up')
    return refuse('anchor.pull', `${what} pulled straight up`, 'a guy: they hold no straight lift');
  if (!(pull.elevation > 0 && pull.elevation <= STEEPEST_GUY + 1e-9))
    return refuse(
      'anchor.elevation',
      `a guy at ${((pull.elevation * 180) / Math.PI).toFixed(0)}°`,
      `over 0° and at most 45° from the ground for ${what}`,
    );
  if (!soil.firm || soil.kind === 'paved' || soil.kind === 'hardpan')
    return refuse(
      'anchor',
      `${what} in ${soilWords(soil)}`,
      'firm clay, loam, sand or gravel: no published value, so enter a pull test',
    );
  return null;
}
