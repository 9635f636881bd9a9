// Words of the Shape sheet and of the 3D view.

/** Words of the Shape sheet. */
export const shapeWords = {
  view: {
    role: '3D drawing',
    keys: 'Arrow keys turn it, plus and minus bring it nearer, 0 puts it back, Enter selects the panel in the middle.',
    missing:
      'This browser draws without depth: the shell stands here as a plain drawing, and can still be turned. Everything else works.',
    lost: 'The graphics card stopped drawing: the shell stands here as a plain drawing until it comes back. Nothing of yours is lost.',
  },
} as const;
