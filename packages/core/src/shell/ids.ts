// Index kinds, branded so that the index of a hub can't stand where that of a place is meant.
// A literal or a computed number is branded where it is made, with `as HubId`.

declare const brand: unique symbol;

/** Index of a hub: hub h stands at `hubs[3h] … hubs[3h + 2]`. */
export type HubId = number & { readonly [brand]: 'hub' };

/** Index of a place. */
export type PlaceId = number & { readonly [brand]: 'place' };

/** Index of a side of a place: place p owns sides `placeStart[p] … placeStart[p + 1] − 1`. */
export type SideId = number & { readonly [brand]: 'side' };

/** Index of a seam: its two sides are `seams[2m]` and `seams[2m + 1]`. */
export type SeamId = number & { readonly [brand]: 'seam' };
