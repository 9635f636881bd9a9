// The part of the project file that stages own: what the lead knows of props and hubs. Null means
// unknown: no wind limit is told from it. SI: newtons.

import { z } from 'zod';

// Half a meganewton is more than any prop that people carry bears: over it is a slip of unit.
const newtons = z.number().positive().max(500_000).nullable().default(null);

/** What the lead knows of props and hubs, as kept in the project file. */
export const stagesSection = z.strictObject({
  propBears: newtons.describe('What a prop with its ties bears in any direction.'),
  hubBears: newtons.describe('What may be brought into the shell at one hub.'),
});

/** What the lead knows of props and hubs, null where unknown. */
export type StagesKnown = z.output<typeof stagesSection>;

/** The stages of a project that says nothing: all unknown. */
export const unknownStages: StagesKnown = stagesSection.parse({});
