// The part of the project file that says how the shell is stacked and with what it is carried. Metres,
// kilograms.

import { z } from 'zod';
import type { Vehicle } from './trips.ts';

const metres = z.number().positive().max(60);
const kilograms = z.number().positive().max(100_000);

const vehicle = z.strictObject({
  name: z.string().min(1).max(100),
  length: metres.describe('Of the room to load, behind seats and between arches, metres.'),
  width: metres,
  height: metres.describe('Under the roof or sheet; of the door where that is lower, metres.'),
  payload: kilograms.describe('What it may carry by its papers, less people and tools, kilograms.'),
});

/** The section. */
export const storageSection = z.strictObject({
  vehicles: z.array(vehicle).max(10).default([]).describe('What the panels are carried with.'),
  stack: z
    .strictObject({
      panels: z.int().min(1).max(100).default(12),
      mass: kilograms.default(150).describe('What is moved as one, kilograms.'),
      height: metres.default(1.2).describe('With battens, metres.'),
    })
    .prefault({})
    .describe('What a stack may be at most; common practice, no source.'),
});

/** How it is stacked and carried. */
export type StorageSettings = z.infer<typeof storageSection>;

/** Of a file that says nothing of it. */
export const defaultStorage: StorageSettings = storageSection.parse({});

/** Two to reckon with where the file names none: common practice, no source. */
export const supposedVehicles: readonly Vehicle[] = [
  { name: 'a small trailer, supposed', length: 2.5, width: 1.3, height: 1.6, payload: 500 },
  { name: 'a large van, supposed', length: 4, width: 1.7, height: 1.8, payload: 1200 },
];
