// How much one phone, and all together, may ask of the server. Honest phones stay far below: a tap is
// 200 bytes, and the largest thing that anybody sends is a whole record to a new laptop, once.

/** Sockets open at once: of one session, and of all. */
export const SOCKETS = { session: 12, all: 500 } as const;

/** Sessions that one join code may open. */
export const SESSIONS_OF_CODE = 300;

/** What comes in on a socket: at once, and each second. */
export const MESSAGES = { burst: 600, perSecond: 60 } as const;
export const BYTES_IN = { burst: 96 * 1024 * 1024, perSecond: 1024 * 1024 } as const;

/** What goes out on a socket when it asks for a document. */
export const BYTES_OUT = { burst: 256 * 1024 * 1024, perSecond: 4 * 1024 * 1024 } as const;

/** Tries to join: from one address, and from all together. */
export const JOINS = { burst: 10, perSecond: 10 / 60 } as const;
export const ALL_JOINS = { burst: 600, perSecond: 10 } as const;

/** Longest message on a socket, bytes: the longest update of a record and its frame. */
export const MAX_MESSAGE = 64 * 1024 * 1024 + 1024;

/** Most that waits to be sent to one phone, bytes; one that reads no more is let go. */
export const MAX_WAITING = 128 * 1024 * 1024;

/** How often each phone is told what is kept, which shows both that the line is alive; and after how
 * long a silence a phone is let go. Milliseconds. */
export const HEARTBEAT = 15_000;
export const SILENCE = 60_000;

/** How long a server that ends waits for phones to end their lines, milliseconds. */
export const GOOD_BYE = 500;

/** How often a shared storage is looked at while no news comes from other servers, milliseconds. */
export const LOOK = 1000;

/** Updates kept one by one before they are kept as one. */
export const LOOSE_UPDATES = 500;

/** How long a session lasts without being used, milliseconds. */
export const SESSION_AGE = 30 * 24 * 3600 * 1000;

/** Longest photo, bytes, and most of all photos of a site. */
export const MAX_PHOTO = 12 * 1024 * 1024;
export const MAX_PHOTOS = 8 * 1024 * 1024 * 1024;

/** Bytes of photos that one session brings: at once, and each second. */
export const PHOTO_BYTES = { burst: 300 * 1024 * 1024, perSecond: 1024 * 1024 } as const;
