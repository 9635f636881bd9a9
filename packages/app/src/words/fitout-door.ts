// Words of the Fit-out sheet's door and of what must pass.

import { listed, plural } from './counted.ts';

/** Words of the Door and the Pass tab. */
export const fitoutDoorWords = {
  door: {
    heading: 'The door',
    none: 'No panel is left out on purpose yet. Choose a door on the Places sheet, or type its panels here.',
    panels: 'Places of the door',
    panelsNote: 'by number, with commas between; those left out on the Places sheet count too',
    panelsFault: 'Expected numbers of places that stand, such as 1-08, 1-09, 1-10.',
    toPlaces: 'To the Places sheet',
    working: 'Looking at the frame',
    header: 'header',
    jamb: 'jambs',
    sill: 'sill',
    props: 'props',
    propsTold: (count: number) =>
      count === 0
        ? 'none: every hub of the edge is on the ring'
        : `${plural(count, 'hub')}, ringed`,
    out: 'comes out',
    outTold: (numbers: readonly string[]) => listed(numbers),
    wind: 'off the wind',
    windTold: (degrees: number) => `${degrees}°; 180° is best`,
    windUnknown: 'not entered: say on the Places sheet where it mostly comes from',
    spares: 'spares',
    held: (numbers: readonly string[]) =>
      `Once ${listed(numbers)} ${numbers.length === 1 ? 'is' : 'are'} out, another panel hangs by one seam or none: hold it by hand.`,
    stiffness: 'stiffness kept',
    sag: 'sag of its edge',
    sagTold: (open: string, whole: string) => `${open} (${whole} while whole)`,
    buckling: 'buckling load kept',
    share: (part: number) => `${Math.round(100 * part)} %`,
    unframed:
      'Without a frame round it, under the own weight, every seam snug. Buckling: of a perfect shell; a real one buckles at a third or a fifth of that.',
    supposed: (what: readonly string[]) => `Supposed, nobody said: ${listed(what)}.`,
    caution:
      'Prop the ringed hubs, put the frame in, then take panels out in that order, in still air. Forces are without wind, people or a factor of safety: an engineer or rigger decides on props and sections.',
    push: (letter: string) => `prop ${letter}`,
    pushes: (force: string) => `pushes ${force}`,
    standsBy: 'stands by',
    bears: {
      header: 'header bears',
      jamb: 'jambs bear',
      sill: 'sill bears',
    },
    bearsTold: (push: boolean, force: string, moment: string) =>
      `${push ? 'push' : 'pull'} ${force}, moment ${moment}`,
    wants: { header: 'header wants', jamb: 'jambs want', sill: 'sill wants' },
    wantsTold: (area: string, modulus: string) =>
      `${area} for the force alone, ${modulus} of section modulus for the moment alone`,
    used: 'stress taken',
    usedTold: (share: string) => `${share} of what is allowed`,
    aside: 'nearest to bending aside',
    asideTold: (share: string) => `${share} of Euler’s load between two hubs`,
    framedSag: 'sag with the frame in',
    load: (snow: string | null) =>
      snow === null
        ? 'Props and frame under the panels’ weight; no snow is entered (Ground sheet).'
        : `Props under the panels’ weight; the frame under that and snow of ${snow}.`,
    section: 'Bars of header and jambs',
    named: 'Named by',
    names: { supposed: 'nobody: 45 by 95 mm of softwood is supposed', own: 'us, as entered here' },
    width: 'Across',
    depth: 'From the skin inwards',
    wall: 'Wall of a hollow bar',
    wallNote: 'empty: solid',
    young: 'Young’s modulus, GPa',
    allowable: 'Stress that it may bear, MPa',
    allowableNote: 'empty: unknown; there is no value to suppose',
  },
  pass: {
    heading: 'What must pass',
    none: 'Nothing is entered yet: add a thing, or read its STL file.',
    name: 'Name',
    nameFault: 'Expected a name of its own, at most 60 letters.',
    form: 'Form',
    forms: { box: 'box', cylinder: 'cylinder', dish: 'dish' },
    hull: (corners: number) => `A body with ${plural(corners, 'corner')}.`,
    parts: 'A body of several parts, as the file has it.',
    roughly: 'It only holds the thing, which has hollows: what passes is sure, nothing else.',
    fields: {
      'size.0': 'Length',
      'size.1': 'Width',
      'size.2': 'Height',
      diameter: 'Diameter',
      length: 'Length',
      depth: 'Depth',
      thickness: 'Thickness',
    },
    add: 'Add a thing',
    one: 'thing',
    file: 'From an STL file …',
    unit: 'Unit of the file',
    units: { '': 'choose: a file says none', mm: 'mm', cm: 'cm', m: 'm', in: 'inch', ft: 'foot' },
    through: 'Through',
    ways: {
      whole: 'the finished shell',
      stage: 'the shell while it is built',
      last: 'the latest moment while it is built',
    },
    latest: (name: string, placed: number, panels: number, newest: string | null) =>
      `${name} still passes with ${placed} of ${panels} panels placed${newest === null ? '' : `, up to ${newest}`}: the latest way that was found.`,
    latestOpen: (name: string) => `${name} passes the finished shell by its opening.`,
    latestNone: (name: string) => `No way was found for ${name}, not even before the first panel.`,
    oneMore: 'With one panel more none was found.',
    placed: 'Panels placed, in number order',
    go: (name: string) => `Find a way for ${name}`,
    looking: 'Looking for a way',
    stopped: 'Stopped before a way was found.',
    passes: (name: string, clear: string) => `${name} passes: a way was found, ${clear} clear.`,
    cannot: (name: string) => `${name} cannot pass.`,
    notFound: (name: string) => `No way was found for ${name}.`,
    notProof: 'Not found is no proof that there is none.',
    noOpening: 'The finished shell has no opening: choose a door on the Places sheet.',
    draw: 'Press to look for a way: it is drawn here.',
    caution:
      'A stiff body, nothing else in the way, carried no higher than 1.2 m: whoever carries it decides. Try it with laths first.',
  },
};
