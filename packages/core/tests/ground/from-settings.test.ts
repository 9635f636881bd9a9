import { expect, test } from 'vitest';
import { sharedForces } from '../../src/ground/anchors/demand.ts';
import { anchorPlan } from '../../src/ground/anchors/plan.ts';
import {
  anchorBrief,
  chosenPractices,
  surveyOptions,
  tapeOptions,
} from '../../src/ground/from-settings.ts';
import { groundLevels } from '../../src/ground/levels.ts';
import { defaultGround, groundSection } from '../../src/ground/schema.ts';
import { shims } from '../../src/ground/shims.ts';
import { surveyAnswer } from '../../src/ground/survey/verdict.ts';
import { tapePlan } from '../../src/ground/tape-plan.ts';
import { baseThere, dome } from './bases.ts';
import { moved, readAll } from './survey/standing.ts';

const shell = dome(3, 0, -0.2, 2.5);
const base = baseThere(shell);
const cases = [
  sharedForces(base, { drag: 1500, lift: 2600, weight: 2000, armHeight: 0.5 }, '20 m/s'),
];

test('a project file leads all the way: stakes, shims, anchors and verdict', () => {
  const settings = groundSection.parse({
    soil: { kind: 'clay', firm: true, wet: false },
    anchor: { type: 'bar', diameter: 0.025, depth: 0.8 },
    price: 3,
    levels: [
      {
        method: 'laser',
        readings: base.hubs.map(({ number }) => ({ at: number, reading: 1.2 + 0.003 * number })),
      },
    ],
    survey: readAll(moved(base)),
  });
  expect(tapePlan(base, tapeOptions(settings)).unreached).toEqual([]);
  const levels = groundLevels(settings.levels);
  if (!levels.ok) throw new Error('levels');
  const shimmed = shims(base, levels.value.heights, settings.shims);
  expect(shimmed.ok && shimmed.value.highest).toHaveLength(1);
  const anchors = anchorPlan(base, anchorBrief(settings, cases));
  expect(anchors.ok && anchors.value.cost).toBeGreaterThanOrEqual(3 * base.hubs.length);
  const survey = surveyAnswer(shell, base, settings.survey, surveyOptions(settings));
  expect(survey.ok && survey.value.verdict).toBe('go');
});

test('a project that says nothing is asked for an anchor, and for levels', () => {
  const anchors = anchorPlan(base, anchorBrief(defaultGround, cases));
  expect(anchors.ok ? [] : anchors.faults.map(({ path }) => path)).toEqual(['anchor']);
  expect(groundLevels(defaultGround.levels).ok).toBe(false);
});

test('the worst of all means every practice; one chosen means that one', () => {
  expect(chosenPractices(defaultGround)).toHaveLength(3);
  expect(chosenPractices({ ...defaultGround, practice: 'working' })).toHaveLength(1);
});

test('guys and a datum entered are passed on', () => {
  const settings = groundSection.parse({
    guy: { elevation: 0.6, height: 0.5 },
    tape: { datum: 7 },
  });
  expect(anchorBrief(settings, []).tie).toEqual({
    pull: { way: 'guy', elevation: 0.6 },
    height: 0.5,
  });
  expect(tapeOptions(settings).datum).toBe(7);
});
