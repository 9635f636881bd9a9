// How much a document may hold and an update may bring. A weekend of fifty phones makes some 200,000
// entries, about 30 MB; a project is at most as long as its file may be.

/** Longest update of the record in one message, bytes: a whole record, brought to a new laptop. */
export const MAX_RECORD_UPDATE = 64 * 1024 * 1024;

/** Most entries of a record. */
export const MAX_ENTRIES = 1_000_000;

/** Longest update of a project, bytes. */
export const MAX_PROJECT_UPDATE = 24 * 1024 * 1024;

/** By how much an entry's order may pass the number of entries there are: an honest order never does,
 * but entries that its writer had seen may still be under way. */
export const ORDER_AHEAD = 1000;
