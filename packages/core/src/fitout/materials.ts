// What walls are made of, as a radio wave meets it: relative permittivity and loss tangent, each with
// where the number comes from. Real laminates differ from piece to piece: a measured loss is better than
// any of these.

import { confirmed, fromMemory, type Provenance } from '../loads/provenance.ts';

/** A material as a wave meets it. */
export interface RadioMaterial {
  /** Relative permittivity, 1 for air. */
  readonly permittivity: number;
  /** Loss tangent, 0 for none. */
  readonly lossTangent: number;
  /** Lowest and highest of what laminates of the name are found to have; null: one value only. */
  readonly range: {
    readonly permittivity: readonly [number, number];
    readonly lossTangent: readonly [number, number];
  } | null;
  /** Frequency that the values were taken at, Hz; null: not told. */
  readonly at: number | null;
  readonly source: Provenance;
}

const cavity = 'Riddle, Baker-Jarvis and Krupka, IEEE T-MTT 51(3) 2003, 727, as quoted';

const plastic = (permittivity: number, lossTangent: number, at: number): RadioMaterial => ({
  permittivity,
  lossTangent,
  range: null,
  at,
  source: confirmed(cavity),
});

const remembered = (
  permittivity: readonly [number, number],
  lossTangent: readonly [number, number],
  what: string,
): RadioMaterial => ({
  permittivity: (permittivity[0] + permittivity[1]) / 2,
  lossTangent: (lossTangent[0] + lossTangent[1]) / 2,
  range: { permittivity, lossTangent },
  at: null,
  source: fromMemory(what),
});

/** Materials by name. */
export const RADIO_MATERIALS = {
  'glass polyester': remembered([4.1, 4.5], [0.012, 0.02], 'E-glass and polyester laminate'),
  'foam core': remembered([1.04, 1.15], [0.001, 0.005], 'polyurethane or PVC foam core'),
  paint: remembered([2.5, 4], [0.01, 0.03], 'dry paint film'),
  polyester: {
    ...plastic(4, 0.005, 2.45e9),
    source: confirmed('Rohde & Schwarz RAC0607-0019, as quoted: polyester thermoset'),
  },
  polyethylene: plastic(2.37, 0.0002, 11.3e9),
  polypropylene: plastic(2.27, 0.0001, 9.4e9),
  polycarbonate: {
    ...plastic(2.76, 0.0005, 11e9),
    source: fromMemory(
      'polycarbonate: the copy read prints a loss tangent of 0.0005, likely a slip for 0.005',
    ),
  },
  acrylic: plastic(2.61, 0.01, 11e9),
  abs: plastic(2.7, 0.008, 11e9),
  pvc: plastic(2.71, 0.006, 11e9),
  ptfe: plastic(2.05, 0.0002, 10e9),
  air: {
    permittivity: 1,
    lossTangent: 0,
    range: null,
    at: null,
    source: confirmed('air, taken as empty space'),
  },
} as const satisfies Readonly<Record<string, RadioMaterial>>;

/** The name of a material of the table. */
export type RadioMaterialName = keyof typeof RADIO_MATERIALS;

/** The names, in the order of the table. */
export const RADIO_MATERIAL_NAMES = Object.keys(RADIO_MATERIALS) as RadioMaterialName[];
