// What app and server share of syncing.

export { projectUpdate, recordUpdate, type UpdateVerdict } from './check-update.ts';
export { joinAddress, spelled } from './join-address.ts';
export { followKept, type Kept, keptElsewhere, type Provider } from './kept.ts';
export {
  MAX_ENTRIES,
  MAX_PROJECT_UPDATE,
  MAX_RECORD_UPDATE,
  ORDER_AHEAD,
} from './limits.ts';
export { type PhotoKind, photoHash, photoKind, strippedPhoto } from './photo.ts';
export { PROJECT, projectIn, writeProject } from './project-doc.ts';
export {
  addToDoc,
  entryCount,
  listName,
  rawEntries,
  type SharedRecord,
  sharedRecord,
} from './record-doc.ts';
