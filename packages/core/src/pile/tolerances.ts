// Every threshold of the pile, by meaning, with its unit and reason.

/** Range of a panel's side, metres: outside it a slip of unit is far likelier than a panel. */
export const SIDE_LENGTHS = { min: 0.05, max: 12 } as const;
