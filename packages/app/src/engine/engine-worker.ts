// The engine in a thread of its own. Loaded when it is first asked, so that the page is there first.

import {
  arrangements,
  countedHoles,
  decisionFor,
  type Fault,
  findDecided,
  flatPlan,
  identify,
  kindsOfPile,
  leftOutOf,
  looksLikeProject,
  marksInNet,
  numbersOf,
  openingsIn,
  type Project,
  projectFrom,
  type Read,
  readPileCsv,
  readProject,
  shapeQuestion,
  shapesHolding,
  standingShell,
  stockAfter,
  stockOfShape,
  writePileCsv,
  writeProject,
} from '@shellraise/core';
import { expose } from 'comlink';
import type { Engine, FileRead, StandAnswer, StandingQuestion } from './api.ts';
import { bestFits } from './best-fits.ts';
import { waysOut } from './broken.ts';
import { candidatePictures, planPicture, printedPlans, quantitiesOf } from './drawings.ts';
import { fitoutCarry, fitoutDoor, fitoutSignal, fitoutTold, stlShape } from './fitout.ts';
import { groundAnswer } from './ground.ts';
import { leftovers } from './leftovers.ts';
import { measureNext } from './measure-next.ts';
import { doors, openingsLeave } from './openings.ts';
import { paperList, paperPages, paperSets, papersPdf, papersSvg } from './papers.ts';
import { patternsTold } from './patterns.ts';
import { mayWait, ways, yardAndKit } from './raised.ts';
import { raisingCheck, raisingPlan, raisingStage } from './raising.ts';
import { relate } from './relate.ts';
import { taggedPlaces } from './singles.ts';
import { stabilityDetail } from './stability.ts';
import { stageDetail, stagesAnswer } from './stages.ts';
import { now, storm, weekend } from './weekend.ts';

const engine: Engine = {
  readFile: (name, text, unit) => {
    if (looksLikeProject(name, text)) return projectRead(readProject(text));
    const pile = readPileCsv(text, unit === undefined ? {} : { unit });
    if (!pile.ok) return refused(pile.faults);
    const title = name.replace(/\.[^.]+$/, '');
    return { ok: true, from: 'spreadsheet', project: { shellraise: 1, title, pile: pile.value } };
  },
  checkProject: (raw) => projectRead(projectFrom(raw)),
  writeProject,
  writePileCsv,
  work: (pile) => {
    const worked = kindsOfPile(pile);
    const question = shapeQuestion(pile, worked);
    const holes = countedHoles(pile, { ...worked, kinds: question.kinds });
    return { worked, question, holes, next: measureNext(pile, worked) };
  },
  identify: (question, onProgress) => identify(question, onProgress ? { onProgress } : {}),
  arrange: (shape, kinds, repaired) => {
    const { shell, interchangeable } = shape;
    const list = arrangements(shell, stockOfShape(shape, kinds), { interchangeable, repaired });
    const decisions = list.arrangements.map((one) => decisionFor(list, one, repaired));
    return { list, decisions };
  },
  stand: (question) => standAnswer(question),
  relate: (question) =>
    relate(question, (decision) => {
      const answer = standAnswer({ ...question, decision });
      if (!answer.found) return null;
      const { numbers, sameIn } = answer.shell;
      return { panels: numbers.length, sameIn };
    }),
  marks: ({ shape, kinds, pile, worked }) => marksInNet(shape, kinds, pile, worked),
  fit: bestFits,
  waysOut,
  doors,
  openingsLeave,
  leftovers,
  singles: taggedPlaces,
  planPicture,
  candidatePictures,
  printedPlans,
  quantities: quantitiesOf,
  ground: groundAnswer,
  stages: stagesAnswer,
  stage: stageDetail,
  stability: stabilityDetail,
  raisingPlan,
  raisingStage,
  raisingCheck,
  yardAndKit,
  ways,
  mayWait,
  weekend,
  now,
  storm,
  fitout: fitoutTold,
  fitoutSignal,
  fitoutDoor,
  fitoutCarry,
  patterns: patternsTold,
  stlShape,
  paperList,
  paperSets,
  paperPages,
  papersPdf,
  papersSvg,
};

function projectRead(read: Read<Project>): FileRead {
  return read.ok ? { ok: true, from: 'project', project: read.value } : refused(read.faults);
}

const refused = (faults: readonly Fault[]): FileRead => ({
  ok: false,
  faults,
  newer: faults.some(({ path, expected }) => path === 'shellraise' && expected.includes('newer')),
  unitless: faults.some(({ found }) => found.includes('without a unit')),
});

function standAnswer(question: StandingQuestion): StandAnswer {
  const { shapes, prefer } = question;
  const order = [prefer, ...shapes.keys()].filter((i, n, all) => all.indexOf(i) === n);
  const tried = order.map((i) => standIn(question, i));
  return tried.find((answer) => answer.found) ?? (tried[0] as StandAnswer);
}

function standIn({ shapes, kinds: asked, decision }: StandingQuestion, index: number): StandAnswer {
  const shape = shapes[index];
  if (shape === undefined) return { found: false, reason: `there is no shape ${index + 1}` };
  if (!shape.closed) return { found: false, reason: 'this shape has an open rim' };
  const kinds = stockOfShape(shape, asked);
  const options = { interchangeable: shape.interchangeable };
  const decided = findDecided(shape.shell, kinds, decision, options);
  if (!decided.found) return decided;
  const { cut } = decided.arrangement;
  const standing = standingShell(shape.shell, decided.way, cut, decision.datumTurn);
  const { frozen } = decision;
  const plain =
    decision.datumTurn === 0
      ? standing.courses.numbers
      : standingShell(shape.shell, decided.way, cut).courses.numbers;
  const openings = openingsIn(plain, decision);
  const named = numbersOf(shape.shell, kinds, decided.way, standing, frozen, options);
  return {
    found: true,
    shell: {
      shape: index,
      sameIn: shapesHolding(standing.shell, shapes, index, kinds),
      standing,
      numbers: named.numbers,
      frozenFault: named.status === 'lost' ? named.reason : null,
      painted: named.painted,
      idle: named.idle,
      decision,
      plain,
      openings,
      leftOut: leftOutOf(openings),
      stock: stockAfter(standing.shell, kinds, shape.interchangeable, plain, decision),
      height: cut.height,
      floorMean: cut.floor.mean,
      flat: cut.flat,
      baseUnevenness: cut.baseZ.max - cut.baseZ.min,
      plan: flatPlan(standing.shell),
      planFromBelow: flatPlan(standing.shell, { fromBelow: true }),
    },
  };
}

expose(engine);
