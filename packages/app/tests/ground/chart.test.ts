import { describe, expect, it } from 'vitest';
import type { StageRow } from '../../src/engine/stages.ts';
import { chartTicks, chartTop, proppedRuns, stepPath } from '../../src/sheets/ground/chart.ts';

const row = (n: number, stop: number | null, status: StageRow['status'] = 'stands'): StageRow => ({
  n,
  place: `1-${n}`,
  status,
  movements: 0,
  props: 0,
  limit: stop,
  limitOf: null,
  untied: null,
  stop,
  stopBy: null,
});
const box = { width: 40, height: 20, stages: 4, top: 20 };
const stop = ({ stop: gust }: StageRow): number | null => gust;

describe('the step chart', () => {
  it('has a step a stage, a gap where a gust is unknown, and is flat at its top', () => {
    expect(stepPath([row(1, 10), row(2, 5)], stop, box)).toBe('M0.0 10.0H10.0V15.0H20.0');
    expect(stepPath([row(1, 10), row(2, null), row(3, 30)], stop, box)).toBe(
      'M0.0 10.0H10.0M20.0 0.0H30.0',
    );
    expect(stepPath([], stop, box)).toBe('');
  });

  it('goes up to a round gust over what it shows, 15 to 60 m/s', () => {
    expect(chartTop([])).toBe(15);
    expect(chartTop([row(1, 21)])).toBe(25);
    expect(chartTop([row(1, 90)])).toBe(60);
  });

  it('has its lines at round numbers that leave room for their figures', () => {
    expect(chartTicks(15, 1)).toEqual([0, 5, 10, 15]);
    expect(chartTicks(45, 1)).toEqual([0, 10, 20, 30, 40]);
    expect(chartTicks(60, 0.44704)).toEqual([0, 20, 40, 60, 80, 100, 120]);
  });

  it('tells the runs of stages that do not stand', () => {
    const rows = [row(1, 1), row(2, 1, 'needs props'), row(3, 1, 'cannot be propped'), row(4, 1)];
    expect(proppedRuns(rows)).toEqual([[2, 3]]);
  });
});
