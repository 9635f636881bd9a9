// Words of buckling, snap-through and swing.

/** Words of buckling and swing on the Ground sheet. */
export const groundStabilityWords = {
  heading: { stage: 'Buckling and swing', whole: 'Buckling and swing of the whole shell' },
  ask: 'Reckon buckling and swing',
  reckoning: 'Reckoning buckling and swing',
  again: 'Reckon again',
  stopped: 'Stopped.',
  failed: 'That could not be reckoned.',
  not: (why: string) => `Not reckoned: ${why}.`,
  held: (snug: boolean, gust: string | null) =>
    `Every seam ${snug ? 'snug' : 'finger-tight'}, ${gust === null ? 'in no wind' : `in a gust of ${gust} at the shell`}.`,
  means: 'Times 1 is that load itself. Below 1 it may fold in it: the more above, the more room.',
  rows: { buckling: 'buckles at', snapThrough: 'snaps through at', swing: 'swings' },
  real: (least: string, most: string) => `${least} to ${most} × the load`,
  perfect: (factor: string) => `a perfect one at ${factor} ×`,
  never: 'nothing: none of its loads buckles it',
  snaps: (factor: string) => `${factor} × the load if perfect; a real one sooner`,
  sideways: (factor: string) => `${factor} × the load if perfect, sideways; a real one sooner`,
  noSnap: (factor: string | null) =>
    factor === null
      ? 'nothing: the load only pulls its sides'
      : `nothing up to ${factor} × the load`,
  hertz: (frequency: string) => `${frequency} times a second`,
  stiff: 'faster than once a second: a gust acts on it as a steady push does',
  slow: 'slower than once a second: gusts rock it, and code winds are too low for it',
  load: (load: string) => `Hardest load: ${load}.`,
  folds:
    'It may fold in that load. Work in less wind, close the course first or prop more, and ask a licensed engineer.',
  cap: (pressure: string, part: string) =>
    `To compare: a smooth cap as thick as the skin, without flanges, may buckle under an even ${pressure} from outside, ${part} % of what a perfect one bears (NASA SP-8032).`,
  shown: { buckling: 'Buckles', snapThrough: 'Snaps through', swing: 'Swings' },
  note: {
    buckling: 'How it would buckle, drawn far larger than it is; it may go either way.',
    snapThrough: 'Where hubs are just before they snap through, drawn larger than it is.',
    swing: 'How it swings, drawn far larger and slower than it does.',
  },
  drawnAt: 'Drawn under Stages, at the last stage.',
};
