// Core's folders in their order, and what each is for: each imports only from those before it.
// check-layers.mjs holds to the order, make-architecture.mjs draws it.

/** Folder → a few words. */
export const folders = {
  math: 'vectors, exact predicates, statistics, least squares, sparse matrices',
  measure: 'lengths, mass, force, angle: read and written',
  sphere: 'polygons with corners on a sphere',
  shell: 'hubs, seams, places; cuts; numbers; the flat plan; a stage',
  nets: 'named subdivisions',
  passage: 'can this body pass this opening',
  pile: 'readings → kinds; marks, groups, hardware lots',
  record: 'entries of the field that fold into what stands',
  identify: 'pile → the nets it closes into',
  takeoff: 'bolts, plates, seals, what to buy',
  loads: 'wind, snow, weight: a folder for each code or law',
  frame: 'stiffness, mechanisms, stability, buckling',
  arrange: 'net + stock → the shell that can stand',
  ground: 'stake-out, levels, anchors',
  stages: 'what each half-built stage bears: props, winds',
  raise: 'order of work, lifts, reach, way out, bags',
  crew: 'people, daylight, weather, odds',
  fitout: 'door, dish, signal, seal, air',
  papers: 'sheets as plain drawing data, and their writers',
  patterns: 'scale models: nets, cut files, prints',
  project: 'the project file: schema, reading, migration',
};

export const layers = Object.keys(folders);
