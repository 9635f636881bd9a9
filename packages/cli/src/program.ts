// The commands, their options and their help. What a command does is loaded when it is asked for,
// so that help comes at once.

import type { WindUnit } from '@shellraise/core';
import { Command, InvalidArgumentError, Option } from 'commander';
import { badInput } from './ending.ts';
import {
  lengthSystems,
  lengthUnits,
  type PlacesOptions,
  papersTaken,
  patternSorts,
  rankNames,
  sheetPapers,
  sheetSorts,
} from './options.ts';
import { refuseUnwritable } from './write.ts';

/** The command line, ready to parse. */
export function program(): Command {
  const top = new Command('shellraise')
    .description('From a heap of dome panels to a standing shell: one command for each phase.')
    .version('0.1.0')
    .exitOverride()
    .showSuggestionAfterError()
    .showHelpAfterError('(add --help for what is allowed)')
    .addHelpText('after', topHelp)
    .hook('preAction', (_, command) => {
      const { out } = command.opts();
      if (out !== undefined) refuseUnwritable(out);
    });
  phase(top, 'pile', 'the kinds in the pile, doubtful readings, and what to measure next').action(
    async (file, options) => (await import('./commands/pile.ts')).pile(file, options),
  );
  phase(top, 'shape', 'every shell that these kinds close into').action(async (file, options) =>
    (await import('./commands/shape.ts')).shape(file, options),
  );
  standing(phase(top, 'places', 'the shells the stock can stand, and what each lacks'))
    .option('--keep', 'write the arrangement into the project file as the decision')
    .option('--freeze', 'as --keep; its place numbers are painted, so keep them from now on')
    .option('--unfreeze', 'forget the painted numbers')
    .option('--fit', 'the best shells by the wishes of the file, with a proof')
    .option('--broken <place>', 'a panel is broken: what now, with the least undoing')
    .option('--built <courses>', 'with --broken: courses that are up (else all)', whole)
    .option('--second', 'what the panels left over can stand')
    .option('--singles', 'which tagged panel goes where, so that seams come out even')
    .option('--door <size>', 'where a door may be: width x height, such as "0.9 m x 2 m"')
    .option('--hatch <diameter>', 'where a round hatch may be, such as "0.6 m"')
    .option(
      '--section <corners>',
      'where a thing with this section passes: corners "across, up", such as "0 m, 0 m; 1.2 m, 0 m; 0.6 m, 1.5 m"',
    )
    .addOption(
      new Option('--rank <what>', 'with these three: which openings come first').choices(rankNames),
    )
    .option(
      '--wind <degrees>',
      'with these three: where the wind comes from, clockwise from the datum seen from above',
      degrees,
    )
    .option('--account', 'panels, seams, hubs and bolts by formula and by list')
    .option('--make <kind>', 'how to make a panel of a kind, or cut one down: shape, bevels, holes')
    .option('--out <folder>', 'with --account, --make and --second: write the drawings here')
    .option('--date <day>', 'the day that drawings bear, such as 2026-05-01', day)
    .addHelpText('after', '  $ shellraise places my-shell.json --arrangement 3 --keep')
    .action(placesAs);
  standing(phase(top, 'takeoff', 'bolts, nuts, washers and plates: in hand and to buy')).action(
    async (file, options) => (await import('./commands/takeoff.ts')).takeoff(file, options),
  );
  standing(phase(top, 'ground', 'stake-out, loads, anchors; does a stage stand, in what wind'))
    .option('--stage <panels>', 'so many panels placed, in number order', whole)
    .option('--tonight <gust>', 'with --stage: left for the night in this gust, m/s', speed)
    .option('--out <folder>', 'write its sheets here: stake-out, shims, anchors, beam, survey')
    .option('--date <day>', 'with --out: the day that sheets bear, such as 2026-05-01', day)
    .addHelpText('after', '  $ shellraise ground examples/demo/project.json --stage 120')
    .action(async (file, options) => (await import('./commands/ground.ts')).ground(file, options));
  standing(phase(top, 'raise', 'the order of work, the weekend with its odds, now, a storm'))
    .option('--stage <number>', 'the card of one stage', whole)
    .option('--people <names>', 'only these of the file’s people come, such as "Ada, Bram"')
    .option('--without <names>', 'these of the file’s people do not come')
    .option('--order <stages>', 'stages in another order, such as "2,1": may it be so?')
    .option('--keep', 'write the order of lifts into the project file as your own')
    .option('--now <who>', 'what to do now: "6 people, 2 climb, 1 leads, 3 h, 9 m/s"')
    .option('--storm <when>', 'with --now: a storm in "2 h", or "2 h, 18 m/s"')
    .option('--done <stages>', 'with --now: stages done, and lifts of the next: "8+3"', '0')
    .option('--on <day>', 'with --now: the day (else the first of the file)', day)
    .option('--yard', 'where the stacks lie, in the order of work, and what keeps them down')
    .option(
      '--keep-clear <sectors>',
      'with --yard: where nothing may lie, degrees clockwise from the datum: "80-120, 300-20"',
    )
    .option('--lifts', 'how each piece is lifted; with --stage the lift cards of that stage')
    .option('--inside', 'way in and way out: what still passes until when, heights at each stage')
    .option('--bags', 'bags with labels, what to buy before which stage, tools, charge')
    .option('--wait', 'what may wait for the next trip, after --stage (else the last)')
    .option(
      '--gust <speed>',
      'with --yard, --lifts and --wait: the gust to reckon with, m/s',
      speed,
    )
    .option('--days <number>', 'with --wait: days until the next trip (else 14)', whole)
    .option('--wind-unit <unit>', 'what the file’s forecast is in: m/s, km/h, mph, kn', windUnit)
    .option('--record <file>', 'the record’s file: rates of this crew for the weekend and now')
    .option('--tries <number>', 'orders of work tried', whole, 200)
    .option('--seed <number>', 'of every search and every run', whole, 1)
    .option('--out <folder>', 'write the stages and the tasks here (CSV)')
    .addHelpText('after', '  $ shellraise raise examples/demo/project.json --stage 12')
    .action(async (file, options) => (await import('./commands/raise.ts')).raise(file, options));
  standing(phase(top, 'dossier', 'as built: panels, torque, seals, changes, out of the record'))
    .option('--record <file>', 'the record’s file, as phones save it')
    .option('--initials', 'people by their initials alone')
    .option('--out <folder>', 'write it there as sheets too (PDF)')
    .option('--invent <file>', 'in place of it: write an invented record there, to try with')
    .option('--seed <number>', 'with --invent: of what is invented', whole, 1)
    .addHelpText('after', '  $ shellraise dossier examples/demo/project.json --record record.jsonl')
    .action(async (file, options) =>
      (await import('./commands/dossier.ts')).dossier(file, options),
    );
  standing(phase(top, 'fitout', 'what the shell is for: dish, signal, seal, air, upkeep, room'))
    .option('--dish <diameter>', 'a dish to swing and look through, such as "2.4 m"')
    .option('--frequency <list>', 'frequencies, such as "1420.4 MHz, 10.7 GHz"', frequencies)
    .option(
      '--wall <layers>',
      'of a panel, the outermost first: "glass polyester 1 mm; foam core 20 mm; glass polyester 1 mm"',
    )
    .option(
      '--measured <list>',
      'loss measured square on through a dry panel: "1420.4 MHz 0.35 dB, 10.7 GHz 1.9 dB"',
    )
    .option(
      '--skyline <degrees>',
      'how high the land stands round about, in even steps from the datum',
    )
    .option('--door <panels>', 'places of the door by number, such as "1-08, 1-09, 1-10"')
    .option('--pass <things>', 'do these pass the door: names of the file, "all", or an STL file')
    .addOption(
      new Option('--pass-unit <unit>', 'of that STL file, which says none').choices([
        'mm',
        'cm',
        'm',
        'in',
        'ft',
      ]),
    )
    .option('--stage <panels>', 'with --pass: so many panels placed, in number order', whole)
    .option('--last', 'with --pass: the most panels placed with which they still pass')
    .addOption(
      new Option('--step <degrees>', 'between pointings of the maps')
        .choices(['1', '2', '3', '5', '10'])
        .argParser(Number)
        .default(1),
    )
    .addHelpText(
      'after',
      '  $ shellraise fitout examples/demo/project.json --dish "2.4 m" --frequency "1420.4 MHz" --wall "glass polyester 3 mm"',
    )
    .action(async (file, options) => (await import('./commands/fitout.ts')).fitout(file, options));
  writing(
    standing(phase(top, 'papers', 'every sheet (PDF and SVG) and list (CSV)', ' --out sheets')),
  )
    .addOption(
      new Option('--paper <size>', 'what they are printed on')
        .choices([...sheetPapers])
        .default('A4'),
    )
    .addOption(
      new Option('--as <what>', 'PDF, a file each set; SVG, a file each page; or both')
        .choices([...sheetSorts])
        .default('both'),
    )
    .option('--font <file>', 'a typeface for letters that the PDF’s own lack (TTF, OTF, WOFF)')
    .option('--only <sets>', 'some sets of sheets alone, such as "kinds, stake-out"')
    .action(async (file, options) => (await import('./commands/papers.ts')).papers(file, options));
  top
    .command('serve')
    .description('the app on this computer; project and record shared between devices')
    .option('--port <number>', 'this port and no other (else 4180, or the next free one)')
    .option('--data <folder>', 'keep the shared project and record here')
    .option('--lan', 'let phones on the same network open it too')
    .option('--https', 'let them open it over https, with a certificate of this computer’s own')
    .option('--https-port <number>', 'this port for https (else 4443, or the next free one)')
    .option('--new-root', 'with --https: make that certificate anew')
    .option('--postgres <address>', 'keep it in this database, which several servers may share')
    .option('--redis <address>', 'with --postgres: carry news between those servers')
    .option('--name <name>', 'a name by which people reach this server (any number)', gathered, [])
    .option('--proxy <address>', 'the address of a balancer (any number)', gathered, [])
    .option('--codes', 'print the codes with which devices join')
    .option('--no-open', 'do not open the browser')
    .addHelpText('after', '\nExample:\n  $ shellraise serve --lan --codes')
    .action(async (options) => (await import('./commands/serve.ts')).serve(options));
  writing(standing(phase(top, 'patterns', 'a scale model of this shell', ' --as net --scale 25')))
    .addOption(
      new Option(
        '--as <what>',
        'net: fewest pieces of paper; strips: course by course; cut: DXF and SVG; print: the shell as STL, 3MF and glTF; snap: panels and hubs to print and push together; full-size: parts to make, and DXF at 1 : 1',
      )
        .choices([...patternSorts])
        .default('net'),
    )
    .option('--scale <number>', 'the model is 1 : so many', scaleOf, 20)
    .addOption(
      new Option('--paper <size>', 'what it is printed on').choices([...papersTaken]).default('A4'),
    )
    .option('--open <places>', 'places that stay open, as a door: "1-03, 1-04"')
    .option('--sheet <size>', 'with cut: the sheet', '600 x 400 mm')
    .option('--thickness <length>', 'with cut: of the sheet', '3 mm')
    .option('--kerf <length>', 'with cut: what the beam or blade takes away', '0.15 mm')
    .addOption(
      new Option('--joint <how>', 'with cut: square edges, edges to bevel, or slots and clips')
        .choices(['butt', 'bevel', 'slot'])
        .default('butt'),
    )
    .option('--snap', 'with cut: score outlines to snap, for thin plastic that a cut would warp')
    .option('--wall <thickness>', 'with print: least thickness, else 1.6 mm; with snap: 3 mm')
    .option('--bed <size>', 'with print, snap: what the printer holds', '220 x 220 x 250 mm')
    .option('--clearance <length>', 'with snap: room round pegs and between panels', '0.2 mm')
    .option('--peg <diameter>', 'with snap: of a peg', '4 mm')
    .option('--flange <depth>', 'with full-size: of a flange; "0 mm": none', '40 mm')
    .option('--plate <diameter>', 'with full-size: of a hub plate', '200 mm')
    .option('--hole <diameter>', 'with full-size: of a hole', '9 mm')
    .option('--floor <height>', 'with full-size: of the floor over the lowest hub', '0 mm')
    .action(async (file, options) =>
      (await import('./commands/patterns.ts')).patterns(file, options),
    );
  writing(standing(common(top.command('demo').description('the whole job on the demo project'))))
    .addHelpText('after', '\nExample:\n  $ shellraise demo')
    .action(async (options) => (await import('./commands/demo.ts')).demo(options));
  return top;
}

/** The command in the form that its options ask for. */
async function placesAs(file: string, options: PlacesOptions): Promise<void> {
  const { fit, broken, second, singles, door, hatch, section, account, make } = options;
  const asked = [fit, broken, second, singles, door, hatch, section, account, make].filter(
    (one) => one !== undefined && one !== false,
  ).length;
  if (asked > 1)
    throw badInput(
      'Give one of --fit, --broken, --second, --singles, --door, --hatch, --section, --account and --make at a time.',
    );
  if (account) return (await import('./commands/places-account.ts')).placesAccount(file, options);
  if (make !== undefined)
    return (await import('./commands/places-make.ts')).placesMake(file, make, options);
  if (fit) return (await import('./commands/places-fit.ts')).placesFit(file, options);
  if (broken) return (await import('./commands/places-broken.ts')).placesBroken(file, options);
  if (second) return (await import('./commands/places-second.ts')).placesSecond(file, options);
  if (singles) return (await import('./commands/places-singles.ts')).placesSingles(file, options);
  if (door !== undefined || hatch !== undefined || section !== undefined)
    return (await import('./commands/places-door.ts')).placesDoor(file, options);
  return (await import('./commands/places.ts')).places(file, options);
}

const topHelp = `
FILE is a project (JSON) or a pile from a spreadsheet (CSV); the format is in docs/file-format.md.
Exit code: 0 done; 1 an honest "no"; 2 bad input; 3 a fault of ours.

Examples:
  $ shellraise demo
  $ shellraise shape examples/hex-and-pent.json
  $ source <(shellraise complete bash)    completion; also zsh and fish`;

function phase(top: Command, name: string, what: string, tail = ''): Command {
  const unit = new Option('--unit <unit>', 'unit of lengths in a CSV that have none');
  return common(top.command(name).description(what).argument('<FILE>', 'project JSON or pile CSV'))
    .addOption(unit.choices([...lengthUnits]))
    .addHelpText(
      'after',
      `
Example:
  $ shellraise ${name} examples/demo/project.json${tail}`,
    );
}

const common = (command: Command): Command =>
  command
    .addOption(
      new Option('--lengths <system>', 'how lengths are shown')
        .choices([...lengthSystems])
        .default('metric'),
    )
    .option('--json', 'print one JSON document and nothing else');

const standing = (command: Command): Command =>
  command
    .option('--shape <number>', 'which shape, as "shellraise shape" lists them', whole, 1)
    .option(
      '--arrangement <number>',
      'which shell, as "shellraise places" lists them (else the one the file keeps, else 1)',
      whole,
    )
    .option('--repaired', 'count panels to be mended as stock');

const writing = (command: Command): Command =>
  command
    .option('--out <folder>', 'where to write', 'out')
    .option('--date <day>', 'the day that the sheets bear, such as 2026-05-01', day);

function day(text: string): string {
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(Date.parse(text)))
    throw new InvalidArgumentError('Expected a day such as 2026-05-01.');
  return text;
}

function degrees(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value) || Math.abs(value) > 360)
    throw new InvalidArgumentError('Expected degrees, −360 to 360.');
  return value;
}

/** A value more of an option that may be given any number of times. */
const gathered = (text: string, before: readonly string[]): readonly string[] => [...before, text];

function scaleOf(text: string): number {
  const value = Number(text.replace(/^\s*1\s*:\s*/, ''));
  if (!(text.trim() !== '' && value >= 1 && value <= 1000))
    throw new InvalidArgumentError('Expected a number from 1 to 1000: the n of 1 : n.');
  return value;
}

function frequencies(text: string): readonly number[] {
  return text.split(/[,;]/).map((part) => {
    const match = /^\s*(\d+(?:\.\d+)?)\s*([kMG]?)Hz\s*$/i.exec(part);
    const power = { '': 1, k: 1e3, m: 1e6, g: 1e9 }[(match?.[2] ?? '').toLowerCase()] ?? 1;
    const hertz = Number(match?.[1]) * power;
    if (!(hertz >= 3e7 && hertz <= 1e11))
      throw new InvalidArgumentError(
        `Expected frequencies of 30 MHz to 100 GHz with their unit, such as "1420.4 MHz"; found "${part.trim()}".`,
      );
    return hertz;
  });
}

function windUnit(text: string): WindUnit {
  const units: readonly WindUnit[] = ['m/s', 'km/h', 'mph', 'kn'];
  const found = units.find((unit) => unit.replace('/', '') === text.toLowerCase().replace('/', ''));
  if (found === undefined)
    throw new InvalidArgumentError(`Expected a unit of wind: ${units.join(', ')}.`);
  return found;
}

function speed(text: string): number {
  const value = Number(text);
  if (!(text.trim() !== '' && value >= 0 && value <= 115))
    throw new InvalidArgumentError('Expected a speed in m/s, 0 to 115.');
  return value;
}

function whole(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1)
    throw new InvalidArgumentError('Expected a whole number from 1 up.');
  return value;
}
