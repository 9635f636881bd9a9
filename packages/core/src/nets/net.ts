// A net on the unit sphere: hubs and the places between them, before radius and kinds are known.

/** Hubs on the unit sphere and closed rounds of them. */
export interface Net {
  /** Unit vectors, stride 3; z up. */
  readonly hubs: Float64Array;
  /** Hub indices of each place, anticlockwise seen from outside. */
  readonly places: readonly (readonly number[])[];
}
