// What a fault's path is called on the screens.

const names: Readonly<Record<string, string>> = {
  'anchor.count': 'Pickets of an anchor',
  'anchor.depth': 'Depth of an anchor',
  'anchor.diameter': 'Diameter of a stake',
  'anchor.elevation': 'Angle of the guy',
  'anchor.length': 'Length of an anchor',
  'anchor.mass': 'Mass of a piece of ballast',
  'anchor.pull': 'Pull on an anchor',
  'crew.dates': 'Days of work',
  'loads.wind': 'Design wind',
  'now.climb': 'People here who climb',
  'now.date': 'Date by this device',
  'now.gust': 'Gusts now',
  'now.lead': 'People here who can lead',
  'now.lifts': 'Lifts done of the next',
  'now.light': 'Hours of light left',
  'now.people': 'People here',
  'now.stage': 'Stages done',
  'now.time': 'Time by this device',
};

/** A path in words; one of the project file stands as it is there. */
export const faultName = (path: string): string => names[path] ?? path;
