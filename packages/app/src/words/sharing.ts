// Words of sharing: joining a site, what is on the laptop and what waits, the codes and their paper.

import type { JoinFault, Role } from '../sync/site-calls.ts';
import type { SiteSays } from '../sync/site-says.ts';
import { plural } from './counted.ts';

const entries = (count: number): string => plural(count, 'entry', 'entries');
const wait = (count: number): string => (count === 1 ? 'waits' : 'wait');

/** What still waits here, and what becomes of it. */
const waiting = (count: number, byItself: boolean): string =>
  count === 0
    ? 'All that was noted here is there.'
    : byItself
      ? `${entries(count)} ${wait(count)} here and will go by themselves.`
      : `${entries(count)} ${wait(count)} here: save the record as a file if that is to last.`;

const says: Readonly<Record<SiteSays, string>> = {
  own: 'Not shared: it stays on this device.',
  opening: 'Looking for the laptop …',
  kept: 'On the laptop.',
  sending: 'On its way to the laptop …',
  away: 'The laptop cannot be reached.',
  ended: 'The code that this device joined with no longer holds. Join again with another.',
  elsewhere: 'Another site is kept at this address now. Join that, or go to this one’s laptop.',
  'no laptop': 'Nobody shares anything at this address: the page comes as plain files.',
  foreign: 'The laptop does not take this address for its own: open the one it shows.',
  later: 'Too much came to the laptop at once: wait a minute.',
  'not kept': 'The laptop could not keep it: look at the laptop, its disk may be full.',
  malformed: 'The laptop could not read what this device sent, and cut the line.',
  denied: 'The laptop does not take it: a looker may not note anything.',
  fault: 'A fault of ours on the laptop: look at what it shows.',
};

const joinFaults: Readonly<Record<JoinFault, string>> = {
  wrong: 'There is no such code, or it no longer holds. Ask a lead.',
  later: 'Too many tries: wait a minute, then try again.',
  none: 'Nobody shares anything at this address: the page comes as plain files. Open it at the laptop’s address.',
  away: 'The laptop cannot be reached. Is this device in its network?',
  fault: 'The laptop could not do it: a fault of ours. Look at what it shows.',
};

const roles: Readonly<Record<Role, string>> = { lead: 'Lead', crew: 'Crew', looker: 'Looker' };

/** Words of sharing. */
export const sharingWords = {
  title: 'The laptop',
  menu: 'Join a site, share this project',
  says: (state: SiteSays, count: number, byItself: boolean): string =>
    state === 'own'
      ? says.own
      : state === 'kept'
        ? `${says.kept} Everything is kept there.`
        : `${says[state]} ${waiting(count, byItself)}`,
  short: (state: SiteSays, count: number): string =>
    state === 'kept'
      ? 'On the laptop'
      : count === 0
        ? says[state]
        : state === 'sending'
          ? `${entries(count)} on the way`
          : `${entries(count)} ${wait(count)} for the laptop`,
  roles,
  may: {
    lead: 'changes the project, notes, gives out codes',
    crew: 'notes what is done',
    looker: 'looks, and notes nothing',
  },
  youAre: (role: Role) => `This device is in as ${roles[role].toLowerCase()}.`,
  isSites: 'The project on show is the site’s; it has its own line among the projects.',
  lookerOnly: 'This device is in as looker: it notes nothing. Ask a lead for a crew code.',
  fixed:
    'This project is the site’s: a lead changes it. To try something, make a copy of your own.',
  copy: 'Make a copy of my own',
  byOthers: 'changes of others',
  code: 'Join code',
  codeHint: 'Ten letters and digits, as the laptop or the paper shows them',
  join: 'Join',
  joining: 'Joining …',
  joinAgain: 'Join with another code',
  joinFaults,
  notShared: 'This project is not shared.',
  otherSite: (title: string) =>
    title === '' ? 'This device has joined a site.' : `This device has joined a site: ${title}.`,
  openIt: 'Open the site’s project',
  noProject: 'No lead has put a project on the site yet. It opens here as soon as it comes.',
  putHere: (title: string) => `Put “${title}” on the site`,
  putNote: 'The site has no project yet. This one, with its record, goes to everybody who joins.',
  faulty:
    'What several leads changed at once does not fit together. The last whole project stays on show; a lead’s next change settles it.',
  projectWaits: 'Changes of the project wait for the laptop.',
  projectDenied: 'Changes of the project made here were not taken: this device is no lead now.',
  codes: 'Join codes',
  showCodes: 'Show the join codes',
  codesWhy: 'Whoever has a code may do as much as its role. Give each to whom you trust with it.',
  noCodes: 'The codes cannot be had while the laptop cannot be reached.',
  joinedWith: (count: number) => `${plural(count, 'device')} joined with it`,
  newCode: (role: Role) => `New ${role} code`,
  revoke: 'Revoke',
  revokeOf: (code: string) => `Revoke ${code}`,
  revoked: (code: string) => `${code} no longer holds: whoever joined with it is out.`,
  show: 'Picture',
  showOf: (code: string) => `Picture of ${code}`,
  picture: (role: string) => `Picture that a phone’s camera reads to join as ${role}`,
  alone: 'The laptop is open to itself alone. Start it again with --lan, then phones can join.',
  address: 'Address',
  print: 'Print the paper for the fence',
  paper: {
    title: (role: Role) =>
      role === 'looker' ? 'Look at the shell' : role === 'crew' ? 'Join the crew' : 'Join as lead',
    steps: [
      'Be in the laptop’s network.',
      'Point the phone’s camera at the picture and open the address.',
      'Say your first name or initials; then tap what is done.',
    ],
    trust: (plain: string) => `The first time: open ${plain} and do what it says.`,
    byHand: 'Or type the address, and on the Record sheet the code:',
    file: 'No network later? Go on. It is kept on the phone and goes to the laptop when both meet again. Some phones clear a page that was not opened for a week.',
    privacy: 'Everybody who joins sees names and notes. Whoever has this code may do the same.',
  },
  sitesProject: (role: Role) => `a site’s project (${roles[role].toLowerCase()})`,
};
