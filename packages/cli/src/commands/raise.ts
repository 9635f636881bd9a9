// `shellraise raise`: the order of work, in which every stage stands; the weekend with its odds; what to
// do now, and before a storm; what an order changed by hand breaks.

import {
  type CrewSettings,
  checkOrder,
  heavyTroubles,
  inUnit,
  type NowAnswer,
  nowPlan,
  type OrderBreak,
  type RecordedRates,
  raiseTasks,
  reordered,
  type StageWinds,
  type StormAnswer,
  siteFor,
  stageWinds,
  stormPlan,
  type Trouble,
  unitDoubt,
  type Weekend,
  type WindUnit,
  weekendPlan,
} from '@shellraise/core';
import { badInput, Ending } from '../ending.ts';
import { orEnd } from '../ground-site.ts';
import { choose, keepOrder } from '../job.ts';
import type { RaiseOptions } from '../options.ts';
import { startProgress } from '../progress.ts';
import { breakBlocks, planBlocks, stageBlocks } from '../raise-blocks.ts';
import { type Raised, raisedOf } from '../raise-job.ts';
import { doneTyped, nowTyped, stormTyped } from '../raise-now.ts';
import { recordedIn } from '../raise-record.ts';
import { writeTables } from '../raise-tables.ts';
import {
  asksRaised,
  checkRaisedOptions,
  isRaisedNo,
  type RaisedParts,
  raisedPartBlocks,
  raisedParts,
} from '../raised-parts.ts';
import { bullets, caution, heading, print, printJson, wrap } from '../terminal.ts';
import { nowBlocks, stormBlocks, weekendBlocks } from '../weekend-blocks.ts';
import { severalShapes } from './places.ts';

/** What every answer of the command must carry. */
const raiseCaution =
  'What follows is an estimate and no design approval. A stage that stands here is held by the ground, its anchors and its props as entered. Local codes and a licensed engineer or rigger decide on props, lifts and the wind to work in.';

interface Answer {
  readonly raised: Raised;
  readonly breaks: readonly OrderBreak[];
  readonly weekend: Weekend | null;
  readonly now: NowAnswer | null;
  readonly storm: StormAnswer | null;
  readonly parts: RaisedParts;
  /** Pieces that nobody and nothing there lifts, where the weekend does not tell them. */
  readonly heavy: readonly Trouble[];
  readonly recorded: RecordedRates | null;
  /** Winds of the stage whose card is told, seams and panels too. */
  readonly card: StageWinds | null;
}

/** Runs the command; exit code 1 where the order breaks something, the weekend can't be done, or no stage
 * stands in the storm. */
export async function raise(file: string, options: RaiseOptions): Promise<void> {
  const typed = options.now === undefined ? null : nowTyped(options.now);
  const storm = options.storm === undefined ? null : stormTyped(options.storm);
  const done = doneTyped(options.done);
  if (storm !== null && typed === null)
    throw badInput('--storm: found no --now, expected it as well: who is here');
  checkRaisedOptions(options);
  const chosen = await choose(file, options);
  const progress = startProgress();
  try {
    const made = raisedOf(file, chosen, { tries: options.tries, seed: options.seed, progress });
    const crew = withWind(crewOf(made.question.crew, options), options.windUnit);
    const recorded = options.record === undefined ? null : await recordedIn(options.record, made);
    const observed = recorded?.measured.observed ?? [];
    const raised = { ...made, question: { ...made.question, crew, observed } };
    const stages = raised.plan.stages.length;
    if (options.stage !== undefined && options.stage > stages)
      throw badInput(`--stage: found ${options.stage}, expected 1 to ${stages}`);
    const breaks = options.order === undefined ? [] : orderBreaks(raised, options.order);
    const asked = { ...raised.question, repairs: repairsOf(chosen) };
    const at = typed && hereOf(typed, done, crew, options);
    const answer: Answer = {
      raised,
      breaks,
      card: asksCard(options)
        ? (orEnd(
            file,
            stageWinds(made.site.site.stages, raised.plan, [options.stage as number], {
              strength: true,
            }),
          )[0] ?? null)
        : null,
      now: at === null || storm !== null ? null : orEnd(file, nowPlan({ ...asked, here: at })),
      storm:
        at === null || storm === null
          ? null
          : orEnd(
              file,
              stormPlan({ ...asked, here: at, hours: storm.hours, stormGust: storm.gust }),
            ),
      weekend: isWeekendAsked(options, crew)
        ? orEnd(
            file,
            weekendPlan(raised.question, {
              seed: options.seed,
              onProgress: (part) => progress.update(0.7 + 0.3 * part, 'odds'),
            }),
          )
        : null,
      recorded,
      heavy: heavyTroubles(raiseTasks(raised.question).tooHeavy),
      parts: raisedParts(file, raised, options, progress),
    };
    if (isNo(answer)) process.exitCode = 1;
    if (options.keep && breaks.length === 0)
      keepOrder(file, chosen, orderOf(raised, options.order));
    const written = writeTables(options.out, raised, answer.weekend);
    progress.stop();
    if (options.json) printJson(documentOf(answer, options));
    else print(...report(answer, options), written);
  } finally {
    progress.stop();
  }
}

/** Whether one stage is told as a card. */
const asksCard = (options: RaiseOptions): boolean =>
  options.stage !== undefined && !asksRaised(options);

const isWeekendAsked = (options: RaiseOptions, crew: CrewSettings): boolean =>
  options.now === undefined &&
  options.order === undefined &&
  options.stage === undefined &&
  !asksRaised(options) &&
  crew.dates.length > 0;

const isNo = ({ breaks, weekend, storm, parts, heavy }: Answer): boolean =>
  breaks.length > 0 ||
  (weekend?.troubles.length ?? 0) > 0 ||
  storm?.verdict === 'none' ||
  heavy.length > 0 ||
  isRaisedNo(parts);

/** The file's crew without those who do not come. */
function crewOf(crew: CrewSettings, { people, without }: RaiseOptions): CrewSettings {
  const names = (option: string, text: string): string[] => {
    const list = text.split(',').map((one) => one.trim());
    for (const name of list)
      if (!crew.people.some((one) => one.name === name))
        throw badInput(
          `${option}: found "${name}", expected a name of the file’s crew: ${crew.people.map((one) => one.name).join(', ') || 'it has nobody'}`,
        );
    return list;
  };
  const only = people === undefined ? null : names('--people', people);
  const off = without === undefined ? [] : names('--without', without);
  return {
    ...crew,
    people: crew.people.filter(
      ({ name }) => (only === null || only.includes(name)) && !off.includes(name),
    ),
  };
}

/** The crew with its forecast read in another unit. */
const withWind = (crew: CrewSettings, unit: WindUnit | undefined): CrewSettings =>
  unit === undefined ? crew : { ...crew, forecast: inUnit(crew.forecast, unit) };

function hereOf(
  typed: ReturnType<typeof nowTyped>,
  done: ReturnType<typeof doneTyped>,
  crew: CrewSettings,
  options: RaiseOptions,
) {
  const date = options.on ?? [...crew.dates].sort()[0];
  if (date === undefined)
    throw badInput('--now: found no day of work in the file’s crew, expected --on 2026-06-12');
  const lead = typed.lead ?? Math.min(1, typed.people);
  const { people, climb, lightHours, gust, time } = typed;
  return { date, time, people, climb, lead, lightHours, gust, ...done };
}

/** Panels to be mended, by kind. */
const repairsOf = ({ kinds }: Raised['chosen']): { kind: string; count: number }[] =>
  kinds.flatMap(({ id, repair }) => (repair > 0 ? [{ kind: id, count: repair }] : []));

/** The stages in the order asked for, those that are not named after them. */
function stageOrder({ plan }: Raised, text: string): number[] {
  const asked = text.split(',').map((one) => Number(one.trim()));
  const last = plan.stages.filter(({ lifts }) => lifts.length > 0).length;
  for (const number of asked)
    if (!(Number.isInteger(number) && number >= 1 && number <= last))
      throw badInput(`--order: found "${text}", expected stages from 1 to ${last} with commas`);
  if (new Set(asked).size < asked.length)
    throw badInput(`--order: found "${text}", expected each stage once`);
  const rest = plan.stages.map(({ number }) => number).filter((number) => !asked.includes(number));
  const from = Math.min(...asked);
  const before = rest.filter((number) => number < from);
  return [...before, ...asked, ...rest.filter((number) => number > from)];
}

function orderBreaks(raised: Raised, text: string): readonly OrderBreak[] {
  const site = siteFor(raised.brief);
  if (!site.ok)
    throw new Ending(
      1,
      site.faults.map(({ found }) => found),
    );
  const lifts = reordered(raised.plan, stageOrder(raised, text));
  return checkOrder(site.value, lifts, raised.brief.pins, { firstOnly: true });
}

/** The numbers of each lift's places, in the order asked for. */
function orderOf(raised: Raised, text: string | undefined): string[][] {
  const { plan, chosen } = raised;
  const order =
    text === undefined ? plan.stages.map(({ number }) => number) : stageOrder(raised, text);
  return reordered(plan, order).map(({ places }) =>
    places.map((p) => chosen.numbers.numbers[p] as string),
  );
}

function report(answer: Answer, options: RaiseOptions): string[] {
  const { raised, breaks, weekend, now, storm, parts, recorded, card, heavy } = answer;
  const { chosen } = raised;
  const asksParts = asksRaised(options);
  const others = now === null && storm === null && !asksParts;
  return [
    heading(`Raising arrangement ${chosen.number}`),
    severalShapes(chosen.found.shapes.length, options.shape),
    caution(raiseCaution),
    recorded ? wrap(recorded.words.join(' '), '') : '',
    ...(options.order !== undefined
      ? breaks.length > 0
        ? breakBlocks(raised, breaks)
        : [`Stages in the order ${options.order}: every state stands with the props of its card.`]
      : []),
    ...(options.stage !== undefined && asksCard(options)
      ? stageBlocks(raised, options.stage, card ?? undefined)
      : []),
    ...(options.stage === undefined && options.order === undefined && others
      ? planBlocks(raised)
      : []),
    ...(weekend
      ? weekendBlocks(weekend)
      : options.stage === undefined && options.order === undefined && others
        ? [
            'No day of work is entered: "crew" in the project file says who comes when (docs/file-format.md), then the weekend is planned here with its odds.',
          ]
        : []),
    weekend || now || storm ? wrap(unitDoubt(raised.question.crew.forecast) ?? '', '') : '',
    ...(now ? nowBlocks(now) : []),
    ...(storm ? stormBlocks(storm) : []),
    ...(weekend
      ? []
      : [
          bullets(
            '',
            heavy.map(({ found, change }) => `${found}. Least change: ${change}.`),
          ),
        ]),
    ...raisedPartBlocks(parts, options),
  ];
}

function documentOf(
  { raised, breaks, weekend, now, storm, parts, recorded, card, heavy }: Answer,
  options: RaiseOptions,
): object {
  const { chosen, plan, winds } = raised;
  const numbers = chosen.numbers.numbers;
  return {
    shape: { number: options.shape, of: chosen.found.shapes.length, radius: chosen.shape.radius },
    arrangement: { number: chosen.number, of: chosen.list.arrangements.length },
    numbers,
    plan,
    winds,
    ...(heavy.length > 0 && { tooHeavy: heavy }),
    ...(options.order === undefined
      ? {}
      : {
          order: {
            stages: stageOrder(raised, options.order),
            stands: breaks.length === 0,
            breaks: breaks.map((one) =>
              one.what === 'falls'
                ? { ...one, way: { ...one.way, corners: Array.from(one.way.corners) } }
                : one,
            ),
          },
        }),
    weekend,
    now,
    storm,
    ...(card && { card }),
    ...(recorded && { rates: { ...recorded.rates, words: recorded.words } }),
    ...parts,
    cautions: [raiseCaution],
  };
}
