// Words of the Pile sheet.

/** Words of the Pile sheet. */
export const pileWords = {} as const;
