// Words of the Shape sheet.

/** Words of the Shape sheet. */
export const shapeWords = {} as const;
