// What a fault's path is called on the screens.

const names: Readonly<Record<string, string>> = {
  'anchor.count': 'pickets of an anchor',
  'anchor.depth': 'depth of an anchor',
  'anchor.diameter': 'diameter of a stake',
  'anchor.elevation': 'angle of the guy',
  'anchor.length': 'length of an anchor',
  'anchor.mass': 'mass of a piece of ballast',
  'anchor.pull': 'pull on an anchor',
  'crew.dates': 'days of work',
  'loads.wind': 'design wind',
  'now.climb': 'people here who climb',
  'now.date': 'date by this device',
  'now.gust': 'gusts now',
  'now.lead': 'people here who can lead',
  'now.lifts': 'lifts done of the next',
  'now.light': 'hours of light left',
  'now.people': 'people here',
  'now.stage': 'stages done',
  'now.time': 'time by this device',
};

/** A path in words; one of the project file stands as it is there. */
export const faultName = (path: string): string => names[path] ?? path;
