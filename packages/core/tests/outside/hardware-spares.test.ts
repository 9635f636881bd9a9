// Spares on hardware for a dome put up by volunteers: 10 % on bolts and washers, nylon-insert nuts
// all new, whole packs. Common practice, no source; so the list must say so.

import { describe, expect, it } from 'vitest';
import { defaultTakeoff } from '../../src/takeoff/schema.ts';
import { takeOffCautions } from '../../src/takeoff/take-off.ts';

describe('spares by common practice, no source', () => {
  it('are 10 % on bolts and washers, and lock nuts are new', () => {
    expect(defaultTakeoff.spares.bolts).toBe(0.1);
    expect(defaultTakeoff.spares.washers).toBe(0.1);
    expect(defaultTakeoff.lockNutsNew).toBe(true);
  });

  it('are marked as such in every list', () => {
    expect(takeOffCautions.join(' ')).toContain('common practice, no source');
  });
});
