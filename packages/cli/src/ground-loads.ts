// The loads on the whole shell and its anchors, as tables with their flags.

import type { Provenance } from '@shellraise/core';
import type { ChosenSite } from './ground-site.ts';
import { bullets, count, heading, paint, right, table, wrap } from './terminal.ts';

/** Characters of a column with a wind case in words. */
export const CASE_WIDTH = 30;

/** A force in newtons or kilonewtons. */
export const force = (newtons: number): string =>
  Math.abs(newtons) >= 9950 ? `${(newtons / 1000).toFixed(1)} kN` : `${newtons.toFixed(0)} N`;

/** The design wind, what it does, weight and snow, and which of it is not confirmed. */
export function loadBlocks({ site, loads: settings }: ChosenSite): string[] {
  const { wind, drag, lift, weight, unweighed, snow, assumed, flags } = site.loads;
  const rows = [
    ...(wind && drag && lift
      ? [
          ['velocity pressure at the crown', `${wind.value.toFixed(0)} Pa`, wind.code],
          ['drag', force(drag.force), wrap(drag.from, '', CASE_WIDTH)],
          ['lift', force(lift.force), wrap(lift.from, '', CASE_WIDTH)],
        ]
      : []),
    ['weight', force(weight), unweighed.length === 0 ? 'all panels' : 'of the panels weighed'],
    ...snow.map(({ name, force: newtons }) => ['snow', force(newtons), name]),
  ];
  return [
    heading('Loads on the whole shell'),
    wrap(
      wind
        ? `Wind by ${settings.code}, pressures by ${settings.law}.`
        : 'No design wind is entered ("loads", "wind"): no design load and no anchors are reckoned from it.',
      '',
    ),
    table([{ head: 'load' }, right('amount'), { head: 'from' }], rows),
    unweighed.length === 0
      ? ''
      : paint.yellow(
          wrap(
            `Nobody weighed ${count(unweighed.length, 'panel')}, which count as weightless here: enter "mass" of the kinds, or "panelMass" in "loads".`,
            '',
          ),
        ),
    bullets('Assumed:', assumed),
    flagBlock('Not confirmed, or entered:', flags),
  ];
}

/** Sources that are not confirmed, each with how far it is. */
export const flagBlock = (title: string, flags: readonly Provenance[]): string =>
  bullets(
    title,
    flags.map(({ text, confirmation }) => `${confirmation}: ${text}`),
  );

/** The anchor plan, or why there is none. */
export function anchorBlocks({ site, ground }: ChosenSite): string[] {
  const { anchors } = site;
  if (!anchors.ok)
    return [
      heading('Anchors'),
      bullets(
        paint.yellow('There is no anchor plan:'),
        anchors.faults.map(
          ({ path, found, expected }) => `${path}: ${found}; needed: ${expected}.`,
        ),
      ),
    ];
  const plan = anchors.value;
  return [
    heading('Anchors'),
    wrap(
      `${count(plan.count, 'anchor')} of ${count(plan.pieces, 'piece')}; each may be pulled ${force(plan.allowed)} by ${plan.practice}${plan.cost === null ? '' : `; cost ${plan.cost.toFixed(2)}`}.`,
      '',
    ),
    table(
      [right('hub'), right('up'), right('shear'), right('pull'), right('anchors'), right('used')],
      plan.hubs.map((hub) => [
        String(hub.hub),
        force(hub.up),
        force(hub.shear),
        force(hub.pull),
        String(hub.count),
        `${(100 * hub.use).toFixed(0)} %`,
      ]),
    ),
    bullets('', plan.notes),
    plan.tooNear.length === 0
      ? ''
      : paint.red(
          wrap(
            `Anchors stand too near each other at ${count(plan.tooNear.length, 'pair')} of hubs, first at ${plan.tooNear[0]?.hubs.join(' and ')}: the plan does NOT hold as drawn.`,
            '',
          ),
        ),
    ground.pullTests.length > 0
      ? ''
      : 'No test pull is entered: what holds on this site only a test pull tells.',
    flagBlock('Anchors rest on:', plan.sources),
  ];
}
