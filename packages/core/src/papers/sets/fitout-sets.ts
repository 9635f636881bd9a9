// The sheets of the fit-out: door, what passes, the dish in section, the sky, seal, upkeep, air, the floor.

import { type FitOut, fitOut } from '../../fitout/answer.ts';
import { floorOf, mountOf, openPlaces } from '../../fitout/brief.ts';
import { carryTold, doorTold } from '../../fitout/of-shell.ts';
import { defaultFitout, type FitoutSettings, readFitout } from '../../fitout/schema.ts';
import { frameParts } from '../../frame/parts.ts';
import { unknownParts } from '../../frame/schema.ts';
import { placeMasses } from '../../loads/weight/weight.ts';
import { numberOrder } from '../../stages/series.ts';
import { airSheets } from '../air-sheet.ts';
import { doorSheets } from '../door-sheet.ts';
import type { Drawing } from '../drawing.ts';
import { roomSheets } from '../room-sheet.ts';
import { sealSheets } from '../seal-sheet.ts';
import { signalSheets } from '../signal-sheet.ts';
import { swingSheets } from '../swing-sheet.ts';
import { upkeepSheets } from '../upkeep-sheet.ts';
import { waySheets } from '../way-sheet.ts';
import { readOr, SheetFault } from './fault.ts';
import type { SheetJob, SheetMaker } from './job.ts';
import type { PaperQuestion } from './question.ts';

/** Degrees between pointings of the printed maps. */
const STEP = 2.5;

/** What a maker of these is handed. */
interface Fitted {
  readonly asked: PaperQuestion;
  readonly facts: SheetJob['facts'];
  readonly settings: FitoutSettings;
  /** Places left open, those of the fit-out's door included. */
  readonly open: readonly number[];
  readonly floor: number;
  readonly look: Pick<PaperQuestion, 'paper' | 'lengths'>;
}

/** The answers, without the sky unless it is wanted: that takes longest. */
function answered({ asked, settings }: Fitted, withSky = false): FitOut {
  const { shell, numbers, windFrom, loads, crew } = asked;
  const brief = {
    ...{ shell, numbers, stepDeg: STEP },
    order: numberOrder(shell),
    windFrom: windFrom ?? 0,
    snow: loads?.groundSnow ?? null,
    forecast: crew?.forecast ?? [],
  };
  return readOr(fitOut(brief, withSky ? settings : { ...settings, frequencies: [] }));
}

const sets: readonly (readonly [
  name: string,
  what: string,
  make: (fitted: Fitted) => readonly Drawing[],
])[] = [
  [
    'door',
    'what comes out for the door, props, header, jambs and sill',
    ({ asked, facts, settings, open, look }) => {
      const { shell, numbers, windFrom, kinds, loads } = asked;
      if (open.length === 0) return [];
      const masses = placeMasses(shell, kinds, loads?.panelMass ?? null);
      const frame = {
        parts: frameParts(asked.parts ?? unknownParts),
        load: {
          massOf: (place: number) => masses(place)?.value ?? null,
          snow: loads?.groundSnow ?? null,
          section: settings.doorFrame,
        },
      };
      const door = doorTold({ shell, places: open, windFrom, frame });
      return doorSheets({ shell, numbers, ...door }, facts('Door'), look);
    },
  ],
  [
    'ways-in',
    'how things pass the door',
    ({ asked: { shell, numbers }, facts, settings, open: leftOut, floor, look }) =>
      leftOut.length === 0
        ? []
        : settings.carry.flatMap((thing) => {
            const carried = carryTold(shell, settings, { leftOut, placed: null }, thing);
            return waySheets({ shell, numbers, leftOut, floor, carried }, facts('Way in'), look);
          }),
  ],
  [
    'swing',
    'the dish in section, where it comes nearest',
    (fitted) => {
      const { asked, facts, settings, floor, look } = fitted;
      const { shell, numbers } = asked;
      const { dish, margin } = settings;
      const { swing } = answered(fitted);
      if (dish === null || swing === null) return [];
      const drawn = { shell, numbers, dish, margin, floor, mount: mountOf(settings), swing };
      return swingSheets(drawn, facts('Swing'), look);
    },
  ],
  [
    'signal',
    'loss over the sky, a map for each frequency',
    (fitted) => {
      const { signal, horizon } = answered(fitted, true);
      return signal.flatMap(({ frequency, sky }) =>
        sky === null
          ? []
          : signalSheets(
              sky,
              { frequency, stepDeg: STEP, horizon },
              fitted.facts('Signal'),
              fitted.look,
            ),
      );
    },
  ],
  [
    'seal-plan',
    'which strip goes on when, and what to buy',
    (fitted) => {
      const { shell, numbers } = fitted.asked;
      const { seal, leaks } = answered(fitted);
      const drawn = { shell, numbers, leftOut: fitted.open, seal, leaks };
      return sealSheets(drawn, fitted.facts('Seal'), fitted.look);
    },
  ],
  [
    'upkeep',
    'calendar of inspections, the round after a storm, snow',
    (fitted) => {
      const { shell } = fitted.asked;
      const drawn = { shell, leftOut: fitted.open, upkeep: answered(fitted).upkeep };
      return upkeepSheets(drawn, fitted.facts('Upkeep'), fitted.look);
    },
  ],
  [
    'air',
    'vents low and high, water at the ring',
    (fitted) => {
      const { asked, facts, floor, look } = fitted;
      return airSheets(
        { shell: asked.shell, floor, air: answered(fitted).air },
        facts('Air'),
        look,
      );
    },
  ],
  [
    'floor',
    'the floor with its headroom and what fits',
    (fitted) => {
      const { asked, facts, settings, floor, look } = fitted;
      const drawn = { shell: asked.shell, floor, settings, use: answered(fitted).use };
      return roomSheets(drawn, facts('Floor'), look);
    },
  ],
];

/** The makers; none of a project that says nothing of the fit-out. */
export const fitoutMakers: readonly SheetMaker[] = sets.map(([name, what, make]) => ({
  name,
  what,
  make: ({ asked, facts }) => {
    if (asked.fitout === undefined) return [];
    const settings = readOr(readFitout({ ...defaultFitout, ...asked.fitout }));
    const open = readOr(openPlaces(asked.numbers, asked.leftOut, settings));
    const { paper, lengths } = asked;
    const floor = floorOf(asked.shell);
    return make({ asked, facts, settings, open, floor, look: { paper, lengths } });
  },
}));

/** Pages of some of these sets by name, for papers that hold them besides; none of a set that can't be
 * made: where it is asked for by itself its reasons are told. */
export function fitoutPages(job: SheetJob, names: readonly string[]): readonly Drawing[] {
  return fitoutMakers
    .filter(({ name }) => names.includes(name))
    .flatMap(({ make }) => {
      try {
        return make(job);
      } catch (error) {
        if (error instanceof SheetFault) return [];
        throw error;
      }
    });
}
