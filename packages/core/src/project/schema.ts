// The project file: one JSON object, versioned, joined from the sections that each folder owns.

import { z } from 'zod';
import { wishesSection } from '../arrange/fit/wishes.ts';
import { placesSection } from '../arrange/schema.ts';
import { crewSection } from '../crew/schema.ts';
import { fitoutSection } from '../fitout/schema.ts';
import { partsSection } from '../frame/schema.ts';
import { groundSection } from '../ground/schema.ts';
import { loadsSection } from '../loads/schema.ts';
import { storageSection } from '../papers/storage-section.ts';
import { pileSection } from '../pile/schema.ts';
import { gearSection } from '../raise/gear.ts';
import { raisingSection } from '../raise/schema.ts';
import { stagesSection } from '../stages/schema.ts';
import { takeoffSection } from '../takeoff/schema.ts';

/** The version of the project file that this code writes. */
export const PROJECT_VERSION = 1;

/** The whole project file. `notes` is free text; any other key at the top is a fault. */
export const projectSchema = z.strictObject({
  shellraise: z.literal(PROJECT_VERSION),
  title: z.string().max(200).default(''),
  notes: z.string().max(100_000).optional(),
  pile: pileSection,
  takeoff: takeoffSection.optional(),
  wishes: wishesSection.optional(),
  places: placesSection.optional(),
  loads: loadsSection.optional(),
  parts: partsSection.optional(),
  ground: groundSection.optional(),
  stages: stagesSection.optional(),
  gear: gearSection.optional(),
  raising: raisingSection.optional(),
  crew: crewSection.optional(),
  fitout: fitoutSection.optional(),
  storage: storageSection.optional(),
});

/** A project as read, with its defaults filled in. */
export type Project = z.infer<typeof projectSchema>;

/** The JSON Schema (draft 2020-12) of the project file as people write it: what has a default may
 * be left out. It cannot say what rows say about each other; `readProject` checks that too. */
export function projectJsonSchema(): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(projectSchema, { io: 'input' });
  return { ...schema, title: 'Shellraise project file, version 1' };
}
