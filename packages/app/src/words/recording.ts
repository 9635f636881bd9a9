// Words of what is noted besides the taps on the plan: stops, stages, samples, people, weather.

import { plural } from './counted.ts';

/** Words of the Record sheet's tabs. */
export const recordingWords = {
  tabs: 'Parts of the record',
  tab: {
    next: 'Next',
    forgotten: 'Forgotten',
    walk: 'Tighten',
    tag: 'Tag',
    note: 'Note',
    day: 'Day',
    done: 'Done',
    paper: 'Paper',
    laptop: 'Laptop',
  },
  hands: 'Hands at it',
  handsWhy: 'How many people work at what you note: it tells how fast the crew is.',
  noHands: 'not said',
  more: 'More hands',
  fewer: 'Fewer hands',
  held: (thing: string) => `${thing}: choose what is so.`,
  stop: {
    call: 'Stop work',
    lightning: 'Lightning: everybody down',
    wind: 'Wind: everybody down',
    on: { lightning: 'STOP: LIGHTNING', wind: 'STOP: WIND' },
    what: {
      lightning:
        'Everybody down and away from metal. No work until thirty minutes after the last thunder (common practice).',
      wind: 'Everybody down, nobody under the shell. Make fast what can be made fast from the ground.',
    },
    by: (name: string, time: string) => `Called by ${name} at ${time}.`,
    lift: { lightning: 'Lift the lightning stop', wind: 'Lift the wind stop' },
    asked: 'Somebody says that it is lifted, somebody that it is not: it holds until all agree.',
  },
  near: 'From where you stand',
  order: { course: 'By course', near: 'Nearest first' },
  nearNeeds: 'Choose a panel on the plan: that is where you stand.',
  here: (place: string) => `You stand at panel ${place}.`,
  sample: {
    heading: 'Bolts checked on this seam',
    of: (bolts: number) => `${plural(bolts, 'bolt')} in this seam.`,
    ofUnknown: 'How many bolts this seam has is not known: count the holes on the Pile sheet.',
    so: (bolts: number, failed: number, wanted: number | null) =>
      `${plural(bolts, 'bolt')} checked so far, ${failed} failed${
        wanted === null ? '' : `; ${wanted} wanted in all`
      }.`,
    bolts: 'Bolts checked',
    failed: 'of these failed',
    torque: (unit: string) => `Torque set, ${unit} (may stay empty)`,
    note: 'Note the check',
    fault: 'Expected whole bolts, no more failed than checked.',
    torqueFault: 'Expected a torque up to 1000 N·m, or nothing.',
  },
  next: {
    nobody: 'Nobody is signed in: note who comes and goes on the Note tab.',
    here: (people: readonly string[]) => `Here: ${people.join(', ')}.`,
    workOut: 'Work out the order of work',
    allDone: 'Every stage is said to be done.',
    atWork: (number: number) => `Stage ${number} is next.`,
    looked: (number: number, next: number) => `You look at stage ${number}; stage ${next} is next.`,
    before: '← Stage before',
    after: 'Next stage →',
    far: (up: number, of: number, loose: number) =>
      `${of === 0 ? '' : `${up} of ${plural(of, 'panel')} in place. `}${
        loose === 0
          ? 'Every seam is as tight as this card wants.'
          : `${plural(loose, 'seam')} less tight than this card wants.`
      }`,
    done: 'Stage done',
    notDone: 'Not done after all',
    close: 'Closed down for the night',
    reopen: 'Open again',
    noStop: 'This card is no stop point: it may not be left overnight.',
    notFixed:
      'The order is not fixed: another device may work out another one, with other stage numbers. Fix it on the Raising sheet (Order) before stages are noted.',
  },
  scan: {
    start: 'Read the tag by camera',
    stop: 'Stop the camera',
    none: 'This page gets no camera: open it over https or on the laptop itself, or type the tag.',
    refused: 'The camera may not be used, or shows nothing: type the tag.',
    picture: 'What the camera sees',
  },
  tagged: {
    heading: 'Where does this panel go?',
    tag: 'Tag of the panel',
    type: (count: number) =>
      count === 0
        ? 'No panel of the pile has a tag yet.'
        : `${plural(count, 'panel')} of the pile ${count === 1 ? 'has' : 'have'} a tag. Zeros in front may be left away.`,
    unknown: (typed: string) =>
      `Nobody measured a panel with the tag “${typed}”, or its kind is not settled.`,
    ambiguous: (tags: readonly string[]) => `Which one: ${tags.join(', ')}?`,
    scrap: (tag: string) => `Panel ${tag} is said to be broken: it is not to be used.`,
    'none free': (tag: string) => `No place for panel ${tag} is free.`,
    placed: (tag: string, at: readonly string[]) =>
      `Panel ${tag} is said to sit at ${at.join(' and at ')} already.`,
    goes: (tag: string, to: string, count: number) =>
      `Panel ${tag} goes to ${to}${count > 1 ? `, or to one of ${count - 1} more` : ''}.`,
    show: (number: string) => `Show ${number}`,
    note: (tag: string, number: string) => `${tag} is in place at ${number}`,
    side: (length: string, towards: string | null) =>
      towards === null ? `${length} at the rim` : `${length} against ${towards}`,
    unknownSide: 'a side',
  },
  walk: {
    heading: 'Once round the ring',
    fromDatum: 'From the datum (choose a panel on the plan to begin elsewhere).',
    how: 'Clockwise seen from above.',
    course: 'Course',
    to: 'Bring to',
    none: (course: string, pass: string) =>
      `${course}: no seam between panels in place is less than ${pass}.`,
    next: (seam: string, bolts: number | null) =>
      `Seam ${seam}${bolts === null ? '' : `: ${plural(bolts, 'bolt')}`}`,
    done: (pass: string) => `It is ${pass}: on to the next`,
    show: 'Show the seam',
    left: (count: number) => `${plural(count, 'seam')} to go. After it:`,
  },
  forms: {
    heading: 'What do you note?',
    note: 'Note this',
    nobody: 'Nobody is signed in yet.',
    may: '(may stay empty)',
    unread: 'That cannot be read.',
    goes: (person: string) => `${person} goes`,
    about: (thing: string) => `about ${thing}`,
    of: {
      person: 'Somebody in or out',
      weather: 'Weather',
      condition: 'Panel broken',
      seen: 'Panel found',
      note: 'Note, photo',
      survey: 'Survey',
      anchor: 'Anchor driven',
      pull: 'Test pull',
      bolts: 'Bolts counted',
    },
    why: {
      person: 'First name or initials: so that everybody is accounted for when work stops.',
      weather: 'What is seen here and now.',
      condition: 'Its stock goes by it once you take it over on the Done tab.',
      seen: 'Found in the heap, or cleaned and ready.',
      note: 'A photo is kept on this device, and on the laptop once this device has joined it; a file of the record has its name alone.',
      survey: 'Base hubs by number, clockwise from the datum. A level is over or under the plan.',
      anchor: 'By the number of its base hub.',
      pull: 'By the number of its base hub. An estimate to plan by: local codes and a licensed engineer decide.',
      bolts: 'Loose bolts of one size, in bags and boxes: not those in the shell.',
    },
    field: {
      person: 'First name or initials',
      here: 'In or out',
      gust: 'Gusts',
      mean: 'Wind on average',
      temperatureC: 'Temperature, °C',
      sky: 'Sky',
      tag: 'Tag of the panel',
      condition: 'What is it',
      seen: 'What of it',
      text: 'What is to be known',
      what: 'What was measured',
      'survey hub': 'Base hub',
      to: 'To base hub, for a chord',
      'survey length': 'Length or height',
      anchor: 'Base hub',
      driven: 'Is it in',
      pull: 'Pulled with',
      held: 'Did it hold',
      thread: 'Thread, such as M8 or 5/16-18',
      'bolts length': 'Length of the bolt',
      count: 'How many',
    },
    choice: {
      in: 'comes',
      out: 'goes',
      scrap: 'broken, not to be used',
      repair: 'to be mended',
      good: 'good',
      'panel found': 'found',
      'panel cleaned': 'cleaned',
      level: 'level over plan',
      radius: 'radius',
      chord: 'chord',
    },
    refused: {
      person: 'Expected a name of at most 60 letters.',
      weather: 'Expected gusts up to 100 m/s, wind up to 60 m/s, −60 to 60 °C.',
      condition: 'Expected a tag of at most 60 letters.',
      seen: 'Expected a tag of at most 60 letters.',
      note: 'Expected text of at most 2000 letters.',
      survey: 'Expected hubs from 1 to 1000, lengths up to 100 m; a chord needs both its hubs.',
      anchor: 'Expected a hub from 1 to 1000.',
      pull: 'Expected a hub from 1 to 1000, a pull up to 500 kN.',
      bolts: 'Expected a length up to 1 m, a count up to 100 000.',
    },
    photo: {
      add: 'Add a photo',
      another: 'Take another photo',
      has: (name: string) => `Photo ${name}… goes with the note.`,
      of: (by: string) => `Photo by ${by}`,
      elsewhere: 'Its photo is on another device, and not on the laptop yet.',
    },
    notes: 'Notes, the newest first',
  },
  back: {
    heading: 'Take over into the project',
    none: 'The project knows all that the record knows of broken panels, survey and bolts.',
    tags: (tags: readonly string[]) =>
      `Condition of ${plural(tags.length, 'panel')} (${tags.slice(0, 8).join(', ')}${tags.length > 8 ? ' …' : ''}): stock and the answers to a break go by it.`,
    survey: (count: number) =>
      `${plural(count, 'survey reading')}: go or no go on the Ground sheet.`,
    sizes: (count: number) =>
      `Bolts of ${plural(count, 'size')}, those in the shell added: the buy list goes by it.`,
    take: 'Take this over',
    step: 'take over from the record',
    speed: 'How fast this crew is',
    used: 'The forecast on the Raising sheet goes by these rates.',
  },
  daily: {
    heading: 'A file of the record',
    why: 'Something noted before today is in no file of this device yet. Some phones clear a page’s storage when it was not used for a week.',
    save: 'Save the record as a file',
    later: 'Not today',
  },
  day: {
    which: 'Day',
    heading: (day: string) => `The day ${day}`,
    doneThen: 'Done that day',
    leftNow: 'Left now',
    count: {
      panels: 'panels',
      finger: 'seams finger',
      snug: 'seams snug',
      final: 'seams final',
      sealed: 'seams sealed',
      plates: 'plates',
    },
    stages: (stages: readonly number[]) => `Done: stage ${stages.join(', ')}.`,
    closed: (stages: readonly number[]) => `Closed down at stage ${stages.join(', ')}.`,
    notClosed: 'Nobody said that it was closed down for the night.',
    stillHere: (people: readonly string[]) => `Still signed in: ${people.join(', ')}.`,
    nobodyHere: 'Everybody is signed out.',
    forgotten: (count: number) =>
      count === 0 ? 'Nothing forgotten.' : `Forgotten: ${plural(count, 'thing')} (Forgotten tab).`,
    questions: (count: number) =>
      count === 0 ? 'Nothing in question.' : `To be asked: ${plural(count, 'question')}.`,
    odds: (odds: string) => `Odds of finishing in these days: ${odds}.`,
    noOdds: 'Odds: not reckoned on this device; the Raising sheet (Days) reckons them.',
    tonight: (gust: string) =>
      `Tonight: everybody leaves its surroundings from gusts of ${gust}, closed down as its card says.`,
    noTonight:
      'Tonight’s wind limit: not known here. Note the stage, and work out the order on the Next tab.',
    tomorrow: (people: readonly string[]) => `Tomorrow comes: ${people.join(', ')}.`,
    nobodyTomorrow: 'Nobody is entered for tomorrow.',
    noTomorrow: 'Who comes tomorrow: nobody is entered on the Raising sheet (People).',
    clock: (minutes: number) =>
      `A phone’s clock stood ${Math.abs(minutes)} min ${minutes > 0 ? 'ahead' : 'behind'} at the least: its times are put right.`,
    caution:
      'Odds and wind are estimates, no design approval. Stop for the wind on site whatever is written here; local codes and a licensed engineer or rigger decide.',
    print: 'Print this page',
    printDossier: 'Print the dossier',
  },
  turns: {
    inside: 'From inside',
    left: 'Turn the plan to the left',
    right: 'Turn the plan to the right',
    follow: 'Follow me',
    mirrored: 'Mirrored: as seen from inside, looking up.',
    compass: {
      asked: 'Asking which way the device looks …',
      on: 'What lies ahead is up: you faced the datum as you pressed.',
      none: 'This browser tells no compass: turn the plan by its two arrows.',
    },
  },
} as const;
