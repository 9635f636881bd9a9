// A wall of named or measured layers, and what it costs at every angle of incidence: a table from
// grazing to square on, for a map that asks a million times.

import { mergeSources, type Provenance } from '../loads/provenance.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { RADIO_MATERIAL_NAMES, RADIO_MATERIALS, type RadioMaterial } from './materials.ts';
import { FREQUENCIES, type Layer, lossDb, MOST_THICKNESS, throughLayers } from './wave.ts';

/** A layer as said: a material by name, or its own numbers. */
export interface LayerSaid {
  readonly material: string;
  /** Metres. */
  readonly thickness: number;
  readonly permittivity?: number | undefined;
  readonly lossTangent?: number | undefined;
}

/** Layers, the outermost first, and where their numbers come from. */
export interface RadioWall {
  readonly layers: readonly Layer[];
  readonly sources: readonly Provenance[];
}

/** A wall from its layers as said, the outermost first. A name that is not in the table needs its own
 * permittivity and loss tangent; faults name the layer. */
export function radioWall(said: readonly LayerSaid[]): Read<RadioWall> {
  const layers: Layer[] = [];
  const sources: Provenance[] = [];
  for (const [i, one] of said.entries()) {
    const path = `wall layer ${i + 1}`;
    if (!(one.thickness >= 0 && one.thickness <= MOST_THICKNESS))
      return refuse(`${path}, thickness`, `${one.thickness} m`, `0 to ${MOST_THICKNESS} m`);
    const known = (RADIO_MATERIALS as Readonly<Record<string, RadioMaterial>>)[one.material];
    const permittivity = one.permittivity ?? known?.permittivity;
    const lossTangent = one.lossTangent ?? known?.lossTangent;
    if (permittivity === undefined || lossTangent === undefined)
      return refuse(
        `${path}, material`,
        JSON.stringify(one.material),
        `${RADIO_MATERIAL_NAMES.join(', ')}; or another with its own permittivity and loss tangent`,
      );
    if (!(permittivity >= 1 && permittivity <= 200))
      return refuse(`${path}, permittivity`, `${permittivity}`, '1 to 200');
    if (!(lossTangent >= 0 && lossTangent <= 10))
      return refuse(`${path}, loss tangent`, `${lossTangent}`, '0 to 10');
    layers.push({ thickness: one.thickness, permittivity, lossTangent });
    const own = one.permittivity !== undefined && one.lossTangent !== undefined;
    sources.push(
      own || known === undefined
        ? { text: `${one.material}, as entered`, confirmation: 'entered' }
        : known.source,
    );
  }
  return { ok: true, value: { layers, sources: mergeSources(sources) } };
}

/** A wall with `coats` of a paint of dry `thickness` (metres) outside. */
export const painted = ({ layers, sources }: RadioWall, thickness: number): RadioWall => ({
  layers: [
    {
      thickness,
      permittivity: RADIO_MATERIALS.paint.permittivity,
      lossTangent: RADIO_MATERIALS.paint.lossTangent,
    },
    ...layers,
  ],
  sources: mergeSources(sources, [RADIO_MATERIALS.paint.source]),
});

/** A wall's cost against the cosine of incidence, in even steps from 0 to 1. */
export interface WallTable {
  /** Step → field let through, real and imaginary, TE then TM: four numbers each. */
  readonly field: Float64Array;
  /** Step → share absorbed, TE then TM. */
  readonly absorbed: Float64Array;
  readonly steps: number;
  readonly sources: readonly Provenance[];
}

/** Steps of a table: between two of them the field bends by less than 1e-5 for walls of a few waves. */
const STEPS = 2000;

/** The table of a wall at a frequency, Hz. A loss that was measured square on, `measuredDb`, takes the
 * place of the reckoned one: fields at every angle are scaled by the same factor, and what the wall
 * absorbs is kept in the same proportion to what it lets not through. */
export function wallTable(wall: RadioWall, frequency: number, measuredDb?: number): WallTable {
  const field = new Float64Array(4 * (STEPS + 1));
  const absorbed = new Float64Array(2 * (STEPS + 1));
  for (let i = 0; i <= STEPS; i++)
    (['TE', 'TM'] as const).forEach((polarisation, k) => {
      const shares = throughLayers(wall.layers, frequency, i / STEPS, polarisation);
      field.set(shares.field, 4 * i + 2 * k);
      absorbed[2 * i + k] = shares.absorbed;
    });
  const table = { field, absorbed, steps: STEPS, sources: wall.sources };
  return measuredDb === undefined ? table : asMeasured(table, measuredDb);
}

function asMeasured(table: WallTable, measuredDb: number): WallTable {
  if (!(measuredDb >= 0 && measuredDb <= 40))
    throw new RangeError(`measured loss is ${measuredDb} dB, expected 0 to 40 dB`);
  const { field, absorbed, steps } = table;
  const reckoned = power(field, 4 * steps);
  const kept = 10 ** (-measuredDb / 10);
  const scale = Math.sqrt(kept / reckoned);
  const scaled = field.map((x) => x * scale);
  // A wall that was measured better than reckoned must not let through more than there is.
  for (let at = 0; at < scaled.length; at += 2) {
    const over = Math.max(1, Math.sqrt(power(scaled, at)));
    scaled[at] /= over;
    scaled[at + 1] /= over;
  }
  const lost = new Float64Array(absorbed.length);
  for (let j = 0; j < lost.length; j++) {
    const before = 1 - power(field, 2 * j);
    const share = before > 1e-12 ? absorbed[j] / before : 1;
    lost[j] = Math.min(1, Math.max(0, share * (1 - Math.min(1, power(scaled, 2 * j)))));
  }
  const entered: Provenance = {
    text: `loss of ${measuredDb} dB square on, as measured`,
    confirmation: 'entered',
  };
  return { ...table, field: scaled, absorbed: lost, sources: [entered, ...table.sources] };
}

const power = (field: Float64Array, at: number): number => field[at] ** 2 + field[at + 1] ** 2;

/** Loss of a wall at one angle of incidence, decibels. */
export interface AngleLoss {
  /** Radians from square on. */
  readonly incidence: number;
  readonly te: number;
  readonly tm: number;
}

/** Loss at angles of incidence, radians; RangeError for one not below a right angle. */
export const angleLosses = (
  { layers }: RadioWall,
  frequency: number,
  angles: readonly number[],
): AngleLoss[] =>
  angles.map((incidence) => {
    if (!(incidence >= 0 && incidence < Math.PI / 2))
      throw new RangeError(`incidence is ${incidence} rad, expected 0 to under π/2`);
    const loss = (polarisation: 'TE' | 'TM'): number =>
      lossDb(throughLayers(layers, frequency, Math.cos(incidence), polarisation).transmitted);
    return { incidence, te: loss('TE'), tm: loss('TM') };
  });

/** Whether a frequency is one that is reckoned with, Hz. */
export const isFrequency = (frequency: number): boolean =>
  frequency >= FREQUENCIES.least && frequency <= FREQUENCIES.most;
