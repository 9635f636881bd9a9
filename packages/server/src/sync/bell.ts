// News between servers that share a storage. A bell says only that something is new, never what: that
// is read from the storage, so news that is lost, comes twice or is made up does no harm.

/** What there can be news of: a document, or the join codes. */
export type News = 'project' | 'record' | 'codes';

/** A line between servers. */
export interface Bell {
  /** Whether news gets through as far as is known; while not, the storage is looked at every second. */
  isLive(): boolean;
  ring(news: News): void;
  close(): Promise<void>;
}

/** Told of news; null: there may be news of anything. */
export type OnNews = (news: News | null) => void;

/** News does not get through; what is kept is safe, and others learn of it by looking. */
export class NewsLost extends Error {}

/** For a server that is alone, or has no other way than to look. */
export const noBell: Bell = {
  isLive: () => false,
  ring: () => undefined,
  close: async () => undefined,
};
