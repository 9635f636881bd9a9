// What a bolt bears: proof stress by grade, stress area by thread.

import { commonPractice, type Provenance } from '../loads/provenance.ts';
import type { Thread } from '../takeoff/threads.ts';

/** Grade → proof stress, pascals, for the sizes that seams have (up to 16 mm or 5/8 in). SAE J429 as
 * quoted in public engineering files (85 ksi and so on); ISO 898-1:2013, tables 3 to 7; ISO 3506-1
 * has no proof stress, its 0.2 % stress stands here. */
export const BOLT_GRADES: Readonly<Record<string, number>> = {
  'SAE J429 Gr 2': 379.2e6,
  'SAE J429 Gr 5': 586.1e6,
  'SAE J429 Gr 8': 827.4e6,
  '4.6': 225e6,
  '4.8': 310e6,
  '5.8': 380e6,
  '8.8': 580e6,
  '9.8': 650e6,
  '10.9': 830e6,
  '12.9': 970e6,
  'A2-70': 450e6,
  'A4-70': 450e6,
  'A2-80': 600e6,
  'A4-80': 600e6,
};

/** Part of the proof load that a bolt bears in shear through its thread: 0.6, common practice. */
export const SHEAR_PART = 0.6;

/** What goes with every force and use of a seam's bolts. */
export const SEAM_BOLTS: Provenance = commonPractice(
  'bolts of a seam share evenly and are prised open about half the depth of the flange; shear to 0.6 of the proof load, with pull by an ellipse',
);

/** Stress area of a thread, square metres: π/4 (d − 0.9743 p)² for inch threads (ASME B1.1), with
 * 0.9382 p for metric ones (ISO 898-1). */
export function stressArea({ system, diameter, pitch }: Thread): number {
  const root = diameter - (system === 'inch' ? 0.9743 : 0.9382) * pitch;
  return (Math.PI / 4) * root * root;
}

/** Proof load of a bolt, newtons; null where its grade is none of the table. */
export function proofLoad(thread: Thread, grade: string): number | null {
  const stress = BOLT_GRADES[grade];
  return stress === undefined ? null : stress * stressArea(thread);
}
