// Words of the Places sheet.

/** Words of the Places sheet. */
export const placesWords = {} as const;
