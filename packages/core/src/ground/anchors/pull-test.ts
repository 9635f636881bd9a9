// Test pulls on the site: an anchor of the sort to be used is pulled by a winch and a scale until it
// moves, or to a pull that it holds. It tells of that ground on that day.

import { commonPractice, confirmed, type Provenance } from '../../loads/provenance.ts';
import type { Fault, Read } from '../../measure/fault.ts';
import type { Capacity } from './capacity.ts';

/** One test pull. */
export interface PullTest {
  /** Greatest pull, N. */
  readonly pull: number;
  /** True where it held without moving on; false where it gave way at that pull. */
  readonly held: boolean;
  /** True where the ground was saturated on the day. */
  readonly wet: boolean;
}

/** Tests from this number on speak for the site; one or two are held to more (common practice). */
const ENOUGH_TESTS = 3;

/** Greatest pull that a crew can make, N: more is a slip of unit. */
const MOST_PULL = 200_000;

/** What one anchor of the tested sort holds: the least of the pulls, whether it gave way or held, as
 * one that held may give way just beyond. A test in dry ground counts half where the ground may get
 * wet. Faults for a pull that is none. */
export function testedCapacity(tests: readonly PullTest[], maybeWet: boolean): Read<Capacity> {
  const faults = tests.flatMap(({ pull }, i): Fault[] =>
    pull > 0 && pull <= MOST_PULL
      ? []
      : [
          {
            path: `pullTests[${i}].pull`,
            found: `${pull} N`,
            expected: `over 0, to ${MOST_PULL} N`,
          },
        ],
  );
  if (tests.length === 0)
    faults.push({ path: 'pullTests', found: 'none', expected: 'at least one pull' });
  if (faults.length > 0) return { ok: false, faults };
  const halved = (test: PullTest): boolean => maybeWet && !test.wet;
  const worth = tests.map((test) => test.pull * (halved(test) ? 0.5 : 1));
  const least = Math.min(...worth);
  const test = tests[worth.indexOf(least)] as PullTest;
  const sources: Provenance[] = [
    { text: `least of ${tests.length} test pulls on the site`, confirmation: 'entered' },
    commonPractice('how far test pulls are held to: three or more by less than one or two'),
  ];
  if (halved(test))
    sources.push(
      confirmed('Anchoring in wet soil, InTents, June 2009: saturated ground holds about half'),
    );
  return {
    ok: true,
    value: {
      pull: least,
      basis: tests.length >= ENOUGH_TESTS ? 'tested' : 'tested few',
      sources,
      notes: [
        'Tested on the day: pull again after rain, frost or drought.',
        ...(test.held ? ['The least pull held: a stronger test pull would allow more.'] : []),
        ...(halved(test) ? ['Halved: tested dry, and the ground may get wet.'] : []),
      ],
    },
  };
}
