// Words of what the stock can stand: wishes, fits with their proof, conflicts.

const plural = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;

const listed = (parts: readonly string[]): string =>
  parts.length < 2
    ? (parts[0] ?? '')
    : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;

/** Names of what counts; one that is not named here shows as the file has it. */
const counts: Readonly<Record<string, string>> = {
  'fewest bought': 'fewest panels bought or made',
  tallest: 'tallest',
  'largest floor': 'largest floor',
  'fewest mended': 'fewest panels mended',
  'fewest gaps': 'fewest places left open',
};

const demands: Readonly<Record<string, string>> = {
  flatBase: 'the level base ring',
  leastHeight: 'the least height',
  leastFloor: 'the least floor',
  mostFloor: 'the most floor',
  mostBought: 'the most panels bought',
  door: 'the door',
  spares: 'the spares kept aside',
  groups: 'the groups that stay joined',
};

/** Words of the fits. */
export const fittingWords = {
  tab: 'Fit',
  heading: 'What this stock can stand',
  counts: (what: string): string => counts[what] ?? what,
  wishes: {
    heading: 'Wishes',
    change: 'Change the wishes',
    order: 'What counts, the first beyond all others',
    up: (what: string) => `${what}: count earlier`,
    down: (what: string) => `${what}: count later`,
    limits: 'Limits',
    spares: 'Spares kept of each kind',
    mostGaps: 'Places left open, at most',
    mostBought: 'Panels bought, at most',
    leastHeight: 'Height, at least',
    leastFloor: 'Clear floor across, at least',
    mostFloor: 'Floor across, at most',
    noLimit: 'empty: no limit',
    mended: 'Panels to be mended may be used',
    flatBase: 'The base ring must be level',
    wholeFault: (most: number) => `Expected a whole number from 0 to ${most}.`,
    lengthFault: (most: string, such: string) =>
      `Expected a length of more than 0, at most ${most}, such as ${such}.`,
    reset: 'Back to the usual wishes',
    first: (what: string) => `First ${what}`,
    next: (what: string) => `then ${what}`,
    goodOnly: 'good panels only',
    keep: (count: number) => `${plural(count, 'spare')} of each kind kept aside`,
    gaps: (count: number) => `up to ${plural(count, 'place')} left open`,
    noGaps: 'no place left open',
    bought: (count: number) => `at most ${plural(count, 'panel')} bought`,
    flat: 'a level base ring',
    tall: (height: string) => `${height} tall or more`,
    floor: (across: string) => `floor of ${across} or more`,
    within: (across: string) => `within ${across} across`,
  },
  find: 'Find the best',
  findAgain: 'Find the best again',
  finding: 'Looking for the best',
  stale: 'These are for other wishes, or for the pile as it was.',
  soFar: (count: number) =>
    count === 0 ? 'Nothing found yet.' : `${plural(count, 'fit')} found so far, the best first.`,
  stopped: 'You stopped it: the best is not proved.',
  failed: 'That failed: a fault of ours. Nothing of yours is lost.',
  died: 'The calculation stopped unexpectedly. Nothing of yours is lost.',
  proved: (outlines: number, seconds: string) =>
    `Proved best: none of the ${outlines} ways up and cuts does better by these wishes. ${seconds} s.`,
  notProved: (tried: number, outlines: number, seconds: string) =>
    `Best found in ${seconds} s, not proved: ${tried} of ${outlines} ways up and cuts were filled.`,
  badgeProved: 'proved best',
  badgeBest: 'best so far',
  stands: 'stands now',
  choose: 'Stand it so',
  chooseThis: (height: string, number: number) => `Stand it so: fit ${number}, ${height} tall`,
  choosing: (height: string) => `stand the fit ${height} tall`,
  nothingToGet: 'every place gets a good panel',
  buy: (count: number) => `${count} to buy`,
  mend: (count: number) => `${count} to mend`,
  open: (count: number) => `${count} left open`,
  why: 'Where from, and why there',
  whyOf: (number: number) => `Where from, and why there: fit ${number}`,
  kindLine: (kind: string, places: number, good: number) =>
    `Kind ${kind}: ${plural(places, 'place')}, ${plural(good, 'good panel')} to use.`,
  mendedAt: (places: readonly string[]) =>
    `Mended ${places.length === 1 ? 'panel' : 'panels'} into ${listed(places)}: the lowest of this kind, in reach from the ground.`,
  boughtAt: (places: readonly string[]) =>
    `Bought or made ${places.length === 1 ? 'panel' : 'panels'} for ${listed(places)}: the lowest of this kind, in reach from the ground.`,
  openAt: (places: readonly string[]) =>
    `Left open: ${listed(places)}. There it does least harm: low; no two side by side; each panel round it held by two seams or more, each inner hub by three. Rules of thumb, no source.`,
  infill: (count: number) => `The base ring is ragged. Infill closes it: ${plural(count, 'panel')}`,
  infillLine: (count: number, sides: string) => `${count} × ${sides}, the first side on the ground`,
  level: 'The base ring is level: no infill.',
  conflict: 'These wishes stand against each other',
  conflictOf: (wishes: readonly string[]) =>
    `${listed(wishes)} can't be kept together. Give up or ease one of them: with any one gone the others can be kept.`,
  conflictOne: (wish: string) => `${wish} alone can't be kept by any way up and cut of this net.`,
  conflictUnknown: 'Which of the wishes are to blame could not be settled.',
  ease: (wish: string) => `Give up ${wish}`,
  demand: (what: string): string => demands[what] ?? what,
  none: (reason: string) => `Nothing can be fitted: ${reason}.`,
  caution:
    'Counted, not calculated: that there is a panel for every place does not say that the shell bears wind, snow or people, or stands half-built. Local codes and a licensed engineer decide.',
  changes: {
    order: 'change what counts first',
    limit: 'change a limit of the wishes',
    usual: 'go back to the usual wishes',
    ease: (wish: string) => `give up ${wish}`,
  },
} as const;
