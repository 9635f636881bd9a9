// What a shell forgives: differences smaller than these are taken up when it is bolted together, so
// that to know more of them would change nothing. Metres.

/** What the bolts of a seam give, metres: a bolt in a hole a millimetre wider (common practice, no
 * source). */
export const SEAM_PLAY = 1e-3;

/** A radius known to this share of it, and its base circle with it, is drilled and slotted to fit:
 * 3 mm on 3 m (common practice, no source). */
export const RADIUS_SHARE = 1e-3;

/** A hub allowance known to this, metres, is known well enough. */
export const ALLOWANCE_PLAY = 0.002;
