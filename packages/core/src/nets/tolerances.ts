// Every tolerance of the nets, by meaning, with its unit and reason.

/** Sides that differ by less than this share of the radius are one length: far above rounding, and
 * a tenth of the closest true pair among named nets of up to 400 places a face (1.2e-8). */
export const SAME_SIDE = 1e-9;

/** Two hubs of one orbit meet within this, on the unit sphere: above rounding, far below a side. */
export const SAME_HUB = 1e-6;
