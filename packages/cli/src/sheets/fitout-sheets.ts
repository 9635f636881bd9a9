// The sheets of the fit-out: door, what passes, the dish in section, the sky, seal, upkeep, air, the floor.

import {
  airSheets,
  doorSheets,
  type FitOut,
  type FitoutSettings,
  fitOut,
  floorOf,
  mountOf,
  roomSheets,
  sealSheets,
  signalSheets,
  swingSheets,
  upkeepSheets,
  waySheets,
} from '@shellraise/core';
import { carryOf, doorOf, fitoutBrief, fitoutSettings, openOf } from '../fitout-job.ts';
import { orEnd } from '../ground-site.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** Degrees between pointings of the printed maps. */
const STEP = 2.5;

interface Answered {
  readonly settings: FitoutSettings;
  readonly open: readonly number[];
  readonly floor: number;
  readonly answer: FitOut;
}

/** The answers, without the sky unless it is wanted: that takes longest. */
function answered({ file, chosen }: SheetJob, withSky = false): Answered {
  const settings = fitoutSettings(file, chosen);
  const asked = withSky ? settings : { ...settings, frequencies: [] };
  return {
    settings,
    open: openOf(file, chosen, settings),
    floor: floorOf(chosen.standing.shell),
    answer: orEnd(file, fitOut(fitoutBrief(chosen, STEP), asked)),
  };
}

const common = ({ chosen, paper, lengths }: SheetJob) => ({
  shell: chosen.standing.shell,
  numbers: chosen.numbers.numbers,
  look: { paper, lengths },
});

/** Whether the file says anything of the fit-out. */
const isSaid = ({ chosen }: SheetJob): boolean => chosen.loaded.project?.fitout !== undefined;

const makers: readonly SheetMaker[] = [
  {
    name: 'door',
    what: 'what comes out for the door, props, header, jambs and sill',
    make: (job) => {
      const { shell, numbers, look } = common(job);
      const settings = fitoutSettings(job.file, job.chosen);
      const door = doorOf(job.chosen, openOf(job.file, job.chosen, settings), true);
      return door === null ? [] : doorSheets({ shell, numbers, ...door }, job.facts('Door'), look);
    },
  },
  {
    name: 'ways-in',
    what: 'how things pass the door',
    make: (job) => {
      const { shell, numbers, look } = common(job);
      const settings = fitoutSettings(job.file, job.chosen);
      const leftOut = openOf(job.file, job.chosen, settings);
      if (leftOut.length === 0) return [];
      return settings.carry.flatMap((thing) => {
        const carried = carryOf(job.chosen, settings, leftOut, thing, null);
        const drawn = { shell, numbers, leftOut, floor: floorOf(shell), carried };
        return waySheets(drawn, job.facts('Way in'), look);
      });
    },
  },
  {
    name: 'swing',
    what: 'the dish in section, where it comes nearest',
    make: (job) => {
      const { shell, numbers, look } = common(job);
      const { settings, floor, answer } = answered(job);
      const { dish, margin } = settings;
      return dish === null || answer.swing === null
        ? []
        : swingSheets(
            { shell, numbers, dish, margin, floor, mount: mountOf(settings), swing: answer.swing },
            job.facts('Swing'),
            look,
          );
    },
  },
  {
    name: 'signal',
    what: 'loss over the sky, a map for each frequency',
    make: (job) => {
      const { look } = common(job);
      const { answer } = answered(job, true);
      return answer.signal.flatMap(({ frequency, sky }) =>
        sky === null
          ? []
          : signalSheets(
              sky,
              { frequency, stepDeg: STEP, horizon: answer.horizon },
              job.facts('Signal'),
              look,
            ),
      );
    },
  },
  {
    name: 'seal-plan',
    what: 'which strip goes on when, and what to buy',
    make: (job) => {
      const { shell, numbers, look } = common(job);
      const { open, answer } = answered(job);
      const drawn = { shell, numbers, leftOut: open, seal: answer.seal, leaks: answer.leaks };
      return sealSheets(drawn, job.facts('Seal'), look);
    },
  },
  {
    name: 'upkeep',
    what: 'calendar of inspections, the round after a storm, snow',
    make: (job) => {
      const { shell, look } = common(job);
      const { open, answer } = answered(job);
      return upkeepSheets(
        { shell, leftOut: open, upkeep: answer.upkeep },
        job.facts('Upkeep'),
        look,
      );
    },
  },
  {
    name: 'air',
    what: 'vents low and high, water at the ring',
    make: (job) => {
      const { shell, look } = common(job);
      const { floor, answer } = answered(job);
      return airSheets({ shell, floor, air: answer.air }, job.facts('Air'), look);
    },
  },
  {
    name: 'floor',
    what: 'the floor with its headroom and what fits',
    make: (job) => {
      const { shell, look } = common(job);
      const { settings, floor, answer } = answered(job);
      return roomSheets({ shell, floor, settings, use: answer.use }, job.facts('Floor'), look);
    },
  },
];

/** The makers; none of a project that says nothing of the fit-out. */
export const fitoutMakers: readonly SheetMaker[] = makers.map((maker) => ({
  ...maker,
  make: (job) => (isSaid(job) ? maker.make(job) : []),
}));
