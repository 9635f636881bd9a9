// What an order of work costs, in hours: see OrderWeights for what is weighed how.

import type { LiftTime, OrderCost } from '../plan.ts';
import { liftTime, type OrderWeights, type RaisingRates } from './rates.ts';
import type { Step } from './walk.ts';

/** What costs are reckoned with. */
export interface Costing {
  readonly rates: RaisingRates;
  readonly weights: OrderWeights;
  /** Holes of a seam by its index; null where nobody knows. */
  readonly holes: (seam: number) => number | null;
}

const HOUR = 3600;

/** Bolts of some seams. */
export const boltsOf = ({ rates, holes }: Costing, seams: readonly number[]): number =>
  seams.reduce((sum, seam) => sum + (holes(seam) ?? rates.boltsUnknown), 0);

/** Time of one lift. */
export const stepTime = (costing: Costing, step: Step): LiftTime =>
  liftTime(costing.rates, {
    panels: step.piece.places.length,
    boltsInner: boltsOf(costing, step.piece.inner),
    boltsUp: boltsOf(costing, step.seams),
    propsIn: step.propsIn,
    height: step.piece.height,
    isEnclosed: step.isEnclosed,
  });

/** What one lift adds to the total, hours. `open`: a course begun is not complete after it. */
export function stepCost(costing: Costing, step: Step, open: boolean): number {
  const { rates, weights } = costing;
  const { ground, up } = stepTime(costing, step);
  const over = Math.max(0, step.piece.height - rates.reach);
  return (
    (up / HOUR) *
      (weights.hourUp +
        weights.hourMetre * over +
        weights.hourPropped * step.props.length +
        (open ? weights.hourOpen : 0)) +
    (ground / HOUR) * weights.hourGround +
    weights.propMoved * step.propsIn
  );
}

/** What a walk costs. */
export function costOf(costing: Costing, steps: readonly Step[]): OrderCost {
  let [total, atHeight, propsMoved, exposed, hours, mostProps] = [0, 0, 0, 0, 0, 0];
  steps.forEach((step, k) => {
    const { ground, up } = stepTime(costing, step);
    const isLast = k === steps.length - 1;
    total += stepCost(costing, step, isOpen(step, isLast));
    atHeight += (up / HOUR) * Math.max(0, step.piece.height - costing.rates.reach);
    propsMoved += step.propsIn;
    if (step.props.length > 0) exposed += up / HOUR;
    hours += (ground + up) / HOUR;
    mostProps = Math.max(mostProps, step.props.length);
  });
  return { total, atHeight, propsMoved, exposed, hours, mostProps };
}

/** Whether a course stands begun and not complete after a lift. */
export const isOpen = (step: Step, isLast: boolean): boolean =>
  !isLast && step.complete < topCourse(step);

const topCourse = ({ piece }: Step): number => piece.course;
