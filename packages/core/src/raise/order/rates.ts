// How long work takes and what counts in an order of work. Every figure is common practice with no
// source, editable by the lead and taken from the record as it grows.

import { commonPractice, type Provenance } from '../../loads/provenance.ts';
import type { LiftTime } from '../plan.ts';

/** Rates of work, seconds, for the whole crew of a lift. */
export interface RaisingRates {
  /** To carry, lift and hold a piece: one of one panel, and more for each panel more. */
  readonly lift: number;
  readonly panelMore: number;
  /** To bolt a hole up there within reach, and on the ground. */
  readonly boltUp: number;
  readonly boltGround: number;
  /** To bring a bolt from finger to snug, or from snug to final. */
  readonly tighten: number;
  /** To put a prop in, tied at head and foot, and take it out again. */
  readonly prop: number;
  /** To slip a panel in between others that meet it on all sides. */
  readonly slipIn: number;
  /** Height that people reach from the ground, metres. */
  readonly reach: number;
  /** Work above it takes so much longer for every metre, as a part. */
  readonly slowerPerMetre: number;
  /** Bolts of a seam of which nobody knows the holes. */
  readonly boltsUnknown: number;
}

/** Rates until the lead or the record says otherwise. */
export const commonRates: RaisingRates = {
  lift: 180,
  panelMore: 20,
  boltUp: 25,
  boltGround: 15,
  tighten: 12,
  prop: 300,
  slipIn: 240,
  reach: 2.2,
  slowerPerMetre: 0.25,
  boltsUnknown: 4,
};

/** Where those rates come from. */
export const RATES: Provenance = commonPractice(
  'time for each panel, bolt and prop of a crew new to the work',
);

/** What counts in an order, in hours for each: the one place where it is weighed. */
export interface OrderWeights {
  /** An hour of work up there; one on the ground, where spare hands do it beside. */
  readonly hourUp: number;
  readonly hourGround: number;
  /** An hour up there, for each metre beyond reach. */
  readonly hourMetre: number;
  /** A prop put in, beside the time that takes. */
  readonly propMoved: number;
  /** An hour of work for each prop that what stands needs meanwhile. */
  readonly hourPropped: number;
  /** An hour of work while the topmost course begun is open. */
  readonly hourOpen: number;
}

/** Weights until the lead says otherwise: common practice, no source. */
export const commonWeights: OrderWeights = {
  hourUp: 1,
  hourGround: 0.3,
  hourMetre: 0.5,
  propMoved: 0.1,
  hourPropped: 0.3,
  hourOpen: 0.2,
};

/** What a lift's time is reckoned from. */
export interface LiftWork {
  readonly panels: number;
  /** Bolts within the piece, and along the seams that it meets up there. */
  readonly boltsInner: number;
  readonly boltsUp: number;
  readonly propsIn: number;
  readonly height: number;
  /** Whether panels meet it on all sides. */
  readonly isEnclosed: boolean;
}

/** Time of a lift. */
export function liftTime(rates: RaisingRates, work: LiftWork): LiftTime {
  const slower = 1 + rates.slowerPerMetre * Math.max(0, work.height - rates.reach);
  return {
    ground: work.boltsInner * rates.boltGround,
    up:
      slower *
        (rates.lift +
          (work.panels - 1) * rates.panelMore +
          work.boltsUp * rates.boltUp +
          (work.isEnclosed ? rates.slipIn : 0)) +
      work.propsIn * rates.prop,
  };
}

/** Bolts wanted in a seam before a piece is let go: two, or a tenth of its holes where that is more;
 * all where it has fewer. Null: nobody knows the holes. */
export const boltsBeforeLettingGo = (holes: number | null): number | null =>
  holes === null ? null : Math.min(holes, Math.max(2, Math.ceil(holes / 10)));

/** Where that rule comes from. */
export const LETTING_GO: Provenance = commonPractice(
  'at least two bolts, or a tenth of the holes, in each seam before a piece is let go (as ironworkers do at each end of a member)',
);
