// What the permit pack drafts in words: the method statement and the risks from the raising plan, and blanks
// where only people can answer.

import { type FlowBlock, heading, list, words } from './flow-blocks.ts';
import type { PermitQuestion } from './permit-question.ts';

/** The method statement, and what the plan assumes. */
export function methodBlocks({
  plan,
  anchors,
  base,
  shell,
  leftOut,
  massOf,
}: PermitQuestion): FlowBlock[] {
  const { stages } = plan;
  const props = Math.max(0, ...stages.map((stage) => stage.props.length));
  const heaviest = Math.max(
    0,
    ...Array.from(shell.kind, (_, p) => (leftOut.includes(p) ? 0 : (massOf(p) ?? 0))),
  );
  const highest = Math.max(0, ...stages.flatMap(({ lifts }) => lifts.map(({ height }) => height)));
  const steps = [
    'Before the day: the site is looked at for cables, pipes, slopes, trees, soft ground and who passes by; the forecast is read each evening and each morning by one named person.',
    `Marking out: ${base.hubs.length} base hubs are staked from one centre with chords and check diagonals; levels are read and shims laid.`,
    anchors === null
      ? 'Anchors: there is no anchor plan yet; nothing is raised before there is one.'
      : `Anchors: ${anchors.count} are set, some of them pulled in a test; the base ring is tied down as soon as it stands.`,
    `Raising: ${stages.length} stages in the order of the plan, ${stages.reduce((sum, { lifts }) => sum + lifts.length, 0)} lifts. ${heaviest > 0 ? `The heaviest single panel weighs ${heaviest.toFixed(0)} kg.` : 'Nobody weighed a panel yet.'} The highest place ends ${highest.toFixed(1)} m over the base ring.`,
    props === 0
      ? 'No stage needs props.'
      : `Props: as many as ${props} at once, tied at head and foot, each put in before the piece that needs it is let go, and taken out only when the plan says so.`,
    'Bolts go finger-tight, then snug course by course, then final over the whole shell; nobody drills, files or forces a hole without a word from the lead.',
    'Each lift has one caller. Nobody stands below a piece or where it would fall. Anybody may call STOP.',
    'Wind: gusts are measured at the shell. Over the limit of the stage everybody comes down, props and lines are checked, the area is cleared.',
    'Evening: work ends only at a stop point; what stands is closed down, guyed as planned, fenced and told to whoever watches.',
    'After the last pass: bolts are sampled, anchors and base ring looked at again, seams sealed, the record handed over.',
    'Taking down: the same order backwards; the shell is not self-supporting once a course is opened, and the props of the raising come back.',
  ];
  return [
    heading('Method statement, drafted from the plan'),
    list('number', steps),
    heading('What the plan assumes'),
    list('dash', plan.assumed.length === 0 ? ['Nothing besides.'] : plan.assumed),
  ];
}

/** Risks with blanks for people on this site. */
export function riskBlocks({ plan, loads, anchors }: PermitQuestion): FlowBlock[] {
  const onProps = plan.stages.filter(({ props }) => props.length > 0).length;
  const nights = plan.stages.filter(({ stopPoint }) => stopPoint).length;
  const risks: (readonly [string, string, string])[] = [
    [
      'wind takes the half-built shell',
      'crew, passers-by',
      `a stop-work gust for each stage, measured at the shell; ${nights} stop points for the night; ${anchors === null ? 'NO ANCHOR PLAN YET' : 'base tied down from the first stage'}`,
    ],
    [
      'part of the shell folds or falls in',
      'crew inside',
      `an order in which every stage stands by its geometry; props in ${onProps} stages; nobody inside without need, helmets`,
    ],
    [
      'a panel or tool is dropped',
      'crew, passers-by',
      'fenced fall range, a look-out, helmets, tools on lanyards',
    ],
    [
      'fall from ladder, platform or tower',
      'crew',
      'platforms before ladders, three points of contact, nobody alone, nobody on the shell',
    ],
    [
      'backs and hands hurt by lifting',
      'crew',
      'teams by weight, gloves, turns, panels stacked where they go up',
    ],
    ['fingers in holes and seams', 'crew', 'drift pins, never fingers; the caller’s words'],
    [
      'a cable or pipe is struck by a stake',
      'crew',
      'plans of services asked for, scan before driving',
    ],
    [
      'hidden damage of second-hand panels',
      'crew, users',
      'every panel looked at on both faces; doubtful ones set aside',
    ],
    ['bolts left loose', 'users', 'a record of each seam’s pass; samples with a torque wrench'],
    ['lightning', 'crew, users', 'stop at the first thunder; nobody in or at the shell'],
    ['heat, cold, tiredness', 'crew', 'breaks, water, shelter; end of work before dark'],
    [
      'fire, smoke, no second way out',
      'users',
      'openings kept free; extinguisher; materials’ fire class asked for',
    ],
    ['cars and visitors on site', 'everybody', 'one way in, fence, somebody who greets'],
    [
      'snow or ponding water after the handover',
      'users',
      loads.snow.length === 0
        ? 'snow NOT reckoned: clear it, or close the shell'
        : 'loads above; clear it before they are reached',
    ],
  ];
  return [
    heading('Risks, drafted from the plan'),
    words(
      'Blank columns are for people on this site: how bad and how likely is it then, and who sees to it?',
      { quiet: true },
    ),
    {
      block: 'table',
      grid: true,
      size: 3,
      rowHeight: 10,
      columns: [
        { name: 'what can happen', share: 0.22, bold: true },
        { name: 'to whom', share: 0.13 },
        { name: 'what is done about it', share: 0.37 },
        { name: 'what is left', share: 0.14 },
        { name: 'who sees to it', share: 0.14 },
      ],
      rows: [
        ...risks.map((row) => [...row, '', '']),
        ...Array.from({ length: 2 }, () => ['', '', '', '', '']),
      ],
    },
  ];
}

/** What only people can answer. */
export const blankBlocks: readonly FlowBlock[] = [
  heading('Only people can answer'),
  {
    block: 'blanks',
    names: [
      'Organiser, address, telephone',
      'Lead on site, telephone',
      'Place of the shell, with coordinates',
      'Owner of the land, consent of (day)',
      'First and last day of work',
      'Stands from, until',
      'Use; most people inside at once',
      'Where the shell comes from, its maker and age',
      'Material of the panels and its fire class (paper at hand?)',
      'Insurer, number of the policy, sum insured',
      'Authority, number of the application',
      'Engineer or rigger who checked (name, licence, scope)',
      'Soil, and who tested the anchors (day, pulls)',
      'Services under the ground asked for at',
      'Distance to buildings, trees, lines, roads',
      'Electricity, lightning protection by',
      'Ways out, lights, extinguishers',
      'First aider; nearest emergency room',
      'Way for ambulance and fire brigade',
      'Who watches it at night and in wind',
      'Who decides to clear it, at what gust',
    ],
  },
  heading('Signed'),
  {
    block: 'blanks',
    names: [
      'Organiser: name, day, signature',
      'Lead on site: name, day, signature',
      'Checked by: name, day, signature',
    ],
  },
];
