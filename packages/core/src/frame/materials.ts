// Stiffness and density of what skins are made of. Handbook values from memory, rounded; fibreglass
// and plywood differ by half from maker to maker. Strength is not given: it must be entered.

/** Stiffness and density of a material. */
export interface Material {
  /** Young's modulus, pascals. */
  readonly young: number;
  readonly poisson: number;
  /** Kilograms per cubic metre. */
  readonly density: number;
}

/** Materials by name; all values from memory. */
export const MATERIALS = {
  aluminium: { young: 7e10, poisson: 0.33, density: 2700 },
  steel: { young: 2e11, poisson: 0.3, density: 7850 },
  fibreglass: { young: 8e9, poisson: 0.3, density: 1600 },
  plywood: { young: 7e9, poisson: 0.2, density: 600 },
  polycarbonate: { young: 2.3e9, poisson: 0.37, density: 1200 },
} as const satisfies Record<string, Material>;

/** Name of a material. */
export type MaterialName = keyof typeof MATERIALS;

/** The source that goes with every value of the table. */
export const MATERIAL_SOURCE = 'handbook value of the material';
