import { expect, test } from 'vitest';
import { arcToChord, axialAngle, chordToArc } from '../../src/sphere/chord.ts';

test('a chord as long as the radius spans 60°', () => {
  expect(chordToArc(2.7, 2.7)).toBeCloseTo(Math.PI / 3, 14);
});

test('chord and arc are inverse to each other from a short side to the diameter', () => {
  for (const chord of [1e-9, 0.1, 1, 1.9, 2])
    expect(arcToChord(chordToArc(chord, 1), 1) / chord).toBeCloseTo(1, 12);
});

test('the axial angle is 90° less half the central angle', () => {
  expect(axialAngle(1, 1)).toBeCloseTo(Math.PI / 3, 14);
  expect(axialAngle(2, 1)).toBeCloseTo(0, 14);
});
